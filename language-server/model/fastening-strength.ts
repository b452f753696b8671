/**
 * A torque against the strength of the thread it is for: facts `torque-above-strength` and `torque-below-usual`.
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

/**
 * Below this share of the proof load even with the least friction, the torque hardly loads the bolt at all.
 * Joints with soft gaskets keep above it. Judgement, no source.
 */
const HARDLY_LOADED = 1 / 6;

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

/** The torque hardly loads the thread, even with the least friction: a digit may be missing. */
export function belowUsual(model: Model, one: Declared, torque: Quantity, at: Place): Fact | undefined {
  const { bolt, thing } = one;
  const band = torqueBand(torque);
  if (!bolt || !band || !Number.isFinite(band.high)) return undefined;
  const { nominalDiameter } = bolt.thread;
  const least = Math.min(bolt.nutFactor.low, 0.12);
  const share = preloadFromTorque(band.high, nominalDiameter, least) / bolt.proofLoad;
  if (!(share < HARDLY_LOADED) || !(band.high > 0)) return undefined;
  const usual = usualTorqueBand(nominalDiameter, bolt.proofLoad, bolt.nutFactor);
  return {
    check: 'torque-below-usual',
    at,
    subject: { thing },
    words: {
      torque: said(torque),
      ...boltWords(bolt),
      share: String(Math.max(1, Math.round(share * 100))),
      low: torqueText(usual.low, torque),
      high: torqueText(usual.high, torque),
    },
    cases: model.cases.and(model.built, thing.exists),
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
