/**
 * What an expression comes to, exactly: `gap + 0.2 mm`, `average of a, b, c`. Knows no
 * machine and no procedure: whoever asks says what the names stand for. Returns a value or what is wrong;
 * never throws on what an author typed.
 */
import {
  addQuantities,
  convert,
  divideQuantities,
  exact,
  multiplyQuantities,
  type Quantity,
  type QuantityProblem,
  type Rational,
  subtractQuantities,
} from '../../grammar/quantity/index.ts';
import type { Expression, Span } from '../../grammar/syntax/tree.ts';
import { readTyped } from './fastening-amounts.ts';

/** What a name stands for: a quantity, an expression that is worked out when it is needed, or nothing known. */
export type Names = (name: string) => Quantity | Expression | undefined;

export interface ValueProblem {
  code:
    | QuantityProblem['code']
    /** A name that stands for nothing known: not declared, or not measured yet. */
    | 'unknown-value'
    /** A value that is computed from itself. */
    | 'circular-value'
    /** `middle of a, b`: not average, sum, larger or smaller. */
    | 'unknown-function'
    /** A side of a sum is missing, or a quantity that cannot be read. */
    | 'incomplete';
  /** One sentence that stands alone. */
  message: string;
  at: Span;
  /** The name that is not known, or that its own value leads back to. */
  name?: string;
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; problem: ValueProblem };

/** The words that work several values into one, as they stand before `of`. */
export const FUNCTIONS: ReadonlySet<string> = new Set(['average', 'sum', 'larger', 'smaller']);

/** More names in one another than this are not followed. */
const MOST_NAMES = 100;

export const NO_NAMES: Names = () => undefined;

/** In the unit of the first operand. Intervals are carried through: the result spans what the operands allow. */
export function evaluate(expression: Expression, names: Names = NO_NAMES): Outcome<Quantity> {
  return work(expression, names, []);
}

function work(expression: Expression, names: Names, path: readonly string[]): Outcome<Quantity> {
  switch (expression.kind) {
    case 'quantity': {
      const { named } = expression.quantity;
      if (named) return nameValue(named.name.text, named, names, path);
      const read = readTyped(expression.quantity, NO_VALUES);
      return read ? { ok: true, value: read } : bad('incomplete', 'The quantity cannot be read.', expression);
    }
    case 'name':
      return nameValue(expression.ref.name.text, expression, names, path);
    case 'call':
      return call(expression, names, path);
    case 'binary': {
      if (!expression.right)
        return bad('incomplete', `A value is missing after “${expression.operator}”.`, expression);
      const left = work(expression.left, names, path);
      if (!left.ok) return left;
      const right = work(expression.right, names, path);
      if (!right.ok) return right;
      const outcome = OPERATIONS[expression.operator](left.value, right.value);
      return outcome.ok ? outcome : from(outcome.problem, expression);
    }
  }
}

const NO_VALUES: Parameters<typeof readTyped>[1] = new Map();

const OPERATIONS = {
  '+': addQuantities,
  '-': subtractQuantities,
  '*': multiplyQuantities,
  '/': divideQuantities,
} as const;

function nameValue(name: string, at: Span, names: Names, path: readonly string[]): Outcome<Quantity> {
  if (path.includes(name))
    return bad('circular-value', `The value ${name} is computed from itself.`, at, name);
  const found = names(name);
  if (!found || path.length >= MOST_NAMES)
    return bad('unknown-value', `The value ${name} is not known here.`, at, name);
  return 'form' in found ? { ok: true, value: found } : work(found, names, [...path, name]);
}

function call(
  expression: Expression & { kind: 'call' },
  names: Names,
  path: readonly string[],
): Outcome<Quantity> {
  const { name } = expression;
  if (!FUNCTIONS.has(name.text)) {
    return bad('unknown-function', `“${name.text} of” is not average, sum, larger or smaller of.`, name);
  }
  const values: Quantity[] = [];
  for (const argument of expression.arguments) {
    const outcome = work(argument, names, path);
    if (!outcome.ok) return outcome;
    values.push(outcome.value);
  }
  const [first, ...rest] = values;
  if (!first) return bad('incomplete', `A value is missing after “${name.text} of”.`, expression);
  if (name.text !== 'sum') return ofAll(name.text, first, rest, expression);
  let sum = first;
  for (const value of rest) {
    const outcome = addQuantities(sum, value);
    if (!outcome.ok) return from(outcome.problem, expression);
    sum = outcome.value;
  }
  return { ok: true, value: sum };
}

/** Average, larger or smaller: end by end in the unit of the first, so that readings of temperature have one too. */
function ofAll(what: string, first: Quantity, rest: readonly Quantity[], at: Span): Outcome<Quantity> {
  const lows: Rational[] = [];
  const highs: Rational[] = [];
  for (const value of [first, ...rest]) {
    const same = convert(value, first.unit);
    if (!same.ok) return from(same.problem, at);
    const { low, high } = same.value;
    if (low === undefined || high === undefined)
      return bad('open-ended', 'A quantity with only one end cannot be calculated with.', at);
    lows.push(low);
    highs.push(high);
  }
  const low = one(what, lows);
  const high = one(what, highs);
  const { unit } = first;
  const plain = exact.equal(low, high);
  return {
    ok: true,
    value: plain ? { form: 'value', unit, low, high, nominal: low } : { form: 'range', unit, low, high },
  };
}

function one(what: string, values: readonly Rational[]): Rational {
  if (what === 'larger') return values.reduce(exact.greatest);
  if (what === 'smaller') return values.reduce(exact.least);
  return exact.multiply(values.reduce(exact.add), exact.rational(1, values.length));
}

function from({ code, message }: QuantityProblem, at: Span): Outcome<never> {
  return bad(code, message, at);
}

function bad(
  code: ValueProblem['code'],
  message: string,
  { start, end }: Span,
  name?: string,
): Outcome<never> {
  return { ok: false, problem: { code, message, at: { start, end }, ...(name ? { name } : {}) } };
}
