import type { Check } from '../check.ts';
import { agree, capital, subject, typed } from '../speak.ts';

export const discardedReused: Check = {
  name: 'discarded-reused',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something that was thrown away goes back in.',
  explanation: `
A part that a step has thrown away cannot be fitted again: either the new one is meant, or it should not have been thrown
away. The checker keeps apart the original, the new one and what went into the bin.

Write \`fit new …\`, or take \`and discard\` off the earlier step.`,
  source: 'common practice, no source',
  bad: `
machine extractor "dust extractor" {
  part drum "drum" fixed
  part filter-bag "filter bag" on drum
}
procedure renew-bag "Renew the filter bag" for extractor supplies filter-bag {
  remove filter-bag and discard
  fit filter-bag
      ^^^^^^^^^^
}
`,
  good: `
machine extractor "dust extractor" {
  part drum "drum" fixed
  part filter-bag "filter bag" on drum
}
procedure renew-bag "Renew the filter bag" for extractor supplies filter-bag {
  remove filter-bag and discard
  fit new filter-bag
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${agree(fact, 'was', 'were')} thrown away and cannot go back: only ${agree(fact, 'a new one', 'new ones')} can.`,
    help: `Write \`fit new ${typed(fact.subject)}\`, or take \`and discard\` off the earlier step.`,
  }),
};
