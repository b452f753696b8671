import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const stageRepeated: Check = {
  name: 'stage-repeated',
  group: 'Fastening',
  severity: 'error',
  title: 'A tightening stage is done a second time.',
  explanation: `
A torque stage that is done twice changes little; an angle stage that is done twice turns the bolt twice as far as it
should go. Either one of the two steps is left over, or the second should be the next stage.

Delete the second step, or give it the number that is meant.`,
  source: 'US Army TM 55-1905-223-24-1, table 3-5: rod bolts in three stages, in order',
  bad: `
machine engine "pump engine" {
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
  tighten head-bolts stage 2
          ^^^^^^^^^^
  tighten head-bolts stage 3
}
`,
  good: `
machine engine "pump engine" {
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
    const { stage, stages } = fact.words!;
    return {
      message: `Stage ${stage} of ${stages} is done a second time on ${subject(fact)}.`,
      help:
        stage === stages
          ? 'Delete the second step.'
          : `Delete the second step, or write stage ${Number(stage) + 1} where that is meant.`,
    };
  },
};
