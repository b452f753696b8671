import type { Check } from '../check.ts';
import { fromText } from '../text/from-text.ts';

export const unitMissing: Check = {
  name: 'unit-missing',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A number has no unit where it needs one.',
  explanation: `
A number alone says nothing: 25 may be newton metres or pound-feet. Every quantity has its unit directly behind the
number, on the same line; a unit given once at the end of a range or a tolerance holds for all of it.

Counts, stages and friction factors are numbers without a unit.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed mass 19
                             ^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed mass 19 kg
}
`,
  says: fromText,
};
