/**
 * Comparing quantities: always exact, always across units of one kind.
 *
 * Not here: when a rounded number in another unit is a fair one (second.ts).
 */

import { convert, convertNumber, convertSize, unitsDiffer } from './convert.ts';
import { good, type Outcome } from './problem.ts';
import { centre, type Quantity } from './quantity.ts';
import { abs, add, compare, multiply, type Rational, rational, subtract } from './rational.ts';
import { checkSecond } from './second.ts';

/**
 * How a lies to b on the scale. `within`: all of a is in b; `around`: all of b is in a; `equal`: the
 * same interval; `overlapping`: they share some values and each has others.
 */
export type Relation = 'below' | 'above' | 'equal' | 'within' | 'around' | 'overlapping';

/** Problems: `unit-wrong-kind`, `pressure-reference`. */
export function relate(a: Quantity, b: Quantity): Outcome<Relation> {
  const other = convert(b, a.unit);
  if (!other.ok) return other;
  const c = other.value;
  if (isBelow(a, c)) return good('below');
  if (isBelow(c, a)) return good('above');
  const aInC = compareLow(c, a) <= 0 && compareHigh(a, c) <= 0;
  const cInA = compareLow(a, c) <= 0 && compareHigh(c, a) <= 0;
  if (aInC && cInA) return good('equal');
  return good(aInC ? 'within' : cInA ? 'around' : 'overlapping');
}

/** -1, 0 or 1 as the centre of a (see `centre`) is below, equal to or above that of b. */
export function compareCentres(a: Quantity, b: Quantity): Outcome<-1 | 0 | 1> {
  const differ = unitsDiffer(a.unit, b.unit);
  if (differ !== undefined) return { ok: false, problem: differ };
  return good(compare(centre(a), convertNumber(centre(b), b.unit, a.unit)));
}

/** Whether there is a value that both allow. */
export function overlap(a: Quantity, b: Quantity): Outcome<boolean> {
  const relation = relate(a, b);
  return relation.ok ? good(relation.value !== 'below' && relation.value !== 'above') : relation;
}

/** Whether every value that `inner` allows is allowed by `outer`. */
export function contains(outer: Quantity, inner: Quantity): Outcome<boolean> {
  const relation = relate(inner, outer);
  return relation.ok ? good(relation.value === 'equal' || relation.value === 'within') : relation;
}

/**
 * Whether a typed quantity says the same as a declared one, as an author means it.
 *
 * In one unit the typed interval must lie in the declared one, exactly. In another unit each typed
 * end may be off by half a unit of its last digit, because that is all its writer could say; of two
 * plain values the typed one must be a fair rounding of the declared one (the rule of second.ts).
 */
export function liesWithin(typed: Quantity, declared: Quantity): Outcome<boolean> {
  const inside = contains(declared, typed);
  if (!inside.ok || inside.value || typed.unit === declared.unit) return inside;
  if (declared.form === 'value' && typed.form === 'value') {
    const check = checkSecond(declared, typed);
    return check.ok ? good(check.value.verdict === 'agrees') : check;
  }
  const slack =
    typed.step === undefined ? rational(0) : half(convertSize(typed.step, typed.unit, declared.unit));
  const converted = convert(typed, declared.unit);
  if (!converted.ok) return converted;
  const { low, high } = converted.value;
  if (declared.low !== undefined && (low === undefined || compare(add(low, slack), declared.low) < 0)) {
    return good(false);
  }
  return good(
    declared.high === undefined || (high !== undefined && compare(subtract(high, slack), declared.high) <= 0),
  );
}

/** |a − b| as a number of a's unit, of the centres; for messages ("3 N·m too high"). */
export function gap(a: Quantity, b: Quantity): Outcome<Rational> {
  const differ = unitsDiffer(a.unit, b.unit);
  if (differ !== undefined) return { ok: false, problem: differ };
  return good(abs(subtract(centre(a), convertNumber(centre(b), b.unit, a.unit))));
}

/** Every value of a is below every value of b (same unit). */
function isBelow(a: Quantity, b: Quantity): boolean {
  if (a.high === undefined || b.low === undefined) return false;
  const order = compare(a.high, b.low);
  return order < 0 || (order === 0 && (a.form === 'below' || b.form === 'over'));
}

/** Order of the lower ends: an end that is taken in comes before the same end left out. */
function compareLow(a: Quantity, b: Quantity): number {
  if (a.low === undefined || b.low === undefined) {
    return a.low === b.low ? 0 : a.low === undefined ? -1 : 1;
  }
  return compare(a.low, b.low) || Number(a.form === 'over') - Number(b.form === 'over');
}

/** Order of the upper ends: the same end left out comes before one that is taken in. */
function compareHigh(a: Quantity, b: Quantity): number {
  if (a.high === undefined || b.high === undefined) {
    return a.high === b.high ? 0 : a.high === undefined ? 1 : -1;
  }
  return compare(a.high, b.high) || Number(b.form === 'below') - Number(a.form === 'below');
}

function half(a: Rational): Rational {
  return multiply(a, rational(1, 2));
}
