import type { Check } from '../check.ts';
import { agree, capital, others, subject, typedOthers } from '../speak.ts';

export const faceNotCleaned: Check = {
  name: 'face-not-cleaned',
  group: 'Fluids, faces, consumables',
  severity: 'warning',
  title: 'A joint is closed on faces that nobody cleaned.',
  explanation: `
Old gasket, grit and oil on a face keep the new gasket from sealing. The machine file says which faces lie under which parts
and seals (\`face … under …\`); the checker asks that a face is cleaned after its joint was parted and before it is closed
again.

Write \`clean …\` before this step.`,
  source: 'common practice, no source',
  bad: `
machine washer "drum washer" {
  part sump "sump" fixed
  part lid "sump lid" on sump held by lid-screws sealed by lid-gasket
  seal lid-gasket "lid gasket" on sump single-use
  face lid-face "sealing face of the sump" under lid-gasket
  fastener lid-screws "lid screws" x6 torque 5 N·m
}
procedure renew-gasket "Renew the lid gasket" for washer supplies lid-gasket {
  unbolt lid
  remove lid-gasket and discard
  fit new lid-gasket
          ^^^^^^^^^^
  bolt up lid
}
`,
  good: `
machine washer "drum washer" {
  part sump "sump" fixed
  part lid "sump lid" on sump held by lid-screws sealed by lid-gasket
  seal lid-gasket "lid gasket" on sump single-use
  face lid-face "sealing face of the sump" under lid-gasket
  fastener lid-screws "lid screws" x6 torque 5 N·m
}
procedure renew-gasket "Renew the lid gasket" for washer supplies lid-gasket {
  unbolt lid
  remove lid-gasket and discard
  clean lid-face
  fit new lid-gasket
  bolt up lid
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${agree(fact, 'goes', 'go')} on before ${others(fact)} ${agree(fact, 'was', 'were', 'others')} cleaned.`,
    help: `Write \`clean ${typedOthers(fact)}\` before this step.`,
  }),
};
