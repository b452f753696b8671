import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const gaugeMissing: Check = {
  name: 'gauge-missing',
  group: 'Fastening',
  severity: 'information',
  title: 'A fastener is turned by an angle, and no angle gauge is listed.',
  explanation: `
An angle in degrees is read off a gauge or a disc on the drive. A tool list that leaves it out sends the technician back to
the store, or makes him guess. The checker looks for a tool whose name or title speaks of an angle, a protractor or degrees.

Nothing is said where no tools are listed, where the angle is given in parts of a turn, or where the sentence of the step
tells marks or flats to go by.`,
  source:
    'US Army TM 10-3930-669-20, E-4: torque wrench and angle meter are listed; otherwise common practice, no source',
  bad: `
machine engine "barge engine" {
  part block "engine block" fixed
  part cap "bearing cap" on block held by cap-bolts
  fastener cap-bolts "cap bolts" x2 plan { 30 N·m; 60° }
  tool torque-wrench "torque wrench" range 10..60 N·m
}
procedure fit-cap "Fit the cap" for engine tools torque-wrench starts with cap off {
  fit cap
  fit cap-bolts by hand
  tighten cap-bolts with torque-wrench
          ^^^^^^^^^
}
`,
  good: `
machine engine "barge engine" {
  part block "engine block" fixed
  part cap "bearing cap" on block held by cap-bolts
  fastener cap-bolts "cap bolts" x2 plan { 30 N·m; 60° }
  tool torque-wrench "torque wrench" range 10..60 N·m
  tool angle-disc "angle disc"
}
procedure fit-cap "Fit the cap" for engine tools torque-wrench, angle-disc starts with cap off {
  fit cap
  fit cap-bolts by hand
  tighten cap-bolts with torque-wrench, angle-disc
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `This step turns ${subject(fact)} by ${words.angle}, and no angle gauge is listed.`,
    help: 'List an angle gauge after `tools`, or say in the step which marks or flats to go by.',
  }),
};
