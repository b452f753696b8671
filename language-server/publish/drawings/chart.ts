/**
 * The strip-and-rebuild chart: a bar for each thing from the step where it comes off to the step where it goes
 * back, in the order of coming off, so that what is stripped last and goes back first lies innermost. Below it how
 * much is on the bench after each step.
 */
import { type Bar, type Chart, onTheBench } from './bars.ts';
import { type ChartRow, type ChartTask, MOST_ROWS, nameOf, rowsOf } from './chart-rows.ts';
import {
  ACCENT,
  type Drawing,
  element,
  escapeText,
  fitted,
  label,
  PAPER,
  SIZE,
  SMALL,
  svgOf,
  type TextAlternative,
  textWidth,
} from './svg.ts';

export interface ChartOptions {
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
const BAR = 6;
const BENCH = 44;
/** How long a sign of the legend is. */
const SAMPLE = 26;

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
  const bottom = top + rows.length * ROW + 4;
  const legend = flowed(legendOf(rows), width);
  const height = bottom + BENCH + 26 + (legend.at(-1)?.line ?? -1) * 20 + 20;
  const title = `What comes off and goes back: ${name}`;
  const alternative = alternativeOf(data, title);
  const svg = svgOf(
    { width, height, title, description: descriptionOf(data), prefix, kind: 'chart' },
    ...bandsOf(tasks, bottom + BENCH, column, steps),
    ...axisOf(data, column, xOf, head, bottom),
    ...rows.map((row, index) => rowOf(row, top + index * ROW, { xOf, width, steps, idOf, prefix, index })),
    ...benchOf(data, bottom, column, xOf, width),
    ...legend.map(({ sign, words, x, line }) => {
      const y = bottom + BENCH + 24 + line * 20;
      return sign(x, y) + label(words, x + SAMPLE + 6, y + 4, { 'font-size': SMALL });
    }),
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

function rowOf(row: ChartRow, y: number, { xOf, width, steps, idOf, prefix, index }: RowPlace): string {
  const [first] = row.bars as [Bar, ...Bar[]];
  const from = xOf(row.from);
  const to = xOf(row.to ?? steps + 1);
  const text = fitted(row.text, width - 2 * LEFT, SIZE);
  const room = textWidth(text, SIZE);
  const x = Math.max(LEFT, Math.min(from, width - LEFT - room));
  const middle = y + 18;
  const marks = row.gathered
    ? [strip(from, to, middle, 'gathered')]
    : [
        ...barOf(first, from, to, middle, xOf),
        row.to === undefined ? cross(to - 5, middle) : END[first.end](to, middle),
      ];
  return element(
    'g',
    {
      id: `${prefix}-r${index + 1}`,
      'data-thing': [...new Set(row.bars.map(({ thing }) => thing))].join(' '),
      'data-from': row.from,
      'data-to': row.to,
      'data-step': idOf(row.from),
      'data-step-end': row.to === undefined ? undefined : idOf(row.to),
    },
    element('title', {}, escapeText(row.bars.map(sentenceOf).join(' '))),
    ...marks,
    label(text, x, y + 11),
  );
}

/** The bar up to where the old one is thrown away, and a broken line from there to where a new one goes in. */
function barOf(bar: Bar, from: number, to: number, y: number, xOf: (step: number) => number): string[] {
  if (bar.thrownAway === undefined) return [strip(from, to, y, bar.state)];
  const gone = xOf(bar.thrownAway);
  return [
    ...(gone > from ? [strip(from, gone, y, bar.state)] : []),
    element('line', {
      x1: gone,
      x2: to,
      y1: y,
      y2: y,
      stroke: 'currentColor',
      'stroke-width': 1.5,
      'stroke-dasharray': '3 3',
    }),
    cross(gone, y),
  ];
}

type Strip = Bar['state'] | 'gathered';

function strip(from: number, to: number, y: number, kind: Strip): string {
  const hollow = kind === 'aside' || kind === 'apart' || kind === 'gathered';
  return element('rect', {
    x: from,
    y: y - BAR / 2,
    width: Math.max(to - from, 2),
    height: BAR,
    rx: kind === 'apart' ? BAR / 2 : 0,
    fill: hollow ? PAPER : ACCENT,
    stroke: hollow ? 'currentColor' : 'none',
    'stroke-width': hollow ? 1.25 : undefined,
    'stroke-dasharray': kind === 'aside' ? '6 2' : undefined,
    'fill-opacity': kind === 'gathered' ? 0.35 : undefined,
    ...(kind === 'gathered' ? { fill: 'currentColor' } : {}),
  });
}

type Sign = (x: number, y: number) => string;

/** Thrown away. */
const cross: Sign = (x, y) =>
  element('path', {
    d: `M${x - 4} ${y - 4}L${x + 4} ${y + 4}M${x - 4} ${y + 4}L${x + 4} ${y - 4}`,
    stroke: 'currentColor',
    'stroke-width': 2,
    fill: 'none',
  });
const post: Sign = (x, y) => element('rect', { x: x - 1, y: y - 6, width: 2.5, height: 12 });
const ring: Sign = (x, y) =>
  element('circle', { cx: x, cy: y, r: 4.5, fill: PAPER, stroke: 'currentColor', 'stroke-width': 2 });
const diamond: Sign = (x, y) =>
  element('path', {
    d: `M${x} ${y - 5.5}L${x + 5.5} ${y}L${x} ${y + 5.5}L${x - 5.5} ${y}Z`,
    fill: PAPER,
    stroke: 'currentColor',
    'stroke-width': 2,
  });

const END: Readonly<Record<Bar['end'], Sign>> = { back: post, new: ring, trial: diamond, never: cross };

/** The signs that this chart uses, with what they mean. */
function legendOf(rows: readonly ChartRow[]): [Sign, string][] {
  const single = rows.filter(({ gathered }) => !gathered).flatMap(({ bars }) => bars);
  const any = (test: (bar: Bar) => boolean) => single.some(test);
  const sample =
    (kind: Strip): Sign =>
    (x, y) =>
      strip(x, x + SAMPLE, y, kind);
  const all: [boolean, Sign, string][] = [
    [any(({ state }) => state === 'off' || state === 'out'), sample('off'), 'off, on the bench'],
    [any(({ state }) => state === 'aside'), sample('aside'), 'moved aside, at the machine'],
    [any(({ state }) => state === 'apart'), sample('apart'), 'disconnected'],
    [any(({ end }) => end === 'back'), (x, y) => post(x + SAMPLE / 2, y), 'goes back'],
    [any(({ end }) => end === 'new'), (x, y) => ring(x + SAMPLE / 2, y), 'a new one goes in'],
    [any(({ end }) => end === 'trial'), (x, y) => diamond(x + SAMPLE / 2, y), 'fitted on trial'],
    [
      any(({ thrownAway, end }) => thrownAway !== undefined || end === 'never'),
      (x, y) => cross(x + SAMPLE / 2, y),
      'thrown away, or stays off',
    ],
    [
      rows.some(({ gathered }) => gathered),
      sample('gathered'),
      'several things, from the first off to the last back',
    ],
  ];
  return all.filter(([used]) => used).map(([, sign, words]) => [sign, words]);
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
  const text = `${most} on the bench at most`;
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

/** One bar in words. */
export function sentenceOf(bar: Bar): string {
  const off = { off: 'comes off', out: 'comes out', aside: 'is moved aside', apart: 'is disconnected' }[
    bar.state
  ];
  const start = bar.from === 0 ? `is away from the start` : `${off} at step ${bar.from}`;
  const gone = bar.thrownAway === undefined ? '' : ', is thrown away';
  const back = { back: 'goes back', new: 'is replaced by a new one', trial: 'is fitted on trial', never: '' }[
    bar.end
  ];
  const end = bar.to === undefined ? ' and stays away' : ` and ${back} at step ${bar.to}`;
  const name = nameOf(bar);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${start}${gone}${end}${bar.case ? `, if ${bar.case}` : ''}.`;
}

function descriptionOf({ bars, steps, undecided }: Chart): string {
  const lost = undecided.length > 0 ? ` Not followed to the end: ${undecided.join(', ')}.` : '';
  return bars.length === 0
    ? `Nothing comes off in the ${steps.length} steps.${lost}`
    : `${steps.length} steps from left to right; one bar for each thing that is away. ${bars.map(sentenceOf).join(' ')}${lost}`;
}

function alternativeOf({ bars, steps }: Chart, caption: string): TextAlternative {
  const at = (step: number | undefined, none: string) =>
    step === undefined || step === 0 ? none : (steps[step - 1]?.label ?? String(step));
  return {
    kind: 'table',
    caption,
    head: ['Thing', 'Off at step', 'Back at step', 'How it ends', 'Only if'],
    rows: bars.map((bar) => [
      nameOf(bar),
      at(bar.from, 'from the start'),
      at(bar.to, 'not'),
      HOW[bar.end],
      bar.case ?? '',
    ]),
  };
}

const HOW: Readonly<Record<Bar['end'], string>> = {
  back: 'the same one goes back',
  new: 'a new one goes in',
  trial: 'on trial',
  never: 'stays away',
};
