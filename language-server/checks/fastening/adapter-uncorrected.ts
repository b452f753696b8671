import type { Check } from '../check.ts';
import { others, subject } from '../speak.ts';

export const adapterUncorrected: Check = {
  name: 'adapter-uncorrected',
  group: 'Fastening',
  severity: 'warning',
  title: 'An adapter lengthens the wrench, and the setting for it is not given.',
  explanation: `
A crow-foot in line with the wrench makes the lever longer, and the bolt gets more than the scale says. The setting is
TW = TA·L/(L + A): the torque wanted, times the length of the wrench to the middle of the grip, over that length and the
adapter together. The checker looks for a tool that is declared an \`adapter\`, or has a \`length\`, no range, and is called
one, and for a torque in the sentence of the step. Where both lengths are declared, the setting that is told must be the right
one, within the 4 % that a torque wrench is good for.

Square to the wrench an adapter changes nothing, nor does an extension along the drive: say "at a right angle" in the step.`,
  source:
    'US Army TM 1-1500-204-23-9, figure 8-16 (300 lbf·in, 10 in and 4 in: set 214 lbf·in); TM 9-254; 4 %: ISO 6789:2003',
  bad: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-nuts
  fastener cover-nuts "cover nuts" x4 torque 300 lbf·in
  tool torque-wrench "torque wrench" range 100..600 lbf·in length 10 in
  tool crow-foot "crow-foot" adapter length 4 in
}
procedure close-pump "Close the pump" for pump tools torque-wrench, crow-foot starts with cover off {
  fit cover
  fit cover-nuts by hand
  tighten cover-nuts with torque-wrench, crow-foot
          ^^^^^^^^^^
}
`,
  good: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-nuts
  fastener cover-nuts "cover nuts" x4 torque 300 lbf·in
  tool torque-wrench "torque wrench" range 100..600 lbf·in length 10 in
  tool crow-foot "crow-foot" adapter length 4 in
}
procedure close-pump "Close the pump" for pump tools torque-wrench, crow-foot starts with cover off {
  fit cover
  fit cover-nuts by hand
  tighten cover-nuts with torque-wrench, crow-foot "Crow-foot in line: set the wrench to 214 lbf·in."
}
`,
  says: (fact) => {
    const { torque, setting, given } = fact.words!;
    if (given)
      return {
        message: `With ${others(fact)} in line, a wrench set to ${given} does not give ${subject(fact)} a torque of ${torque}.`,
        help: `Set the wrench to ${setting}; or say that the adapter stands at a right angle.`,
      };
    return {
      message: `With ${others(fact)} in line, a wrench set to ${torque} gives ${subject(fact)} more than that, and the step gives no setting.`,
      help: setting
        ? `Set the wrench to ${setting}, and say so in the step; or say that the adapter stands at a right angle.`
        : 'Give the setting in the sentence of the step, or say that the adapter stands at a right angle.',
    };
  },
};
