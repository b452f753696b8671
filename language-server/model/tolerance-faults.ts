/**
 * Readings of one thing with tolerances that do not go together: fact `tolerances-differ`. What one gauge shows to
 * one part in forty it does not show to one part in five hundred a few steps later.
 */
import { exact, type Quantity } from '../../grammar/quantity/index.ts';
import type { Action, Span } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { readTyped, said } from './fastening-amounts.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

/** A tolerance this many times finer, as a share of its value, is out of proportion. Judgement, no source. */
const OUT_OF_PROPORTION = 10;

/** Verbs that bring something to a reading of a gauge. */
const TO_A_READING: ReadonlySet<string> = new Set(['evacuate', 'pressurise', 'inflate', 'adjust']);

interface Reading {
  readonly thing: Thing;
  readonly quantity: Quantity;
  readonly at: Span;
  /** The width of the tolerance over the value. */
  readonly share: number;
}

export function toleranceFaults(model: Model, survey: Survey, file: string): Fact[] {
  const readings = survey.each('readings', [model], (one) =>
    one.kind === 'action' ? readingsIn(model, one) : [],
  );
  return readings.flatMap((fine) => {
    const { thing, quantity, at, share } = fine;
    const wide = readings.find(
      (other) =>
        other.thing === thing &&
        other.quantity.unit === quantity.unit &&
        other.share > share * OUT_OF_PROPORTION,
    );
    if (!wide) return [];
    return {
      check: 'tolerances-differ',
      at: { file, start: at.start, end: at.end },
      subject: { thing },
      words: { fine: said(quantity), wide: said(wide.quantity) },
      story: [{ at: { file, start: wide.at.start, end: wide.at.end }, what: 'declared', thing }],
    };
  });
}

function readingsIn(model: Model, action: Action): Reading[] {
  if (!TO_A_READING.has(action.verb)) return [];
  const thing = model.byName.get(action.objects[0]?.name.text ?? '');
  if (!thing) return [];
  return action.tails.flatMap((tail) => {
    if (tail.tail !== 'to' || !tail.quantity) return [];
    const quantity = readTyped(tail.quantity, model.values);
    if (!quantity?.low || !quantity.high || !quantity.nominal) return [];
    const value = exact.toNumber(quantity.nominal);
    const width = exact.toNumber(exact.subtract(quantity.high, quantity.low));
    return width > 0 && value > 0 ? { thing, quantity, at: tail.quantity, share: width / value } : [];
  });
}
