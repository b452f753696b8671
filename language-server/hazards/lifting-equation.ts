/**
 * The revised lifting equation of the US National Institute for Occupational Safety and Health: the weight that nearly
 * all healthy workers could lift with two hands over a shift in the geometry given. Not for one hand, kneeling, seated,
 * confined, hot, slippery or unstable lifts. Guidance; certifies nothing.
 *
 * RWL = LC · HM · VM · DM · AM · FM · CM (NIOSH Pub. 94-110, 1994; the 2021 revision corrects typographical errors).
 * Metric: lengths in cm, LC 23 kg. US: lengths in inches, LC 51 lb. The two forms are published side by side and
 * are not exact conversions of each other. AM, CM, the limits and part of the frequency table are from memory.
 */

export type LiftUnits = 'metric' | 'us';
export type Coupling = 'good' | 'fair' | 'poor';

export interface Lift {
  readonly units: LiftUnits;
  /** H: hands from the middle between the ankles. Below 25 cm (10 in) it counts as 25 cm. */
  readonly horizontal: number;
  /** V: hands above the floor at the beginning (or, for the end of the lift, there). */
  readonly vertical: number;
  /** D: how far the hands go up or down. Below 25 cm (10 in) it counts as 25 cm. */
  readonly travel: number;
  /** A: degrees of twist. */
  readonly asymmetry: number;
  /** F: lifts a minute. */
  readonly frequency: number;
  /** Hours of lifting at a stretch. */
  readonly hours: number;
  readonly coupling: Coupling;
}

export interface Multipliers {
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  readonly asymmetric: number;
  readonly frequency: number;
  readonly coupling: number;
}

interface Form {
  readonly load: number;
  readonly reach: number;
  readonly farthest: number;
  readonly knuckles: number;
  readonly perHeight: number;
  readonly highest: number;
  readonly perTravel: number;
  readonly shortest: number;
  readonly longest: number;
}

/** kg: what the equation recommends where every multiplier is 1. */
export const LOAD_CONSTANT = 23;

const FORMS: Readonly<Record<LiftUnits, Form>> = {
  metric: {
    load: LOAD_CONSTANT,
    reach: 25,
    farthest: 63,
    knuckles: 75,
    perHeight: 0.003,
    highest: 175,
    perTravel: 4.5,
    shortest: 25,
    longest: 175,
  },
  us: {
    load: 51,
    reach: 10,
    farthest: 25,
    knuckles: 30,
    perHeight: 0.0075,
    highest: 70,
    perTravel: 1.8,
    shortest: 10,
    longest: 70,
  },
};

/** kg or lb that may be lifted as described; 0 where the equation allows no such lift. */
export function recommendedWeight(lift: Lift): number {
  return weightFrom(multipliersOf(lift), lift.units);
}

/** The weight from multipliers as they are printed in a worked example. */
export function weightFrom(multipliers: Multipliers, units: LiftUnits): number {
  const { horizontal, vertical, distance, asymmetric, frequency, coupling } = multipliers;
  return FORMS[units].load * horizontal * vertical * distance * asymmetric * frequency * coupling;
}

/** The load over what is recommended: above 1 the lift is beyond the guideline. Infinite where no lift is allowed. */
export function liftingIndex(load: number, recommended: number): number {
  return recommended > 0 ? load / recommended : Number.POSITIVE_INFINITY;
}

export function multipliersOf(lift: Lift): Multipliers {
  const form = FORMS[lift.units];
  const { horizontal, vertical, travel, asymmetry } = lift;
  const distance = Math.max(travel, form.shortest);
  return {
    horizontal: horizontal > form.farthest ? 0 : form.reach / Math.max(horizontal, form.reach),
    vertical:
      vertical < 0 || vertical > form.highest ? 0 : 1 - form.perHeight * Math.abs(vertical - form.knuckles),
    distance: distance > form.longest ? 0 : 0.82 + form.perTravel / distance,
    asymmetric: asymmetry > 135 ? 0 : 1 - 0.0032 * Math.abs(asymmetry),
    frequency: frequencyMultiplier(lift.frequency, lift.hours, vertical < form.knuckles),
    coupling: couplingMultiplier(lift.coupling, vertical < form.knuckles),
  };
}

/**
 * Table 5: by lifts a minute, hours of lifting (up to 1, 2 and 8) and whether the hands begin below 75 cm. Between two
 * rows the one with more lifts is taken, which is the cautious one.
 */
export function frequencyMultiplier(liftsPerMinute: number, hours: number, low: boolean): number {
  const row = FREQUENCIES.find(([most]) => liftsPerMinute <= most);
  if (!row) return 0;
  const column = hours <= 1 ? 0 : hours <= 2 ? 2 : 4;
  return row[1][column + (low ? 0 : 1)]!;
}

export function couplingMultiplier(coupling: Coupling, low: boolean): number {
  if (coupling === 'good') return 1;
  if (coupling === 'fair') return low ? 0.95 : 1;
  return 0.9;
}

/** Lifts a minute up to which the row holds; up to 1 h low, high; up to 2 h low, high; up to 8 h low, high. */
const FREQUENCIES: readonly (readonly [number, readonly number[]])[] = [
  [0.2, [1, 1, 0.95, 0.95, 0.85, 0.85]],
  [0.5, [0.97, 0.97, 0.92, 0.92, 0.81, 0.81]],
  [1, [0.94, 0.94, 0.88, 0.88, 0.75, 0.75]],
  [2, [0.91, 0.91, 0.84, 0.84, 0.65, 0.65]],
  [3, [0.88, 0.88, 0.79, 0.79, 0.55, 0.55]],
  [4, [0.84, 0.84, 0.72, 0.72, 0.45, 0.45]],
  [5, [0.8, 0.8, 0.6, 0.6, 0.35, 0.35]],
  [6, [0.75, 0.75, 0.5, 0.5, 0.27, 0.27]],
  [7, [0.7, 0.7, 0.42, 0.42, 0.22, 0.22]],
  [8, [0.6, 0.6, 0.35, 0.35, 0.18, 0.18]],
  [9, [0.52, 0.52, 0.3, 0.3, 0, 0.15]],
  [10, [0.45, 0.45, 0.26, 0.26, 0, 0.13]],
  [11, [0.41, 0.41, 0, 0.23, 0, 0]],
  [12, [0.37, 0.37, 0, 0.21, 0, 0]],
  [13, [0, 0.34, 0, 0, 0, 0]],
  [14, [0, 0.31, 0, 0, 0, 0]],
  [15, [0, 0.28, 0, 0, 0, 0]],
];
