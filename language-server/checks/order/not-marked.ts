import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, typed } from '../speak.ts';

export const notMarked: Check = {
  name: 'not-marked',
  group: 'Order and completeness',
  severity: 'warning',
  title: 'Matched parts come off unmarked.',
  explanation: `
Parts that have run together belong together: caps, pistons, rockers and brake shoes go back where they were. Once
they lie on the bench nobody can tell them apart. The checker asks that parts that the machine file calls \`matched\` are
marked before they come off for the first time, unless they carry numbers (\`numbered\`).

Write \`mark …\` before this step, or \`numbered\` in the machine file.`,
  source: 'common practice, no source',
  bad: `
machine block-press "block press" {
  part frame "frame" fixed
  part gib "gib" on frame under wear-pads
  part wear-pads "wear pads" x2 on frame matched
}
procedure renew-gib "Renew the gib" for block-press supplies gib {
  remove wear-pads
         ^^^^^^^^^
  remove gib and discard
  fit new gib
  refit wear-pads
}
`,
  good: `
machine block-press "block press" {
  part frame "frame" fixed
  part gib "gib" on frame under wear-pads
  part wear-pads "wear pads" x2 on frame matched
}
procedure renew-gib "Renew the gib" for block-press supplies gib {
  mark wear-pads
  remove wear-pads
  remove gib and discard
  fit new gib
  refit wear-pads
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} matched and ${agree(fact, 'comes', 'come')} off unmarked: nobody can tell afterwards where ${agree(fact, 'it goes', 'each one goes')}.`,
    help: `Write \`mark ${typed(fact.subject)}\` before this step, or \`numbered\` in the machine file where ${agree(fact, 'it carries a number', 'they carry numbers')}.`,
  }),
};
