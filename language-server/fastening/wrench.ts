/**
 * Torque wrenches: which one covers a torque, what to set with an adapter, what a setting really gives.
 * Torques in N·m (any one unit will do where only ratios count), lengths in m, angles in degrees.
 *
 * Sources: adapter rule US Army TM 1-1500-204-23-9 and TM 9-254, prevailing torque TB 43-0218 and
 * FAA AC 43.13-1B, deviation ISO 6789:2003. Below 20 % of full scale: practice with setting tools (ISO 6789:2003
 * tests from 20 %; the 2017 edition starts at the lowest mark), hence a hint and no fault.
 */

import type { Band, FasteningProblem, Known } from './problem.ts';
import { known, problem, unknown } from './problem.ts';

export interface Wrench {
  readonly name: string;
  /** Lowest mark, N·m; 0 or absent where the scale starts at nothing. */
  readonly lowest?: number;
  /** Highest mark, full scale, N·m. */
  readonly highest: number;
}

export type WrenchReach = 'covers' | 'covers-part' | 'below-lowest-mark' | 'above-highest-mark';

export interface WrenchFit {
  readonly wrench: Wrench;
  readonly reach: WrenchReach;
  /** The part of the asked torque that can be set; absent when there is none. */
  readonly usable?: Band;
  /** The middle of the asked torque, or the nearest that can be set, as a share of full scale. */
  readonly shareOfFullScale?: number;
  /** That share is below 0.2: a hint. */
  readonly low: boolean;
  /** Why it does not fit, or the hint. */
  readonly problem?: FasteningProblem;
}

/** Share of full scale below which a setting tool is at its least sure (ISO 6789:2003 tests from there). */
export const LOW_SHARE = 0.2;

/** How one wrench reaches a torque range (`low` = `high` for one value; `high` may be infinite for "at least"). */
export function wrenchFit(wrench: Wrench, torque: Band): WrenchFit {
  const lowest = wrench.lowest ?? 0;
  if (torque.high < lowest) {
    const text = `${newtonMetres(torque)} is below the lowest mark of ${wrench.name}, ${number(lowest)} N·m.`;
    return { wrench, reach: 'below-lowest-mark', low: false, problem: problem('wrench-below-lowest', text) };
  }
  if (torque.low > wrench.highest) {
    const text = `${newtonMetres(torque)} is above the highest mark of ${wrench.name}, ${number(wrench.highest)} N·m.`;
    return {
      wrench,
      reach: 'above-highest-mark',
      low: false,
      problem: problem('wrench-above-highest', text),
    };
  }
  const usable = { low: Math.max(torque.low, lowest), high: Math.min(torque.high, wrench.highest) };
  const aim = Math.min(Math.max((torque.low + torque.high) / 2, usable.low), usable.high);
  const shareOfFullScale = aim / wrench.highest;
  const reach = usable.low === torque.low && usable.high === torque.high ? 'covers' : 'covers-part';
  const low = shareOfFullScale < LOW_SHARE - 1e-9;
  const fit = { wrench, reach, usable, shareOfFullScale, low } as const;
  if (!low) return fit;
  const text = `${newtonMetres(torque)} is in the lowest ${percent(LOW_SHARE)} of ${wrench.name}, which goes to ${number(wrench.highest)} N·m.`;
  return { ...fit, problem: problem('wrench-low-part', text, 'Use a smaller wrench where there is one.') };
}

/**
 * The wrench that suits best: one that covers the whole range before one that covers a part, not in its lowest
 * part, then nearest to the middle of its scale. Unknown, with the nearest miss, when none reaches it.
 */
export function bestWrench(wrenches: readonly Wrench[], torque: Band): Known<WrenchFit> {
  const fits = wrenches.map((wrench) => wrenchFit(wrench, torque));
  const usable = fits.filter((fit) => fit.usable !== undefined);
  if (usable.length > 0) {
    const rank = (fit: WrenchFit) =>
      (fit.reach === 'covers' ? 0 : 4) + (fit.low ? 2 : 0) + Math.abs((fit.shareOfFullScale ?? 0) - 0.5);
    return known(usable.reduce((best, fit) => (rank(fit) < rank(best) ? fit : best)));
  }
  if (fits.length === 0) return unknown('wrench-none', 'No torque wrench is listed.');
  const reason = fits.map((fit) => fit.problem?.message).join(' ');
  return unknown('wrench-out-of-range', reason, `List a torque wrench that covers ${newtonMetres(torque)}.`);
}

/** From a quarter to three quarters of the scale, where a wrench is most sure (US Army TB 43-0218, table 3-1). */
export function mostEffectiveBand(wrench: Wrench): Band {
  const lowest = wrench.lowest ?? 0;
  const span = wrench.highest - lowest;
  return { low: lowest + 0.25 * span, high: lowest + 0.75 * span };
}

export interface Adapter {
  /** L: drive to the middle of the grip, m. */
  readonly wrenchLength: number;
  /** A: drive to the middle of the nut, m; negative when the adapter points back along the handle. */
  readonly adapterLength: number;
  /** Between adapter and the line of the wrench, degrees; 0 in line, 90 square: no correction. */
  readonly angle?: number;
}

