import type { Check } from '../check.ts';

export const peopleShort: Check = {
  name: 'people-short',
  group: 'Tools, time, people',
  severity: 'warning',
  title: 'A step needs more people than the procedure states.',
  explanation: `
The number of people at the top decides who is sent. A step that says \`with 2 people\` in a job for one is done alone, or not at all. Where
the procedure states no number, nothing is asked.

Raise the number after \`people\`, or find a way for fewer: a hoist, a stand, a fixture.`,
  source: 'S1000D: required persons are stated before the steps',
  bad: `
machine awning "shop awning" {
  part wall "wall" fixed
  part roller "roller" on wall held by roller-nuts
  fastener roller-nuts "roller nuts" x2 torque 20 N·m
}
procedure renew-roller "Renew the roller" for awning people 1 supplies roller {
  remove roller-nuts
  remove roller with 2 people and discard
                ^^^^^^^^^^^^^
  fit new roller
  fit roller-nuts
}
`,
  good: `
machine awning "shop awning" {
  part wall "wall" fixed
  part roller "roller" on wall held by roller-nuts
  fastener roller-nuts "roller nuts" x2 torque 20 N·m
}
procedure renew-roller "Renew the roller" for awning people 2 supplies roller {
  remove roller-nuts
  remove roller with 2 people and discard
  fit new roller
  fit roller-nuts
}
`,
  says: ({ words = {} }) => ({
    message: `This step needs ${words.needs} people and the procedure states ${words.people}.`,
    help: `Write \`people ${words.needs}\` at the top, or change the step.`,
  }),
};
