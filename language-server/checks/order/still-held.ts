import type { Check } from '../check.ts';
import { capital, isAre, others, subject } from '../speak.ts';

export const stillHeld: Check = {
  name: 'still-held',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A part comes off while fasteners still hold it.',
  explanation: `
A part cannot come off while a bolt, nut or screw joins it to what stays behind. The machine file says what holds
what (\`held by\`, \`clamps\`); fasteners inside an assembly that comes off as one are not counted, nor are studs that
\`stay\`.

Take the fasteners out first, or write \`unbolt\`, which takes them out with the part.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover
         ^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover-screws
  remove cover
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} cannot come off: ${others(fact)} ${isAre(fact, 'others')} still in.`,
    help: `Take out ${others(fact)} before this step, or write \`unbolt\`.`,
  }),
};
