import { list } from '../../model/model.ts';
import type { Check } from '../check.ts';
import { capital, isAre, subject, typed } from '../speak.ts';

export const notSecured: Check = {
  name: 'not-secured',
  group: 'Fastening',
  severity: 'error',
  title: 'A fastener that is to be secured is not.',
  explanation: `
A tab that is not bent over, a wire that is not twisted, a second nut that is not locked: the bolt holds today and walks
out in a month. The machine file says how a fastener is secured (\`secured by\`); the checker asks for a \`secure\` step
after it was loosened or out.

Write \`secure …\` after the last tightening.`,
  source: 'common practice, no source',
  bad: `
machine gearbox "reduction gearbox" {
  part housing "gear housing" fixed
  part bearing "bearing" on housing under flange
  part flange "output flange" on housing held by flange-bolts
  fastener flange-bolts "flange bolts" x4 torque 40 N·m secured by tab
}
procedure renew-bearing "Renew the bearing" for gearbox supplies bearing {
  unbolt flange
  remove bearing and discard
  fit new bearing
  refit flange
  fit flange-bolts
      ^^^^^^^^^^^^
}
`,
  good: `
machine gearbox "reduction gearbox" {
  part housing "gear housing" fixed
  part bearing "bearing" on housing under flange
  part flange "output flange" on housing held by flange-bolts
  fastener flange-bolts "flange bolts" x4 torque 40 N·m secured by tab
}
procedure renew-bearing "Renew the bearing" for gearbox supplies bearing {
  unbolt flange
  remove bearing and discard
  fit new bearing
  refit flange
  fit flange-bolts
  secure flange-bolts
}
`,
  says: (fact) => {
    const by = list(
      fact.subject!.thing.declaration.clauses.flatMap((clause) =>
        clause.clause === 'secured by' ? clause.refs.map((ref) => ref.name.text.replaceAll('-', ' ')) : [],
      ),
    );
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} not secured after this step${by ? `, though the machine file says secured by ${by}` : ''}.`,
      help: `Write \`secure ${typed(fact.subject)}\` after the last tightening.`,
    };
  },
};
