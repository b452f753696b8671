import type { Check } from '../check.ts';

export const ruleNeverApplies: Check = {
  name: 'rule-never-applies',
  group: 'Words and rules',
  severity: 'hint',
  title: 'A rule can never apply: nothing here is what it is about.',
  explanation: `
A rule that nothing can break protects nobody, though it looks as if it did. It is about things that the machine does
not have, or about a step or a state that is not possible with them.

A rule in a file that several machines use is only told of where it applies to none of those that were checked together.`,
  source: 'common practice, no source',
  bad: `
machine pump-set "pump set" {
  part housing "housing" fixed
  part cover "cover" on housing held by cover-bolts
  fastener cover-bolts "cover bolts" x4 torque 10 N·m
  rule let-it-out "Nothing under pressure is opened." {
    before remove any part of any system with pressure  require that system relieved
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}
`,
  good: `
machine pump-set "pump set" {
  part housing "housing" fixed
  part cover "cover" on housing held by cover-bolts opens water
  fastener cover-bolts "cover bolts" x4 torque 10 N·m
  system water "water" pressure 4 bar
  rule let-it-out "Nothing under pressure is opened." {
    before remove any part of any system with pressure  require that system relieved
  }
}
`,
  says: ({ words = {} }) => ({
    message: `This sentence of the rule \`${words.rule}\` never applies: nothing ${words.machines} is what it is about.`,
    help: 'Name what the rule is about, or take the sentence away.',
  }),
};
