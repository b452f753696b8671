import type { Check } from '../check.ts';
import { fromText } from './from-text.ts';

export const syntax: Check = {
  name: 'syntax',
  group: 'Text',
  severity: 'error',
  title: 'Something is missing from the text, or stands where it has no meaning.',
  explanation: `
A statement begins on a line of its own with its verb; the clauses of a declaration each begin with a word of their own.
Where a piece is missing or something else stands in its place, that piece is left out, the rest is still read and
checked, and the place is reported once.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  inspect ram expect "No scores." for
                                  ^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  inspect ram expect "No scores." for 10 min
}
`,
  says: fromText,
};
