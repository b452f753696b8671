import type { Check } from '../check.ts';
import { CAUTION, capital, DEFER, isAre, subject } from '../speak.ts';

export const bypassLeft: Check = {
  name: 'bypass-left',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A bypass or jumper is still in at the end.',
  explanation: `
A switch that is bridged for a test and stays bridged protects nobody any more. The checker asks that every bypass is
taken out again by the end of the job.

Write the step that removes the jumper. ${CAUTION}`,
  source: 'common practice, no source',
  bad: `
machine drum "tumbling drum" {
  part frame "frame" fixed
  part barrel "barrel" on frame fixed
  control door-switch "door switch" on frame
  tool jumper "jumper lead"
}
procedure try-barrel "Try the barrel with the door open" for drum tools jumper {
  bypass door-switch with jumper
         ^^^^^^^^^^^
  turn barrel 2 turns by hand
}
`,
  good: `
machine drum "tumbling drum" {
  part frame "frame" fixed
  part barrel "barrel" on frame fixed
  control door-switch "door switch" on frame
  tool jumper "jumper lead"
}
procedure try-barrel "Try the barrel with the door open" for drum tools jumper {
  bypass door-switch with jumper
  turn barrel 2 turns by hand
  remove jumper
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still bypassed at the end of the job.`,
    help: `Take the bypass out when the test is done. ${DEFER}`,
  }),
};
