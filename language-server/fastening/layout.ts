/**
 * Where the positions of a fastener group are. Positions are numbered from 1; a layout gives each one a place
 * in a flat drawing, x to the right and y up. Circles and rows are drawn with unit radius and unit spacing,
 * because only their shape is known; explicit positions keep their coordinates (any one length unit).
 * Orders over a layout are in orders.ts, their checks in order-checks.ts.
 */

import type { FasteningProblem } from './problem.ts';
import { problem } from './problem.ts';

export type Corner = 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right';

export type Layout =
  | {
      readonly kind: 'circle';
      readonly count: number;
      /** Where #1 is: degrees clockwise from the top of the drawing; 0 when absent. */
      readonly firstAt?: number;
      /** Which way the numbers run, seen on the drawing; clockwise when absent. */
      readonly numbered?: 'clockwise' | 'anticlockwise';
    }
  | {
      readonly kind: 'rows';
      /** How many positions each row has, from the row of #1 on: `[3, 3]` is 2 rows of 3. */
      readonly counts: readonly number[];
      /** The corner of #1; top left when absent. */
      readonly firstAt?: Corner;
      /** Each row from the same side, or back and forth; from the same side when absent. */
      readonly numbered?: 'same-side' | 'back-and-forth';
    }
  | { readonly kind: 'positions'; readonly places: readonly NamedPoint[] };

export interface NamedPoint {
  readonly x: number;
  readonly y: number;
  /** How the author calls it; `#1`, `#2` ... when absent. */
  readonly name?: string;
}

export interface Place {
  /** 1 for #1. */
  readonly position: number;
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** More positions than this are a slip of the author, and would only slow the checks down. */
export const MOST_POSITIONS = 500;

export function circleOf(count: number): Layout {
  return { kind: 'circle', count };
}

export function rowsOf(rows: number, perRow: number): Layout {
  const usable = Number.isInteger(rows) && rows > 0 && rows <= MOST_POSITIONS;
  return {
    kind: 'rows',
    counts: usable ? Array.from({ length: rows }, () => perRow) : [],
  };
}

/** How many positions the layout has; 0 for a layout with a problem. */
export function positionCount(layout: Layout): number {
  return layoutProblem(layout) ? 0 : rawCount(layout);
}

/** What is wrong with a layout: no positions, counts that are no whole numbers, too many. */
export function layoutProblem(layout: Layout): FasteningProblem | undefined {
  const counts = layout.kind === 'rows' ? layout.counts : [rawCount(layout)];
  if (counts.length === 0 || counts.some((count) => !Number.isInteger(count) || count < 1)) {
    return problem('layout-empty', 'A layout needs a whole number of positions, at least one in each row.');
  }
  if (rawCount(layout) > MOST_POSITIONS)
    return problem(
      'layout-too-large',
      `A layout of more than ${MOST_POSITIONS} positions is not worked out.`,
    );
  if (
    layout.kind === 'positions' &&
    layout.places.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y))
  )
    return problem('layout-not-finite', 'A position of the layout has no coordinates.');
  return undefined;
}

/** The places in order of their numbers; none for a layout with a problem. */
export function placesOf(layout: Layout): Place[] {
  if (layoutProblem(layout)) return [];
  switch (layout.kind) {
    case 'circle':
      return circlePlaces(layout.count, layout.firstAt ?? 0, layout.numbered === 'anticlockwise' ? -1 : 1);
    case 'rows':
      return rowPlaces(layout.counts, layout.firstAt ?? 'top-left', layout.numbered === 'back-and-forth');
    case 'positions':
      return layout.places.map(({ x, y, name }, i) => ({
        position: i + 1,
        name: name ?? `#${i + 1}`,
        x,
        y,
      }));
  }
}

/** The number of a position as an author writes it: `#3`, `3` or its name. */
export function positionNamed(layout: Layout, written: string): number | undefined {
  const places = placesOf(layout);
  const byName = places.find((place) => place.name === written.trim());
  if (byName) return byName.position;
  const number = /^#?(\d+)$/.exec(written.trim())?.[1];
  return places.find((place) => String(place.position) === number)?.position;
}

/** Middle of the drawing: half way between its outermost places. */
export function middleOf(places: readonly Place[]): { x: number; y: number } {
  const xs = places.map((place) => place.x);
  const ys = places.map((place) => place.y);
  return {
    x: (Math.min(...xs) + Math.max(...xs)) / 2,
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
}

/**
 * The positions going round clockwise from #1, if they lie evenly on a circle (radius within 2 %, spacing within
 * 15 %); else undefined.
 */
export function aroundCircle(places: readonly Place[]): Place[] | undefined {
  if (places.length < 3) return undefined;
  // The centre of even spacing is the mean, not the middle of the box (three on a circle).
  const x = places.reduce((sum, place) => sum + place.x, 0) / places.length;
  const y = places.reduce((sum, place) => sum + place.y, 0) / places.length;
  const radii = places.map((place) => Math.hypot(place.x - x, place.y - y));
  const mean = radii.reduce((a, b) => a + b, 0) / radii.length;
  if (!(mean > 0) || radii.some((radius) => Math.abs(radius / mean - 1) > 0.02)) return undefined;
  const angle = (place: Place) => Math.atan2(place.x - x, place.y - y);
  const first = angle(places[0]!);
  const turn = (place: Place) => {
    const raw = angle(place) - first;
    return place === places[0] ? 0 : raw < 0 ? raw + 2 * Math.PI : raw;
  };
  const around = [...places].sort((a, b) => turn(a) - turn(b));
  const step = (2 * Math.PI) / places.length;
  const even = around.every((place, i) => Math.abs(turn(place) - i * step) < 0.15 * step);
  return even ? around : undefined;
}

function rawCount(layout: Layout): number {
  if (layout.kind === 'circle') return layout.count;
  if (layout.kind === 'rows') return layout.counts.reduce((sum, count) => sum + count, 0);
  return layout.places.length;
}

function circlePlaces(count: number, firstAt: number, sense: 1 | -1): Place[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = ((firstAt + (sense * 360 * i) / count) * Math.PI) / 180;
    return {
      position: i + 1,
      name: `#${i + 1}`,
      x: Math.sin(angle),
      y: Math.cos(angle),
    };
  });
}

function rowPlaces(counts: readonly number[], firstAt: Corner, backAndForth: boolean): Place[] {
  const down = firstAt.startsWith('top') ? -1 : 1;
  const right = firstAt.endsWith('left') ? 1 : -1;
  const places: Place[] = [];
  counts.forEach((count, row) => {
    const way = backAndForth && row % 2 === 1 ? -right : right;
    for (let column = 0; column < count; column++) {
      const position = places.length + 1;
      places.push({
        position,
        name: `#${position}`,
        // + 0: no negative zero, which JSON does not keep.
        x: way * (column - (count - 1) / 2) + 0,
        y: down * (row - (counts.length - 1) / 2) + 0,
      });
    }
  });
  return places;
}
