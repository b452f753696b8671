import type { Check } from '../check.ts';

export const procedureMissing: Check = {
  name: 'procedure-missing',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A procedure or task is used that is written nowhere.',
  explanation: `
A reference that leads nowhere stops the technician in the middle of the work. \`do\`, \`reverse\` and \`starts where …
ends\` name a task of the same procedure, or a procedure of this file or of the files that it uses.

A procedure that is printed elsewhere can be declared with what it ends with:
\`procedure shut-down elsewhere "chapter 2" ends with supply isolated\`.`,
  source:
    'published procedures refer to paragraphs that are not there (transcribed cases of a generator set and of a connecting rod)',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  do shut-down
     ^^^^^^^^^
  clean ram
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure shut-down "Shut the press down" for press elsewhere "chapter 2"
procedure look-over "Look the press over" for press {
  do shut-down
  clean ram
}
`,
  says: ({ words = {} }) => {
    const { name, near, known } = words;
    return {
      message: `No procedure or task is called \`${name}\`${near ? `; did you mean \`${near}\`?` : '.'}`,
      help: near
        ? `Write \`${near}\`.`
        : `Bring its file in with \`use\`, or declare it: \`procedure ${name} elsewhere "…"\`.${known ? ` Known here: ${known}.` : ''}`,
    };
  },
};
