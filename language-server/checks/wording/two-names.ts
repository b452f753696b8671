import type { Check } from '../check.ts';

export const twoNames: Check = {
  name: 'two-names',
  group: 'Words and rules',
  severity: 'information',
  title: 'The sentences call one thing by two names.',
  explanation: `
The reader looks for the second thing that there is none of. Where the machine file gives a thing a title and other names (\`also called\`), the sentences of one
procedure keep to one of them; so they do with words of the trade that mean the same, such as *circlip* and *snap ring*.

A name in brackets behind the first one only explains it, and is left alone.`,
  source: 'ASD-STE100 rule 1.11 (number as in issue 9, seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard also called "hoisting cable"
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard "The rope is slack then."
  inspect rope "Any broken wire of the hoisting cable counts."
                                       ^^^^^^^^^^^^^^
  bolt up guard
}
`,
  good: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard also called "hoisting cable"
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard "The rope is slack then."
  inspect rope "Any broken wire of the rope counts."
  bolt up guard
}
`,
  says: ({ words = {} }) => ({
    message: `“${words.second}” is called “${words.first}” in another sentence.`,
    help: 'Keep to one of the two names.',
  }),
};
