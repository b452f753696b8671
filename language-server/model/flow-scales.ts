/**
 * Facts about scales: the outcomes of a measurement and the rows of a table that leave a hole (`range-gap`), lie
 * over one another (`range-overlap`) or can never be (`range-impossible`). How scales are read is in flow-ranges.ts.
 */
import { unitsDiffer } from '../../grammar/quantity/index.ts';
import type { Action, Interval, Outcome, Span, Table, Written } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { areApart, holeWords, type Stretch, scaleFaults, stretchOf } from './flow-ranges.ts';
import { headOf } from './flow-walk.ts';
import { list } from './model.ts';
import type { Names } from './values.ts';

/** What a scale stands in, with its text for the sentences. */
export interface Where {
  path: string;
  written: Written;
}

export function outcomeFaults(action: Action, names: Names, where: Where): Fact[] {
  const { outcomes } = action;
  if (outcomes.every(({ intervals }) => intervals.length === 0)) return [];
  const never = outcomes.filter((outcome) => isNever(outcome, names));
  // What the other outcomes leave out is what these were meant to take in.
  if (never.length > 0)
    return never.map(({ intervals }) => {
      const span = { start: intervals[0]!.start, end: intervals[intervals.length - 1]!.end };
      return {
        check: 'range-impossible',
        at: { file: where.path, ...span },
        words: { of: 'and', typed: where.written.slice(span.start, span.end) },
      };
    });
  // Of ranges that hold together each is wider than what they leave: nothing is said of how these lie.
  if (outcomes.some(({ join }) => join === 'and')) return [];
  const intervals = outcomes.flatMap((outcome) => outcome.intervals);
  // A word takes what no range takes.
  const closed = outcomes.some((outcome) => outcome.intervals.length === 0);
  return faultsOf(intervals, { of: 'outcomes', at: () => headOf(action), whole: true, closed }, names, where);
}

/** `below 3 mm and over 5 mm`: no reading is both. */
function isNever({ intervals, join }: Outcome, names: Names): boolean {
  if (join !== 'and') return false;
  const stretches = intervals.flatMap((interval) => stretchOf(interval, names) ?? []);
  return stretches.some((first, index) =>
    stretches
      .slice(index + 1)
      .some((second) => !unitsDiffer(first.unit, second.unit) && areApart(first, second)),
  );
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
  { path, written }: Where,
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
  const typed = ({ start, end }: Span) => written.slice(start, end);
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
