import type { Check } from '../check.ts';

export const rangeReversed: Check = {
  name: 'range-reversed',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A range runs from the greater to the smaller number.',
  explanation: `
A range is written from its lower to its upper end. One that runs downwards has its numbers swapped, or a digit of one
of them is wrong, and no value can be compared with it.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  tool small-wrench "small torque wrench" range 60..5 N·m
                                                ^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  tool small-wrench "small torque wrench" range 5..60 N·m
}
`,
  says: ({ words = {} }) => ({
    message: `The range ${words.typed} runs downwards: the smaller number comes first.`,
    help: `Write ${words.right}, or mend the number that is wrong.`,
  }),
};
