import type { Check } from '../check.ts';

export const textLong: Check = {
  name: 'text-long',
  group: 'Words and rules',
  severity: 'information',
  title: 'A text has more sentences than a paragraph should.',
  explanation: `
More than six sentences in one place are a wall: the one that matters stands in the middle. What is to be done belongs in steps of its own,
one each, and what is good to know in a note.

Split the text, or make steps of its sentences.`,
  source: 'ASD-STE100 rule 6.6 (number as in issue 9, seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  note "The rope is galvanised. It came with the lift. It has six strands. Each has nineteen wires. The core is hemp. The hemp holds the grease. It is dark."
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  clean rope
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
  note "The rope is galvanised. It has six strands of nineteen wires. The core is hemp, which holds the grease."
  clean rope
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `This text has ${words.sentences} sentences; a paragraph has at most 6.`,
    help: 'Split it, or make steps of its instructions.',
  }),
};
