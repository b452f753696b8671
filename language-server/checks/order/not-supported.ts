import type { Check } from '../check.ts';
import { agree, bringBack, capital, isAre, others, subject, them, typedOthers } from '../speak.ts';

export const notSupported: Check = {
  name: 'not-supported',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A load is not supported when what carries it comes off.',
  explanation: `
When the crossmember comes off, the gearbox comes down. The machine file says what carries what (\`carries\`); the checker
asks that the load is supported or raised before its carrier comes off, and that the carrier is back before the load is
lowered onto it.

Write \`support … with …\` before this step, and \`lower\` after the carrier is back. The checker knows the order of the
steps and not the lifting gear: what may be slung where, and from which weight on, is for the site's lifting rules and for
people trained in them.`,
  source: 'common practice, no source',
  bad: `
machine van "parcel van" {
  part body "body" fixed
  part gearbox "gearbox" on body
  part crossmember "crossmember" on body held by member-bolts carries gearbox
  part rubber-mount "rubber mount" on gearbox under crossmember
  fastener member-bolts "crossmember bolts" x4 torque 50 N·m
  tool jack "transmission jack"
}
procedure renew-mount "Renew the gearbox mount" for van tools jack supplies rubber-mount {
  unbolt crossmember
         ^^^^^^^^^^^
  support gearbox with jack
  remove rubber-mount and discard
  fit new rubber-mount
  bolt up crossmember
  lower gearbox
}
`,
  good: `
machine van "parcel van" {
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
  says: (fact) => {
    const carried = fact.others!;
    const names = fact.subject!.thing.declaration.clauses.flatMap((clause) =>
      clause.clause === 'carries' ? clause.refs.map((ref) => ref.name.text) : [],
    );
    return names.includes(carried[0]!.thing.name)
      ? {
          message: `${capital(subject(fact))} ${agree(fact, 'carries', 'carry')} ${others(fact)}, which nothing supports when this step takes ${them(fact)} away.`,
          help: `Write \`support ${typedOthers(fact)} with …\` before this step.`,
        }
      : {
          message: `${capital(subject(fact))} cannot be lowered yet: ${others(fact)} ${agree(fact, 'carries', 'carry', 'others')} ${them(fact)} and ${isAre(fact, 'others')} off.`,
          help: `${bringBack(carried)} before this step.`,
        };
  },
};
