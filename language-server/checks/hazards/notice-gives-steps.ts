import type { Check } from '../check.ts';
import { noticeSaid } from './hazard-words.ts';

export const noticeGivesSteps: Check = {
  name: 'notice-gives-steps',
  group: 'Hazards',
  severity: 'information',
  title: 'A notice contains a step that stands nowhere else.',
  explanation: `
A notice warns; the work stands in the steps. With every notice and note taken away the procedure has to be complete still: a
step that hides in a warning is not ticked off, not timed, and not checked here. The checker reports a command in a notice that does
something to a part of the machine, where no step of the procedure does it. How a step is done carefully may be said in its notice.

Write the step as a step, after the notice.`,
  source:
    'IEC/IEEE 82079-1: a safety message does not contain the procedure; ASD-STE100: notices taken out, the text still works',
  bad: `
machine crusher "jaw crusher" {
  part body "body" fixed
  part side-door "side door" on body held by door-bolts hazard moving when removing
  fastener door-bolts "door bolts" x4 torque 30 N·m
  part jaw "jaw plate" on body under side-door
  part wedge "jaw wedge" on body
}
procedure change-jaw "Change the jaw plate" for crusher supplies jaw {
  warning moving "The jaw falls and crushes hands. Fit the jaw wedge before you open the door."
                 ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  unbolt side-door
  remove jaw and discard
  fit new jaw
  bolt up side-door
}
`,
  good: `
machine crusher "jaw crusher" {
  part body "body" fixed
  part side-door "side door" on body held by door-bolts hazard moving when removing
  fastener door-bolts "door bolts" x4 torque 30 N·m
  part jaw "jaw plate" on body under side-door
  tool wedge "jaw wedge"
}
procedure change-jaw "Change the jaw plate" for crusher tools wedge supplies jaw {
  fit wedge
  warning moving "The jaw falls and crushes hands. Keep clear of it."
  unbolt side-door
  remove jaw and discard
  fit new jaw
  bolt up side-door
  remove wedge
}
`,
  says: ({ words = {} }) => ({
    message: `This ${noticeSaid(words.signal!)} tells to do something that no step does: \`${words.step}\`.`,
    help: 'Write it as a step of its own.',
  }),
};
