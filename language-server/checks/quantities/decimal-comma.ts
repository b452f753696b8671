import type { Check } from '../check.ts';
import { fromText } from '../text/from-text.ts';

export const decimalComma: Check = {
  name: 'decimal-comma',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A number has a comma inside.',
  explanation: `
A comma parts the members of a list, so \`6,5 L\` is not six and a half litres. Decimals are written with a point, and
thousands without a mark.

Pages for readers are another matter: the language is for authors and has one spelling for a number.`,
  source:
    'common practice, no source; the 22nd General Conference on Weights and Measures (2003, resolution 10) allows both marks and asks for one',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed mass 6,5 kg
                             ^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed mass 6.5 kg
}
`,
  says: fromText,
};
