/**
 * Torque and preload. Torques in N·m, preloads in N, diameters and pitches in m, K and friction dimensionless.
 *
 * Short form T = K d F (Shigley; NASA-STD-5020), long form with thread and collar friction (Shigley eq. 8-26,
 * from memory), and the form of VDI 2230 part 1 with its preload at a share of Rp0.2 (from memory); all three
 * are tested against printed values.
 */

import type { NutFactor } from './nut-factors.ts';
import { UNSTATED_NUT_FACTOR } from './nut-factors.ts';
import type { Band } from './problem.ts';
import { band } from './problem.ts';
import type { Strength } from './strength.ts';
import type { Thread } from './threads.ts';

/** T = K d F, in N·m. */
export function torqueFromPreload(preload: number, nominalDiameter: number, nutFactor: number): number {
  return nutFactor * nominalDiameter * preload;
}

/** F = T / (K d), in N. */
export function preloadFromTorque(torque: number, nominalDiameter: number, nutFactor: number): number {
  return torque / (nutFactor * nominalDiameter);
}

/** K = T / (d F). */
export function nutFactorFromTorque(torque: number, nominalDiameter: number, preload: number): number {
  return torque / (nominalDiameter * preload);
}

/** The K that a preload is worked out with, and where it comes from. */
export interface NutFactorRange extends Band {
  /** `stated` by the author, from the `condition`, or `assumed` because nothing is said. */
  readonly from: 'stated' | 'condition' | 'assumed';
}

/**
 * K as stated; or of a condition, spread by the scatter of torque control (NASA-STD-5020: F (1 - G) .. F (1 + G)
 * is the same as K / (1 + G) .. K / (1 - G)); or the whole usual range.
 */
export function nutFactorRange(given: { stated?: number | Band; condition?: NutFactor }): NutFactorRange {
  if (given.stated !== undefined) {
    const { low, high } =
      typeof given.stated === 'number' ? { low: given.stated, high: given.stated } : given.stated;
    return { ...band(low, high), from: 'stated' };
  }
  if (given.condition) {
    const { usual, scatter } = given.condition;
    return {
      low: usual / (1 + scatter),
      high: usual / (1 - scatter),
      from: 'condition',
    };
  }
  return { ...UNSTATED_NUT_FACTOR, from: 'assumed' };
}

/** Lowest and highest preload of a torque range over a K range, N. */
export function preloadBand(torque: Band, nominalDiameter: number, nutFactor: Band): Band {
  return {
    low: preloadFromTorque(torque.low, nominalDiameter, nutFactor.high),
    high: preloadFromTorque(torque.high, nominalDiameter, nutFactor.low),
  };
}

/** NASA-STD-5020: F (1 - G) .. F (1 + G) about the preload of one torque and one K; N. */
export function scatterBand(preload: number, scatter: number): Band {
  return { low: preload * (1 - scatter), high: preload * (1 + scatter) };
}

/** Preload as a share of the proof load: 1 is at proof. */
export function shareOfProof(preload: number, proofLoad: number): number {
  return preload / proofLoad;
}

/** 0.75 Fp for joints that come apart again, 0.90 Fp for permanent ones (Shigley; 0.90 from memory). N. */
export function recommendedPreload(proofLoad: number, use: 'reusable' | 'permanent' = 'reusable'): number {
  return (use === 'reusable' ? 0.75 : 0.9) * proofLoad;
}

/** Half angle of the thread flanks, 30 degrees. */
const FLANK = Math.PI / 6;

export interface LongForm {
  readonly nominalDiameter: number;
  readonly pitch: number;
  /** dm, m: usually the pitch diameter d2; Shigley takes the mean of major and root. */
  readonly meanDiameter: number;
  /** f, between the threads. */
  readonly threadFriction: number;
  /** fc, under the head or nut. */
  readonly headFriction: number;
  /** Mean collar radius over d; 0.625 for a washer face of 1.5 d (Shigley). */
  readonly collarFactor?: number;
}

