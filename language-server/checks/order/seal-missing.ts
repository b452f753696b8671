import type { Check } from '../check.ts';
import { agree, capital, isAre, others, subject, told, typedOthers } from '../speak.ts';

export const sealMissing: Check = {
  name: 'seal-missing',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A joint is closed without its seal.',
  explanation: `
A joint that is closed without its gasket leaks, and the gasket that is found on the bench tells it too late. The machine
file says what seals what (\`sealed by\`); the checker asks that the seal is in before the part or the pipe goes back.

Fit the seal before this step.`,
  source:
    'FAA AC 43.13-1B and US Army TM 5-4320-300-14, paragraph 5-21: seals are named after the parts that go on them',
  bad: `
machine washer "parts washer" {
  part tank "tank" fixed
  part lid "filter lid" on tank held by lid-screws sealed by lid-gasket
  seal lid-gasket "lid gasket" on tank single-use
  fastener lid-screws "lid screws" x4 torque 4 N·m
}
procedure renew-gasket "Renew the lid gasket" for washer supplies lid-gasket {
  unbolt lid
  remove lid-gasket and discard
  bolt up lid
          ^^^
}
`,
  good: `
machine washer "parts washer" {
  part tank "tank" fixed
  part lid "filter lid" on tank held by lid-screws sealed by lid-gasket
  seal lid-gasket "lid gasket" on tank single-use
  fastener lid-screws "lid screws" x4 torque 4 N·m
}
procedure renew-gasket "Renew the lid gasket" for washer supplies lid-gasket {
  unbolt lid
  remove lid-gasket and discard
  fit new lid-gasket
  bolt up lid
}
`,
  says: (fact) => {
    const fresh = told(fact, 'discarded') || fact.others!.some(({ thing }) => thing.singleUse);
    return {
      message: `${capital(subject(fact))} ${fact.subject!.thing.type === 'connection' ? `${isAre(fact)} connected` : `${agree(fact, 'goes', 'go')} back`} without ${others(fact)}.`,
      help: `Write \`fit ${fresh ? 'new ' : ''}${typedOthers(fact)}\` before this step.`,
    };
  },
};
