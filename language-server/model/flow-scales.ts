/**
 * Facts about scales: the outcomes of a measurement and the rows of a table that leave a hole (`range-gap`), lie
 * over one another (`range-overlap`) or can never be (`range-impossible`). How scales are read is in flow-ranges.ts.
 */
import { unitsDiffer } from '../../grammar/quantity/index.ts';
import type { Action, Interval, Span, Table } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { holeWords, type Stretch, scaleFaults, stretchOf } from './flow-ranges.ts';
import { headOf } from './flow-walk.ts';
import { list } from './model.ts';
import type { Names } from './values.ts';

/** What a scale stands in, with its text for the sentences. */
export interface Where {
  path: string;
  text: string;
}

export function outcomeFaults(action: Action, names: Names, where: Where): Fact[] {
  const { outcomes } = action;
  const intervals = outcomes.flatMap(({ interval }) => interval ?? []);
  if (intervals.length === 0) return [];
  // A word takes what no range takes.
  const closed = outcomes.some(({ interval }) => interval === undefined);
  return faultsOf(intervals, { of: 'outcomes', at: () => headOf(action), whole: true, closed }, names, where);
}

export function tableFaults(table: Table, names: Names, where: Where): Fact[] {
  const intervals = table.rows.map(({ interval }) => interval);
  // A list of single values is no scale: nothing is said of what lies between them.
  const closed = intervals.some(({ bound }) => bound === 'exactly');
  return faultsOf(
    intervals,
    { of: 'rows', at: () => table.name ?? table, whole: false, closed },
    names,
    where,
  );
}

function faultsOf(
  intervals: readonly Interval[],
  { of, at, whole, closed }: { of: 'outcomes' | 'rows'; at: () => Span; whole: boolean; closed: boolean },
  names: Names,
  { path, text }: Where,
): Fact[] {
  const stretches: Stretch[] = [];
  for (const interval of intervals) {
    const stretch = stretchOf(interval, names);
    // One that cannot be read may be just what is missing: nothing is said of the whole.
    if (!stretch || (stretches[0] && unitsDiffer(stretches[0].unit, stretch.unit))) return [];
    stretches.push(stretch);
  }
  if (stretches.length === 0) return [];
  const place = ({ start, end }: Span) => ({ file: path, start, end });
  const typed = ({ start, end }: Span) => text.slice(start, end);
  const { holes, overlaps, impossible } = scaleFaults(stretches, { whole, closed });
  const facts: Fact[] = impossible.map((stretch) => ({
    check: 'range-impossible',
    at: place(stretch.at),
    words: { of: 'interval', typed: typed(stretch.at) },
  }));
  for (const { first, second } of overlaps) {
    facts.push({
      check: 'range-overlap',
      at: place(second.at),
      words: { of, first: typed(first.at), second: typed(second.at) },
      story: [{ at: place(first.at), what: 'declared' }],
    });
  }
  if (holes.length > 0) {
    facts.push({
      check: 'range-gap',
      at: place(at()),
      words: { of, holes: list(holes.map(holeWords)) },
    });
  }
  return facts;
}
