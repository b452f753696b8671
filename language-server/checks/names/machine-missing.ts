import type { Check } from '../check.ts';

export const machineMissing: Check = {
  name: 'machine-missing',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A procedure does not say which machine it is for.',
  explanation: `
A procedure is checked against a machine: what holds, covers and feeds what is said there. Without \`for\` and the name
of a machine no step can be checked.

A procedure that is printed elsewhere has no steps of its own and needs none.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" {
          ^^^^^^^^^
  clean ram
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  clean ram
}
`,
  says: ({ words = {} }) => ({
    message: 'The procedure does not say which machine it is for, so its steps are not checked.',
    help: write(words.known!),
  }),
};

/** `known`: names of machines, with commas between. */
function write(known: string): string {
  if (known === '') return 'Bring a machine in with `use`, and write `for` and its name behind the title.';
  return known.includes(', ')
    ? `Write \`for\` and one of these machines behind its title: ${known}.`
    : `Write \`for ${known}\` behind its title.`;
}
