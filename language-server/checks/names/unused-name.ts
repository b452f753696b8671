import type { Check } from '../check.ts';

export const unusedName: Check = {
  name: 'unused-name',
  group: 'Names and quantities',
  severity: 'hint',
  title: 'A choice or value of the procedure has a name and is never used.',
  explanation: `
A choice that no step asks for, or a measured value that nothing is done with, is work without an end: either the step
that needs it was left out, or the name can go.

Only names that the procedure declares itself are looked at, not those of the machine.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  measure gap between ram and bed as side-play
                                     ^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  measure gap between ram and bed as side-play
  record total = side-play + 0.2 mm
}
`,
  says: ({ words = {} }) => ({
    message: `The ${words.what} \`${words.name}\` is never used.`,
    help:
      words.what === 'choice'
        ? `Ask for it, as in \`when ${words.name} is … { }\`, or take it out.`
        : 'Use it in a later step, or take the name out.',
  }),
};
