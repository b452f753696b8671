import type { Check } from '../check.ts';

export const quantityMalformed: Check = {
  name: 'quantity-malformed',
  group: 'Names and quantities',
  severity: 'error',
  title: 'The numbers of a quantity do not go together.',
  explanation: `
\`1 h 30 min\` is one quantity, \`30 min 1 h\` is not: the members of a mixed quantity go from the greater unit to the
smaller one, and all but the last are whole. A tolerance is a size without a sign, \`at least\` has one number behind it,
and a percentage of a temperature reading says nothing, because the zero of the scale is a convention.`,
  source:
    'common practice, no source; percentages of readings after the SI brochure, 2.3.1 (Celsius temperature)',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
}
procedure look-over "Look the press over" for press {
  wait 30 min 1 h
       ^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
}
procedure look-over "Look the press over" for press {
  wait 1 h 30 min
}
`,
  says: ({ words = {} }) => ({
    message: words.message!,
    help: 'Write one value, a range (`5..60 N·m`), a tolerance (`25 ± 3 N·m`) or a mixed value (`1 h 30 min`).',
  }),
};
