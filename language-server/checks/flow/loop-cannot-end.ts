import type { Check } from '../check.ts';

export const loopCannotEnd: Check = {
  name: 'loop-cannot-end',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'A repeat waits for something that no round of it changes.',
  explanation: `
A repeat ends when its condition holds. Where the condition is about a variant, or about a choice that was made before, no
round changes it: the work ends at once or never.

What each technician finds or chooses anew in every round is a good end: \`choice\`, or \`as\` behind a measurement, inside the
repeat. Quiet where a \`stop\` stands inside. A repeat whose end may just not come is told by \`loop-without-limit\`.`,
  source:
    'US Army TM 10-8145-222-23, WP 0014: if the vacuum holds, the note leads back to the step that has just been done (case 18)',
  bad: `
machine brake "hand brake" {
  variant hub: plain, sealed
  part drum "drum" fixed
}
procedure set-brake "Set the brake" for brake {
  repeat until hub is sealed at most 10 times {
               ^^^^^^^^^^^^^
    adjust drum
  } otherwise {
    stop "Renew the hub."
  }
}
`,
  good: `
machine brake "hand brake" {
  variant hub: plain, sealed
  part drum "drum" fixed
}
procedure set-brake "Set the brake" for brake {
  when hub is sealed { clean drum }
  repeat until "the drum turns freely" at most 10 times {
    adjust drum
  } otherwise {
    stop "Renew the hub."
  }
}
`,
  says: ({ words = {} }) => ({
    message: `No round of the repeat changes ${words.axis}, so it ends at once or never.`,
    help: 'Repeat until something that the rounds bring about, or ask with `if`.',
  }),
};
