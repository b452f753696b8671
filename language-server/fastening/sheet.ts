/**
 * All that can be worked out about one fastener, as one plain object in SI. How it is printed is in
 * sheet-text.ts. Every value that cannot be known says why; none is guessed.
 */

import { nutAdvance, suspiciousAngle, turnsOfAngle } from './angle.ts';
import type { NutFactor } from './nut-factors.ts';
import { nutFactorFor } from './nut-factors.ts';
import type { NutFactorRange } from './preload.ts';
import {
  nutFactorRange,
  preloadBand,
  recommendedPreload,
  shareOfProof,
  torqueFromPreload,
} from './preload.ts';
import type { Band, FasteningProblem, Known, Unknown } from './problem.ts';
import { band, known, problem, unknown } from './problem.ts';
import type { Strength } from './strength.ts';
import { proofLoad, strengthOf } from './strength.ts';
import type { Thread } from './threads.ts';
import { readThread } from './threads.ts';
import type { Adapter } from './wrench.ts';
import { settingWithAdapter } from './wrench.ts';

/** What the author said. Torque in N·m, angle in degrees; everything may be missing. */
export interface FastenerFacts {
  /** For the heading: `head bolts`. */
  readonly name?: string;
  readonly thread?: string;
  /** Property class or grade: `8.8`, `grade 5`. */
  readonly strengthClass?: string;
  /** Final torque, one value or a range, N·m. */
  readonly torque?: number | Band;
  /** K, when the documentation states it. */
  readonly nutFactor?: number | Band;
  /** Words for the surface: `engine oil`, `zinc plated`. */
  readonly condition?: string;
  /** Angle of an angle stage, degrees. */
  readonly angle?: number;
  /** An adapter on the wrench, when one is used. */
  readonly adapter?: Adapter;
}

/** Areas m2, stresses Pa, loads N, torques N·m, lengths m, angles degrees, shares as 1 = the whole. */
export interface FastenerSheet {
  readonly name?: string;
  readonly thread: Known<Thread>;
  readonly strength: Known<Strength>;
  readonly proofLoad: Known<number>;
  readonly torque: Known<Band>;
  readonly nutFactor: NutFactorRange;
  /** The row of the table that K was taken from, when it was. */
  readonly condition?: NutFactor;
  /** Preload of the torque range over the K range. */
  readonly preload: Known<Band>;
  readonly shareOfProof: Known<Band>;
  /** Torque for 75 % of the proof load over the K range: what such a joint usually gets. */
  readonly usualTorque: Known<Band>;
  readonly angle: Known<{ readonly degrees: number; readonly turns: number; readonly advance: number }>;
  /** What the wrench is set to with the adapter, N·m. */
  readonly setting: Known<Band>;
  /** What the reader should notice. */
  readonly notes: readonly FasteningProblem[];
}

/** Works everything out; never throws. */
export function fastenerSheet(facts: FastenerFacts): FastenerSheet {
  const notes: FasteningProblem[] = [];
  const thread = threadOf(facts, notes);
  const strength = strengthFor(facts, thread);
  const load =
    thread.known && strength.known
      ? known(proofLoad(thread.value, strength.value))
      : firstUnknown(thread, strength);
  const torque = torqueOf(facts);
  const condition = facts.condition === undefined ? undefined : nutFactorFor(facts.condition);
  const nutFactor = nutFactorOf(facts, condition, notes);
  const preload =
    thread.known && torque.known
      ? known(preloadBand(torque.value, thread.value.nominalDiameter, nutFactor))
      : firstUnknown(thread, torque);
  const share =
    preload.known && load.known
      ? known({
          low: shareOfProof(preload.value.low, load.value),
          high: shareOfProof(preload.value.high, load.value),
        })
      : firstUnknown(preload, load);
  const usualTorque =
    thread.known && load.known
      ? known(usualTorqueBand(thread.value.nominalDiameter, load.value, nutFactor))
      : firstUnknown(thread, load);
  if (share.known) notes.push(...aboutShare(share.value, nutFactor));
  const angle = angleOf(facts, thread, notes);
  return {
    ...(facts.name === undefined ? {} : { name: facts.name }),
    thread,
    strength,
    proofLoad: load,
    torque,
    nutFactor,
    ...(condition === undefined ? {} : { condition }),
    preload,
    shareOfProof: share,
    usualTorque,
    angle,
    setting: settingOf(facts, torque),
    notes,
  };
}

