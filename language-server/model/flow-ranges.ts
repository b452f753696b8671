/**
 * The outcomes of a measurement and the rows of a table as stretches of one scale, and where these leave a
 * hole, lie over one another or can never be. Exact, across units of one kind.
 *
 * What counts as a hole and what as an overlap, as a technician reads it (common practice, no source):
 *
 * - `up to`, `from` and both ends of `a..b` take their end in; `below` and `over` leave it out.
 * - Neighbours that share an end (`0.1..0.2`, `0.2..0.3`) are everyday writing: no overlap.
 * - `0.10..0.14`, `0.15..0.19` leave no hole: a reading as fine as the numbers are written cannot fall between
 *   them. `up to 0.14`, `over 0.15` leave one, for 0.15 itself.
 * - A scale begins at zero, unless a negative value is written or it is a temperature; it has no upper end but for
 *   percentages that are given up to 100 %.
 * - A table may end where what it is for ends: only what lies between its rows counts as a hole.
 */
import {
  checkSecond,
  convert,
  convertNumber,
  convertSize,
  exact,
  exactValue,
  type KindName,
  printReader,
  type Quantity,
  type Rational,
  type Unit,
} from '../../grammar/quantity/index.ts';
import type { Interval, Table, TableRow } from '../../grammar/syntax/tree.ts';
import { evaluate, type Names, NO_NAMES } from './values.ts';

export interface End {
  /** In the unit of the stretch. */
  value: Rational;
  included: boolean;
  /** One unit of the last digit typed, in the unit of the stretch; absent where it was computed. */
  step?: Rational;
  /** In its own unit, to be said and to be compared across units. */
  typed: Quantity;
}

export interface Stretch {
  unit: Unit;
  /** Absent where the stretch has no lower end. */
  low?: End;
  high?: End;
  at: Interval;
}

export interface Hole {
  /** The end that the hole begins behind; absent where it begins where the scale does. */
  after?: End;
  before?: End;
}

export interface ScaleFaults {
  holes: Hole[];
  overlaps: { first: Stretch; second: Stretch }[];
  impossible: Stretch[];
}

/** The stretch that an interval is; undefined where it cannot be read or a value is not known. */
export function stretchOf(interval: Interval, names: Names): Stretch | undefined {
  if (!interval.quantity) return undefined;
  const { start, end } = interval;
  const outcome = evaluate({ kind: 'quantity', quantity: interval.quantity, start, end }, names);
  if (!outcome.ok) return undefined;
  const q = outcome.value;
  const { low, high, unit } = q;
  const single = q.form === 'value' && low !== undefined && high !== undefined;
  const lower = (included: boolean) => (low ? { low: endOf(q, low, included) } : {});
  const upper = (included: boolean) => (high ? { high: endOf(q, high, included) } : {});
  switch (interval.bound) {
    case 'below':
    case 'up to':
      return single ? { unit, at: interval, ...upper(interval.bound === 'up to') } : undefined;
    case 'from':
    case 'over':
      return single ? { unit, at: interval, ...lower(interval.bound === 'from') } : undefined;
    case 'between':
    case 'exactly':
      return { unit, at: interval, ...lower(q.form !== 'over'), ...upper(q.form !== 'below') };
  }
}

function endOf(q: Quantity, value: Rational, included: boolean): End {
  const { step } = q;
  const fine = step ? { step } : {};
  return { value, included, typed: { ...exactValue(value, q.unit), ...fine }, ...fine };
}

/** Whether a single value lies in the stretch. False for values of another kind. */
export function holds(stretch: Stretch, value: Quantity): boolean {
  const same = convert(value, stretch.unit);
  if (!same.ok || same.value.low === undefined || same.value.high === undefined) return false;
  const { low, high } = same.value;
  const above = stretch.low && exact.compare(low, stretch.low.value);
  const below = stretch.high && exact.compare(high, stretch.high.value);
  return (
    (above === undefined || above > 0 || (above === 0 && stretch.low!.included)) &&
    (below === undefined || below < 0 || (below === 0 && stretch.high!.included))
  );
}

/**
 * The row that a value belongs to: the first one whose interval holds it. Undefined where the value lies outside
 * of the table, or where it is no single value.
 */
export function rowFor(table: Table, value: Quantity, names: Names = NO_NAMES): TableRow | undefined {
  return table.rows.find((row) => {
    const stretch = stretchOf(row.interval, names);
    return stretch !== undefined && holds(stretch, value);
  });
}

/** `from 0.04 mm to 0.05 mm`, with the ends that lie in the hole told from those that do not. */
export function holeWords({ after, before }: Hole): string {
  if (!after) return before ? `${before.included ? 'below' : 'up to'} ${said(before)}` : 'any value';
  if (!before) return `${after.included ? 'over' : 'of at least'} ${said(after)}`;
  if (sameEnd(after, before)) return `of exactly ${said(after)}`;
  return `between ${said(after)} and ${said(before)}`;
}

/** An end as a reader gets it: `0.20 mm`. */
function said(end: End): string {
  return printReader(end.typed);
}

/**
 * What is wrong with the stretches of one scale, which are of one kind. `whole` asks that they cover the scale to
 * its ends; `closed` says that holes do not count, because something else takes the rest.
 */
