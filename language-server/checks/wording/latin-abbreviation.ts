import type { Check } from '../check.ts';

export const latinAbbreviation: Check = {
  name: 'latin-abbreviation',
  group: 'Words and rules',
  severity: 'information',
  title: 'A Latin abbreviation stands in a text.',
  explanation: `
*i.e.* and *e.g.* are mixed up by readers and writers alike, and *etc.* leaves the rest to guess. Words of the language take no more room.`,
  source: 'ASD-STE100 rule GR-6 (number as in issue 9, seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  inspect rope "Any damage counts, e.g. a broken wire."
                                   ^^^^
  bolt up guard
}
`,
  good: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  inspect rope "Any damage counts, for example a broken wire."
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `\`${words.word}\` is Latin, and readers mix it up.`,
    help: `Write ${words.say}.`,
  }),
};
