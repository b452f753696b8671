/**
 * Whether a second unit typed beside the first (`80 ft-lb (110 N·m)`) is a fair rounding of it.
 *
 * The rule, end by end (low with low, high with high, nominal with nominal):
 *
 * - `agrees`: the exact conversion of the first lies where the second rounds to, or the exact conversion
 *   of the second lies where the first rounds to, by half a unit of the last digit typed. A whole second
 *   number that ends in 0 may also have been rounded to tens, one that ends in 5 to fives; that widening
 *   is at most 5 % of the number.
 * - `coarse`: it agrees only if both numbers were rounded to tens or fives, each by at most 10 %.
 * - `differs`: anything else.
 *
 * So 80 ft-lb agrees with 110 N·m (exactly 108.5), 160 ft-lb with 215 N·m (216.9); 80 ft-lb and 100 N·m
 * is coarse; 12..15 psi differs from 103..138 kPa (exactly 83 to 103). Rounding to tens and fives is
 * common practice, no source; the limits of 5 % and 10 % were set so that published pairs agree.
 */

import { convertNumber, unitsDiffer } from './convert.ts';
import { good, type Outcome } from './problem.ts';
import { centre, type Quantity } from './quantity.ts';
import {
  abs,
  add,
  compare,
  greatest,
  isWhole,
  least,
  multiply,
  type Rational,
  rational,
  subtract,
  ZERO,
} from './rational.ts';

export type SecondVerdict = 'agrees' | 'coarse' | 'differs';

export interface SecondCheck {
  readonly verdict: SecondVerdict;
  /** The first quantity's worst end, exactly, in the second unit: what should have been near `typed`. */
  readonly exact: Rational;
  /** The second quantity's number for that end. */
  readonly typed: Rational;
}

/** Problems: `unit-wrong-kind` (270 ft-lb and 365 N), `pressure-reference`. */
export function checkSecond(first: Quantity, second: Quantity): Outcome<SecondCheck> {
  const differ = unitsDiffer(first.unit, second.unit);
  if (differ !== undefined) return { ok: false, problem: differ };
  let worst: SecondCheck | undefined;
  for (const [a, b] of pairsOfEnds(first, second)) {
    const check = {
      verdict: verdict(a, first, b, second),
      exact: convertNumber(a, first.unit, second.unit),
      typed: b,
    };
    if (worst === undefined || rank[check.verdict] > rank[worst.verdict]) worst = check;
  }
  if (worst !== undefined && sameSide(first, second)) return good(worst);
  // A range beside a value, "at least" beside "at most": they do not say the same whatever the numbers.
  return good({
    verdict: 'differs',
    exact: convertNumber(centre(first), first.unit, second.unit),
    typed: centre(second),
  });
}

const FIVE_PERCENT = rational(1, 20);
const TEN_PERCENT = rational(1, 10);
const rank = { agrees: 0, coarse: 1, differs: 2 } as const;

/** A tolerance beside a plain second value is the usual shorthand: then only the nominal values are compared. */
function pairsOfEnds(a: Quantity, b: Quantity): readonly (readonly [Rational, Rational])[] {
  const pairs: (readonly [Rational, Rational])[] = [];
  const enter = (x: Rational | undefined, y: Rational | undefined): void => {
    if (x !== undefined && y !== undefined) pairs.push([x, y]);
  };
  enter(a.nominal, b.nominal);
  if (a.form !== 'value' && b.form !== 'value') {
    enter(a.low, b.low);
    enter(a.high, b.high);
  }
  return pairs;
}

function sameSide(a: Quantity, b: Quantity): boolean {
  return (a.low === undefined) === (b.low === undefined) && (a.high === undefined) === (b.high === undefined);
}

function verdict(a: Rational, first: Quantity, b: Rational, second: Quantity): SecondVerdict {
  const exact = convertNumber(a, first.unit, second.unit);
  const back = convertNumber(b, second.unit, first.unit);
  if (near(exact, b, half(b, second, FIVE_PERCENT)) || near(back, a, digit(first))) return 'agrees';
  const mostA = half(a, first, TEN_PERCENT);
  const mostB = half(b, second, TEN_PERCENT);
  const low = convertNumber(subtract(a, mostA), first.unit, second.unit);
  const high = convertNumber(add(a, mostA), first.unit, second.unit);
  const meet = compare(low, add(b, mostB)) <= 0 && compare(subtract(b, mostB), high) <= 0;
  return meet ? 'coarse' : 'differs';
}

/** How far from `value` the number that was rounded to it may have been. */
function half(value: Rational, q: Quantity, share: Rational): Rational {
  const round = isWhole(value) && q.step !== undefined && isWhole(q.step) ? roundness(value) : ZERO;
  const limit = multiply(abs(value), share);
  return greatest(digit(q), least(round, limit));
}

function digit(q: Quantity): Rational {
  return q.step === undefined ? ZERO : multiply(q.step, rational(1, 2));
}

/** 5 for whole tens, 2.5 for whole fives, else 0. */
function roundness(value: Rational): Rational {
  const fives = multiply(value, rational(1, 5));
  if (!isWhole(fives)) return ZERO;
  return isWhole(multiply(value, rational(1, 10))) ? rational(5) : rational(5, 2);
}

function near(a: Rational, b: Rational, slack: Rational): boolean {
  return compare(abs(subtract(a, b)), slack) <= 0;
}
