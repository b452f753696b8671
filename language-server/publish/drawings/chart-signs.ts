/** The signs of a chart: bars by what is meant, their ends, and the legend that tells them. */
import type { Bar } from './bars.ts';
import type { ChartRow } from './chart-rows.ts';
import { ACCENT, element, PAPER } from './svg.ts';

const BAR = 6;
/** How long a sign of the legend is. */
export const SAMPLE = 26;

/** The bar up to where the old one is thrown away, and a broken line from there to where a new one goes in. */
export function barOf(
  bar: Bar,
  from: number,
  to: number,
  y: number,
  xOf: (step: number) => number,
): string[] {
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

/** A row of several things: each place where something is thrown away or a new one goes in is still told. */
export function gatheredOf(
  bars: readonly Bar[],
  from: number,
  to: number,
  y: number,
  xOf: (step: number) => number,
): string[] {
  const fresh = new Set(bars.flatMap((bar) => (bar.end === 'new' && bar.to !== undefined ? [bar.to] : [])));
  const gone = new Set(bars.flatMap(({ thrownAway }) => thrownAway ?? []));
  const stays = bars.some(({ end }) => end === 'never');
  return [
    strip(from, to, y, 'gathered'),
    ...[...fresh].map((step) => END.new(xOf(step), y)),
    ...[...gone].map((step) => cross(xOf(step), y)),
    ...(stays ? [cross(to - 5, y)] : []),
  ];
}

type Strip = Bar['state'] | 'gathered';

export function strip(from: number, to: number, y: number, kind: Strip): string {
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

export type Sign = (x: number, y: number) => string;

/** Thrown away. */
export const cross: Sign = (x, y) =>
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

export const END: Readonly<Record<Bar['end'], Sign>> = {
  back: post,
  new: ring,
  trial: diamond,
  further: () => '',
  never: cross,
};

/** The signs that this chart uses, with what they mean. */
export function legendOf(rows: readonly ChartRow[]): [Sign, string][] {
  const single = rows.filter(({ gathered }) => !gathered).flatMap(({ bars }) => bars);
  const any = (test: (bar: Bar) => boolean) => single.some(test);
  const ever = (test: (bar: Bar) => boolean) => rows.some(({ bars }) => bars.some(test));
  const sample =
    (kind: Strip): Sign =>
    (x, y) =>
      strip(x, x + SAMPLE, y, kind);
  const all: [boolean, Sign, string][] = [
    [any(({ state }) => state === 'off' || state === 'out'), sample('off'), 'off, on the bench'],
    [any(({ state }) => state === 'aside'), sample('aside'), 'moved aside, at the machine'],
    [any(({ state }) => state === 'apart'), sample('apart'), 'disconnected'],
    [any(({ end }) => end === 'back'), (x, y) => post(x + SAMPLE / 2, y), 'goes back'],
    [ever(({ end }) => end === 'new'), (x, y) => ring(x + SAMPLE / 2, y), 'a new one goes in'],
    [any(({ end }) => end === 'trial'), (x, y) => diamond(x + SAMPLE / 2, y), 'fitted on trial'],
    [
      ever(({ thrownAway, end }) => thrownAway !== undefined || end === 'never'),
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
