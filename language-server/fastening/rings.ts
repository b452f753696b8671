/**
 * How far from the middle each position of a layout is, as rings counted from 0. Trade practice measures it in
 * several ways (straight distance, along the length of a head, in rectangles), and with an even number of
 * columns the middle may be taken at either middle column; all of these are offered, none is preferred.
 * Common practice, no source.
 */

import type { Place } from './layout.ts';
import { middleOf } from './layout.ts';

export interface Rings {
  readonly measure: 'distance' | 'rectangles' | 'along the length';
  /** Ring of each place, in the order of the places. */
  readonly ring: readonly number[];
  /** Where the middle was taken. */
  readonly middle: { readonly x: number; readonly y: number };
}

/** Every defensible way of counting rings; the first is the one that orders are generated with. */
export function ringsOf(places: readonly Place[]): Rings[] {
  if (places.length === 0) return [];
  const spacing = leastSpacing(places);
  const long = longAxis(places);
  const all: Rings[] = [];
  for (const middle of middles(places, long, spacing)) {
    const along: Rings[] =
      long === undefined
        ? []
        : [rings('along the length', places, middle, spacing, (dx, dy) => Math.abs(long === 'x' ? dx : dy))];
    const distance = rings('distance', places, middle, spacing, Math.hypot);
    const rectangles = rings('rectangles', places, middle, spacing, (dx, dy) =>
      Math.max(Math.abs(dx), Math.abs(dy)),
    );
    const twoLines = long !== undefined && stations(places, long === 'x' ? 'y' : 'x', spacing).length <= 2;
    all.push(...(twoLines ? [...along, distance, rectangles] : [distance, rectangles, ...along]));
  }
  return all;
}

/** The axis along which the layout is clearly longer, if any. */
export function longAxis(places: readonly Place[]): 'x' | 'y' | undefined {
  const width = extent(places.map((place) => place.x));
  const height = extent(places.map((place) => place.y));
  if (width > height * 1.01) return 'x';
  if (height > width * 1.01) return 'y';
  return undefined;
}

/** The distinct coordinates along an axis, ascending, near ones taken together. */
export function stations(
  places: readonly Place[],
  axis: 'x' | 'y',
  spacing = leastSpacing(places),
): number[] {
  return clusters(
    places.map((place) => place[axis]),
    spacing / 4,
  );
}

/** The smallest distance between two places; 1 when there is none. */
export function leastSpacing(places: readonly Place[]): number {
  let least = Number.POSITIVE_INFINITY;
  places.forEach((a, i) => {
    for (const b of places.slice(i + 1)) {
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      if (distance > 0 && distance < least) least = distance;
    }
  });
  return Number.isFinite(least) ? least : 1;
}

function middles(places: readonly Place[], long: 'x' | 'y' | undefined, spacing: number) {
  const middle = middleOf(places);
  if (long === undefined) return [middle];
  const along = stations(places, long, spacing);
  if (along.length % 2 === 1 || along.length < 2) return [middle];
  const half = along.length / 2;
  return [middle, { ...middle, [long]: along[half - 1]! }, { ...middle, [long]: along[half]! }];
}

function rings(
  measure: Rings['measure'],
  places: readonly Place[],
  middle: { x: number; y: number },
  spacing: number,
  size: (dx: number, dy: number) => number,
): Rings {
  const sizes = places.map((place) => size(place.x - middle.x, place.y - middle.y));
  const starts = clusters(sizes, spacing / 4);
  const ring = sizes.map((each) => starts.filter((start) => start <= each + 1e-9 * spacing).length - 1);
  return { measure, ring, middle };
}

/** The smallest value of each cluster: a new one begins more than `width` above the start of the last. */
function clusters(values: readonly number[], width: number): number[] {
  const starts: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    const last = starts.at(-1);
    if (last === undefined || value - last > width) starts.push(value);
  }
  return starts;
}

function extent(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
