/**
 * The strip-and-rebuild chart: a bar for each thing from the step where it comes off to the step where it goes
 * back, in the order of coming off, so that what is stripped last and goes back first lies innermost. Below it how
 * much is on the bench after each step.
 */
import { type Bar, type Chart, onTheBench } from './bars.ts';
import { type ChartRow, type ChartTask, MOST_ROWS, rowsOf } from './chart-rows.ts';
import { barOf, cross, END, gatheredOf, legendOf, SAMPLE, type Sign } from './chart-signs.ts';
import { alternativeOf, descriptionOf, sentenceOf } from './chart-words.ts';
import {
  type Drawing,
  element,
  escapeText,
  fitted,
  label,
  SIZE,
  SMALL,
  svgOf,
  textWidth,
  wrapped,
} from './svg.ts';

export interface ChartOptions {
  /** Below everything, where the drawing stands alone. */
  readonly foot?: string;
  /** Put before every id; must be unique on the page. */
  readonly prefix: string;
  /** For the title: `Renew the valve plate`. */
  readonly name: string;
  /** How wide, px; 680 when absent. Readable from 360 on. */
  readonly width?: number;
  readonly tasks?: readonly ChartTask[];
  /** Id of a step on the page, for panels that go there. */
  readonly idOf?: (step: number) => string | undefined;
  readonly mostRows?: number;
}

const LEFT = 8;
const ROW = 25;
const LINE = 15;
const BENCH = 44;

export function chart(data: Chart, options: ChartOptions): Drawing {
  const { prefix, name, width = 680, tasks = [], idOf = () => undefined, mostRows = MOST_ROWS } = options;
  const rows = rowsOf(data, tasks, mostRows);
  const steps = Math.max(data.steps.length, 1);
  const column = (width - 2 * LEFT) / steps;
  /** The middle of a step; 0 is the left edge, past the last one the right edge. */
  const xOf = (step: number) =>
    step <= 0 ? LEFT : step > steps ? width - LEFT : LEFT + (step - 0.5) * column;
  const head = (tasks.length > 0 ? 20 : 0) + 22;
  const top = head + 4;
  const notes = notesOf(rows);
  const placed = stacked(rows, notes, top, width);
  const bottom = (placed.at(-1)?.end ?? top) + 4;
  const legend = flowed(legendOf(rows), width);
  const under = bottom + BENCH + 24;
  const noteLines = [...notes].flatMap(([words, letter]) =>
    wrapped(`${letter}: if ${words}`, width - 2 * LEFT, SMALL),
  );
  const noteTop = under + ((legend.at(-1)?.line ?? -1) + 1) * 20 + 4;
  const height = noteTop + noteLines.length * 16 + 2;
  const title = `What comes off and goes back: ${name}`;
  const alternative = alternativeOf(data, title);
  const svg = svgOf(
    { width, height, title, description: descriptionOf(data), prefix, kind: 'chart', foot: options.foot },
    ...bandsOf(tasks, bottom + BENCH, column, steps),
    ...axisOf(data, column, xOf, head, bottom),
    ...placed.map((row, index) => rowOf(row, { xOf, width, steps, idOf, prefix, index })),
    ...benchOf(data, bottom, column, xOf, width),
    ...legend.map(({ sign, words, x, line }) => {
      const y = under + line * 20;
      return sign(x, y) + label(words, x + SAMPLE + 6, y + 4, { 'font-size': SMALL });
    }),
    ...noteLines.map((line, index) => label(line, LEFT, noteTop + 8 + index * 16, { 'font-size': SMALL })),
  );
  return { svg, width, height, title, alternative };
}

/** Tasks as stretches of faint ground, with as much of their titles as fits. */
function bandsOf(tasks: readonly ChartTask[], bottom: number, column: number, steps: number): string[] {
  return tasks.map(({ number, title, from, to }, index) => {
    const x = LEFT + (from - 1) * column;
    const wide = (Math.min(to, steps) - from + 1) * column;
    const whole = `${number} ${title}`;
    const text = wide >= 60 ? fitted(whole, wide - 6, SMALL) : textWidth(number, SMALL) <= wide ? number : '';
    return element(
      'g',
      { 'data-task': number },
      element('title', {}, escapeText(whole)),
      element('rect', {
        x,
        y: 0,
        width: wide,
        height: bottom,
        'fill-opacity': index % 2 === 0 ? 0.07 : 0,
      }),
      ...(text === '' ? [] : [label(text, x + 3, 14, { 'font-size': SMALL, stroke: 'none' })]),
    );
  });
}

/** Numbers of steps, as many as stand side by side, each with a line down. */
function axisOf(
  { steps }: Chart,
  column: number,
  xOf: (step: number) => number,
  head: number,
  bottom: number,
): string[] {
  const text = (number: number) => steps[number - 1]?.label ?? String(number);
  const widest = Math.max(...steps.map(({ number }) => textWidth(text(number), SMALL)), 10);
  const every = NICE.find((one) => one * column >= widest + 6) ?? Math.ceil((widest + 6) / column);
  return steps
    .filter(({ number }) => (every === 1 ? true : number === 1 ? every < 5 : number % every === 0))
    .map(({ number }) =>
      [
        element('line', {
          x1: xOf(number),
          x2: xOf(number),
          y1: head - 2,
          y2: bottom,
          stroke: 'currentColor',
          'stroke-opacity': 0.18,
        }),
        label(text(number), xOf(number), head - 7, {
          'font-size': SMALL,
          'text-anchor': 'middle',
          stroke: 'none',
        }),
      ].join(''),
    );
}

