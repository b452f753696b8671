import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const torqueDiffers: Check = {
  name: 'torque-differs',
  group: 'Fastening',
  severity: 'error',
  title: 'A torque is not the one that is declared, or not the same in its second unit.',
  explanation: `
The torque of a fastener is declared once, in the machine. Where it is written again, in a step or in a second unit, both
must say the same, or the technician takes whichever comes first.

The checker compares the value of a step (\`tighten … to 80 N·m\`) and the torques in its sentence with the torque, the stages
and the limit of what the step tightens. A value inside an outcome, an \`if\` or a \`repeat\` is meant for what was found
there and left alone. In a sentence a limit, a wrench setting or a first step is not taken for the final value.

A second unit may be rounded to its last digit, and a whole number that ends in 0 or 5 to tens or fives, by no more than
5 %. A pound in a torque is the pound-force.`,
  source:
    'US Army TM 55-1905-223-24-1, rod bolts: torques in two units that do not agree; factors after NIST SP 811, appendix B',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4 torque 80 lbf·ft (200 N·m)
                                                            ^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4 torque 80 lbf·ft (110 N·m)
}
`,
  says: (fact) => {
    const { first, second, right, typed, declared, several, stage, sameNumber, plan } = fact.words!;
    if (second)
      return {
        message: `The second unit says ${second}, and ${first} is ${right}.`,
        help: 'Mend the value that is wrong, or leave the second unit out: it is written out when the page is made.',
      };
    if (plan)
      return {
        message: `A torque of ${typed} is declared for ${subject(fact)}, and the plan ends with ${declared}.`,
        help: 'Mend the one that is wrong, or leave the torque out: the plan says it.',
      };
    const what = stage ? ` for stage ${stage}` : several ? ' in its plan' : '';
    return {
      message: `This step tightens ${subject(fact)} to ${typed}, and ${declared} ${several ? 'are' : 'is'} declared${what}.`,
      help: sameNumber
        ? 'The number is the same and the unit is not: mend the one that is wrong, or leave the value out of the step.'
        : 'Mend the one that is wrong, or leave the value out of the step: it is taken from the machine.',
    };
  },
};
