import type { Check } from '../check.ts';

export const branchUnfinished: Check = {
  name: 'branch-unfinished',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'One way through a branch leaves the machine as the rest of the job cannot use it.',
  explanation: `
A branch has more than one way through it. After each of them the machine must stand so that the next steps can be
done, and at the end everything must be back, whichever way was taken. All ways are followed at once, and the smallest
case in which it fails is named.

Write the missing steps into the way that lacks them, or behind the branch where all ways need them.`,
  source: 'case 08: repair that only some findings ask for; common practice, no source',
  bad: `
machine separator "cream separator" {
  part body "body" fixed
  part bowl-cover "bowl cover" on body held by cover-nuts
  part bowl "bowl" on body under bowl-cover
  fastener cover-nuts "cover nuts" x3
}
procedure clean-bowl "Clean the bowl" for separator {
  unbolt bowl-cover
         ^^^^^^^^^^
  inspect bowl for "rust" {
    sound { bolt up bowl-cover }
    rusty { clean bowl }
  }
}
`,
  good: `
machine separator "cream separator" {
  part body "body" fixed
  part bowl-cover "bowl cover" on body held by cover-nuts
  part bowl "bowl" on body under bowl-cover
  fastener cover-nuts "cover nuts" x3
}
procedure clean-bowl "Clean the bowl" for separator {
  unbolt bowl-cover
  inspect bowl for "rust" {
    sound { }
    rusty { clean bowl }
  }
  bolt up bowl-cover
}
`,
  says: (fact) => ({
    message: fact.words!.inner!,
    help: 'Only this way through the branch lacks the step: write it there, or behind the branch.',
  }),
};