const NICE = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

interface RowPlace {
  xOf: (step: number) => number;
  width: number;
  steps: number;
  idOf: (step: number) => string | undefined;
  prefix: string;
  index: number;
}

/** Conditions get a letter each, told once under the chart: they are often longer than the names. */
function notesOf(rows: readonly ChartRow[]): ReadonlyMap<string, string> {
  const notes = new Map<string, string>();
  for (const { case: when } of rows)
    if (when !== undefined && !notes.has(when)) notes.set(when, letterOf(notes.size));
  return notes;
}

/** A … Z, A2 … Z2, A3 … */
function letterOf(index: number): string {
  const round = Math.floor(index / 26);
  return String.fromCharCode(65 + (index % 26)) + (round === 0 ? '' : String(round + 1));
}

interface Placed extends ChartRow {
  readonly lines: readonly string[];
  readonly top: number;
  readonly end: number;
}

/** Rows one under the other; a name too long for a line has two. */
function stacked(
  rows: readonly ChartRow[],
  notes: ReadonlyMap<string, string>,
  top: number,
  width: number,
): Placed[] {
  let at = top;
  return rows.map((row) => {
    const text = row.case === undefined ? row.text : `${row.text} (if ${notes.get(row.case)})`;
    const lines = wrapped(text, width - 2 * LEFT - 4, SIZE, 2);
    const placed = { ...row, lines, top: at, end: at + ROW + (lines.length - 1) * LINE };
    at = placed.end;
    return placed;
  });
}

function rowOf(row: Placed, { xOf, width, steps, idOf, prefix, index }: RowPlace): string {
  const [first] = row.bars as [Bar, ...Bar[]];
  const from = xOf(row.from);
  const to = xOf(row.to ?? steps + 1);
  const room = Math.max(...row.lines.map((line) => textWidth(line, SIZE)));
  const x = Math.max(LEFT, Math.min(from, width - LEFT - room));
  const middle = row.end - 7;
  const marks = row.gathered
    ? gatheredOf(row.bars, from, to, middle, xOf)
    : [
        ...barOf(first, from, to, middle, xOf),
        row.to === undefined ? cross(to - 5, middle) : END[first.end](to, middle),
      ];
  return element(
    'g',
    {
      id: `${prefix}-r${index + 1}`,
      'data-thing': [...new Set(row.bars.map(({ thing }) => thing))].join(' '),
      'data-gathered': row.gathered ? '' : undefined,
      'data-from': row.from,
      'data-to': row.to,
      'data-step': idOf(row.from),
      'data-step-end': row.to === undefined ? undefined : idOf(row.to),
    },
    element('title', {}, escapeText(row.bars.map(sentenceOf).join(' '))),
    ...marks,
    ...row.lines.map((line, number) => label(line, x, row.top + 11 + number * LINE)),
  );
}

/** The legend side by side, as many in a line as there is room for. */
function flowed(legend: readonly [Sign, string][], width: number) {
  let x = LEFT;
  let line = 0;
  return legend.map(([sign, words]) => {
    const wide = SAMPLE + 6 + textWidth(words, SMALL) + 18;
    if (x > LEFT && x + wide > width) {
      x = LEFT;
      line++;
    }
    const placed = { sign, words, x, line };
    x += wide;
    return placed;
  });
}

/** How many things lie on the bench after each step, as a stepped line. */
function benchOf(
  { bars, steps }: Chart,
  top: number,
  column: number,
  xOf: (step: number) => number,
  width: number,
): string[] {
  // A thing that is off in several cases at different times is one thing.
  const counts = steps.map(({ number }) => new Set(onTheBench(bars, number).map(({ thing }) => thing)).size);
  const most = Math.max(...counts, 0);
  if (most === 0) return [];
  const base = top + BENCH;
  const yOf = (count: number) => base - (count / most) * (BENCH - 20);
  const edges = counts.map((count, index) => {
    const next = index + 1 < steps.length ? xOf(index + 2) : width - LEFT;
    return `L${xOf(index + 1)} ${yOf(count)}L${next} ${yOf(count)}`;
  });
  const peak = counts.indexOf(most);
  // What is off in different cases never lies there together.
  const mixed = onTheBench(bars, peak + 1).some((bar) => bar.case !== undefined);
  const text = `${most} on the bench at most${mixed ? ', all cases counted together' : ''}`;
  const x = Math.max(LEFT, Math.min(xOf(peak + 1), width - LEFT - textWidth(text, SMALL)));
  return [
    element('path', {
      d: `M${xOf(1) - column / 2} ${base}L${xOf(1)} ${base}${edges.join('')}L${width - LEFT} ${base}Z`,
      'fill-opacity': 0.25,
      stroke: 'currentColor',
      'stroke-width': 1,
    }),
    label(text, x, yOf(most) - 4, { 'font-size': SMALL }),
  ];
}
