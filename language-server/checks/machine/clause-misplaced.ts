import type { Check } from '../check.ts';
import { fromText } from '../text/from-text.ts';

export const clauseMisplaced: Check = {
  name: 'clause-misplaced',
  group: 'Machine',
  severity: 'error',
  title: 'A clause stands with a kind of thing that it says nothing about.',
  explanation: `
Each kind of thing has its clauses: a fastener has a thread, a system has a pressure, a fluid has neither. A clause that
stands with another kind is read and left out of everything that is checked, so what it was meant to say is lost.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed thread M8
                        ^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed held by ram-bolt
  fastener ram-bolt "ram bolt" x1 thread M8
}
`,
  says: (fact) => ({
    ...fromText(fact),
    help: 'Take the clause to the thing that it is about, or declare this thing as what it is.',
  }),
};
