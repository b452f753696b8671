import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const twoStops: Check = {
  name: 'two-stops',
  group: 'Fastening',
  severity: 'warning',
  title: 'A torque and a feel end one turning, and neither is said to win.',
  explanation: `
"Tighten to 40 N·m until the hub binds": if the hub binds at 30, does the technician go on? Two ends need a word that says
which one counts.

Write \`not over …\` for a torque that is only a limit, or "whichever comes first" in the sentence, or make two steps.`,
  source: 'common practice, no source',
  bad: `
machine trailer "flat trailer" {
  part axle "axle" fixed
  part hub "hub" on axle held by hub-nut
  fastener hub-nut "hub nut" x1
}
procedure fit-hub "Fit the hub" for trailer starts with hub off {
  fit hub
  fit hub-nut by hand
  tighten hub-nut to 40 N·m until "the hub binds"
                            ^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine trailer "flat trailer" {
  part axle "axle" fixed
  part hub "hub" on axle held by hub-nut
  fastener hub-nut "hub nut" x1
}
procedure fit-hub "Fit the hub" for trailer starts with hub off {
  fit hub
  fit hub-nut by hand
  tighten hub-nut not over 40 N·m until "the hub binds"
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `Both ${words.torque} and “${words.feel}” end this turning of ${subject(fact)}, and neither is said to win.`,
    help: 'Write `not over …` where the torque is a limit, or say in the sentence which comes first.',
  }),
};
