import type { Check } from '../check.ts';
import { capital, isAre, subject, typed } from '../speak.ts';

export const toolUnlisted: Check = {
  name: 'tool-unlisted',
  group: 'Tools, time, people',
  severity: 'warning',
  title: 'A step uses a tool that the tool list leaves out.',
  explanation: `
The list at the top is what is laid out before the job. A tool that only a step mentions is fetched in the middle of it, with the machine
open. The checker compares what the steps name (\`with\`, \`lock … with\`, \`fit\` of a fixture) with the list after \`tools\`; where there is no list,
nothing is missed.

Add the tool to the list.`,
  source:
    'S1000D and DITA: support equipment is listed before the steps; an open rover manual uses a hammer, a drill and a file that its list leaves out',
  bad: `
machine mower "mower" {
  part deck "deck" fixed
  part blade "blade" on deck held by blade-bolt
  fastener blade-bolt "blade bolt" x1 torque 40 N·m
  tool blade-lock "blade lock" locks blade
  tool torque-wrench "torque wrench" range 10..60 N·m
}
procedure change-blade "Change the blade" for mower tools torque-wrench supplies blade {
  lock blade with blade-lock
                  ^^^^^^^^^^
  unbolt blade
  discard blade
  fit new blade
  fit blade-bolt with torque-wrench
  remove blade-lock
}
`,
  good: `
machine mower "mower" {
  part deck "deck" fixed
  part blade "blade" on deck held by blade-bolt
  fastener blade-bolt "blade bolt" x1 torque 40 N·m
  tool blade-lock "blade lock" locks blade
  tool torque-wrench "torque wrench" range 10..60 N·m
}
procedure change-blade "Change the blade" for mower tools torque-wrench, blade-lock supplies blade {
  lock blade with blade-lock
  unbolt blade
  discard blade
  fit new blade
  fit blade-bolt with torque-wrench
  remove blade-lock
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} used here and not listed after \`tools\`.`,
    help: `Add \`${typed(fact.subject)}\` to the list of tools.`,
  }),
};
