import type { Check } from '../check.ts';

export const vagueWord: Check = {
  name: 'vague-word',
  group: 'Words and rules',
  severity: 'information',
  title: 'A word stands where a value or a sign should stand.',
  explanation: `
*As required*, *properly* and *carefully* mean what the reader makes of them: two technicians do two different jobs. The checker reports such words in the
sentences of steps and in what is to be felt or seen, where neither the sentence nor the step gives a value.

Give the value, or say what is felt or seen when it is right.`,
  source:
    'common practice, no source; ASD-STE100 asks for words with one meaning (rule 1.3, number as in issue 9, seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  inspect rope "Clean the drum as required."
                               ^^^^^^^^^^^
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
  inspect rope "Clean the drum until its bare metal shows."
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `\`${words.word}\` says nothing that two technicians do alike.`,
    help: words.say!,
  }),
};
