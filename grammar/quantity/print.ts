/**
 * Prints quantities: in the form of the source (reads back as the same quantity) and in the form for
 * readers, in their own unit or rounded in another one.
 *
 * Rounding in another unit never widens what was allowed. A range, a tolerance or a limit is rounded
 * inwards; a plain value to the nearest, within half a unit of the last digit its author typed and
 * within 1 % (12 in is 305 mm, not 300 mm). As few digits are printed as that permits.
 *
 * Not here: which second unit a reader gets (a choice of the publisher; `Unit.partner` is the usual one).
 */

import { convert } from './convert.ts';
import { good, type Outcome } from './problem.ts';
import type { Quantity } from './quantity.ts';
import {
  abs,
  add,
  compare,
  equal,
  floor,
  inverse,
  isZero,
  least,
  magnitude,
  multiply,
  negate,
  ONE,
  powerOfTen,
  type Rational,
  rational,
  roundTo,
  sign,
  subtract,
  toDecimal,
  toFixed,
  toFraction,
  ZERO,
} from './rational.ts';
import type { Unit } from './units.ts';

/** As the formatter would write it: `25 ± 3 N·m`, `5..60 N·m`. Exact, and reads back as the same quantity. */
export function printSource(q: Quantity): string {
  return print(q, source);
}

/** As a sentence has it: `25 ± 3 N·m`, `5 to 60 N·m`, `−20 °C`, `2 turns`. Exact. */
export function printReader(q: Quantity): string {
  return print(q, reader);
}

/** `printReader` of the quantity rounded in another unit. Problems: as `convert`. */
export function printReaderIn(q: Quantity, unit: Unit): Outcome<string> {
  const rounded = roundedIn(q, unit);
  return rounded.ok ? good(printReader(rounded.value)) : rounded;
}

/** `80 lbf·ft (108 N·m)`. Problems: as `convert`. */
export function printBoth(q: Quantity, second: Unit): Outcome<string> {
  const text = printReaderIn(q, second);
  return text.ok ? good(`${printReader(q)} (${text.value})`) : text;
}

/**
 * The quantity in another unit, rounded as said above. Problems: as `convert`.
 *
 * Ends of a range and limits move inwards by at most half a typed unit and 5 % of the range; at least
 * 90 % of a tolerance is kept (both choices common practice, no source).
 */
export function roundedIn(q: Quantity, unit: Unit): Outcome<Quantity> {
  if (q.unit === unit) return good(q);
  const converted = convert(q, unit);
  if (!converted.ok) return converted;
  const exact = converted.value;
  const slack = exact.step === undefined ? defaultSlack(exact) : multiply(exact.step, rational(1, 2));
  const start = coarsestPlace(exact);
  for (let place = start; place > start - MOST_PLACES; place -= 1) {
    const rounded = roundedAt(exact, powerOfTen(place), slack);
    if (rounded !== undefined) return good(rounded);
  }
  return good(exact);
}

/** One number with its unit, for tables: no form, no tolerance. `many` picks `turns` over `turn`. */
export function unitLabel(unit: Unit, many: boolean): string {
  return many ? (unit.readerPlural ?? unit.readerSymbol ?? unit.symbol) : (unit.readerSymbol ?? unit.symbol);
}

const MOST_PLACES = 40;

interface Style {
  readonly minus: string;
  readonly range: string;
  readonly unit: (unit: Unit, many: boolean) => string;
}

const source: Style = { minus: '-', range: '..', unit: sourceLabel };
const reader: Style = { minus: '−', range: ' to ', unit: unitLabel };

function print(q: Quantity, style: Style): string {
  switch (q.form) {
    case 'value':
      return printValue(q, q.nominal ?? ZERO, style);
    case 'at least':
    case 'over':
      return `${q.form} ${printValue(q, q.low ?? ZERO, style)}`;
    case 'at most':
    case 'below':
      return `${q.form} ${printValue(q, q.high ?? ZERO, style)}`;
    case 'range':
      return withUnit(
        `${number(q, q.low ?? ZERO, style)}${style.range}${number(q, q.high ?? ZERO, style)}`,
        q.unit,
        true,
        style,
      );
    case 'tolerance':
      return printTolerance(q, style);
  }
}

function printValue(q: Quantity, value: Rational, style: Style): string {
  if (q.parts !== undefined) return printParts(q, value, q.parts, style);
  return withUnit(number(q, value, style), q.unit, isMany(value), style);
}

function printTolerance(q: Quantity, style: Style): string {
  const nominal = q.nominal ?? ZERO;
  const shown = number(q, nominal, style);
  if (q.percent !== undefined) {
    return `${withUnit(shown, q.unit, isMany(nominal), style)} ± ${plainNumber(q.percent, false)} %`;
  }
  const plus = subtract(q.high ?? nominal, nominal);
  const minus = subtract(nominal, q.low ?? nominal);
  const fraction = q.fraction === true;
  const sizes = equal(plus, minus)
    ? `± ${plainNumber(plus, fraction)}`
    : `+${plainNumber(plus, fraction)}/${style.minus}${plainNumber(minus, fraction)}`;
  return withUnit(`${shown} ${sizes}`, q.unit, true, style);
}

