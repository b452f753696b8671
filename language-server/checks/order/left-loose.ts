import type { Check } from '../check.ts';
import { capital, isAre, subject, them, typed } from '../speak.ts';

export const leftLoose: Check = {
  name: 'left-loose',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A fastener that was loosened or only started is not tight at the end.',
  explanation: `
A bolt that is loosened, started by hand or taken through some of its stages looks finished from a metre away. The
checker asks that every position of every fastener is finally tight when the job ends.

Write the \`tighten\` step (or the stages that are missing), or say \`ends with … loose\` where the next job goes on from
there.`,
  source: 'common practice, no source',
  bad: `
machine lathe "bench lathe" {
  part bed "lathe bed" fixed
  part motor "motor" on bed held by motor-bolts
  part belt "drive belt" on motor
  fastener motor-bolts "motor bolts" x4 torque 25 N·m
}
procedure renew-belt "Renew the drive belt" for lathe supplies belt {
  loosen motor-bolts
         ^^^^^^^^^^^
  remove belt and discard
  fit new belt
}
`,
  good: `
machine lathe "bench lathe" {
  part bed "lathe bed" fixed
  part motor "motor" on bed held by motor-bolts
  part belt "drive belt" on motor
  fastener motor-bolts "motor bolts" x4 torque 25 N·m
}
procedure renew-belt "Renew the drive belt" for lathe supplies belt {
  loosen motor-bolts
  remove belt and discard
  fit new belt
  tighten motor-bolts
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} not tight at the end of the job: no later step works on ${them(fact)}.`,
    help: `Write \`tighten ${typed(fact.subject)}\`${fact.subject!.thing.stages.length > 1 ? ', or the stages that are still missing' : ''}.`,
  }),
};
