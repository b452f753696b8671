import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const torqueUnbounded: Check = {
  name: 'torque-unbounded',
  group: 'Fastening',
  severity: 'information',
  title: 'A torque has a lower end only.',
  explanation: `
"At least 90 N·m" lets the technician pull until something gives. A torque needs an upper end, even where it is seldom
reached: a castle nut begins at the least torque and is turned on to the next slot, but never beyond the most.

Write a range, a tolerance, or \`not over …\` beside it. An angle or a stop that is felt ends the turning too.`,
  source: 'FAA AC 43.13-1B, 7-40: a castle nut starts at the minimum torque and never exceeds the maximum',
  bad: `
machine trailer "flat trailer" {
  part axle "axle" fixed
  part hub "hub" on axle held by hub-nut
  fastener hub-nut "hub nut" x1 torque at least 90 N·m
                                       ^^^^^^^^^^^^^^^
}
`,
  good: `
machine trailer "flat trailer" {
  part axle "axle" fixed
  part hub "hub" on axle held by hub-nut
  fastener hub-nut "hub nut" x1 torque at least 90 N·m not over 120 N·m
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `The torque of ${subject(fact)} is ${words.torque}, with no upper end.`,
    help: 'Write a range such as `90..120 N·m`, or `not over …` beside it.',
  }),
};
