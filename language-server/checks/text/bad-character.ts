import type { Check } from '../check.ts';
import { fromText } from './from-text.ts';

export const badCharacter: Check = {
  name: 'bad-character',
  group: 'Text',
  severity: 'error',
  title: 'A character has no meaning where it stands.',
  explanation: `
Outside texts and comments a line has words, numbers, units and a few marks. Names are words with hyphens, without
underscores; texts stand between straight quotation marks, which a word processor likes to bend.

Inside a text every character may stand.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed @ mass 6 kg
                        ^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed mass 6 kg
}
`,
  says: fromText,
};
