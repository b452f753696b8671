/**
 * What a quantity is, and how one is made from numbers as typed and a unit.
 *
 * Every quantity is an interval in its own unit. A plain value is the interval of one point; that it
 * was typed with a certain fineness is kept beside it (`step`) and used only where two typed numbers
 * are compared across units or a value is printed in another unit.
 *
 * Not here: reading text (read.ts), arithmetic, printing.
 */

import { bad, good, type Outcome } from './problem.ts';
import {
  add,
  compare,
  equal,
  greatest,
  inverse,
  multiply,
  parseRational,
  powerOfTen,
  type Rational,
  rational,
  sign,
  subtract,
  toDecimal,
  toFraction,
} from './rational.ts';
import { numberUnit, type Unit } from './units.ts';

/**
 * `over` and `below` leave their end out (over 0.04 mm), `at least` and `at most` take it in.
 */
export type QuantityForm = 'value' | 'range' | 'tolerance' | 'at least' | 'at most' | 'over' | 'below';

export interface Quantity {
  readonly form: QuantityForm;
  readonly unit: Unit;
  /** Lowest value in `unit`; absent when there is no lower end. */
  readonly low?: Rational;
  /** Highest value in `unit`; absent when there is no upper end. */
  readonly high?: Rational;
  /** The value itself (`value`), or what the tolerance is about (`tolerance`). */
  readonly nominal?: Rational;
  /**
   * One unit of the last digit typed, in `unit`: 1 for `25`, 0.01 for `6.50`. Of a range the coarser
   * end. A fraction counts as ten times finer than its denominator (common practice, no source).
   * Absent for computed values, which are exact.
   */
  readonly step?: Rational;
  /** Typed as a fraction (`1/6 turn`), and printed as one. */
  readonly fraction?: true;
  /** The tolerance was typed in percent of the nominal value. */
  readonly percent?: Rational;
  /** The units of a mixed value (`1 h 30 min`), largest first; `unit` is the last one. */
  readonly parts?: readonly Unit[];
}

/** A number as typed. */
export interface TypedNumber {
  readonly value: Rational;
  readonly step: Rational;
  readonly fraction: boolean;
}

/** Reads a number of the language: `12`, `0.00473`, `1/6`, `1 1/2`, `-20`. Undefined for anything else. */
export function typedNumber(text: string): TypedNumber | undefined {
  const value = parseRational(text);
  if (value === undefined) return undefined;
  const slash = text.indexOf('/');
  if (slash >= 0) {
    return { value, step: rational(1, 10n * BigInt(text.slice(slash + 1))), fraction: true };
  }
  const point = text.indexOf('.');
  return { value, step: powerOfTen(point < 0 ? 0 : point + 1 - text.length), fraction: false };
}

export function plainValue(number: TypedNumber, unit: Unit): Quantity {
  const { value, step } = number;
  const quantity: Quantity = { form: 'value', unit, low: value, high: value, nominal: value, step };
  return number.fraction ? { ...quantity, fraction: true } : quantity;
}

/** A value that nobody typed: exact, without a step. */
export function exactValue(value: Rational, unit: Unit = numberUnit): Quantity {
  return { form: 'value', unit, low: value, high: value, nominal: value };
}

/** `5..60 N·m`. Problem `range-reversed` when the first number is above the second. */
export function rangeOf(low: TypedNumber, high: TypedNumber, unit: Unit): Outcome<Quantity> {
  if (compare(low.value, high.value) > 0) {
    const first = numberText(high);
    const second = numberText(low);
    return bad(
      'range-reversed',
      `The range ${second}..${first} runs downwards; the smaller number comes first.`,
      [`${first}..${second} ${unit.symbol}`],
    );
  }
  const step = greatest(low.step, high.step);
  const quantity: Quantity = { form: 'range', unit, low: low.value, high: high.value, step };
  return good(low.fraction || high.fraction ? { ...quantity, fraction: true } : quantity);
}

/** `25 ± 3 N·m`, `500 +1/-0 micron`: `plus` and `minus` are sizes in `unit`, both zero or more. */
export function toleranceOf(
  nominal: TypedNumber,
  plus: TypedNumber,
  minus: TypedNumber,
  unit: Unit,
): Outcome<Quantity> {
  if (sign(plus.value) < 0 || sign(minus.value) < 0) return negativeTolerance();
  const { value, step } = nominal;
  const low = subtract(value, minus.value);
  const high = add(value, plus.value);
  const quantity: Quantity = { form: 'tolerance', unit, low, high, nominal: value, step };
  return good(
    nominal.fraction || plus.fraction || minus.fraction ? { ...quantity, fraction: true } : quantity,
  );
}

