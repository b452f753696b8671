import type { Check } from '../check.ts';
import { agree, CAUTION, capital, isAre, others, subject } from '../speak.ts';

export const leadOutOfOrder: Check = {
  name: 'lead-out-of-order',
  group: 'Hazards',
  severity: 'warning',
  title: 'The lead to the frame is not the first off or the last on.',
  explanation: `
A spanner on the terminal that goes to the wiring makes a short circuit with the frame as long as the frame's own lead is on. So the
lead that connects the battery to the frame comes off first and goes on last, whichever pole it is: on most machines the negative, on some the
positive. The machine file says which (\`first off\`, \`last on\`); without these words nothing is asked. The checker looks at leads that join the
same battery.

Take the lead to the frame off before the others, and connect it after them. ${CAUTION}`,
  source:
    'US Army TM 9-6115-639-13: negative off first and positive last; that it is the lead to the frame: common practice, no source',
  bad: `
machine generator "generator set" {
  part frame "frame" fixed
  part battery "battery" on frame
  part starter "starter" on frame
  connection earth-lead "earth lead" joins battery to frame first off last on
  connection live-lead "live lead" joins battery to starter
}
procedure change-battery "Renew the battery" for generator supplies battery {
  disconnect live-lead
             ^^^^^^^^^
  disconnect earth-lead
  remove battery and discard
  fit new battery
  connect earth-lead
          ^^^^^^^^^^
  connect live-lead
}
`,
  good: `
machine generator "generator set" {
  part frame "frame" fixed
  part battery "battery" on frame
  part starter "starter" on frame
  connection earth-lead "earth lead" joins battery to frame first off last on
  connection live-lead "live lead" joins battery to starter
}
procedure change-battery "Renew the battery" for generator supplies battery {
  disconnect earth-lead
  disconnect live-lead
  remove battery and discard
  fit new battery
  connect live-lead
  connect earth-lead
}
`,
  says: (fact) => {
    if (fact.words!.flag === 'last on') {
      return {
        message: `${capital(subject(fact))} ${agree(fact, 'goes', 'go')} on while ${others(fact)} ${isAre(fact, 'others')} still off: ${agree(fact, 'it is', 'they are')} the last on.`,
        help: `Connect ${others(fact)} before this step.`,
      };
    }
    return {
      message: `${capital(subject(fact))} ${agree(fact, 'comes', 'come')} off while ${others(fact)} ${isAre(fact, 'others')} still on: a spanner that touches the frame makes a short circuit.`,
      help: `Disconnect ${others(fact)} before this step.`,
    };
  },
};
