/**
 * The aspects of an item that the execution tracks, and their values. Every aspect starts at 0, which is how
 * a machine stands before the job: fitted, tight, connected, full, live. See grammar/STATE.md.
 */
import type { Thing } from '../model/model.ts';

export const ASPECTS = [
  'place',
  'fresh',
  'parted',
  'lost',
  'marked',
  'supported',
  'secured',
  'moved',
  'lock',
  'fluid',
  'pressure',
  'heat',
  'live',
  'proved',
  'bled',
  'bypass',
  'feel',
  'rescued',
  'yielded',
  'coated',
  'oiled',
  'curing',
] as const;
export type Aspect = (typeof ASPECTS)[number];

/** The number of each, written out: V8 looks a name up sooner in an object that it has seen being written. */
export const ASPECT: Readonly<Record<Aspect, number>> = {
  place: 0,
  fresh: 1,
  parted: 2,
  lost: 3,
  marked: 4,
  supported: 5,
  secured: 6,
  moved: 7,
  lock: 8,
  fluid: 9,
  pressure: 10,
  heat: 11,
  live: 12,
  proved: 13,
  bled: 14,
  bypass: 15,
  feel: 16,
  rescued: 17,
  yielded: 18,
  coated: 19,
  oiled: 20,
  curing: 21,
};

/** `place` of a part, seal, control or isolator. */
export const FITTED = 0;
export const ASIDE = 1;
export const TRIAL = 2;
export const OFF = 3;
export const GONE = 4;
/** `place` of a fastener at one position. Stage k is `STAGE + k`. */
export const FINAL = 0;
export const OUT = 1;
export const HAND = 2;
export const LOOSE = 3;
export const PASS = 4;
export const STAGE = 4;
export const MOST_STAGES = 24;
/** `place` of a connection. */
export const CONNECTED = 0;
export const DISCONNECTED = 1;
export const CAPPED = 2;
/** `place` of a face. */
export const DIRTY = 0;
export const CLEAN = 1;
/** `place` of a tool. */
export const AWAY = 0;
export const IN_PLACE = 1;
/** `fluid` */
export const FULL = 0;
export const LOW = 1;
export const DRAINED = 2;
/** Two-valued aspects: 0 is the start, 1 the other one. */
export const NO = 0;
export const YES = 1;
/** `coated`, `oiled`: nothing on it; on it; put in with nothing on it. `curing` is a number of ./actions/curing.ts. */
export const BARE = 0;
export const COVERED = 1;
export const WENT_IN_BARE = 2;
/** `parted`: has been off; and thrown away. */
export const HAS_BEEN_OFF = 1;
export const THROWN_AWAY = 2;

export function bit(...values: number[]): number {
  let mask = 0;
  for (const value of values) mask |= 1 << value;
  return mask;
}

/** Every value but these. */
export const not = (...values: number[]): number => ~bit(...values);

export const PLACED = bit(FITTED, ASIDE, TRIAL);

/** It has a seat of its own; fasteners, connections and the like go into what they hold. */
export function isPlaced({ type }: Thing): boolean {
  return type === 'part' || type === 'seal' || type === 'control' || type === 'isolator';
}

/** Values of `place` in which the thing is there, on its seat or in its hole. */
export function inPlace(thing: Thing): number {
  switch (thing.type) {
    case 'fastener':
      return not(OUT);
    case 'connection':
      return bit(CONNECTED);
    case 'tool':
      return bit(IN_PLACE);
    default:
      return PLACED;
  }
}

/** Values of `place` in which the thing hides or blocks what is under it. */
export function covering(thing: Thing): number {
  return isPlaced(thing) ? bit(FITTED, TRIAL) : inPlace(thing);
}

/** The value of `place` that takes the thing out of the way. */
export function awayValue(thing: Thing): number {
  switch (thing.type) {
    case 'fastener':
      return OUT;
    case 'connection':
      return DISCONNECTED;
    case 'tool':
      return AWAY;
    default:
      return OFF;
  }
}
