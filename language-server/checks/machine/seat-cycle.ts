import type { Check } from '../check.ts';
import { agree, capital, isAre, subject } from '../speak.ts';
import { together } from './together.ts';

export const seatCycle: Check = {
  name: 'seat-cycle',
  group: 'Machine',
  severity: 'error',
  title: 'Things sit on each other in a circle.',
  explanation: `
What a thing sits on (\`on\`) must be there before it goes on. Things that sit on each other in a circle, or on
themselves, could never be put together; one of the clauses is the wrong way round, or should be \`under\` or
\`joined by\`.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" on ram
       ^^^
  part ram "ram" on bed
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
`,
  says: (fact) => ({
    message:
      fact.others!.length > 0
        ? `${capital(together(fact))} sit on each other, so none of them can go on first.`
        : `${capital(subject(fact))} ${isAre(fact)} declared to sit on ${agree(fact, 'itself', 'themselves')}.`,
    help: 'Write `on` for what is there first only; the first of all stands on nothing or is `fixed`.',
  }),
};
