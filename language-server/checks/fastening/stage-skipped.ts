import { list } from '../../model/model.ts';
import type { Check } from '../check.ts';
import { agree, capital, subject, typed } from '../speak.ts';

export const stageSkipped: Check = {
  name: 'stage-skipped',
  group: 'Fastening',
  severity: 'error',
  title: 'A tightening stage is left out.',
  explanation: `
Stages bring a joint down evenly: the first seats it, the next ones load it. A stage that is jumped over leaves a warped
head or a gasket that is pressed on one side. The checker follows each position of the group through its plan.

Write the missing stage, or \`tighten …\` alone for the whole plan.`,
  source: 'US Army TM 55-1905-223-24-1, table 3-5: rod bolts in three stages, in order',
  bad: `
machine engine "genset engine" {
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
  tighten head-bolts stage 3
          ^^^^^^^^^^
}
`,
  good: `
machine engine "genset engine" {
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
    const { stage, at, stages } = fact.words!;
    if (at === undefined) {
      const last = stages === '1' ? 'one stage' : `${stages} stages`;
      return {
        message: `The plan of ${subject(fact)} has ${last}: there is no stage ${stage}.`,
        help: `Write a stage of the plan, or \`tighten ${typed(fact.subject)}\` alone for the whole plan.`,
      };
    }
    const missing = between(Number(at) + 1, Number(stage) - 1);
    return {
      message: `${capital(subject(fact))} ${agree(fact, 'goes', 'go')} to stage ${stage} of ${stages} without ${missing}.`,
      help: `Write \`tighten ${typed(fact.subject)} stage ${Number(at) + 1}\` before this step, or \`tighten ${typed(fact.subject)}\` alone for the whole plan.`,
    };
  },
};

function between(from: number, to: number): string {
  if (from >= to) return `stage ${to}`;
  return `stages ${list(Array.from({ length: to - from + 1 }, (_, index) => String(from + index)))}`;
}
