import type { Check } from '../check.ts';
import { agree, capital, subject, them } from '../speak.ts';

export const neverNeeded: Check = {
  name: 'never-needed',
  group: 'Order and completeness',
  severity: 'hint',
  title: 'Something is taken off and put back though nothing needed it off.',
  explanation: `
A part that comes off and goes back with no work in between costs time, a seal and a risk. The checker calls a step
needless only when nothing that the part covers, carries, holds or sits beside was touched while it was off, and no work on the
whole machine was done.

Delete both steps, or write the work that the part came off for.`,
  source: 'common practice, no source',
  bad: `
machine winder "film winder" {
  part frame "frame" fixed
  part roller "guide roller" on frame fixed
  part panel "side panel" on frame held by panel-screws
  part belt "drive belt" on roller
  fastener panel-screws "panel screws" x4 torque 3 N·m
}
procedure renew-belt "Renew the drive belt" for winder supplies belt {
  unbolt panel
         ^^^^^
  remove belt and discard
  fit new belt
  bolt up panel
}
`,
  good: `
machine winder "film winder" {
  part frame "frame" fixed
  part roller "guide roller" on frame fixed
  part panel "side panel" on frame held by panel-screws
  part belt "drive belt" on roller
  fastener panel-screws "panel screws" x4 torque 3 N·m
}
procedure renew-belt "Renew the drive belt" for winder supplies belt {
  remove belt and discard
  fit new belt
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${agree(fact, 'comes', 'come')} off and ${agree(fact, 'goes', 'go')} back, and no step in between needs ${them(fact)} off.`,
    help: `Leave ${subject(fact)} on, or write the work that ${agree(fact, 'it comes', 'they come')} off for; where ${agree(fact, 'it hides', 'they hide')} something, say so in the machine file with \`under ${fact.subject!.thing.name}\`.`,
  }),
};
