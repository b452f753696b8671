import type { Check } from '../check.ts';
import { agree, capital, isAre, subject } from '../speak.ts';
import { together } from './together.ts';

export const coverCycle: Check = {
  name: 'cover-cycle',
  group: 'Machine',
  severity: 'error',
  title: 'Things cover each other in a circle.',
  explanation: `
What covers a thing (\`under\`) must be off before the thing can be reached. Things that cover each other in a circle, or
themselves, could never be reached at all; one of the clauses is the wrong way round.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part guard "guard" on bed under ram
       ^^^^^
  part ram "ram" on bed under guard
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part guard "guard" on bed
  part ram "ram" on bed under guard
}
`,
  says: (fact) => ({
    message:
      fact.others!.length > 0
        ? `${capital(together(fact))} cover each other, so none of them can be reached.`
        : `${capital(subject(fact))} ${isAre(fact)} declared to cover ${agree(fact, 'itself', 'themselves')}.`,
    help: 'Write `under` on what comes off later only.',
  }),
};
