import type { Check } from '../check.ts';
import { agree, capital, others, subject } from '../speak.ts';

export const countDiffers: Check = {
  name: 'count-differs',
  group: 'Machine',
  severity: 'error',
  title: 'Two numbers of one group do not add up.',
  explanation: `
A group that is declared \`x6\` and laid out in 2 rows of 4 has six or eight bolts, and one of the two is wrong: a bolt
will be looked for that is not there, or left out. The checker compares the count with the names of the positions, with
the layout, with \`2 each\` of the parts that it holds, and with
the number that a step names (\`remove cover-screws x3\`).

A count that is not declared is unknown, and nothing is compared with it.`,
  source: 'an open-hardware rover assembly (Apache-2.0): screws listed and screws used do not add up',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x6 layout 2 rows of 4
                                                 ^^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x8 layout 2 rows of 4
}
`,
  says: (fact) => {
    const { where, each, step, number, count } = fact.words!;
    const declared = `${count} ${count === '1' ? 'is' : 'are'} declared`;
    if (step)
      return {
        message: `This step names ${number} of ${subject(fact)}, and ${declared}.`,
        help: 'Count them on the machine, and mend the number that is wrong; some of a group are named by position: `#1, #2`.',
      };
    return {
      message: each
        ? `At ${each} each ${others(fact)} ${agree(fact, 'needs', 'need', 'others')} ${number} of ${subject(fact)}, and ${declared}.`
        : `${capital(where!)} of ${subject(fact)} gives ${number}, and ${declared}.`,
      help: 'Count them on the machine or the drawing, and mend the number that is wrong.',
    };
  },
};
