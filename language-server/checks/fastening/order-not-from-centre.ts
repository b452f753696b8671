import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const orderNotFromCentre: Check = {
  name: 'order-not-from-centre',
  group: 'Fastening',
  severity: 'information',
  title: 'An order on rows does not begin in the middle.',
  explanation: `
A long part that is pulled down from one end, or from both ends, keeps a bulge in the middle. The usual order begins in the
middle and works outwards; cross, spiral and pair by pair are all taken.

A machine whose own documents print another order is right to follow it. Bolts that are numbered in another way than along
the rows cannot be judged: write \`layout at …\` with their places.`,
  source: 'common practice, no source',
  bad: `
machine engine "barge engine" {
  part block "engine block" fixed
  part head "cylinder head" on block held by head-bolts
  fastener head-bolts "head bolts" x10
    layout 2 rows of 5
    order #1, #6, #2, #7, #3, #8, #4, #9, #5, #10
          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine engine "barge engine" {
  part block "engine block" fixed
  part head "cylinder head" on block held by head-bolts
  fastener head-bolts "head bolts" x10
    layout 2 rows of 5
    order #3, #8, #2, #9, #4, #7, #1, #10, #5, #6
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `The order of ${subject(fact)} does not begin in the middle: ${words.reason}`,
    help: `An order from the middle is ${words.right}; \`order from the middle\` says the same.`,
  }),
};
