import type { Check } from '../check.ts';
import { capital, isAre, subject } from '../speak.ts';

export const stageOutOfOrder: Check = {
  name: 'stage-out-of-order',
  group: 'Fastening',
  severity: 'error',
  title: 'A tightening stage comes after a later one.',
  explanation: `
A lower stage does nothing to a bolt that is already tighter, so a stage that comes after a later one is never done as
it was meant. The checker follows each position of the group through its plan.

In the plan itself a stage may not be lower than the one before it, unless a stage between them loosens.

Put the stages in the order of the plan, or write \`tighten …\` alone for the whole plan.`,
  source: 'US Army TM 55-1905-223-24-1, table 3-5: rod bolts in three stages, in order',
  bad: `
machine engine "barge engine" {
  part block "engine block" fixed
  part gasket-plate "spacer plate" on block under head
  part head "cylinder head" on block held by head-bolts
  fastener head-bolts "head bolts" x6 plan { 8 N·m; 16 N·m; 25 N·m }
}
procedure renew-plate "Renew the spacer plate" for engine supplies gasket-plate {
  unbolt head
  remove gasket-plate and discard
  fit new gasket-plate
  refit head
  fit head-bolts by hand
  tighten head-bolts stage 1
  tighten head-bolts stage 2
  tighten head-bolts stage 1
          ^^^^^^^^^^
  tighten head-bolts stage 2
  tighten head-bolts stage 3
}
`,
  good: `
machine engine "barge engine" {
  part block "engine block" fixed
  part gasket-plate "spacer plate" on block under head
  part head "cylinder head" on block held by head-bolts
  fastener head-bolts "head bolts" x6 plan { 8 N·m; 16 N·m; 25 N·m }
}
procedure renew-plate "Renew the spacer plate" for engine supplies gasket-plate {
  unbolt head
  remove gasket-plate and discard
  fit new gasket-plate
  refit head
  fit head-bolts by hand
  tighten head-bolts stage 1
  tighten head-bolts stage 2
  tighten head-bolts stage 3
}
`,
  says: (fact) => {
    const { stage, at, stages, torque, before, beforeStage } = fact.words!;
    if (torque)
      return {
        message: `Stage ${stage} of the plan of ${subject(fact)}, ${torque}, is less than stage ${beforeStage}, ${before}, and nothing is loosened between them.`,
        help: 'Put the stages in rising order, or write `loosen` between them where that is meant.',
      };
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} already at stage ${at} of ${stages} when stage ${stage} comes.`,
      help: 'Put the stages in the order of the plan, or loosen the fasteners first where the job starts again.',
    };
  },
};
