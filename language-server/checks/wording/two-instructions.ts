import type { Check } from '../check.ts';

export const twoInstructions: Check = {
  name: 'two-instructions',
  group: 'Words and rules',
  severity: 'information',
  title: 'One sentence gives two instructions.',
  explanation: `
A second instruction behind an *and* is the one that is forgotten, and nobody can tick off half a step. Each action has a line of its own, and is
checked there.

Actions done at the same time (\`Hold the nut and turn the screw.\`), close pairs (\`remove and discard\`) and a result right after a look or a
measurement stay together.`,
  source: 'ASD-STE100 rule 5.2 (number as in issue 9, seen second hand), with its exceptions',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard "Take out the upper screws, then lift the guard off its pins."
                                                ^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
  unbolt guard "The upper screws come first. Hold the guard and lift it off its pins."
  clean rope
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `This sentence gives a second instruction: to ${words.verb}.`,
    help: 'Make a step of its own of it, or at least a sentence.',
  }),
};
