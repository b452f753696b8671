import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const angleTooLarge: Check = {
  name: 'angle-too-large',
  group: 'Fastening',
  severity: 'error',
  title: 'An angle in degrees is more than one turn.',
  explanation: `
In printed tables the degree sign is easily read as a zero, and 90° becomes 900. A single tightening angle is usually 30° to
180°; more than 360° in one stage breaks the bolt or was never meant.

Several stages may add up to more. A nut that is run down by turns is written in turns.`,
  source:
    'US Army TM 10-3930-669-20, table E-1: degree signs that read as a digit; a stage above 360° is refused (judgement)',
  bad: `
machine engine "barge engine" {
  part block "engine block" fixed
  part cap "bearing cap" on block held by cap-bolts
  fastener cap-bolts "cap bolts" x2 plan { 30 N·m; 900° }
                                                   ^^^^
}
`,
  good: `
machine engine "barge engine" {
  part block "engine block" fixed
  part cap "bearing cap" on block held by cap-bolts
  fastener cap-bolts "cap bolts" x2 plan { 30 N·m; 90° }
}
`,
  says: (fact) => {
    const { angle, meant } = fact.words!;
    return {
      message: `An angle of ${angle} is more than one turn of ${subject(fact)} in one go.`,
      help: meant
        ? `Check the value: ${meant} is meant where a degree sign was read as a zero. Whole turns are written in turns.`
        : 'Check the value; whole turns are written in turns.',
    };
  },
};
