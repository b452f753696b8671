import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const orderNotAcross: Check = {
  name: 'order-not-across',
  group: 'Fastening',
  severity: 'information',
  title: 'An order on a circle does not go across.',
  explanation: `
Bolts on a circle that are tightened one after the other tilt the part and pinch the gasket on one side. The usual order
goes to the opposite bolt, then to the pair at a right angle to the first. The checker takes any order with these
properties; it asks for no one table.

A machine whose own documents print another order is right to follow it. Bolts that are numbered in another way than around
the circle cannot be judged: write \`layout at …\` with their places.`,
  source:
    'ASME PCC-1, legacy cross patterns (two agreeing public copies) and the properties that all of them share',
  bad: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-bolts
  fastener cover-bolts "cover bolts" x8
    layout circle
    order #1, #2, #3, #4, #5, #6, #7, #8
          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-bolts
  fastener cover-bolts "cover bolts" x8
    layout circle
    order #1, #5, #3, #7, #2, #6, #4, #8
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `The order of ${subject(fact)} does not go across: ${lower(words.reason!)}`,
    help: `An order across is ${words.right}; \`order across\` says the same.`,
  }),
};

/** A position stays as it is: `#3 follows #1 …`. */
function lower(reason: string): string {
  return reason.startsWith('The ') ? `t${reason.slice(1)}` : reason;
}
