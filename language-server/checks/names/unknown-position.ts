import type { Check } from '../check.ts';
import { capital, subject } from '../speak.ts';

export const unknownPosition: Check = {
  name: 'unknown-position',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A position is named that the group does not have.',
  explanation: `
A group has the positions that its declaration gives it: \`x4\` has #1 to #4, \`positions left, right\` has #left and
#right. Any other position is a slip, or the declaration has the wrong count.

A group whose count is not declared has no positions that could be wrong.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure look-over "Look the press over" for press {
  clean cover-screws #5
                     ^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure look-over "Look the press over" for press {
  clean cover-screws #4
}
`,
  says: ({ words: { position, known } = {}, ...fact }) => ({
    message: known!.includes(' ')
      ? `${capital(subject(fact))} have no position ${position}; the positions are ${known}.`
      : `${capital(subject(fact))} has only the position ${known}, and not ${position}.`,
    help: 'Name one of its positions, or mend the count in its declaration.',
  }),
};
