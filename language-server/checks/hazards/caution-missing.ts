import type { Check } from '../check.ts';
import { CAUTION } from '../speak.ts';
import { hazardSaid, meets, noticeFor } from './hazard-words.ts';

export const cautionMissing: Check = {
  name: 'caution-missing',
  group: 'Hazards',
  severity: 'warning',
  title: 'A step comes near a declared hazard and no notice names it.',
  explanation: `
The machine file says what is dangerous: \`hazard pressure\` on a system, \`hazard moving when removing\` on a guard. Somebody
who follows the steps has to be told before the first step that comes near it. The checker asks for a notice (\`danger\`,
\`warning\`, \`caution\`) with that word, before the step and in the same task: a task may be opened by itself, so each that meets the
hazard needs its own. In a task one notice is enough, and once a system was noticed and made safe no task repeats it.

Letting pressure out, testing what was live and taking apart what was hot count as coming near; throwing the breaker and waiting for
it to cool do not, but that is where a missing notice belongs. A hazard with \`when\` counts for those actions only. Where the machine
file declares no hazard, nothing is asked. Notices of a procedure that this one uses are its own. ${CAUTION}`,
  source: 'IEC/IEEE 82079-1 and ANSI Z535.6: safety messages stand before the steps they are about',
  bad: `
machine sprayer "paint sprayer" {
  part frame "frame" fixed
  part filter "paint filter" on frame under paint-hose
  connection paint-hose "paint hose" joins frame opens paint
  control relief-valve "relief valve" in paint normally closed
  system paint "paint line" pressure 200 bar relieved at relief-valve hazard pressure
}
procedure renew-filter "Renew the paint filter" for sprayer supplies filter {
  open relief-valve
       ^^^^^^^^^^^^
  disconnect paint-hose
  remove filter and discard
  fit new filter
  connect paint-hose
  close relief-valve
}
`,
  good: `
machine sprayer "paint sprayer" {
  part frame "frame" fixed
  part filter "paint filter" on frame under paint-hose
  connection paint-hose "paint hose" joins frame opens paint
  control relief-valve "relief valve" in paint normally closed
  system paint "paint line" pressure 200 bar relieved at relief-valve hazard pressure
}
procedure renew-filter "Renew the paint filter" for sprayer supplies filter {
  warning pressure "Paint at 200 bar goes through the skin. Keep your hands away from the outlet."
  open relief-valve
  disconnect paint-hose
  remove filter and discard
  fit new filter
  connect paint-hose
  close relief-valve
}
`,
  says: (fact) => ({
    message: `No notice about ${hazardSaid(fact)} comes before this ${meets(fact)}.`,
    help: `Write ${noticeFor(fact)} before it: what the hazard does to people, and how to avoid it.`,
  }),
};
