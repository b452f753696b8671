import type { Check } from '../check.ts';

export const notImperative: Check = {
  name: 'not-imperative',
  group: 'Words and rules',
  severity: 'information',
  title: 'An instruction is not given as a command.',
  explanation: `
*The bolts must be removed* leaves open who does it, and when. *Remove the bolts* does not. The checker reports what *must*, *should* or *is to* be done,
and what the mechanic *should* do, in the sentences of steps. How a thing must be is a state, and is left alone.`,
  source: 'ASD-STE100 rule 5.3 (number as in issue 9, seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  inspect rope "The rope must be wiped with a dry rag."
                         ^^^^^^^^^^^^^
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
  inspect rope "Wipe the rope with a dry rag."
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `\`${words.words}\` says what is to be done as if it were a state.`,
    help: 'Begin the sentence with the verb, as a command.',
  }),
};
