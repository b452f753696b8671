import type { Check } from '../check.ts';

export const duplicateName: Check = {
  name: 'duplicate-name',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A name is declared twice.',
  explanation: `
A name stands for one thing, so that a step that uses it can mean one thing only. Where a name is declared a second
time the first declaration holds, and the second one is left out of everything that is checked.

A machine that extends another one may declare a name of it anew: that is how it differs.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "front cover" on bed
  part cover "rear cover" on bed
       ^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part front-cover "front cover" on bed
  part rear-cover "rear cover" on bed
}
`,
  says: ({ words = {} }) => ({
    message: `The name \`${words.name}\` is declared before this ${words.what}.`,
    help: 'Give one of the two another name.',
  }),
};
