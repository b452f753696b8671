import type { Check } from '../check.ts';

export const rangeImpossible: Check = {
  name: 'range-impossible',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'A condition or an outcome can never hold.',
  explanation: `
A condition that can never hold hides the steps behind it: nobody will ever do them. The usual slip is “and” where “or”
is meant, as in “less than 0.005 in and more than 0.025 in”. The same goes for two opposite states of one thing at once,
two values of one choice at once, and outcomes that no reading can have, such as a time below zero.

A range that runs downwards is told by \`range-reversed\`, and a variant that is never built by \`variant-dead\`.`,
  source:
    'US Army TM 5-3805-261-34, paragraph 10-4: shims are shared out if the total is less than 0.005 and more than 0.025 (case 12)',
  bad: `
machine grader "grader pump" {
  part body "body" fixed
  part shims "shims" on body
}
procedure shim-total "Choose the shims" for grader {
  record total of shims
  if "the total is less than 0.005 in and more than 0.025 in" { choose shims "Share them out." }
     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine grader "grader pump" {
  part body "body" fixed
  part shims "shims" on body
}
procedure shim-total "Choose the shims" for grader {
  record total of shims
  if "the total is less than 0.005 in or more than 0.025 in" { choose shims "Share them out." }
}
`,
  says: ({ words = {} }) =>
    words.of === 'and'
      ? {
          message: `No reading is “${words.typed}” at once.`,
          help: 'Write “or” where one of them is enough.',
        }
      : words.of === 'interval'
        ? {
            message: `No reading is ever “${words.typed}”.`,
            help: 'Mend the number, its sign or its unit.',
          }
        : {
            message: `“${words.one}” and “${words.other}” are never true at once.`,
            help: 'Perhaps “or” is meant, or one of the two is wrong.',
          },
};
