import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const stagesFarApart: Check = {
  name: 'stages-far-apart',
  group: 'Fastening',
  severity: 'information',
  title: 'A tightening stage is only a small part of the next one.',
  explanation: `
Stages bring a joint down evenly, so each is a good part of the next: a third, a half, two thirds. A stage of a fifth or less
does nothing that the fingers did not do, and the next one then pulls the parts down in one go. Usually a digit is missing,
or the unit is another one. A quarter is left alone.

Where the first stage only makes the nuts snug (15 to 30 N·m) and passes from about a third follow, as on flanges, nothing
is said. Where the bolts are only to be started, write \`by hand\`.`,
  source:
    'Passes of 30, 70 and 100 % after a snug one: ASME PCC-1, legacy torque method (from memory); the limit of about a fifth is judgement, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-bolts
  fastener cover-bolts "cover bolts" x8 plan { 3 N·m; 105 N·m }
                                               ^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-bolts
  fastener cover-bolts "cover bolts" x8 plan { 35 N·m; 105 N·m }
}
`,
  says: (fact) => {
    const { stage, torque, nextStage, next, share } = fact.words!;
    return {
      message: `Stage ${stage} of the plan of ${subject(fact)}, ${torque}, is only ${share} % of stage ${nextStage}, ${next}.`,
      help: 'Check both values and their units. Where the fasteners are only started, write `by hand`; else put a stage between.',
    };
  },
};
