/**
 * What is wrong with the fastening data of a machine file by itself: torques against strengths, plans, orders
 * against layouts. What the steps of a procedure do with them is in fastening-steps.ts.
 */
import type { Quantity } from '../../grammar/quantity/index.ts';
import type { Fact } from './facts.ts';
import {
  type Declared,
  type DeclaredStage,
  declared,
  firstOf,
  largestTorque,
  placeIn,
} from './fastening-declared.ts';
import { declaredOrderFaults } from './fastening-orders.ts';
import { planFaults } from './fastening-plan.ts';
import { aboveStrength, aboveUsual, belowUsual } from './fastening-strength.ts';
import type { Model } from './model.ts';

export function fasteningFaults(model: Model): Fact[] {
  const facts: Fact[] = [];
  for (const thing of model.things) {
    if (!thing.torque && thing.stages.length === 0 && thing.type !== 'fastener') continue;
    const one = declared(model, thing);
    if (thing.stages.length > 0 || thing.torque) {
      const strength = strengthFaults(model, one);
      // A stage that is too much, or hardly anything, is far from its neighbours: one cause, one finding.
      const told = (fact: Fact) => fact.check === 'stages-far-apart' && strength.length > 0;
      facts.push(...planFaults(model, one).filter((fact) => !told(fact)), ...strength);
    }
    if (thing.type === 'fastener') facts.push(...declaredOrderFaults(model, thing));
  }
  return facts;
}

/**
 * The largest torque against the proof load, the last one against what is usual. Where an angle follows, the torque before
 * it only seats the joint.
 */
function strengthFaults(model: Model, one: Declared): Fact[] {
  if (!one.bolt) return [];
  const angled = one.stages.findIndex(({ stage }) => stage.kind === 'angle');
  const purpose = angled >= 0 ? 'seats' : one.thing.toYield ? 'to yield' : 'whole';
  const largest = largestTorque(one.torques);
  if (!largest) return [];
  if (purpose !== 'to yield') {
    const above = aboveStrength(model, one, largest, placeOf(one, largest));
    if (above) return [above];
  }
  const judged = purpose === 'seats' ? seating(one, angled) : lastRun(one);
  if (!judged) return [];
  const at = placeOf(one, judged);
  const above = aboveUsual(model, one, judged, at, purpose);
  if (above) return [above];
  // A torque that is felt, or is backed off again, is no measure of how tight the joint gets.
  const soft = one.stages.some(({ stage: { kind } }) => kind === 'until' || kind === 'back off');
  if (soft || one.thing.freesWhenLoose) return [];
  const below = belowUsual(model, one, judged, at, purpose);
  return below ? [below] : [];
}

/** The torque from which the angle is counted. */
function seating(one: Declared, angled: number): Quantity | undefined {
  return largestTorque(sinceLoosened(one.stages.slice(0, angled)).flatMap(({ torque }) => torque ?? []));
}

/** The largest torque of the stages that the tightening ends with. */
function lastRun(one: Declared): Quantity | undefined {
  if (!one.final) return undefined;
  return largestTorque(sinceLoosened(one.stages).flatMap(({ torque }) => torque ?? [])) ?? one.final;
}

function sinceLoosened(stages: readonly DeclaredStage[]): readonly DeclaredStage[] {
  return stages.slice(stages.findLastIndex(({ stage }) => stage.kind === 'loosen') + 1);
}

function placeOf({ thing, torque, stages }: Declared, largest: Declared['torques'][number]) {
  const stage = stages.find((each) => each.torque === largest);
  if (stage) return stage.at;
  return torque === largest && thing.torque ? placeIn(thing, firstOf(thing.torque)) : thing.place;
}
