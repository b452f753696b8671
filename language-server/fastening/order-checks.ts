/**
 * Questions about a tightening order that somebody wrote: is it complete, does it go across, does it start from
 * the middle? Answers carry reasons that fit into a message. No one table is demanded: ASME PCC-1 itself has
 * alternatives, so any order with the properties of its patterns passes.
 */

import type { Layout, Place } from './layout.ts';
import { aroundCircle, middleOf, placesOf } from './layout.ts';
import type { Order } from './orders.ts';
import { ringsOf } from './rings.ts';

export interface OrderReason {
  readonly code:
    | 'unknown-position'
    | 'position-repeated'
    | 'position-missing'
    | 'not-opposite'
    | 'pair-beside-last'
    | 'not-opposite-half'
    | 'not-from-middle';
  /** One sentence with the names of the positions. */
  readonly message: string;
  /** The positions that the sentence is about. */
  readonly positions: readonly number[];
  /** Place in the order, from 1, where it goes wrong; absent for missing positions. */
  readonly step?: number;
}

export interface OrderCheck {
  readonly ok: boolean;
  readonly reasons: readonly OrderReason[];
}

/** Every position of the layout once, and nothing else. All reasons are given. */
export function isCompleteOrder(order: Order, layout: Layout): OrderCheck {
  const places = placesOf(layout);
  const reasons: OrderReason[] = [];
  const firstStep = new Map<number, number>();
  order.forEach((position, i) => {
    const step = i + 1;
    if (!places[position - 1]) {
      reasons.push({
        code: 'unknown-position',
        message: `#${position} is not one of the ${places.length} positions.`,
        positions: [position],
        step,
      });
    } else if (firstStep.has(position)) {
      reasons.push({
        code: 'position-repeated',
        message: `${nameOf(places, position)} comes twice: ${ordinal(firstStep.get(position)!)} and ${ordinal(step)}.`,
        positions: [position],
        step,
      });
    } else firstStep.set(position, step);
  });
  const missing = places.filter((place) => !firstStep.has(place.position));
  if (missing.length > 0) {
    reasons.push({
      code: 'position-missing',
      message: `${listOf(missing.map((place) => place.name))} ${missing.length === 1 ? 'is' : 'are'} not in the order.`,
      positions: missing.map((place) => place.position),
    });
  }
  return { ok: reasons.length === 0, reasons };
}

/**
 * Across, on a complete order (an incomplete one gets the reasons of `isCompleteOrder`); the first place where
 * it goes wrong is given.
 *
 * - Circle, even count: the 1st and 2nd, 3rd and 4th ... are exactly opposite, and of each four the second pair
 *   lies more than 45 degrees from the first (in the PCC-1 table: a square).
 * - Circle, odd count: the 2nd, 4th ... are as nearly opposite as can be, and every move is into the opposite
 *   half (90 degrees or more).
 * - Circle of more than 32: also neighbours in blocks of 2, 3 or 4, if the blocks go across (PCC-1 treats
 *   groups of bolts as one there).
 * - Other layouts: the 2nd, 4th ... are in the half opposite to the one before, while one is left there.
 */
export function isAcross(order: Order, layout: Layout): OrderCheck {
  const complete = isCompleteOrder(order, layout);
  if (!complete.ok) return complete;
  const places = placesOf(layout);
  const around = aroundCircle(places);
  if (!around) return verdict(firstFaultOnPlane(order, places));
  const seatOf = new Map(around.map((place, seat) => [place.position, seat]));
  const seats = order.map((position) => seatOf.get(position)!);
  const say = (seat: number) => around[seat]!;
  const fault = firstFaultOnCircle(seats, around.length, say);
  if (!fault) return verdict(undefined);
  if (around.length > 32) {
    for (const size of [2, 3, 4]) {
      for (let offset = 0; offset < size; offset++) {
        const blocks = blocksOf(seats, size, offset);
        if (blocks && !firstFaultOnCircle(blocks, around.length / size, say)) return verdict(undefined);
      }
    }
  }
  return verdict(fault);
}

/**
 * From the middle outwards, on a complete order. Passes when by any defensible way of counting rings (rings.ts)
 * the innermost ring is finished first, and after that a ring is begun when the one inside it is at least half
 * done and the one inside that is finished. Spiral, cross and pair-by-pair orders pass. The first place where it goes wrong is given,
 * by the way of counting that gets furthest. On a circle all positions are equally far and every order passes.
 * Common practice, no source.
 */
export function startsFromMiddle(order: Order, layout: Layout): OrderCheck {
  const complete = isCompleteOrder(order, layout);
  if (!complete.ok) return complete;
  const places = placesOf(layout);
  if (aroundCircle(places)) return verdict(undefined);
  let furthest: OrderReason | undefined;
  for (const { ring } of ringsOf(places)) {
    const fault = firstFaultFromMiddle(order, places, ring);
    if (!fault) return verdict(undefined);
    if (!furthest || fault.step! > furthest.step!) furthest = fault;
  }
  return verdict(furthest);
}

/** Whether `loosening` is `tightening` backwards. */
export function isReverseOf(loosening: Order, tightening: Order): boolean {
  return (
    loosening.length === tightening.length &&
    loosening.every((position, i) => position === tightening[tightening.length - 1 - i])
  );
}

/** Seats are counted around from 0; `say` gives the place of a seat. */
function firstFaultOnCircle(
  seats: readonly number[],
  count: number,
  say: (seat: number) => Place,
): OrderReason | undefined {
  return count % 2 === 0 ? firstFaultEven(seats, count, say) : firstFaultOdd(seats, count, say);
}

