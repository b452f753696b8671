import type { Check } from '../check.ts';
import { fromText } from './from-text.ts';

export const braceMissing: Check = {
  name: 'brace-missing',
  group: 'Text',
  severity: 'error',
  title: 'A block is not opened or not closed.',
  explanation: `
Every opening brace needs a closing one. Where one is missing, the indentation shows where the block was meant to end,
and the text is read as if the brace stood there; so one slip gives one finding and the rest is still checked.

Work in a procedure that is not closed is still being written: what it leaves undone is not reported.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  task look "Look" {
                   ^
    clean ram
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  task look "Look" {
    clean ram
  }
}
`,
  says: fromText,
};
