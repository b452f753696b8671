import type { Check } from '../check.ts';
import { subject, them, typed } from '../speak.ts';

export const notBled: Check = {
  name: 'not-bled',
  group: 'Fluids, faces, consumables',
  severity: 'error',
  title: 'A system that needs bleeding was opened or drained and is not bled.',
  explanation: `
Air in a brake or clutch line is a pedal that goes to the floor. Where the machine file says \`needs bleeding\`, the checker
asks for a \`bleed\` step after the system was opened or drained, before the job ends.

Write \`bleed …\` after the last joint is closed and the system is full.`,
  source: 'US Army TM 10-3930-633-12 and TB 9-2320-335-13&P: brakes are bled after the lines were open',
  bad: `
machine trailer "tipping trailer" {
  part axle "axle" fixed
  part clip "line clip" on axle under brake-line
  connection brake-line "brake line" joins axle opens brakes
  fluid brake-oil "brake fluid"
  system brakes "brake circuit" holds 0.5 L brake-oil needs bleeding
}
procedure renew-clip "Renew the line clip" for trailer supplies clip, 0.5 L brake-oil {
  disconnect brake-line
  ^^^^^^^^^^^^^^^^^^^^^
  remove clip and discard
  fit new clip
  connect brake-line
  top up brakes
}
`,
  good: `
machine trailer "tipping trailer" {
  part axle "axle" fixed
  part clip "line clip" on axle under brake-line
  connection brake-line "brake line" joins axle opens brakes
  fluid brake-oil "brake fluid"
  system brakes "brake circuit" holds 0.5 L brake-oil needs bleeding
}
procedure renew-clip "Renew the line clip" for trailer supplies clip, 0.5 L brake-oil {
  disconnect brake-line
  remove clip and discard
  fit new clip
  connect brake-line
  top up brakes
  bleed brakes
}
`,
  says: (fact) => ({
    message: `This step lets air into ${subject(fact)}, and no step bleeds ${them(fact)} before the job ends.`,
    help: `Write \`bleed ${typed(fact.subject)}\` after the last joint is closed.`,
  }),
};