export function scaleFaults(
  stretches: readonly Stretch[],
  { whole, closed }: { whole: boolean; closed: boolean },
): ScaleFaults {
  const impossible = stretches.filter(cannotBe);
  const sorted = stretches
    .filter((stretch) => !impossible.includes(stretch))
    .map((stretch) => inUnit(stretch, stretches[0]!.unit))
    .sort((a, b) => byLow(a.low, b.low) || byHigh(a.high, b.high));
  const faults: ScaleFaults = { holes: [], overlaps: [], impossible };
  const [lowest] = sorted;
  if (!lowest) return faults;
  if (whole && lowest.low && beginsAbove(lowest.low, sorted)) faults.holes.push({ before: lowest.low });
  let top = lowest;
  for (const next of sorted.slice(1)) {
    const meeting = meet(top.high, next.low);
    if (meeting === 'over' || (meeting === 'shared' && alike(top, next)))
      faults.overlaps.push(inOrder(top, next));
    else if (meeting === 'hole') faults.holes.push({ after: top.high!, before: next.low! });
    if (byHigh(next.high, top.high) >= 0) top = next;
  }
  if (whole && top.high && !isFull(top.high)) faults.holes.push({ after: top.high });
  // An end that no reading can have is most likely a slip of what should take the hole in.
  if (closed || impossible.length > 0) faults.holes = [];
  return faults;
}

/** No value lies in both. */
export function areApart(first: Stretch, second: Stretch): boolean {
  const other = inUnit(second, first.unit);
  const before = (high: End | undefined, low: End | undefined) => {
    const meeting = meet(high, low);
    return meeting === 'hole' || meeting === 'joined';
  };
  return before(first.high, other.low) || before(other.high, first.low);
}

/** How the end of one stretch lies to the beginning of the next one. */
function meet(high: End | undefined, low: End | undefined): 'over' | 'shared' | 'joined' | 'hole' {
  if (!high || !low) return 'over';
  const order = sameEnd(high, low) ? 0 : exact.compare(high.value, low.value);
  if (order > 0) return 'over';
  if (order === 0) {
    if (high.included && low.included) return 'shared';
    return high.included || low.included ? 'joined' : 'hole';
  }
  const finest = high.step && low.step ? exact.least(high.step, low.step) : undefined;
  const between = exact.subtract(low.value, high.value);
  const unreadable =
    high.included && low.included && finest !== undefined && exact.compare(between, finest) <= 0;
  return unreadable ? 'joined' : 'hole';
}

/** The same place on the scale: equal, or one the rounded conversion of the other. */
function sameEnd(a: End, b: End): boolean {
  if (a.typed.unit === b.typed.unit) return exact.equal(a.value, b.value);
  const check = checkSecond(a.typed, b.typed);
  return check.ok && check.value.verdict === 'agrees';
}

/** Two that are the same single value, or the same stretch. */
function alike(a: Stretch, b: Stretch): boolean {
  return byLow(a.low, b.low) === 0 && byHigh(a.high, b.high) === 0;
}

function inOrder(a: Stretch, b: Stretch): { first: Stretch; second: Stretch } {
  return a.at.start <= b.at.start ? { first: a, second: b } : { first: b, second: a };
}

function inUnit(stretch: Stretch, unit: Unit): Stretch {
  const from = stretch.unit;
  if (from === unit) return stretch;
  const moved = (end: End): End => ({
    ...end,
    value: convertNumber(end.value, from, unit),
    ...(end.step ? { step: convertSize(end.step, from, unit) } : {}),
  });
  return {
    unit,
    at: stretch.at,
    ...(stretch.low ? { low: moved(stretch.low) } : {}),
    ...(stretch.high ? { high: moved(stretch.high) } : {}),
  };
}

function byLow(a: End | undefined, b: End | undefined): number {
  if (!a || !b) return a === b ? 0 : a ? 1 : -1;
  return exact.compare(a.value, b.value) || Number(b.included) - Number(a.included);
}

function byHigh(a: End | undefined, b: End | undefined): number {
  if (!a || !b) return a === b ? 0 : a ? -1 : 1;
  return exact.compare(a.value, b.value) || Number(a.included) - Number(b.included);
}

/** There is something on the scale below its lowest stretch. */
function beginsAbove(lowest: End, stretches: readonly Stretch[]): boolean {
  const negative = stretches.some(({ low, high }) =>
    [low, high].some((end) => end !== undefined && exact.sign(end.value) < 0),
  );
  if (negative || lowest.typed.unit.kind === 'temperature') return true;
  const sign = exact.sign(lowest.value);
  return sign > 0 || (sign === 0 && !lowest.included);
}

/** 100 %. */
function isFull({ value, included, typed }: End): boolean {
  return typed.unit.symbol === '%' && included && exact.equal(value, HUNDRED);
}

const HUNDRED = exact.rational(100);

/** What of it is never less than nothing. */
const NEVER_NEGATIVE: ReadonlySet<KindName> = new Set([
  'mass',
  'volume',
  'area',
  'time',
  'resistance',
  'capacitance',
]);

/** No reading lies in it: below nothing, or below the absolute zero. */
function cannotBe({ high, unit }: Stretch): boolean {
  if (!high) return false;
  if (unit.kind !== 'temperature' && !NEVER_NEGATIVE.has(unit.kind)) return false;
  // The offset of a temperature is what the absolute scale shows at its zero.
  const absolute = exact.add(exact.multiply(high.value, unit.factor), unit.offset);
  const sign = exact.sign(absolute);
  return sign < 0 || (sign === 0 && !high.included);
}
