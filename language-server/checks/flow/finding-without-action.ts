import type { Check } from '../check.ts';

export const findingWithoutAction: Check = {
  name: 'finding-without-action',
  group: 'Flow and measurements',
  severity: 'hint',
  title: 'Something is inspected or measured, and nothing says what follows from it.',
  explanation: `
“Inspect the coupling for damage” leaves open what is done with a damaged one. Each technician decides alone, and nothing
shows that it was decided. Outcomes in braces say it best: what is right, what is wrong, and what is done then.

It is a hint only, because the rest may be common knowledge of the trade. Quiet where a sentence stands with the step,
where \`expect\` says what is right, where the value is given a name with \`as\`, inside a repeat, and where the
next step asks for the finding, chooses, adjusts, records, sends or signs.`,
  source:
    'US Army TM 5-3805-261-34, paragraph 10-4: the swash plate must move freely, and no branch for one that binds (case 12)',
  bad: `
machine line "fuel line" {
  part pipe "pipe" fixed
  part coupling "coupling" on pipe
}
procedure look "Look at the coupling" for line {
  inspect coupling for "damage"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine line "fuel line" {
  part pipe "pipe" fixed
  part coupling "coupling" on pipe
}
procedure look "Look at the coupling" for line {
  inspect coupling for "damage" {
    sound { }
    damaged { stop "Shut the line down and renew the coupling." }
  }
}
`,
  says: ({ words = {} }) => ({
    message: `${DONE[words.verb!]}, and nothing says what is done with the finding.`,
    help: 'Write the outcomes in braces, say what is right with `expect`, or name the value with `as` and use it.',
  }),
};

const DONE: Readonly<Record<string, string>> = {
  inspect: 'An inspection is made',
  measure: 'A measurement is taken',
  check: 'A check is made',
};
