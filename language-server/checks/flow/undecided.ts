import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const undecided: Check = {
  name: 'undecided',
  group: 'Flow and measurements',
  severity: 'warning',
  title: 'The cases that one thing depends on are too many to tell apart.',
  explanation: `
All variants and outcomes are followed at once. Where very many conditions bear on one and the same thing in every mixture,
there are more cases than can be told apart in reasonable time. Then the state of that thing is given up and nothing is
said of it; everything else is decided as usual. Where the very order of the steps depends on too many conditions (hundreds of
places at which the work may stop), nothing is said from there on.

A procedure is followed through 200,000 statements, 500 rounds of one \`for each\` and 50 procedures within each other.

Fewer conditions around that thing, or a task for each variant, make it decidable again.`,
  source: 'a limit of this checker',
  bad: hostile(true),
  good: hostile(false),
  says: ({ words: { limit, most } = {}, ...fact }) => {
    if (fact.subject)
      return {
        message: `Too many conditions bear on ${subject(fact)}: whether every step on it can be done was not decided.`,
        help: 'Put the steps on it under fewer conditions. Everything else was checked.',
      };
    if (limit === 'rounds')
      return {
        message: `These are more than ${most} rounds: only the first ${most} were followed.`,
        help: 'Go through fewer at a time.',
      };
    if (limit === 'uses')
      return {
        message: `More than ${most} procedures and tasks use each other here: what the next one does was not followed.`,
        help: 'Write the steps out in fewer layers.',
      };
    return {
      message:
        'Too many conditions or repeated steps lead here: whether the steps from here on can be done was not decided.',
      help: 'Put what follows into procedures of its own, one for each variant or finding.',
    };
  },
};

/** A valve that is turned over by many mixtures of three signs out of twenty-four: no short way to say when it is open. */
function hostile(mixed: boolean): string {
  const sign = (index: number) => `if "sign ${(index % 24) + 1} is seen"`;
  const turnOver = '{ if valve open { close valve } otherwise { open valve } }';
  const lines = Array.from({ length: 72 }, (_, index) =>
    mixed
      ? `  ${sign(index)} { ${sign(index * 5 + 3)} { ${sign(index * 11 + 7)} ${turnOver} } }`
      : `  ${sign(index)} { clean body }`,
  );
  return `
machine rig "test rig" {
  part body "body" fixed
  control valve "valve" on body normally closed
}
procedure signs "Follow the signs" for rig {
${mixed ? '          ^^^^^\n' : ''}${lines.join('\n')}
  continues
}
`;
}
