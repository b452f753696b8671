import type { Check } from '../check.ts';

export const limitMissing: Check = {
  name: 'limit-missing',
  group: 'Words and rules',
  severity: 'information',
  title: 'A value is to be reached about, and nobody says how near.',
  explanation: `
*About 5 mm* is 4 for one and 6 for the next. Where a step brings something to a length, a torque, a pressure, a force, a voltage or a current, the
checker reports a value with *about* before it and no limits anywhere in the step.

Give a range (\`4..6 mm\`) or a tolerance (\`5 ± 1 mm\`).`,
  source:
    'US NRC and HSE lists on maintenance procedures: give values with their limits, and quantities that match the gauge (seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  adjust rope "Set the slack to about 40 mm."
                                ^^^^^^^^^^^
  bolt up guard
}
`,
  good: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  adjust rope "Set the slack to 35..45 mm."
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `\`${words.words}\` says how much, but not how near is near enough.`,
    help: 'Give the limits: `4..6 mm`, or `5 ± 1 mm`.',
  }),
};