/** K = (dm/2d)(tan l + f sec a)/(1 - f tan l sec a) + 0.625 fc, a = 30 degrees (Shigley eq. 8-26). */
export function longFormNutFactor(joint: LongForm): number {
  const tanLead = joint.pitch / (Math.PI * joint.meanDiameter);
  const friction = joint.threadFriction / Math.cos(FLANK);
  const threads = (tanLead + friction) / (1 - friction * tanLead);
  const collar = joint.collarFactor ?? 0.625;
  return (joint.meanDiameter / (2 * joint.nominalDiameter)) * threads + collar * joint.headFriction;
}

/** Lead angle in degrees, tan l = P/(pi dm). */
export function leadAngle(pitch: number, meanDiameter: number): number {
  return (Math.atan(pitch / (Math.PI * meanDiameter)) * 180) / Math.PI;
}

/** Long form, preload to torque, N·m. */
export function longFormTorque(preload: number, joint: LongForm): number {
  return torqueFromPreload(preload, joint.nominalDiameter, longFormNutFactor(joint));
}

/** Long form, torque to preload, N. */
export function longFormPreload(torque: number, joint: LongForm): number {
  return preloadFromTorque(torque, joint.nominalDiameter, longFormNutFactor(joint));
}

export interface VdiForm {
  /** mu_G, in the thread. */
  readonly threadFriction: number;
  /** mu_K, under the head. */
  readonly headFriction: number;
  /** D_Km, m: mean diameter of the bearing ring under the head, see `hexagonBearingDiameter`. */
  readonly headMeanDiameter: number;
}

/** VDI 2230: M_A = F_M (0.16 P + 0.58 d2 mu_G + (D_Km / 2) mu_K), N·m. */
export function vdiTorque(preload: number, thread: Thread, form: VdiForm): number {
  return preload * vdiLever(thread, form);
}

/** VDI 2230 turned round: preload of a tightening torque, N. */
export function vdiPreloadFromTorque(torque: number, thread: Thread, form: VdiForm): number {
  return torque / vdiLever(thread, form);
}

/**
 * VDI 2230 assembly preload at which tension and torsion together use `share` (0.9 by default) of Rp0.2:
 * F_M = share Rp0.2 As / sqrt(1 + 3 [1.5 (d2/d0)(P/(pi d2) + 1.155 mu_G)]^2), d0 = (d2 + d3)/2. N.
 */
export function vdiAssemblyPreload(
  thread: Thread,
  strength: Strength,
  threadFriction: number,
  share = 0.9,
): number {
  const { pitch, pitchDiameter, rootDiameter, stressArea } = thread;
  const stressDiameter = (pitchDiameter + rootDiameter) / 2;
  const torsion =
    1.5 * (pitchDiameter / stressDiameter) * (pitch / (Math.PI * pitchDiameter) + 1.155 * threadFriction);
  return (share * strength.yield * stressArea) / Math.sqrt(1 + 3 * torsion ** 2);
}

/**
 * D_Km = (dw + dh)/2 in m for a hexagon head (washer face dw of ISO 4014) over a medium clearance hole (dh of
 * ISO 273), both from memory; undefined for sizes not in that table.
 */
export function hexagonBearingDiameter(thread: Thread): number | undefined {
  if (thread.system !== 'metric') return undefined;
  const row = HEXAGON_BEARING.find(([d]) => Math.abs(d / 1000 - thread.nominalDiameter) < 1e-7);
  return row && (row[1] + row[2]) / 2000;
}

/** d, dw, dh in mm. */
const HEXAGON_BEARING: readonly (readonly [number, number, number])[] = [
  [5, 6.88, 5.5],
  [6, 8.88, 6.6],
  [8, 11.63, 9],
  [10, 14.63, 11],
  [12, 16.63, 13.5],
  [14, 19.64, 15.5],
  [16, 22.49, 17.5],
  [18, 25.34, 20],
  [20, 28.19, 22],
  [22, 31.71, 24],
  [24, 33.61, 26],
];

function vdiLever(thread: Thread, form: VdiForm): number {
  return (
    0.16 * thread.pitch +
    0.58 * thread.pitchDiameter * form.threadFriction +
    (form.headMeanDiameter / 2) * form.headFriction
  );
}
