/**
 * The rows of a chart: bars that begin and end together share one; a long job is gathered until it can be read,
 * task by task, or, where no tasks are known, by stretches of steps.
 */
import type { Bar, Chart } from './bars.ts';

/** A stretch of steps with a title; they follow each other and do not overlap. */
export interface ChartTask {
  readonly number: string;
  readonly title: string;
  /** Step numbers, both included. */
  readonly from: number;
  readonly to: number;
}

export interface ChartRow {
  /** For readers: `head bolts`, or `7 things: belt guard, drive belt …`. */
  readonly text: string;
  readonly bars: readonly Bar[];
  /** In words, where it is only so in some cases. */
  readonly case?: string;
  readonly from: number;
  readonly to: number | undefined;
  /** Bars of different length, drawn as the stretch around all. */
  readonly gathered: boolean;
}

/** More rows than this are gathered. */
export const MOST_ROWS = 32;

export function rowsOf(chart: Chart, tasks: readonly ChartTask[], most = MOST_ROWS): ChartRow[] {
  const last = chart.steps.length;
  const same = gather(chart.bars, ({ from, to, end, state, thrownAway, case: when }) =>
    JSON.stringify([from, to, end, state, thrownAway, when]),
  );
  if (same.length <= most) return same;
  // Stretches are made longer until there are few enough.
  const firstPieces = tasks.length > 1 ? undefined : Math.min(last, most);
  for (let pieces = firstPieces; ; pieces = Math.floor((pieces ?? most) / 2)) {
    const stretch = (step: number) =>
      pieces === undefined
        ? tasks.findIndex(({ from, to }) => from <= step && step <= to)
        : Math.floor(((step - 1) * pieces) / last);
    const rows = gather(chart.bars, ({ from, to, end, state }) =>
      JSON.stringify([
        stretch(from),
        to === undefined ? 'end' : stretch(to),
        end === 'never',
        state === 'apart',
      ]),
    );
    if (rows.length <= most || (pieces !== undefined && pieces <= 1)) return rows;
  }
}

function gather(bars: readonly Bar[], keyOf: (bar: Bar) => string): ChartRow[] {
  const groups = new Map<string, Bar[]>();
  for (const bar of bars) {
    const key = keyOf(bar);
    const known = groups.get(key);
    if (known) known.push(bar);
    else groups.set(key, [bar]);
  }
  const rows = [...groups.values()].map((members): ChartRow => {
    const [first] = members as [Bar];
    const names = [...new Set(members.map(nameOf))].join(', ');
    const ends = members.map(({ to }) => to ?? Number.POSITIVE_INFINITY);
    const latest = Math.max(...ends);
    return {
      text: `${members.length > 2 ? `${members.length} things: ` : ''}${names}`,
      ...(first.case && members.every((one) => one.case === first.case) ? { case: first.case } : {}),
      bars: members,
      from: Math.min(...members.map(({ from }) => from)),
      to: Number.isFinite(latest) ? latest : undefined,
      gathered: members.some(({ from, to }) => from !== first.from || to !== first.to),
    };
  });
  const endOf = ({ to }: ChartRow) => to ?? Number.POSITIVE_INFINITY;
  return rows.sort((a, b) => a.from - b.from || endOf(b) - endOf(a));
}

/** `head bolts #1, #3` */
export function nameOf({ title, positions }: Bar): string {
  return positions ? `${title} ${positions.map((one) => `#${one}`).join(', ')}` : title;
}
