import type { Check } from '../check.ts';
import { capital, isAre, others, subject } from '../speak.ts';

export const startWithoutSeal: Check = {
  name: 'start-without-seal',
  group: 'Order and completeness',
  severity: 'warning',
  title: 'The job starts with a joint closed and its seal out.',
  explanation: `
No finished work leaves a cover on with its seal beside it. Where a job begins like that, something was fitted on trial
before, and the text does not say so: a reader who begins with a closed machine measures with the seal in, and gets
another value.

Write the trial as steps: the cover off at the start, \`trial fit\`, the measurement, \`remove\`. Or say at the start that the
part is off, too. A seal between two parts may be out while one of them is on.`,
  source:
    'US Army TM 5-3805-261-34, paragraph 10-4: the gap is measured with the cover on and without its packing, which no step says (case 12)',
  bad: `
machine mill "hammer mill" {
  part box "box" fixed
  part cover "cover" on box sealed by packing
  seal packing "packing" on box
}
procedure measure-gap "Measure the gap" for mill
  starts with packing off
              ^^^^^^^^^^^
{
  measure gap between cover and box "Write it down."
  remove cover
  fit packing
  refit cover
}
`,
  good: `
machine mill "hammer mill" {
  part box "box" fixed
  part cover "cover" on box sealed by packing
  seal packing "packing" on box
}
procedure measure-gap "Measure the gap" for mill
  starts with cover, packing off
{
  trial fit cover
  measure gap between cover and box "Write it down."
  remove cover
  fit packing
  refit cover
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} off at the start and ${others(fact)} ${isAre(fact, 'others')} on: no step says how that came to be.`,
    help: 'Say at the start that both are off and write the trial as steps (`trial fit`), or leave the seal in.',
  }),
};