/** `25 N·m ± 5 %`. A temperature reading has no percentage: its zero is a convention. */
export function percentToleranceOf(nominal: TypedNumber, percent: Rational, unit: Unit): Outcome<Quantity> {
  if (sign(percent) < 0) return negativeTolerance();
  if (unit.kind === 'temperature') {
    return bad(
      'temperature-reading',
      `A percentage of a temperature reading says nothing, because ${unit.symbol} does not start at no heat at all; give the tolerance in ${unit.symbol}.`,
    );
  }
  const { value, step } = nominal;
  const size = multiply(multiply(value, percent), rational(sign(value) < 0 ? -1 : 1, 100));
  const low = subtract(value, size);
  const high = add(value, size);
  const quantity: Quantity = { form: 'tolerance', unit, low, high, nominal: value, step, percent };
  return good(nominal.fraction ? { ...quantity, fraction: true } : quantity);
}

export function oneSided(
  form: 'at least' | 'at most' | 'over' | 'below',
  number: TypedNumber,
  unit: Unit,
): Quantity {
  const { value, step } = number;
  const end = form === 'at least' || form === 'over' ? { low: value } : { high: value };
  const quantity: Quantity = { form, unit, ...end, step };
  return number.fraction ? { ...quantity, fraction: true } : quantity;
}

/**
 * `1 h 30 min`, `5 ft 2 in`: all of one kind, each unit smaller than the one before, whole numbers
 * but for the last. The value is kept in the last unit.
 */
export function mixedOf(parts: readonly { number: TypedNumber; unit: Unit }[]): Outcome<Quantity> {
  const last = parts[parts.length - 1];
  if (last === undefined) return bad('number-malformed', 'There is no number here.');
  if (parts.length === 1) return good(plainValue(last.number, last.unit));
  let sum = rational(0);
  for (const [i, part] of parts.entries()) {
    const before = parts[i - 1];
    if (part.unit.kind !== last.unit.kind || part.unit.kind === 'temperature') {
      return bad(
        'mixed-units',
        `${last.unit.symbol} cannot be added to ${part.unit.symbol}: one is ${article(last.unit.kind)}, the other ${article(part.unit.kind)}.`,
      );
    }
    if (before !== undefined && compare(before.unit.factor, part.unit.factor) <= 0) {
      return bad(
        'mixed-units',
        `In a mixed quantity each unit is smaller than the one before it; ${part.unit.symbol} is not smaller than ${before.unit.symbol}.`,
      );
    }
    if (sign(part.number.value) < 0 && i > 0) {
      return bad('mixed-units', 'Only the first number of a mixed quantity may have a sign.');
    }
    if (part !== last && part.number.step.d !== 1) {
      return bad(
        'mixed-units',
        `In a mixed quantity every number but the last is whole; ${numberText(part.number)} ${part.unit.symbol} is not.`,
      );
    }
    const size = multiply(part.number.value, multiply(part.unit.factor, inverse(last.unit.factor)));
    const negative = sign(parts[0]!.number.value) < 0 && i > 0;
    sum = negative ? subtract(sum, size) : add(sum, size);
  }
  const quantity: Quantity = {
    form: 'value',
    unit: last.unit,
    low: sum,
    high: sum,
    nominal: sum,
    step: last.number.step,
    parts: parts.map((part) => part.unit),
  };
  return good(last.number.fraction ? { ...quantity, fraction: true } : quantity);
}

/** Value and tolerance: the nominal value; range: its middle; one-sided: the end it has. */
export function centre(q: Quantity): Rational {
  if (q.nominal !== undefined) return q.nominal;
  if (q.low !== undefined && q.high !== undefined) return multiply(add(q.low, q.high), rational(1, 2));
  return q.low ?? q.high ?? rational(0);
}

/** The same quantity: form, unit and all numbers, not how finely they were typed. */
export function sameQuantity(a: Quantity, b: Quantity): boolean {
  return (
    a.form === b.form &&
    a.unit.symbol === b.unit.symbol &&
    sameEnd(a.low, b.low) &&
    sameEnd(a.high, b.high) &&
    sameEnd(a.nominal, b.nominal)
  );
}

/** `a torque`, `an angle`. */
export function article(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
}

function sameEnd(a: Rational | undefined, b: Rational | undefined): boolean {
  return a === undefined || b === undefined ? a === b : equal(a, b);
}

function numberText(number: TypedNumber): string {
  return number.fraction ? toFraction(number.value) : (toDecimal(number.value) ?? toFraction(number.value));
}

function negativeTolerance(): Outcome<Quantity> {
  return bad('tolerance-negative', 'A tolerance is a size and has no sign of its own.');
}
