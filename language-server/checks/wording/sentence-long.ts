import type { Check } from '../check.ts';

export const sentenceLong: Check = {
  name: 'sentence-long',
  group: 'Words and rules',
  severity: 'information',
  title: 'A sentence has more words than a reader takes in at once.',
  explanation: `
A long sentence is read twice or not at all. An instruction has at most 20 words, a description at most 25. A number with its unit
counts as one word, and so does what is in brackets, a label in quotation marks, and words joined by hyphens; what is in brackets counts
once more as a sentence of its own.

Make two sentences of it, or put the condition into an \`if\` and the values into the machine file.`,
  source: 'ASD-STE100 rule 5.1 and 6.3 (number as in issue 9, seen second hand); the counting rules likewise',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  inspect rope "Look at the rope from the drum to the hook for broken wires and for flat places and for places where the grease has gone."
                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
  inspect rope "Look at the rope from the drum to the hook. A broken wire, a flat place or a dry place counts."
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `This sentence has ${words.words} words; ${words.kind} has at most ${words.most}.`,
    help: 'Make two sentences of it: one instruction or one topic each.',
  }),
};
