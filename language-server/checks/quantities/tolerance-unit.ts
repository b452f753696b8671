import type { Check } from '../check.ts';

export const toleranceUnit: Check = {
  name: 'tolerance-unit',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A tolerance has a unit of another kind than its value.',
  explanation: `
A torque of 30 lbf·ft cannot be right to within 3 lb: pounds are no torque, and it is not clear whether 3 lbf·ft or
3 per cent was meant. A tolerance has the unit of its value, a unit of the same kind, or a percentage.

A unit written once at the end (\`30 ± 3 lbf·ft\`) holds for both.`,
  source: 'US Army TM 5-3835-220-13&P, paragraph 6-4.12: 30 ft. lbs. with a tolerance of 3 lbs.',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4 torque 30 lbf·ft ± 3 lb
                                                               ^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4 torque 30 ± 3 lbf·ft
}
`,
  says: ({ words = {} }) => {
    const { unit, kind, value, valueKind, right } = words;
    return {
      message: `The tolerance is in ${unit}, ${kind}, and its value is in ${value}, ${valueKind}.`,
      help: `Write the tolerance in ${value}, as in \`${right}\`, or in %.`,
    };
  },
};
