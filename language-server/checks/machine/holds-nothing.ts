import type { Check } from '../check.ts';
import { agree, capital, subject, typed } from '../speak.ts';

export const holdsNothing: Check = {
  name: 'holds-nothing',
  group: 'Machine',
  severity: 'warning',
  title: 'A fastener, seal or connection belongs to nothing.',
  explanation: `
A bolt that holds nothing need never come out, and a gasket that seals nothing need never be renewed: the checker can
say nothing about them, and a step that was left out is not found. Usually the \`held by\`, \`sealed by\`, \`clamps\` or
\`joins\` that names it is missing or has a slip.

Fasteners that close a drain or filler, come with a part, or cover something are not meant.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed
  fastener cover-screws "cover screws" x4
           ^^^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
`,
  says: (fact) => {
    const name = typed(fact.subject);
    switch (fact.words!.of) {
      case 'seal':
        return {
          message: `${capital(subject(fact))} ${agree(fact, 'seals', 'seal')} nothing.`,
          help: `Write \`sealed by ${name}\` on the part that needs ${agree(fact, 'it', 'them')}.`,
        };
      case 'connection':
        return {
          message: `${capital(subject(fact))} ${agree(fact, 'joins', 'join')} nothing.`,
          help: `Write \`joins … to …\` on \`${name}\`, or \`joined by ${name}\` on a part.`,
        };
      default:
        return {
          message: `${capital(subject(fact))} ${agree(fact, 'holds', 'hold')} nothing.`,
          help: `Write \`held by ${name}\` on the part, or \`clamps … to …\` on \`${name}\`.`,
        };
    }
  },
};
