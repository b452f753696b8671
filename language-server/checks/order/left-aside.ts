import type { Check } from '../check.ts';
import { capital, isAre, subject, typed } from '../speak.ts';

export const leftAside: Check = {
  name: 'left-aside',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something that was moved aside is still aside at the end.',
  explanation: `
A part that hangs aside on its hoses or wires is easily taken for fitted. The checker asks that whatever was moved
aside is moved back (or refitted) by the end of the job.

Write \`move back …\` after the work that needed the room.`,
  source: 'common practice, no source',
  bad: `
machine sprayer "orchard sprayer" {
  part frame "frame" fixed
  part loom "wiring loom" on frame
  part filter "suction filter" on frame under loom
}
procedure renew-filter "Renew the suction filter" for sprayer supplies filter {
  move aside loom
             ^^^^
  remove filter and discard
  fit new filter
}
`,
  good: `
machine sprayer "orchard sprayer" {
  part frame "frame" fixed
  part loom "wiring loom" on frame
  part filter "suction filter" on frame under loom
}
procedure renew-filter "Renew the suction filter" for sprayer supplies filter {
  move aside loom
  remove filter and discard
  fit new filter
  move back loom
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} moved aside and never moved back.`,
    help: `Write \`move back ${typed(fact.subject)}\` after the work that needed the room.`,
  }),
};
