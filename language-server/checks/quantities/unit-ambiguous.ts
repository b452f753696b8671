import type { Check } from '../check.ts';

export const unitAmbiguous: Check = {
  name: 'unit-ambiguous',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A unit has two readings that differ.',
  explanation: `
A gallon, quart, pint or fluid ounce is one amount in the United States and another in Britain, and a ton is one of
three. A quantity in such a unit is not compared with anything, because nobody knows how much it is.

Write the unit with \`US-\` or \`imp-\` before it (\`US-pt\`, \`imp-gal\`), or in litres or kilograms.`,
  source:
    'NIST SP 811, appendix B.8: the US and the Canadian and U.K. (imperial) gallon, pint and fluid ounce are listed side by side',
  bad: `
machine press "bench press" {
  fluid press-oil "press oil"
  system oil "hydraulic oil" holds 3 pints press-oil
                                     ^^^^^
}
`,
  good: `
machine press "bench press" {
  fluid press-oil "press oil"
  system oil "hydraulic oil" holds 3 imp-pt press-oil
}
`,
  says: ({ words = {} }) => ({
    message: `\`${words.typed}\` may mean ${words.readings}, and they are not the same amount.`,
    help: `Write ${words.units}.`,
  }),
};
