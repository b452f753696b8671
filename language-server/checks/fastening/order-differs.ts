import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const orderDiffers: Check = {
  name: 'order-differs',
  group: 'Fastening',
  severity: 'warning',
  title: 'A step tightens in another order than the machine file declares.',
  explanation: `
The order of a group is declared once. A step that repeats it must say the same, or name an order that has the property the
machine file asks for (across, from the middle).

Loosening may go backwards or in any order. A second round in turn over bolts that the same procedure has tightened before
is usual, and is not reported.`,
  source: 'ASME PCC-1: pattern passes, then one circular pass (from memory); common practice',
  bad: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-bolts
  fastener cover-bolts "cover bolts" x4 torque 20 N·m layout circle order across
}
procedure close-pump "Close the pump" for pump starts with cover off {
  fit cover
  fit cover-bolts by hand
  tighten cover-bolts in order #1, #2, #3, #4
                               ^^^^^^^^^^^^^^
}
`,
  good: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-bolts
  fastener cover-bolts "cover bolts" x4 torque 20 N·m layout circle order across
}
procedure close-pump "Close the pump" for pump starts with cover off {
  fit cover
  fit cover-bolts by hand
  tighten cover-bolts in order #1, #3, #2, #4
}
`,
  says: (fact) => {
    const { order, declared, reason } = fact.words!;
    return {
      message: reason
        ? `This order of ${subject(fact)} is not ${declared}, as declared: ${reason}`
        : `This step works ${subject(fact)} ${order === 'in turn' ? order : `in the order ${order}`}, and the declared order is ${declared}.`,
      help: 'Leave the order out: it is taken from the machine and written out for the reader.',
    };
  },
};
