/**
 * Sums, differences, products and quotients of quantities, with their dimensions.
 *
 * Intervals are carried through: the result spans every value that the operands allow. A result is
 * computed, so it has no typed fineness.
 *
 * Not here: formulas of the trade.
 */

import { convert, differenceUnit } from './convert.ts';
import { combine, type Dimension, kindOfDimension } from './kinds.ts';
import { bad, good, type Outcome } from './problem.ts';
import type { Quantity } from './quantity.ts';
import {
  subtract as difference,
  greatest,
  least,
  ONE,
  multiply as product,
  divide as quotient,
  type Rational,
  sign,
  add as sum,
  ZERO,
} from './rational.ts';
import { numberUnit, type Unit, units } from './units.ts';

/** a + b in a's unit. A reading plus a difference is a reading; two readings have no sum. */
export function addQuantities(a: Quantity, b: Quantity): Outcome<Quantity> {
  if (a.unit.kind === 'temperature' && b.unit.kind === 'temperature') {
    return bad(
      'temperature-reading',
      'Two temperature readings cannot be added; only a difference can be added to one.',
    );
  }
  if (a.unit.kind === 'temperature difference' && b.unit.kind === 'temperature') return addQuantities(b, a);
  const inner = a.unit.kind === 'temperature' ? differenceUnit(a.unit) : a.unit;
  return ends(a, b, inner, a.unit, (x, y) => [sum(x.low, y.low), sum(x.high, y.high)], sum);
}

/** a − b. Of two readings: the difference in a's degrees. */
export function subtractQuantities(a: Quantity, b: Quantity): Outcome<Quantity> {
  const readings = a.unit.kind === 'temperature' && b.unit.kind === 'temperature';
  const inner = a.unit.kind === 'temperature' && !readings ? differenceUnit(a.unit) : a.unit;
  const result = readings ? differenceUnit(a.unit) : a.unit;
  const both = (x: Ends, y: Ends): [Rational, Rational] => [
    difference(x.low, y.high),
    difference(x.high, y.low),
  ];
  return ends(a, b, inner, result, both, difference);
}

/** a · b. With a plain number or a percentage the other one's unit stays; else the unit of the kind. */
export function multiplyQuantities(a: Quantity, b: Quantity): Outcome<Quantity> {
  const refused = refuse(a, b);
  if (refused !== undefined) return refused;
  if (a.unit.kind === 'number' && b.unit.kind !== 'number') return multiplyQuantities(b, a);
  return scaled(a, b, 1, product);
}

/** a / b. Problem `division-by-zero` when b may be zero. */
export function divideQuantities(a: Quantity, b: Quantity): Outcome<Quantity> {
  const refused = refuse(a, b);
  if (refused !== undefined) return refused;
  if (b.low !== undefined && b.high !== undefined && sign(b.low) * sign(b.high) <= 0) {
    return bad('division-by-zero', 'The quantity below the line may be zero.');
  }
  return scaled(a, b, -1, (x, y) => quotient(x, y) ?? ZERO);
}

/** The coherent unit of a dimension: of the kind that has it, or one made up of base units. */
export function unitOfDimension(dimension: Dimension): Unit {
  const kind = kindOfDimension(dimension);
  if (kind?.name === 'number') return numberUnit;
  const known = units.find((unit) => unit.kind === kind?.name && unit.symbol === kind.base);
  if (known !== undefined) return known;
  const symbol = kind?.base ?? composed(dimension);
  const name = kind?.name ?? 'derived';
  return {
    symbol,
    spellings: [],
    kind: name,
    dimension,
    factor: ONE,
    offset: ZERO,
    name: symbol,
    plural: symbol,
  };
}

interface Ends {
  readonly low: Rational;
  readonly high: Rational;
}

function ends(
  a: Quantity,
  b: Quantity,
  unitOfB: Unit,
  result: Unit,
  both: (x: Ends, y: Ends) => [Rational, Rational],
  one: (x: Rational, y: Rational) => Rational,
): Outcome<Quantity> {
  const other = convert(b, unitOfB);
  if (!other.ok) return other;
  const c = other.value;
  if (a.low === undefined || a.high === undefined || c.low === undefined || c.high === undefined)
    return openEnded();
  const [low, high] = both({ low: a.low, high: a.high }, { low: c.low, high: c.high });
  return good(made(result, low, high, a, c, one));
}

function scaled(
  a: Quantity,
  b: Quantity,
  power: 1 | -1,
  operate: (x: Rational, y: Rational) => Rational,
): Outcome<Quantity> {
  if (a.low === undefined || a.high === undefined || b.low === undefined || b.high === undefined)
    return openEnded();
  const keeps = b.unit.kind === 'number';
  const unit = keeps ? a.unit : unitOfDimension(combine(a.unit.dimension, b.unit.dimension, power));
  // Factors turn both operands into coherent units, whose result is one of the coherent result unit.
  const inA = (x: Rational): Rational => (keeps ? x : product(x, a.unit.factor));
  const inB = (x: Rational): Rational => product(x, b.unit.factor);
  const corners = [
    operate(inA(a.low), inB(b.low)),
    operate(inA(a.low), inB(b.high)),
    operate(inA(a.high), inB(b.low)),
    operate(inA(a.high), inB(b.high)),
  ];
  const low = corners.reduce(least);
  const high = corners.reduce(greatest);
  return good(made(unit, low, high, a, b, (x, y) => operate(inA(x), inB(y))));
}

function made(
  unit: Unit,
  low: Rational,
  high: Rational,
  a: Quantity,
  b: Quantity,
  one: (x: Rational, y: Rational) => Rational,
): Quantity {
  const form =
    a.form === 'value' && b.form === 'value'
      ? 'value'
      : a.form === 'range' || b.form === 'range'
        ? 'range'
        : 'tolerance';
  if (form === 'range' || a.nominal === undefined || b.nominal === undefined)
    return { form: 'range', unit, low, high };
  return { form, unit, low, high, nominal: one(a.nominal, b.nominal) };
}

function refuse(a: Quantity, b: Quantity): Outcome<Quantity> | undefined {
  if (a.unit.kind !== 'temperature' && b.unit.kind !== 'temperature') return undefined;
  return bad(
    'temperature-reading',
    'A temperature reading cannot be multiplied or divided; a difference of two can.',
  );
}

function openEnded(): Outcome<Quantity> {
  return bad('open-ended', 'A quantity with only one end cannot be calculated with.');
}

function composed(dimension: Dimension): string {
  const names = ['m', 'kg', 's', 'A', 'K', 'turn'];
  const powers = names.flatMap((name, i) => {
    const power = dimension[i] ?? 0;
    return power === 0 ? [] : [power === 1 ? name : `${name}^${power}`];
  });
  return powers.join('·');
}
