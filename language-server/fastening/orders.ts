/**
 * Tightening orders over a layout: across a circle, from the middle of rows, around. An order is a list of
 * position numbers, each once. Whether an order that somebody wrote is a good one is asked in order-checks.ts.
 *
 * Across a circle: the legacy cross pattern of ASME PCC-1 (printed counts 4 to 24; seen in two public copies),
 * for other counts an order with the properties of that table. From the middle: common practice, no source.
 */

import type { Layout, Place } from './layout.ts';
import { aroundCircle, middleOf, placesOf } from './layout.ts';
import { longAxis, ringsOf, stations } from './rings.ts';

export type Order = readonly number[];

/** ASME PCC-1, legacy cross pattern, bolts numbered one after the other clockwise. */
export const PRINTED_CROSS_PATTERNS: Readonly<Record<number, Order>> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  12: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
  20: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19],
  24: [1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24],
};

/**
 * Cross pattern for a circle of `count`: as printed where PCC-1 prints it and it was seen; else squares of four
 * (count divisible by four), opposite pairs turned by about a right angle from one to the next (other even
 * counts), or the star that always goes to the far side (odd counts). Empty unless count is a whole number
 * above zero.
 */
export function crossOrder(count: number): number[] {
  if (!Number.isInteger(count) || count < 1) return [];
  const printed = PRINTED_CROSS_PATTERNS[count];
  if (printed) return [...printed];
  if (count % 4 === 0) {
    const quarter = count / 4;
    return spreadStarts(quarter).flatMap((k) => [k, k + 2 * quarter, k + quarter, k + 3 * quarter]);
  }
  if (count % 2 === 0) {
    // Half the count is odd here, so this step has no factor in common with it and meets every pair once.
    const half = count / 2;
    const step = Math.ceil(half / 2);
    return Array.from({ length: half }, (_, i) => ((i * step) % half) + 1).flatMap((k) => [k, k + half]);
  }
  const step = (count - 1) / 2 || 1;
  return Array.from({ length: count }, (_, i) => ((i * step) % count) + 1);
}

/**
 * Across for any layout: the cross pattern where the positions lie on a circle; else to the far side of the
 * middle and back, next to the position nearest the mirror point of the last (common practice, no source).
 */
export function acrossOrder(layout: Layout): number[] {
  const places = placesOf(layout);
  const around = aroundCircle(places);
  if (around) return crossOrder(around.length).map((k) => around[k - 1]!.position);
  const middle = middleOf(places);
  const left = [...places];
  const order: number[] = [];
  while (left.length > 0) {
    const first = left.shift()!;
    order.push(first.position);
    const partner = takeMirror(left, first, middle);
    if (partner) order.push(partner.position);
  }
  return order;
}

/** How an order from the middle goes on: to the mirror position, round and round, or pair by pair. */
export type MiddleStyle = 'cross' | 'spiral' | 'pairs';

/** From the middle outwards, ring by ring. On a circle every position is equally far: the order is across. */
export function fromMiddleOrder(layout: Layout, style: MiddleStyle = 'cross'): number[] {
  const places = placesOf(layout);
  if (aroundCircle(places)) return acrossOrder(layout);
  const rings = ringsOf(places)[0];
  if (!rings) return [];
  const station = stationOf(places);
  const order: Place[] = [];
  for (let ring = 0; order.length < places.length; ring++) {
    const members = places.filter((_, i) => rings.ring[i] === ring);
    order.push(...sortRing(members, style, rings.middle, order.at(-1), station));
  }
  return order.map((place) => place.position);
}

/** One after the other around: the last pass of PCC-1, in the order of the numbers. */
export function circularOrder(count: number): number[] {
  if (!Number.isInteger(count) || count < 1) return [];
  return Array.from({ length: count }, (_, i) => i + 1);
}

/** Backwards: the order for loosening what was tightened in `order`. */
export function reverseOrder(order: Order): number[] {
  return [...order].reverse();
}

/**
 * The usual way of writing an order, `1-5-3-7 2-6-4-8`: in groups of four where the count allows it.
 */
export function orderText(order: Order): string {
  const size = order.length > 4 && order.length % 4 === 0 ? 4 : order.length;
  const groups: string[] = [];
  for (let i = 0; i < order.length; i += size) groups.push(order.slice(i, i + size).join('-'));
  return groups.join(' ');
}

/** 1..count so that each next one is as far as can be from those before, counted around; lowest first. */
function spreadStarts(count: number): number[] {
  const chosen = [1];
  const left = Array.from({ length: count - 1 }, (_, i) => i + 2);
  const gap = (a: number, b: number) => Math.min(Math.abs(a - b), count - Math.abs(a - b));
  while (left.length > 0) {
    const room = left.map((candidate) => Math.min(...chosen.map((each) => gap(each, candidate))));
    const [next] = left.splice(room.indexOf(Math.max(...room)), 1);
    chosen.push(next!);
  }
  return chosen;
}

function sortRing(
  members: readonly Place[],
  style: MiddleStyle,
  middle: { x: number; y: number },
  last: Place | undefined,
  station: (place: Place) => number,
): Place[] {
  switch (style) {
    case 'cross': {
      const left = [...members];
      const sorted: Place[] = [];
      while (left.length > 0) {
        const first = left.shift()!;
        sorted.push(first);
        const partner = takeMirror(left, first, middle);
        if (partner) sorted.push(partner);
      }
      return sorted;
    }
    case 'spiral': {
      const angle = (place: Place) => Math.atan2(place.x - middle.x, place.y - middle.y);
      const from = last ? angle(last) : 0;
      const turn = (place: Place) => {
        const raw = angle(place) - from;
        return raw < -1e-9 ? raw + 2 * Math.PI : raw;
      };
      return [...members].sort((a, b) => turn(a) - turn(b) || a.position - b.position);
    }
    case 'pairs':
      return [...members].sort((a, b) => station(a) - station(b) || a.position - b.position);
  }
}

/** Which column (along the longer side) a place is in, counted from 1. */
function stationOf(places: readonly Place[]): (place: Place) => number {
  const axis = longAxis(places) ?? 'x';
  const at = stations(places, axis);
  return (place) => at.filter((each) => each <= place[axis] + 1e-9).length;
}

/** Takes the place nearest the mirror point of `place` out of `left`, one in the opposite half if there is one. */
function takeMirror(left: Place[], place: Place, middle: { x: number; y: number }): Place | undefined {
  const x = place.x - middle.x;
  const y = place.y - middle.y;
  const opposite = left.filter((each) => x * (each.x - middle.x) + y * (each.y - middle.y) < -1e-9);
  const candidates = opposite.length > 0 ? opposite : left;
  let best: Place | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const each of candidates) {
    const distance = Math.hypot(each.x - middle.x + x, each.y - middle.y + y);
    if (distance < least - 1e-9) {
      best = each;
      least = distance;
    }
  }
  if (best) left.splice(left.indexOf(best), 1);
  return best;
}
