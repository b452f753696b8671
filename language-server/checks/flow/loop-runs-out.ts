import type { Check } from '../check.ts';

export const loopRunsOut: Check = {
  name: 'loop-runs-out',
  group: 'Flow and measurements',
  severity: 'hint',
  title: 'A repeat ends after so many times with nothing said for when it has not come right.',
  explanation: `
\`at most 5 times\` ends a repeat whether or not the work has come right. Without \`otherwise\` the next step is done in
both cases, as if nothing had happened.

Write \`otherwise\` behind the block with what is done then, if only \`stop\`. A hint, because the steps that follow may show
by themselves whether it came right.`,
  source: 'common practice, no source',
  bad: `
machine cart "wool cart" {
  part axle "axle" fixed
  part hub "hub" on axle
}
procedure set-hub "Set the hub" for cart {
  repeat until "the hub turns freely" at most 5 times { adjust hub }
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine cart "wool cart" {
  part axle "axle" fixed
  part hub "hub" on axle
}
procedure set-hub "Set the hub" for cart {
  repeat until "the hub turns freely" at most 5 times { adjust hub } otherwise { stop "Renew the bearings." }
}
`,
  says: ({ words = {} }) => ({
    message: `Nothing is said for when the repeat has not come right after ${words.most} times.`,
    help: 'Write `otherwise { }` behind the block with what is done then.',
  }),
};
