import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';
import { agree, capital, isAre, subject } from '../speak.ts';

export const refittedBeforeRemoved: Check = {
  name: 'refitted-before-removed',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something is put back that never came off.',
  explanation: `
A step that tightens, connects, closes or refits what nobody loosened, disconnected, opened or removed means that the step
before it is missing, or that this one is left over from another job. The checker knows how everything stands at each step.

Write the step that is missing before this one, or delete this one.`,
  source: 'common practice, no source',
  bad: `
machine pillar-drill "pillar drill" {
  part column "column" fixed
  part motor "motor" on column held by motor-bolts
  part belt "drive belt" on motor
  fastener motor-bolts "motor bolts" x4 torque 25 N·m
}
procedure renew-belt "Renew the drive belt" for pillar-drill supplies belt {
  remove belt and discard
  fit new belt
  tighten motor-bolts
          ^^^^^^^^^^^
}
`,
  good: `
machine pillar-drill "pillar drill" {
  part column "column" fixed
  part motor "motor" on column held by motor-bolts
  part belt "drive belt" on motor
  fastener motor-bolts "motor bolts" x4 torque 25 N·m
}
procedure renew-belt "Renew the drive belt" for pillar-drill supplies belt {
  loosen motor-bolts
  remove belt and discard
  fit new belt
  tighten motor-bolts
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${neverDone(fact)}: there is nothing for this step to ${isLock(fact) ? 'unlock' : 'put back'}.`,
    help: 'Write the step that is missing before this one, or delete this one.',
  }),
};

/** What nothing did before, in the words of the trade for the kind of thing. */
function neverDone(fact: Fact): string {
  const was = agree(fact, 'was', 'were');
  if (isLock(fact)) return `${was} never locked`;
  switch (fact.subject!.thing.type) {
    case 'fastener':
      return `${was} never loosened or taken out`;
    case 'connection':
      return `${was} never disconnected`;
    case 'control':
    case 'isolator':
      return `already ${agree(fact, 'stands', 'stand')} as before the job`;
    case 'system':
      return fact.subject!.thing.hasFluid === fact.subject!.thing.hasLive
        ? `${isAre(fact)} already as before the job`
        : `${was} never ${fact.subject!.thing.hasFluid ? 'drained' : 'isolated'}`;
    default:
      return `never came off`;
  }
}

function isLock({ words }: Fact): boolean {
  return words!.already === 'unlocked';
}
