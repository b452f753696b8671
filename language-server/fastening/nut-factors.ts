/**
 * The nut factor K of T = K d F by surface condition, and how far preload scatters by way of tightening.
 * Tables from textbooks, dimensionless. They are usual values: where a machine's documentation states K, that
 * governs.
 */

import type { Band } from './problem.ts';

export type SurfaceCondition = 'dry' | 'zinc' | 'lubricated' | 'cadmium' | 'anti-seize' | 'grip-nut';

export interface NutFactor {
  readonly condition: SurfaceCondition;
  /** For the reader. */
  readonly title: string;
  /** K, dimensionless. */
  readonly usual: number;
  /** Preload scatter of torque control in this condition, as a share: F (1 - s) .. F (1 + s). */
  readonly scatter: number;
  /** Whether `scatter` is printed for this very condition, or is that of the nearest one. */
  readonly scatterFor: 'this condition' | 'nearest condition';
  readonly source: string;
}

const SHIGLEY = 'Shigley, 9th ed., table 8-15 (seen)';

/** Scatter: NASA, as quoted in textbooks (seen): unlubricated 35 %, cadmium plated 30 %, lubricated 25 %. */
export const NUT_FACTORS: readonly NutFactor[] = [
  nutFactor('dry', 'dry, not plated, black finish', 0.3, 0.35, 'this condition'),
  nutFactor('zinc', 'zinc plated', 0.2, 0.35, 'nearest condition'),
  nutFactor('lubricated', 'lubricated', 0.18, 0.25, 'this condition'),
  nutFactor('cadmium', 'cadmium plated', 0.16, 0.3, 'this condition'),
  nutFactor('anti-seize', 'with anti-seize compound', 0.12, 0.25, 'nearest condition'),
  nutFactor('grip-nut', 'with a lubricated grip nut', 0.09, 0.25, 'nearest condition'),
];

/**
 * The range that is credible when nothing is said: from anti-seize to dry and black (Shigley table 8-15).
 * Grip nuts are left out: they are said when they are there.
 */
export const UNSTATED_NUT_FACTOR: Band = { low: 0.12, high: 0.3 };

/** The condition that words such as `engine oil`, `zinc plated` or `anti-seize paste` mean, if any. */
export function nutFactorFor(words: string): NutFactor | undefined {
  const text = words.toLowerCase();
  const condition = CONDITION_WORDS.find(([, pattern]) => pattern.test(text))?.[0];
  return NUT_FACTORS.find((row) => row.condition === condition);
}

/**
 * First match wins, so that a plated and oiled bolt counts as oiled. Which product is which: common practice,
 * no source. Thread-locking compound is in no row: its friction differs from product to product.
 */
const CONDITION_WORDS: readonly (readonly [SurfaceCondition, RegExp])[] = [
  ['grip-nut', /\bgrip[- ]?nut/],
  ['anti-seize', /anti[- ]?sei[zs]e|\bcopper[- ](?:paste|grease|slip)|\bmoly\b|molybdenum/],
  ['dry', /\bunlubricated|\bdry\b|\bno (?:oil|lubricant)|\bdegreased/],
  ['lubricated', /lubricat|\boil(?:ed)?\b|\bgreased?\b|\bwaxed?\b|tallow/],
  ['cadmium', /cadmium|\bcad[- ]plated/],
  ['zinc', /\bzinc|galvani[sz]ed/],
  ['dry', /\bblack\b|\bplain\b|\bunplated|\bnon[- ]?plated|\bas[- ]received/],
];

export interface Scatter {
  readonly method: string;
  /** Preload scatter as a share either way. */
  readonly scatter: number;
  readonly source: string;
}

/** How well the ways of tightening reach a preload; both tables seen second hand. */
export const SCATTER_BY_METHOD: readonly Scatter[] = [
  {
    method: 'torque, unlubricated',
    scatter: 0.35,
    source: 'NASA (quoted in textbooks)',
  },
  {
    method: 'torque, cadmium plated',
    scatter: 0.3,
    source: 'NASA (quoted in textbooks)',
  },
  {
    method: 'torque, lubricated',
    scatter: 0.25,
    source: 'NASA (quoted in textbooks)',
  },
  {
    method: 'hydraulic tensioner',
    scatter: 0.15,
    source: 'NASA (quoted in textbooks)',
  },
  {
    method: 'load-indicating washer',
    scatter: 0.1,
    source: 'NASA (quoted in textbooks)',
  },
  { method: 'ultrasonic', scatter: 0.1, source: 'NASA (quoted in textbooks)' },
  {
    method: 'bolt elongation',
    scatter: 0.05,
    source: 'NASA (quoted in textbooks)',
  },
  { method: 'by feel', scatter: 0.35, source: "Machinery's Handbook" },
  { method: 'torque wrench', scatter: 0.25, source: "Machinery's Handbook" },
  { method: 'turn of the nut', scatter: 0.15, source: "Machinery's Handbook" },
];

function nutFactor(
  condition: SurfaceCondition,
  title: string,
  usual: number,
  scatter: number,
  scatterFor: NutFactor['scatterFor'],
): NutFactor {
  return { condition, title, usual, scatter, scatterFor, source: SHIGLEY };
}
