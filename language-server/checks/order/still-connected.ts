import type { Check } from '../check.ts';
import { capital, isAre, others, subject, typedOthers } from '../speak.ts';

export const stillConnected: Check = {
  name: 'still-connected',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A part comes off while a plug, hose or cable is still on it.',
  explanation: `
A part that is lifted off with its plug or hose still on tears the lead or spills the line. The machine file says what is
joined to what (\`joins\`, \`joined by\`); the checker asks that every connection between what comes off and what stays
is apart. For a part that is only moved aside, connections that are \`slack\` may stay on.

Write the \`disconnect\` step first.`,
  source: 'common practice, no source',
  bad: `
machine dryer "grain dryer" {
  part duct "air duct" fixed
  part blower "blower" on duct held by blower-bolts
  fastener blower-bolts "blower bolts" x4 torque 25 N·m
  connection blower-plug "blower plug" joins blower to duct
}
procedure renew-blower "Renew the blower" for dryer supplies blower {
  unbolt blower and discard
         ^^^^^^
  fit new blower
  fit blower-bolts
  connect blower-plug
}
`,
  good: `
machine dryer "grain dryer" {
  part duct "air duct" fixed
  part blower "blower" on duct held by blower-bolts
  fastener blower-bolts "blower bolts" x4 torque 25 N·m
  connection blower-plug "blower plug" joins blower to duct
}
procedure renew-blower "Renew the blower" for dryer supplies blower {
  disconnect blower-plug
  unbolt blower and discard
  fit new blower
  fit blower-bolts
  connect blower-plug
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} cannot come away: ${others(fact)} ${isAre(fact, 'others')} still connected.`,
    help: `Write \`disconnect ${typedOthers(fact)}\` before this step.`,
  }),
};