function firstFaultEven(
  seats: readonly number[],
  count: number,
  say: (seat: number) => Place,
): OrderReason | undefined {
  const half = count / 2;
  for (let i = 0; i + 1 < seats.length; i += 2) {
    const first = seats[i]!;
    const second = seats[i + 1]!;
    const opposite = (first + half) % count;
    if (second !== opposite) {
      return {
        code: 'not-opposite',
        message: `${say(second).name} follows ${say(first).name}, and opposite ${say(first).name} is ${say(opposite).name}.`,
        positions: [say(first).position, say(second).position],
        step: i + 2,
      };
    }
    if (i % 4 === 2) {
      const before = seats[i - 2]!;
      const apart = Math.abs(first - before) % half;
      const degrees = (Math.min(apart, half - apart) * 360) / count;
      if (degrees <= 45 + 1e-9) {
        return {
          code: 'pair-beside-last',
          message: `The pair ${say(first).name} and ${say(second).name} lies beside the pair ${say(before).name} and ${say((before + half) % count).name} tightened just before it.`,
          positions: [say(before).position, say(first).position],
          step: i + 1,
        };
      }
    }
  }
  return undefined;
}

function firstFaultOdd(
  seats: readonly number[],
  count: number,
  say: (seat: number) => Place,
): OrderReason | undefined {
  for (let i = 1; i < seats.length; i++) {
    const before = seats[i - 1]!;
    const seat = seats[i]!;
    const apart = Math.abs(seat - before);
    const steps = Math.min(apart, count - apart);
    const partner = i % 2 === 1;
    const enough = partner ? steps === (count - 1) / 2 : (steps * 360) / count >= 90;
    if (!enough) {
      const far = [(count - 1) / 2, (count + 1) / 2].map((each) => say((before + each) % count).name);
      return {
        code: partner ? 'not-opposite' : 'not-opposite-half',
        message: `${say(seat).name} follows ${say(before).name}, and ${listOf(far)} are on the far side of ${say(before).name}.`,
        positions: [say(before).position, say(seat).position],
        step: i + 1,
      };
    }
  }
  return undefined;
}

/**
 * The order as blocks of `size` neighbours, each block as one seat of a smaller circle, with the blocks laid off
 * from seat `offset`; undefined if it does not fall into such blocks.
 */
function blocksOf(seats: readonly number[], size: number, offset: number): number[] | undefined {
  const count = seats.length;
  if (count % size !== 0) return undefined;
  const blocks: number[] = [];
  for (let i = 0; i < count; i += size) {
    const members = seats
      .slice(i, i + size)
      .map((seat) => Math.floor(((seat - offset + count) % count) / size));
    if (members.some((block) => block !== members[0])) return undefined;
    blocks.push(members[0]!);
  }
  return blocks;
}

function firstFaultOnPlane(order: Order, places: readonly Place[]): OrderReason | undefined {
  const middle = middleOf(places);
  const done = new Set<number>();
  for (let i = 0; i < order.length; i++) {
    const place = places[order[i]! - 1]!;
    if (i % 2 === 1) {
      const before = places[order[i - 1]! - 1]!;
      const side = (each: Place) =>
        (before.x - middle.x) * (each.x - middle.x) + (before.y - middle.y) * (each.y - middle.y);
      const waiting = places.filter((each) => !done.has(each.position) && side(each) < -1e-9);
      if (side(place) >= -1e-9 && waiting.length > 0) {
        return {
          code: 'not-opposite-half',
          message: `${place.name} follows ${before.name}, and ${listOf(waiting.slice(0, 3).map((each) => each.name))} on the other side ${waiting.length === 1 ? 'is' : 'are'} still to do.`,
          positions: [before.position, place.position],
          step: i + 1,
        };
      }
    }
    done.add(place.position);
  }
  return undefined;
}

function firstFaultFromMiddle(
  order: Order,
  places: readonly Place[],
  ring: readonly number[],
): OrderReason | undefined {
  const open = new Map<number, number>();
  for (const each of ring) open.set(each, (open.get(each) ?? 0) + 1);
  const size = new Map(open);
  const done = new Set<number>();
  for (let i = 0; i < order.length; i++) {
    const position = order[i]!;
    const own = ring[position - 1]!;
    let inner = 0;
    while ((open.get(inner) ?? 0) === 0) inner++;
    const halfDone = 2 * open.get(inner)! <= size.get(inner)!;
    if (own > inner && (inner === 0 || own > inner + 1 || !halfDone)) {
      const nearer = places.filter((each, at) => ring[at] === inner && !done.has(each.position));
      return {
        code: 'not-from-middle',
        message: `${nameOf(places, position)} comes ${ordinal(i + 1)}, before ${listOf(nearer.slice(0, 4).map((each) => each.name))} nearer the middle.`,
        positions: [position, ...nearer.map((each) => each.position)],
        step: i + 1,
      };
    }
    open.set(own, open.get(own)! - 1);
    done.add(position);
  }
  return undefined;
}

function verdict(fault: OrderReason | undefined): OrderCheck {
  return fault ? { ok: false, reasons: [fault] } : { ok: true, reasons: [] };
}

function nameOf(places: readonly Place[], position: number): string {
  return places[position - 1]?.name ?? `#${position}`;
}

function listOf(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function ordinal(step: number): string {
  const tail = step % 100 > 10 && step % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][step % 10] ?? 'th');
  return `${step}${tail}`;
}
