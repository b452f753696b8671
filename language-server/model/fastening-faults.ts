/**
 * What is wrong with the fastening data of a machine file by itself: torques against strengths, plans, orders
 * against layouts. What the steps of a procedure do with them is in fastening-steps.ts.
 */

import type { Fact } from './facts.ts';
import { type Declared, declared, firstOf, largestTorque, placeIn } from './fastening-declared.ts';
import { declaredOrderFaults } from './fastening-orders.ts';
import { planFaults } from './fastening-plan.ts';
import { aboveStrength, belowUsual } from './fastening-strength.ts';
import type { Model } from './model.ts';

export function fasteningFaults(model: Model): Fact[] {
  const facts: Fact[] = [];
  for (const thing of model.things) {
    if (!thing.torque && thing.stages.length === 0 && thing.type !== 'fastener') continue;
    const one = declared(model, thing);
    if (thing.stages.length > 0 || thing.torque)
      facts.push(...planFaults(model, one), ...strengthFaults(model, one));
    if (thing.type === 'fastener') facts.push(...declaredOrderFaults(model, thing));
  }
  return facts;
}

/**
 * The largest torque against the proof load. Where the plan is to yield, its last torque means to go beyond; where an
 * angle follows, the torque before it only seats the joint, and must stay below all the more.
 */
function strengthFaults(model: Model, one: Declared): Fact[] {
  if (!one.bolt) return [];
  const angled = one.stages.some(({ stage }) => stage.kind === 'angle');
  if (one.thing.toYield && !angled) return [];
  const largest = largestTorque(one.torques);
  if (!largest) return [];
  const at = placeOf(one, largest);
  const above = aboveStrength(model, one, largest, at);
  if (above) return [above];
  // A torque that seats, is felt, or is backed off again is no measure of how tight the joint gets.
  const soft = one.stages.some(({ stage: { kind } }) => kind === 'until' || kind === 'back off');
  if (angled || soft || one.thing.freesWhenLoose || !one.final) return [];
  const below = belowUsual(model, one, largest, at);
  return below ? [below] : [];
}

function placeOf({ thing, torque, stages }: Declared, largest: Declared['torques'][number]) {
  const stage = stages.find((each) => each.torque === largest);
  if (stage) return stage.at;
  return torque === largest && thing.torque ? placeIn(thing, firstOf(thing.torque)) : thing.place;
}
