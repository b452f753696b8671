import type { Check } from '../check.ts';
import { fromText } from './from-text.ts';

export const textNotClosed: Check = {
  name: 'text-not-closed',
  group: 'Text',
  severity: 'error',
  title: 'A text has no closing quotation mark.',
  explanation: `
A text for the reader stands between quotation marks and ends on the line on which it begins; a long one goes on in a
second text on the next line, and the two are read as one. Without its closing mark everything up to the end of the
line is taken for the text.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram on bed
           ^^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
`,
  says: fromText,
};
