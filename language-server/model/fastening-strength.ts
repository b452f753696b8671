/**
 * A torque against the strength of the thread it is for: facts `torque-above-strength`,
 * `torque-above-usual`, `torque-below-usual`.
 * T = K d F (Shigley), proof load after ISO 898-1 or SAE J429. Nothing is claimed without thread and class.
 */
import type { Quantity } from '../../grammar/quantity/index.ts';
import { preloadFromTorque, torqueFromPreload, usualTorqueBand } from '../fastening/index.ts';
import type { Place } from '../report/finding.ts';
import type { Fact } from './facts.ts';
import { bandIn, readTyped, said, torqueBand, torqueText } from './fastening-amounts.ts';
import { type Bolt, clauseOf, type Declared } from './fastening-declared.ts';
import type { Model } from './model.ts';

/** Printed proof loads are rounded; the product differs from them by up to 0.5 %. */
const ROUNDING = 1.01;

/** K where nothing is said: zinc plated or as received (Shigley, 9th ed., table 8-15). */
const USUAL_NUT_FACTOR = 0.2;

/**
 * Shares of the proof load with the usual K. Joints are tightened to 75 % (Shigley), and tables for a friction
 * of 0.14 come to 84 % (VDI 2230): a third of that hardly loads a bolt, and more than 120 % is in no table of torques. A nut that a split pin locks may sit in a joint that only keeps
 * parts together: AC 43.13-1B table 7-1 gives shear nuts 24 ksi. Where a plan means to yield, the torque goes beyond
 * proof; a torque that an angle follows only seats the joint: from 6 % (judgement, no source) to what is usual as a whole.
 */
const USUAL = { least: 0.28, pinned: 0.1, most: 1.2, toYield: 1.8, seats: { least: 0.06, most: 0.75 } };

/** The torque loads the thread beyond its proof load, whatever the friction. */
export function aboveStrength(model: Model, one: Declared, torque: Quantity, at: Place): Fact | undefined {
  const { bolt, thing } = one;
  const band = torqueBand(torque);
  if (!bolt || !band) return undefined;
  const asked = Number.isFinite(band.high) ? band.high : band.low;
  // What a self-locking nut takes to turn does not stretch the bolt.
  const load = preloadFromTorque(
    asked - prevailing(model, one),
    bolt.thread.nominalDiameter,
    bolt.nutFactor.high,
  );
  const share = load / bolt.proofLoad;
  if (!(share > ROUNDING)) return undefined;
  const most = torqueFromPreload(bolt.proofLoad, bolt.thread.nominalDiameter, bolt.nutFactor.high);
  return {
    check: 'torque-above-strength',
    at,
    subject: { thing },
    words: {
      torque: said(torque),
      ...boltWords(bolt),
      share: String(Math.round(share * 100)),
      k: String(Number(bolt.nutFactor.high.toPrecision(2))),
      stated: bolt.nutFactor.stated ? 'yes' : '',
      most: torqueText(most, torque),
    },
    cases: model.cases.and(model.built, thing.exists),
  };
}

/** What a torque is for: all of the tightening, all of it up to yield, or the seat for an angle. */
export type Purpose = 'whole' | 'to yield' | 'seats';

/**
 * The torque hardly loads the thread: a digit may be missing. Silent where a limit close above it shows that so little is
 * meant.
 */
export function belowUsual(
  model: Model,
  one: Declared,
  torque: Quantity,
  at: Place,
  purpose: Purpose = 'whole',
): Fact | undefined {
  const { bolt, thing } = one;
  const band = torqueBand(torque);
  if (!bolt || !band) return undefined;
  // Of a range the upper end; the lower one where it is out of all proportion, or nothing else is given.
  const wide = band.low > 0 && band.low < band.high / 3;
  const asked = (wide ? band.low : band.high) - prevailing(model, one);
  if (!Number.isFinite(asked)) return undefined;
  const limit = torqueBand(one.limit);
  if (limit && limit.high <= 2 * band.high) return undefined;
  const k = bolt.nutFactor.stated ? bolt.nutFactor.low : USUAL_NUT_FACTOR;
  const share = preloadFromTorque(Math.max(0, asked), bolt.thread.nominalDiameter, k) / bolt.proofLoad;
  if (!(share < leastFor(thing, purpose)) || !(band.high > 0)) return undefined;
  return usualFact(model, one, torque, at, { check: 'torque-below-usual', share, purpose, k });
}

/** The torque is more than any table gives such a thread, and yet below what it can carry when dry. */
export function aboveUsual(
  model: Model,
  one: Declared,
  torque: Quantity,
  at: Place,
  purpose: Purpose = 'whole',
): Fact | undefined {
  const { bolt } = one;
  const band = torqueBand(torque);
  if (!bolt || !band || (bolt.nutFactor.stated && purpose === 'whole')) return undefined;
  const asked = (Number.isFinite(band.high) ? band.high : band.low) - prevailing(model, one);
  const k = bolt.nutFactor.stated ? bolt.nutFactor.high : USUAL_NUT_FACTOR;
  const share = preloadFromTorque(asked, bolt.thread.nominalDiameter, k) / bolt.proofLoad;
  const most = purpose === 'seats' ? USUAL.seats.most : purpose === 'to yield' ? USUAL.toYield : USUAL.most;
  if (!(share > most)) return undefined;
  return usualFact(model, one, torque, at, { check: 'torque-above-usual', share, purpose, k });
}

function leastFor(thing: Declared['thing'], purpose: Purpose): number {
  if (purpose === 'seats') return USUAL.seats.least;
  const secured = clauseOf(thing, 'secured by')?.refs ?? [];
  return secured.some(({ name }) => /split-?pin/.test(name.text)) ? USUAL.pinned : USUAL.least;
}

function usualFact(
  model: Model,
  one: Declared,
  torque: Quantity,
  at: Place,
  found: { check: 'torque-below-usual' | 'torque-above-usual'; share: number; purpose: Purpose; k: number },
): Fact {
  const bolt = one.bolt!;
  const usual = usualTorqueBand(bolt.thread.nominalDiameter, bolt.proofLoad, bolt.nutFactor);
  return {
    check: found.check,
    at,
    subject: { thing: one.thing },
    words: {
      torque: said(torque),
      ...boltWords(bolt),
      share: String(Math.max(1, Math.round(found.share * 100))),
      k: String(Number(found.k.toPrecision(2))),
      seats: found.purpose === 'seats' ? 'yes' : '',
      low: torqueText(usual.low, torque),
      high: torqueText(usual.high, torque),
    },
    cases: model.cases.and(model.built, one.thing.exists),
  };
}

function boltWords({ thread, strength, proofLoad }: Bolt): Record<string, string> {
  return {
    thread: thread.designation,
    class: strength.title,
    proof: `${Number((proofLoad / 1000).toPrecision(3))} kN`,
  };
}

/** N·m; 0 where nothing is said. */
function prevailing(model: Model, { thing }: Declared): number {
  const read = readTyped(clauseOf(thing, 'prevailing torque')?.quantity, model.values);
  if (read?.unit.kind !== 'torque') return 0;
  const { low, high } = bandIn(read, 'N·m');
  return Number.isFinite(high) ? high : low;
}
