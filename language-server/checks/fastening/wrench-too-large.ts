import type { Check } from '../check.ts';
import { agree, capital, others, subject } from '../speak.ts';

export const wrenchTooLarge: Check = {
  name: 'wrench-too-large',
  group: 'Fastening',
  severity: 'hint',
  title: 'A torque lies in the lowest fifth of the wrench.',
  explanation: `
A setting wrench is least sure near the bottom of its scale: its error is a share of the setting only from a fifth of the
full scale upwards. The checker looks at the final torque and at the best of the wrenches at hand.

A wrench is good down to its lowest mark all the same, so this is a hint.`,
  source:
    'ISO 6789:2003 tests a setting tool at 20, 60 and 100 % of its full scale (seen second hand); practice with setting tools',
  bad: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-screws
  fastener cover-screws "cover screws" x4 torque 25 N·m
  tool torque-wrench "torque wrench" range 20..200 N·m
}
procedure close-pump "Close the pump" for pump tools torque-wrench starts with cover off {
  fit cover
  fit cover-screws by hand
  tighten cover-screws with torque-wrench
          ^^^^^^^^^^^^
}
`,
  good: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-screws
  fastener cover-screws "cover screws" x4 torque 25 N·m
  tool torque-wrench "torque wrench" range 10..60 N·m
}
procedure close-pump "Close the pump" for pump tools torque-wrench starts with cover off {
  fit cover
  fit cover-screws by hand
  tighten cover-screws with torque-wrench
}
`,
  says: (fact) => {
    const { torque, ranges, share } = fact.words!;
    return {
      message: `${capital(subject(fact))} ${agree(fact, 'needs', 'need')} ${torque}, which is ${share} % of the full scale of ${others(fact)} (${ranges}).`,
      help: 'Use a smaller torque wrench where there is one.',
    };
  },
};
