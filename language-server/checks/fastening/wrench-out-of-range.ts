import type { Check } from '../check.ts';
import { agree, capital, others, subject } from '../speak.ts';

export const wrenchOutOfRange: Check = {
  name: 'wrench-out-of-range',
  group: 'Fastening',
  severity: 'error',
  title: 'No listed torque wrench reaches the torque.',
  explanation: `
Below its lowest mark a torque wrench says nothing, above its highest it cannot be set. The checker compares each torque
with the wrench that the step names, else with all that the procedure lists after \`tools\`, and speaks up where none
of them can be set to any of the values allowed.

Where no torque wrench is listed, or one without a range, nothing is known and nothing is reported.`,
  source: 'ISO 6789:2017: the range of a tool begins at its lowest marked value (seen second hand)',
  bad: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-screws
  fastener cover-screws "cover screws" x4 torque 6 N·m
  tool torque-wrench "torque wrench" range 20..100 N·m
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
  fastener cover-screws "cover screws" x4 torque 6 N·m
  tool torque-wrench "small torque wrench" range 2..20 N·m
}
procedure close-pump "Close the pump" for pump tools torque-wrench starts with cover off {
  fit cover
  fit cover-screws by hand
  tighten cover-screws with torque-wrench
}
`,
  says: (fact) => {
    const { torque, ranges, side, preset } = fact.words!;
    const mark = side === 'below' ? 'below the lowest mark' : 'above the highest mark';
    const many = fact.others!.length > 1;
    const where = preset
      ? `and ${others(fact)} ${agree(fact, 'is', 'are', 'others')} set to ${ranges}`
      : many
        ? `which is out of reach of ${others(fact)} (${ranges})`
        : `which is ${mark} of ${others(fact)} (${ranges})`;
    return {
      message: `${capital(subject(fact))} ${agree(fact, 'needs', 'need')} ${torque}, ${where}.`,
      help: 'List a torque wrench that reaches it, or check the value and its unit.',
    };
  },
};
