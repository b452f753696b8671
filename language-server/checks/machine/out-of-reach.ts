import type { Check } from '../check.ts';
import { agree, capital, isAre, others, subject, them, typed, typedOthers } from '../speak.ts';
import { together } from './together.ts';

export const outOfReach: Check = {
  name: 'out-of-reach',
  group: 'Machine',
  severity: 'warning',
  title: 'A thing can be reached by nobody.',
  explanation: `
What covers a thing must come off first. Where the cover is \`fixed\`, or can only come off after the thing that it
covers (its own fasteners lie under that thing), no order of steps leads there, and every procedure that touches the
thing will be found wrong.

Only what can come off is looked at: a thing that is itself \`fixed\` is never taken off.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part housing "housing" on bed fixed
  part ram "ram" on bed under housing
       ^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part housing "housing" on bed
  part ram "ram" on bed under housing
}
`,
  says: (fact) => {
    if (fact.words?.why === 'fixed')
      return {
        message: `${capital(subject(fact))} ${isAre(fact)} under ${others(fact)}, and ${agree(fact, 'that is', 'those are', 'others')} fixed: nobody can reach ${them(fact)}.`,
        help: `Take \`fixed\` off \`${typedOthers(fact)}\`, or \`under\` off \`${typed(fact.subject)}\`.`,
      };
    return {
      message: `${capital(together(fact))} are in each other's way: none of them can come off first.`,
      help: 'Follow `under`, `held by` and `joined by` through these declarations: one of them is the wrong way round, or a hose is `slack`.',
    };
  },
};
