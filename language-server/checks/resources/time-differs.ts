import type { Check } from '../check.ts';

export const timeDiffers: Check = {
  name: 'time-differs',
  group: 'Tools, time, people',
  severity: 'information',
  title: 'The waits alone take longer than the time that the procedure states.',
  explanation: `
How long work takes depends on who does it; how long a step waits is written down: \`wait 24 h\`, \`let cool … for 40 min\`. Where the waits add up
to more than the stated time in the quickest way through the branches, the time cannot be how long the machine stands. Some houses state only
the hours of labour, so the finding is quiet.

State how long the job takes from beginning to end, or say in the title that the time is labour.`,
  source: 'common practice, no source',
  bad: `
machine tank "water tank" {
  part shell "shell" fixed
  face seam "seam"
}
procedure seal-seam "Seal the seam" for tank time 2 h {
                                             ^^^^^^^^
  clean seam
  wait 90 min "Let it dry."
  wait 1 h
}
`,
  good: `
machine tank "water tank" {
  part shell "shell" fixed
  face seam "seam"
}
procedure seal-seam "Seal the seam" for tank time 3 h {
  clean seam
  wait 90 min "Let it dry."
  wait 1 h
}
`,
  says: ({ words = {} }) => ({
    message: `The procedure states ${words.stated}, and its waits alone take ${words.waits}.`,
    help: 'State how long the job takes from beginning to end.',
  }),
};
