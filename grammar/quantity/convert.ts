/**
 * Exact conversion between units of one kind, and the questions whether two units go together.
 *
 * Not here: rounding for a reader (print.ts).
 */

import { sameDimension } from './kinds.ts';
import { bad, good, type Outcome, type QuantityProblem } from './problem.ts';
import { article, type Quantity } from './quantity.ts';
import { add, inverse, multiply, type Rational, subtract } from './rational.ts';
import { type Unit, units } from './units.ts';

/** A number of `from` as a number of `to`. Both must be of one kind (see `unitsDiffer`). */
export function convertNumber(value: Rational, from: Unit, to: Unit): Rational {
  if (from === to) return value;
  const base = add(multiply(value, from.factor), from.offset);
  return multiply(subtract(base, to.offset), inverse(to.factor));
}

/** A size (a tolerance, a step) of `from` as a size of `to`: the zero of a temperature scale plays no part. */
export function convertSize(size: Rational, from: Unit, to: Unit): Rational {
  return from === to ? size : multiply(size, multiply(from.factor, inverse(to.factor)));
}

/**
 * Exactly the same quantity in another unit. Problems: `unit-wrong-kind`, `pressure-reference`.
 * How a number was written (fraction, mixed units) is lost; how finely it was typed is converted.
 */
export function convert(q: Quantity, to: Unit): Outcome<Quantity> {
  const differ = unitsDiffer(q.unit, to);
  if (differ !== undefined) return { ok: false, problem: differ };
  if (q.unit === to) return good(q);
  const { low, high, nominal, step, percent } = q;
  return good({
    form: q.form,
    unit: to,
    ...(low === undefined ? {} : { low: convertNumber(low, q.unit, to) }),
    ...(high === undefined ? {} : { high: convertNumber(high, q.unit, to) }),
    ...(nominal === undefined ? {} : { nominal: convertNumber(nominal, q.unit, to) }),
    ...(step === undefined ? {} : { step: convertSize(step, q.unit, to) }),
    ...(percent === undefined ? {} : { percent }),
  });
}

/** Why quantities in these units cannot be compared or converted, or undefined when they can. */
export function unitsDiffer(a: Unit, b: Unit): QuantityProblem | undefined {
  if (a === b) return undefined;
  if (a.kind !== b.kind || !sameDimension(a.dimension, b.dimension)) {
    return problemOf(
      bad(
        'unit-wrong-kind',
        `${named(a)} is ${article(a.kind)} and ${named(b)} is ${article(b.kind)}; they cannot be compared.`,
      ),
    );
  }
  if (a.reference !== undefined && b.reference !== undefined && a.reference !== b.reference) {
    return problemOf(
      bad(
        'pressure-reference',
        `${named(a)} is ${article(`${a.reference} pressure`)} and ${named(b)} ${article(`${b.reference} pressure`)}; without the pressure of the air they cannot be compared.`,
      ),
    );
  }
  return undefined;
}

/** The unit for differences of readings in this unit (`°C` → `Δ°C`); any other unit is its own. */
export function differenceUnit(unit: Unit): Unit {
  if (unit.kind !== 'temperature') return unit;
  return units.find((u) => u.symbol === `Δ${unit.symbol}`) ?? unit;
}

function named(unit: Unit): string {
  return unit.symbol === '' ? 'A number without a unit' : unit.symbol;
}

function problemOf(outcome: Outcome<never>): QuantityProblem | undefined {
  return outcome.ok ? undefined : outcome.problem;
}
