import type { Check } from '../check.ts';

export const outcomeMissing: Check = {
  name: 'outcome-missing',
  group: 'Flow and measurements',
  severity: 'warning',
  title: 'An inspection has a single outcome, and nothing is said for the other one.',
  explanation: `
“It must move freely” tells what is right and leaves the technician alone with what is not. An outcome in braces is done
when the finding is so: with one outcome only, the text has no way on for any other finding, and the checker takes the one
that is written to be what is always found.

Write the other one, too, even where nothing is done then: \`sound { }\`. What is right and needs no second way can be said
with \`expect\`. Ranges are judged by \`range-gap\`.`,
  source:
    'US Army TM 5-3805-261-34, paragraph 10-4: the swash plate must move freely, and no branch for one that binds (case 12)',
  bad: `
machine hoist "chain hoist" {
  part frame "frame" fixed
  part drum "drum" on frame
}
procedure try-drum "Try the drum" for hoist {
  inspect drum for "free movement" {
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    free { }
  }
}
`,
  good: `
machine hoist "chain hoist" {
  part frame "frame" fixed
  part drum "drum" on frame
}
procedure try-drum "Try the drum" for hoist {
  inspect drum for "free movement" {
    free { }
    binding { stop "Strip the drum and look for the cause." }
  }
}
`,
  says: ({ words = {} }) => ({
    message: `The only outcome is \`${words.outcome}\`: nothing is said for any other finding.`,
    help: 'Write the other outcome and what is done then, or say what is right with `expect`.',
  }),
};
