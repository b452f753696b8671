/** Outcomes of a measurement as the rows of a table, and the table a part is chosen from. */

import { exact, printReader, type Quantity, roundedIn, unitNamed } from '../../../grammar/quantity/index.ts';
import type { Interval, Outcome, Table } from '../../../grammar/syntax/tree.ts';
import { spoken } from '../../lists/combos.ts';
import type { Job } from '../../lists/job.ts';
import { bothUnits, measureOf, measureTyped } from '../../lists/measures.ts';
import { readTyped } from '../../model/fastening-amounts.ts';
import { evaluate } from '../../model/values.ts';
import type { MessageKey, Words } from '../words/words.ts';
import type { Measurement, OutcomeRow } from './types.ts';

export function readingText(
  interval: Interval | undefined,
  word: string | undefined,
  job: Job,
  words: Words,
  shared: SecondEnds = NO_ENDS,
): string {
  if (!interval) return word && word !== 'otherwise' ? spoken(word) : words.say('reading.otherwise');
  const quantity = readTyped(interval.quantity, job.model.values);
  const end = quantity && shared.get(endKey(quantity.unit.symbol, quantity.nominal));
  const measure =
    quantity && end !== undefined && !interval.quantity?.second
      ? measureOf(quantity, job.measures, end)
      : measureTyped(interval.quantity, job.model, job.measures);
  return words.say(`reading.${interval.bound}` as MessageKey, { what: measure ? bothUnits(measure) : '' });
}

/** The ends of ranges in the second unit, by unit and exact number. */
export type SecondEnds = ReadonlyMap<string, string>;

const NO_ENDS: SecondEnds = new Map();

/**
 * A range is rounded inwards, a single limit by itself; where both stand in one table they would seem to leave a gap.
 * So a limit that is also the end of a range is printed as that end is.
 */
export function secondEndsOf(outcomes: readonly Outcome[], job: Job): SecondEnds {
  const ends = new Map<string, string>();
  if (job.measures.secondUnits !== true) return ends;
  for (const { quantity: typed } of outcomes.flatMap(({ intervals }) => intervals)) {
    const range = readTyped(typed, job.model.values);
    const other = range?.unit.partner === undefined ? undefined : unitNamed(range.unit.partner);
    if (!range || !other || typed?.second || range.low === undefined || range.low === range.high) continue;
    const rounded = roundedIn(range, other);
    if (!rounded.ok) continue;
    const { step, unit } = rounded.value;
    for (const side of ['low', 'high'] as const) {
      const number = rounded.value[side];
      if (number === undefined) continue;
      const value: Quantity = {
        form: 'value',
        unit,
        low: number,
        high: number,
        nominal: number,
        ...(step === undefined ? {} : { step }),
      };
      ends.set(endKey(range.unit.symbol, range[side]), printReader(value));
    }
  }
  return ends;
}

function endKey(unit: string, end: Quantity['low']): string {
  return `${end?.n}/${end?.d} ${unit}`;
}

/** What an outcome is for: `below 3 mm or over 5 mm`, or its word. */
export function outcomeText(
  { intervals, join, word }: Outcome,
  job: Job,
  words: Words,
  shared: SecondEnds = NO_ENDS,
): string {
  const [first, ...rest] = intervals.map((interval) => readingText(interval, undefined, job, words, shared));
  return rest.reduce(
    (what, other) => words.say(join === 'and' ? 'reading.and' : 'reading.or', { what, other }),
    first ?? readingText(undefined, word?.text, job, words),
  );
}

/** The ends of the one range of an outcome; of several, only their unit. */
export function outcomeLimits({ intervals }: Outcome, job: Job): Pick<OutcomeRow, 'low' | 'high' | 'unit'> {
  const limits = limitsOf(intervals[0], job);
  if (intervals.length < 2) return limits;
  return limits.unit === undefined ? {} : { unit: limits.unit };
}

export function limitsOf(
  interval: Interval | undefined,
  job: Job,
): Pick<OutcomeRow, 'low' | 'high' | 'unit'> {
  const quantity = interval && readTyped(interval.quantity, job.model.values);
  if (!interval || !quantity) return {};
  const end = (value: typeof quantity.low, included: boolean) =>
    value === undefined ? undefined : { value: exact.toNumber(value), included };
  const lower = interval.bound === 'over' || interval.bound === 'from' || BOTH.has(interval.bound);
  const upper = interval.bound === 'below' || interval.bound === 'up to' || BOTH.has(interval.bound);
  const low = lower ? end(quantity.low, interval.bound !== 'over') : undefined;
  const high = upper ? end(quantity.high, interval.bound !== 'below') : undefined;
  return { ...(low ? { low } : {}), ...(high ? { high } : {}), unit: quantity.unit.symbol };
}

const BOTH: ReadonlySet<string> = new Set(['between', 'exactly']);

export function chosenFrom(
  table: Table,
  by: string,
  job: Job,
  words: Words,
): NonNullable<Measurement['table']> {
  const names = (name: string) => job.model.values.get(name)?.expression;
  return {
    title: table.title?.value ?? spoken(table.name?.text ?? ''),
    by,
    rows: table.rows.map(({ interval, gives }) => ({
      reading: readingText(interval, undefined, job, words),
      gives: gives
        .map((one) => {
          const outcome = evaluate(one, names);
          if (outcome.ok) return bothUnits(measureOf(outcome.value, job.measures));
          return one.kind === 'name'
            ? (job.model.byName.get(one.ref.name.text)?.title ?? one.ref.name.text)
            : '';
        })
        .join(', '),
    })),
  };
}