/**
 * Setting for a wanted torque: TW = TA L/(L + A cos a). An extension along the axis of the drive has no A and
 * needs no correction. Unknown when the lengths leave no lever.
 */
export function settingWithAdapter(applied: number, adapter: Adapter): Known<number> {
  const ratio = leverRatio(adapter);
  return ratio.known ? known(applied / ratio.value) : ratio;
}

/** Torque at the nut for a setting: TA = TW (L + A cos a)/L. */
export function appliedWithAdapter(setting: number, adapter: Adapter): Known<number> {
  const ratio = leverRatio(adapter);
  return ratio.known ? known(setting * ratio.value) : ratio;
}

/** Whether the adapter changes the torque by more than `share` (0.01 by default), so that it must be reckoned with. */
export function adapterMatters(adapter: Adapter, share = 0.01): boolean {
  const ratio = leverRatio(adapter);
  return !ratio.known || Math.abs(ratio.value - 1) > share;
}

/** `always`: FAA AC 43.13-1B 7-40. `from a third`: US Army TB 43-0218 leaves less than a third of the torque out. */
export type PrevailingRule = 'always' | 'from a third';

/**
 * Torque to set on a self-locking nut: the torque wanted plus the torque that turns the nut before it seats.
 * The third is taken of the lower end of the range (the bulletin does not say of which; our reading).
 */
export function withPrevailing(wanted: Band, running: number, rule: PrevailingRule = 'always'): Band {
  const counts = rule === 'always' || running >= wanted.low / 3;
  return counts ? { low: wanted.low + running, high: wanted.high + running } : wanted;
}

export type ToolType = 'I' | 'II';

export interface DeviationClass {
  /** I: indicating tools, II: setting tools. */
  readonly type: ToolType;
  readonly class: string;
  readonly title: string;
  /** Largest deviation as a share, for a full scale up to 10 N·m and above. */
  readonly upTo10: number;
  readonly above10: number;
  readonly known: 'seen' | 'from memory';
}

/** Permissible deviation by tool, ISO 6789:2003; only type II class A was seen in a copy. */
export const ISO_6789_2003: readonly DeviationClass[] = [
  deviation('II', 'A', 'adjustable, with a scale', 0.06, 0.04, 'seen'),
  deviation('II', 'B', 'fixed setting', 0.06, 0.04, 'from memory'),
  deviation('II', 'C', 'adjustable, without a scale', 0.06, 0.04, 'from memory'),
  deviation('II', 'D', 'screwdriver, with a scale', 0.06, 0.06, 'from memory'),
  deviation('I', 'A', 'torsion or bending beam', 0.06, 0.06, 'from memory'),
  deviation('I', 'B', 'rigid housing, with scale or dial', 0.06, 0.04, 'from memory'),
  deviation('I', 'C', 'rigid housing, electronic', 0.06, 0.04, 'from memory'),
];

/** Permissible deviation of a tool as a share (0.04 is 4 %); undefined for a class that is not in the table. */
export function permissibleDeviation(type: ToolType, toolClass: string, highest: number): number | undefined {
  const row = ISO_6789_2003.find((each) => each.type === type && each.class === toolClass);
  return row && (highest > 10 ? row.above10 : row.upTo10);
}

/**
 * What a setting may really give: deviation = (set - real)/real, so the real torque lies between
 * set/(1 + deviation) and set/(1 - deviation) (ISO 6789:2003, form from memory).
 */
export function settingBand(setting: number, deviationShare: number): Band {
  return { low: setting / (1 + deviationShare), high: setting / (1 - deviationShare) };
}

/** (L + A cos a)/L. */
function leverRatio({ wrenchLength, adapterLength, angle = 0 }: Adapter): Known<number> {
  const lever = wrenchLength + adapterLength * cosine(angle);
  if (!(wrenchLength > 0) || !(lever > 0) || !Number.isFinite(lever)) {
    return unknown(
      'adapter-no-lever',
      'These lengths leave no lever between the nut and the grip.',
      'Give the length of the wrench to the middle of the grip, and of the adapter to the middle of the nut.',
    );
  }
  return known(lever / wrenchLength);
}

/** Exact at the right angles, where the correction must vanish or be whole. */
function cosine(degrees: number): number {
  const exact = new Map([
    [0, 1],
    [90, 0],
    [180, -1],
    [270, 0],
  ]).get(((degrees % 360) + 360) % 360);
  return exact ?? Math.cos((degrees * Math.PI) / 180);
}

function newtonMetres({ low, high }: Band): string {
  if (low === high) return `${number(low)} N·m`;
  return Number.isFinite(high) ? `${number(low)} to ${number(high)} N·m` : `at least ${number(low)} N·m`;
}

function number(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function percent(share: number): string {
  return `${number(share * 100)} %`;
}

function deviation(
  type: ToolType,
  toolClass: string,
  title: string,
  upTo10: number,
  above10: number,
  how: DeviationClass['known'],
): DeviationClass {
  return { type, class: toolClass, title, upTo10, above10, known: how };
}
