/**
 * The guideline filter of the British Health and Safety Executive for lifting by hand: five zones of height, close to
 * the body or at arm's length, for men and for women. A weight within the filter is not thereby safe, and one beyond it
 * is not forbidden: it asks for a closer look. Weights in kg.
 *
 * Sources: HSE L23 and INDG143 (guideline figures; the smallest of the boxes that the hands pass counts); the older
 * L23 for frequency and twisting; a team of two has two thirds, a team of three half of the sum of what each could
 * lift alone, and more than four are unlikely to work together.
 */
import { LOAD_CONSTANT } from './lifting-equation.ts';

export const ZONES = [
  'above shoulder height',
  'shoulder to elbow height',
  'elbow to knuckle height',
  'knuckle to mid lower leg',
  'below mid lower leg',
] as const;
export type Zone = (typeof ZONES)[number];
export type Reach = 'close' | 'arm length';
export type Lifter = 'man' | 'woman';

/** A box of the filter that the hands pass through. */
export interface Box {
  readonly zone: Zone;
  readonly reach: Reach;
}

const FIGURES: Readonly<Record<Lifter, Readonly<Record<Reach, readonly number[]>>>> = {
  man: { close: [10, 20, 25, 20, 10], 'arm length': [5, 10, 15, 10, 5] },
  woman: { close: [7, 13, 16, 13, 7], 'arm length': [3, 7, 10, 7, 3] },
};

/** kg for one box. */
export function boxWeight({ zone, reach }: Box, lifter: Lifter): number {
  return FIGURES[lifter][reach][ZONES.indexOf(zone)]!;
}

/** kg for a lift through several boxes: the smallest counts. Undefined where no box is given. */
export function liftWeight(boxes: readonly Box[], lifter: Lifter): number | undefined {
  return boxes.length === 0 ? undefined : Math.min(...boxes.map((box) => boxWeight(box, lifter)));
}

/** kg: the largest box there is, a man at elbow to knuckle height, close to the body. Where nothing is known of the
 * lift, only what is beyond this is beyond every box. */
export const LARGEST_BOX = 25;

/** The share of the sum of what each could lift alone that a team can; for four the share of three (mildest). */
export function teamShare(people: number): number {
  if (people <= 1) return 1;
  return people === 2 ? 2 / 3 : 1 / 2;
}

/** More than these are unlikely to lift together. */
export const MOST_IN_A_TEAM = 4;

/** kg for a team, from what each could lift alone. */
export function teamWeight(each: readonly number[]): number {
  return each.reduce((sum, one) => sum + one, 0) * teamShare(each.length);
}

/** `hse`: the filter of this file. `niosh`: see lifting-equation.ts. */
export type LiftingGuideline = 'hse' | 'niosh';

/**
 * kg beyond which the guideline lets so many people lift in no posture: the largest box of the filter, or for one
 * person the load constant of the NIOSH equation, which knows no teams: for these the filter holds in either case.
 */
export function mostByHand(people: number, guideline: LiftingGuideline = 'hse'): number {
  if (guideline === 'niosh' && people === 1) return LOAD_CONSTANT;
  const team = Math.min(Math.max(1, Math.floor(people)), MOST_IN_A_TEAM);
  return teamWeight(Array.from({ length: team }, () => LARGEST_BOX));
}

/** The share that is left at so many lifts a minute (older L23). Between the figures the milder one. */
export function frequencyShare(liftsPerMinute: number): number {
  if (liftsPerMinute > 12) return 0.2;
  if (liftsPerMinute >= 5) return 0.5;
  return liftsPerMinute >= 1 ? 0.7 : 1;
}

/** The share that is left where the trunk is twisted by so many degrees (older L23). */
export function twistShare(degrees: number): number {
  if (degrees > 90) return 0.8;
  return degrees > 45 ? 0.9 : 1;
}