/** Torque that brings 75 % of the proof load (Shigley, joints that come apart again), over a K range, N·m. */
export function usualTorqueBand(nominalDiameter: number, proof: number, nutFactor: Band): Band {
  const preload = recommendedPreload(proof);
  return {
    low: torqueFromPreload(preload, nominalDiameter, nutFactor.low),
    high: torqueFromPreload(preload, nominalDiameter, nutFactor.high),
  };
}

function threadOf(facts: FastenerFacts, notes: FasteningProblem[]): Known<Thread> {
  if (facts.thread === undefined) return unknown('thread-missing', 'No thread is given.');
  const reading = readThread(facts.thread);
  if (!reading.ok) return { known: false, problem: reading.problem };
  notes.push(...reading.notes);
  return known(reading.thread);
}

function strengthFor(facts: FastenerFacts, thread: Known<Thread>): Known<Strength> {
  if (facts.strengthClass === undefined) return unknown('class-missing', 'No strength class is given.');
  return thread.known ? strengthOf(facts.strengthClass, thread.value) : thread;
}

function torqueOf(facts: FastenerFacts): Known<Band> {
  if (facts.torque === undefined) return unknown('torque-missing', 'No torque is given.');
  const { low, high } =
    typeof facts.torque === 'number' ? { low: facts.torque, high: facts.torque } : facts.torque;
  if (!(low > 0) || !(high > 0)) return unknown('torque-not-positive', 'The torque is not above zero.');
  return known(band(low, high));
}

function nutFactorOf(
  facts: FastenerFacts,
  condition: NutFactor | undefined,
  notes: FasteningProblem[],
): NutFactorRange {
  const stated = facts.nutFactor;
  const usable =
    stated === undefined || (typeof stated === 'number' ? stated > 0 : stated.low > 0 && stated.high > 0);
  if (!usable)
    notes.push(problem('nut-factor-not-positive', 'The stated K is not above zero and is left out.'));
  if (stated === undefined && facts.condition !== undefined && condition === undefined) {
    notes.push(
      problem(
        'condition-unknown',
        `No usual K is known for "${facts.condition}"; the whole usual range is used.`,
      ),
    );
  }
  return nutFactorRange({
    ...(usable && stated !== undefined ? { stated } : {}),
    ...(condition === undefined ? {} : { condition }),
  });
}

function aboutShare(share: Band, nutFactor: NutFactorRange): FasteningProblem[] {
  const why = nutFactor.from === 'assumed' ? ' even with the highest usual K' : '';
  if (share.low > 1) {
    return [problem('above-proof', `The torque loads the thread beyond its proof load${why}.`)];
  }
  if (share.high > 1) {
    return [
      problem('may-exceed-proof', 'With little friction the torque loads the thread beyond its proof load.'),
    ];
  }
  return [];
}

function angleOf(
  facts: FastenerFacts,
  thread: Known<Thread>,
  notes: FasteningProblem[],
): FastenerSheet['angle'] {
  if (facts.angle === undefined) return unknown('angle-missing', 'No angle stage is given.');
  const suspicious = suspiciousAngle(facts.angle);
  if (suspicious) notes.push(suspicious);
  if (!thread.known) return thread;
  return known({
    degrees: facts.angle,
    turns: turnsOfAngle(facts.angle),
    advance: nutAdvance(thread.value.pitch, facts.angle),
  });
}

function settingOf({ adapter }: FastenerFacts, torque: Known<Band>): Known<Band> {
  if (!adapter) return unknown('adapter-missing', 'No adapter is given.');
  if (!torque.known) return torque;
  const low = settingWithAdapter(torque.value.low, adapter);
  const high = settingWithAdapter(torque.value.high, adapter);
  return low.known && high.known ? known({ low: low.value, high: high.value }) : firstUnknown(low, high);
}

function firstUnknown(...values: readonly Known<unknown>[]): Unknown {
  for (const value of values) if (!value.known) return value;
  return unknown('unknown', 'Not known.');
}
