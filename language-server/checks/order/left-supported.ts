import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, them, typed } from '../speak.ts';

export const leftSupported: Check = {
  name: 'left-supported',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something still hangs or stands on its support at the end.',
  explanation: `
A jack or sling that stays under a part is found when the machine is moved. The checker asks that whatever was supported
or raised is lowered by the end of the job, after what carries it is back.

Write the \`lower\` step.`,
  source: 'common practice, no source',
  bad: `
machine van "delivery van" {
  part body "body" fixed
  part gearbox "gearbox" on body
  part crossmember "crossmember" on body held by member-bolts carries gearbox
  part rubber-mount "rubber mount" on gearbox under crossmember
  fastener member-bolts "crossmember bolts" x4 torque 50 N·m
  tool jack "transmission jack"
}
procedure renew-mount "Renew the gearbox mount" for van tools jack supplies rubber-mount {
  support gearbox with jack
          ^^^^^^^
  unbolt crossmember
  remove rubber-mount and discard
  fit new rubber-mount
  bolt up crossmember
}
`,
  good: `
machine van "delivery van" {
  part body "body" fixed
  part gearbox "gearbox" on body
  part crossmember "crossmember" on body held by member-bolts carries gearbox
  part rubber-mount "rubber mount" on gearbox under crossmember
  fastener member-bolts "crossmember bolts" x4 torque 50 N·m
  tool jack "transmission jack"
}
procedure renew-mount "Renew the gearbox mount" for van tools jack supplies rubber-mount {
  support gearbox with jack
  unbolt crossmember
  remove rubber-mount and discard
  fit new rubber-mount
  bolt up crossmember
  lower gearbox
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still on ${agree(fact, 'its', 'their')} support at the end of the job.`,
    help: `Write \`lower ${typed(fact.subject)}\` when everything that carries ${them(fact)} is back.`,
  }),
};
