import type { Check } from '../check.ts';
import { lacking } from './put-on.ts';

export const lubricantMissing: Check = {
  name: 'lubricant-missing',
  group: 'Fluids, faces, consumables',
  severity: 'warning',
  title: 'Something goes in dry that is declared with a lubricant.',
  explanation: `
A torque is given for a thread as it is oiled: on a dry one the same torque leaves the joint slack, and a dry seal tears as it goes
in. What the machine file says is \`lubricated with\` something asks for it again after it came off, before or while it goes in, at the
latest before the job ends; a bolt before it is tight.

A \`lubricate\` step counts, and so does the lubricant after \`with\` (\`fit new ring with grease\`) or in the sentence of the step.
Where the machine file says nothing, nothing is asked.`,
  source:
    'TM 10-3930-669-20, E-4: the threads of an angle-tightened screw are oiled first; for seals common practice, no source',
  bad: `
machine press "baling press" {
  part frame "frame" fixed
  part ram "ram" on frame
  seal ram-ring "ram ring" on ram single-use lubricated with grease
  consumable grease "ring grease"
}
procedure renew-ring "Renew the ram ring" for press supplies ram-ring {
  remove ram
  remove ram-ring and discard
  fit new ram-ring
          ^^^^^^^^
  refit ram
}
`,
  good: `
machine press "baling press" {
  part frame "frame" fixed
  part ram "ram" on frame
  seal ram-ring "ram ring" on ram single-use lubricated with grease
  consumable grease "ring grease"
}
procedure renew-ring "Renew the ram ring" for press supplies ram-ring {
  remove ram
  remove ram-ring and discard
  fit new ram-ring with grease
  refit ram
}
`,
  says: (fact) => lacking(fact, ({ lubricatedWith }) => lubricatedWith, 'lubricate'),
};
