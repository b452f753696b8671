import type { Check } from '../check.ts';

export const semicolon: Check = {
  name: 'semicolon',
  group: 'Words and rules',
  severity: 'information',
  title: 'A semicolon joins two sentences.',
  explanation: `
What stands behind a semicolon is a sentence: give it a full stop and a capital letter. Two short sentences are read faster than a long one, and are counted
rightly.`,
  source: 'ASD-STE100 rule 8.1 (number as in issue 9, seen second hand)',
  bad: `
machine lift "goods lift" {
  part frame "frame" fixed
  part guard "guard" on frame held by guard-screws
  part rope "rope" on frame under guard
  fastener guard-screws "guard screws" x4 torque 8 N·m
}
procedure look-at-rope "Look at the rope" for lift {
  unbolt guard
  inspect rope "The rope is under tension; it springs back."
                                         ^
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
  inspect rope "The rope is under tension. It springs back."
  bolt up guard
}
`,
  says: () => ({
    message: 'A semicolon joins two sentences here.',
    help: 'Put a full stop, or a comma and `and`.',
  }),
};
