import type { Check } from '../check.ts';
import { fromText } from './from-text.ts';

/** More brackets inside one another than are read. */
const DEEP = 41;

export const nestedTooDeep: Check = {
  name: 'nested-too-deep',
  group: 'Text',
  severity: 'error',
  title: 'Blocks or brackets are nested deeper than anyone can follow.',
  explanation: `
Blocks are read 64 deep and expressions 40 deep; nothing that a person writes comes near. What lies deeper is not read,
so that a broken or made-up file cannot bring the tool down.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  value gap = ${'('.repeat(DEEP)}1 mm${')'.repeat(DEEP)}
              ${' '.repeat(DEEP - 1)} ^
}
`,
  good: `
machine press "bench press" {
  value gap = (1 mm)
}
`,
  says: fromText,
};