function printParts(q: Quantity, value: Rational, parts: readonly Unit[], style: Style): string {
  const texts: string[] = [];
  let rest = abs(value);
  for (const [i, unit] of parts.entries()) {
    const last = i === parts.length - 1;
    const size = multiply(unit.factor, inverse(q.unit.factor));
    const count = last ? rest : floor(multiply(rest, inverse(size)));
    rest = subtract(rest, multiply(count, size));
    const text = last ? number(q, count, style) : plainNumber(count, false);
    texts.push(withUnit(text, unit, isMany(count), style));
  }
  return (sign(value) < 0 ? style.minus : '') + texts.join(' ');
}

function number(q: Quantity, value: Rational, style: Style): string {
  const text = q.fraction === true ? toFraction(value) : padded(value, q.step);
  return text.startsWith('-') ? style.minus + text.slice(1) : text;
}

/** `6.50` stays `6.50`: the zeros say how finely the value was meant. */
function padded(value: Rational, step: Rational | undefined): string {
  const exact = plainNumber(value, false);
  if (step === undefined || step.n !== 1 || exact.includes('/')) return exact;
  const decimals = -magnitude(step);
  if (decimals <= 0 || !equal(step, powerOfTen(-decimals))) return exact;
  const fixed = toFixed(value, decimals);
  return fixed.length > exact.length ? fixed : exact;
}

function plainNumber(value: Rational, fraction: boolean): string {
  return fraction ? toFraction(value) : (toDecimal(value) ?? toFraction(value));
}

function withUnit(text: string, unit: Unit, many: boolean, style: Style): string {
  const label = style.unit(unit, many);
  return label === '' || unit.closedUp === true ? text + label : `${text} ${label}`;
}

/** The symbol, or its plural where the language has it as a word of its own (`2 turns`, `500 microns`). */
function sourceLabel(unit: Unit, many: boolean): string {
  const plural = unit.readerPlural;
  return many && plural !== undefined && unit.readerSymbol === undefined ? plural : unit.symbol;
}

function isMany(value: Rational): boolean {
  return isZero(value) || compare(abs(value), ONE) > 0;
}

/** A computed value has no typed digit: a thousandth of it is as good as anybody needs. */
function defaultSlack(q: Quantity): Rational {
  const size = [q.nominal, q.low, q.high].find((end) => end !== undefined && !isZero(end)) ?? ONE;
  return multiply(abs(size), rational(1, 2000));
}

function coarsestPlace(q: Quantity): number {
  const sizes = [q.low, q.high, q.nominal].flatMap((end) => (end === undefined ? [] : [magnitude(end)]));
  return Math.max(0, ...sizes);
}

/** The quantity rounded to multiples of `grid`, or undefined where that is too coarse. */
function roundedAt(q: Quantity, grid: Rational, slack: Rational): Quantity | undefined {
  const { form, unit } = q;
  switch (form) {
    case 'value': {
      const exact = q.nominal ?? ZERO;
      const value = roundTo(exact, grid);
      const most = unit.kind === 'temperature' ? slack : least(slack, multiply(abs(exact), rational(1, 100)));
      if (exceeds(value, exact, most) || (isZero(value) && !isZero(exact))) return undefined;
      return { form, unit, low: value, high: value, nominal: value, step: grid };
    }
    case 'at least':
    case 'over': {
      const exact = q.low ?? ZERO;
      const low = roundTo(exact, grid, 'up');
      return exceeds(low, exact, slack) ? undefined : { form, unit, low, step: grid };
    }
    case 'at most':
    case 'below': {
      const exact = q.high ?? ZERO;
      const high = roundTo(exact, grid, 'down');
      if (exceeds(high, exact, slack) || (isZero(high) && !isZero(exact))) return undefined;
      return { form, unit, high, step: grid };
    }
    case 'range': {
      const exactLow = q.low ?? ZERO;
      const exactHigh = q.high ?? ZERO;
      const low = roundTo(exactLow, grid, 'up');
      const high = roundTo(exactHigh, grid, 'down');
      const most = least(slack, multiply(subtract(exactHigh, exactLow), rational(1, 20)));
      if (exceeds(low, exactLow, most) || exceeds(high, exactHigh, most)) return undefined;
      return { form, unit, low, high, step: grid };
    }
    case 'tolerance':
      return toleranceAt(q, grid, slack);
  }
}

function toleranceAt(q: Quantity, grid: Rational, slack: Rational): Quantity | undefined {
  const { form, unit } = q;
  const exact = q.nominal ?? ZERO;
  const nominal = roundTo(exact, grid);
  if (exceeds(nominal, exact, slack)) return undefined;
  const exactHigh = q.high ?? exact;
  const exactLow = q.low ?? exact;
  let plus = roundTo(subtract(exactHigh, nominal), grid, 'down');
  let minus = roundTo(subtract(nominal, exactLow), grid, 'down');
  if (sign(plus) < 0 || sign(minus) < 0) return undefined;
  const exactPlus = subtract(exactHigh, exact);
  const exactMinus = subtract(exact, exactLow);
  if (equal(exactPlus, exactMinus)) {
    plus = least(plus, minus);
    minus = plus;
  }
  const share = rational(9, 10);
  if (compare(plus, multiply(exactPlus, share)) < 0 || compare(minus, multiply(exactMinus, share)) < 0)
    return undefined;
  return { form, unit, low: add(nominal, negate(minus)), high: add(nominal, plus), nominal, step: grid };
}

function exceeds(rounded: Rational, exact: Rational, slack: Rational): boolean {
  return compare(abs(subtract(rounded, exact)), slack) > 0;
}
