import type { Check } from '../check.ts';

export const fileMissing: Check = {
  name: 'file-missing',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A file that is used cannot be found.',
  explanation: `
\`use\` brings in the machines, procedures and shared declarations of another file. Its path is read from the place of
the file that it stands in, with forward slashes. Without the file nothing that it declares is known.`,
  source: 'common practice, no source',
  bad: `
use "workshop-fluids.dowel"
    ^^^^^^^^^^^^^^^^^^^^^^^
machine press "bench press" {
  part bed "bed" fixed
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
}
`,
  says: ({ words = {} }) => ({
    message: `The file "${words.path}" cannot be found.`,
    help: 'Mend the path; it starts from the folder of this file.',
  }),
};
