import type { Check } from '../check.ts';
import { agree, apartFromItself, bringBack, capital, isAre, others, subject } from '../speak.ts';

export const seatMissing: Check = {
  name: 'seat-missing',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something goes back before what it sits on or is joined to.',
  explanation: `
A part needs its seat, and a hose needs both its ends. The checker asks that what a part sits on (\`on\`) is there, on
the machine or in the hand, and that the ends of a connection are together. A seat that was thrown away must be renewed
first; a seat that is never fitted at all is reported at the first thing that was put on it.

Fit the seat before this step.`,
  source: 'US Army TM 5-4320-300-14, paragraph 5-21: an impeller goes back before the shims under it',
  bad: `
machine fan-drive "roof fan" {
  part shaft "shaft" fixed
  part hub "hub" on shaft
  part fan "fan wheel" on hub
}
procedure renew-hub "Renew the hub" for fan-drive supplies hub {
  remove fan
  remove hub and discard
  refit fan
        ^^^
  fit new hub
}
`,
  good: `
machine fan-drive "roof fan" {
  part shaft "shaft" fixed
  part hub "hub" on shaft
  part fan "fan wheel" on hub
}
procedure renew-hub "Renew the hub" for fan-drive supplies hub {
  remove fan
  remove hub and discard
  fit new hub
  refit fan
}
`,
  says: (fact) => {
    const there = apartFromItself(fact);
    const what = others(there);
    const areThey = isAre(there, 'others');
    return fact.subject!.thing.type === 'connection'
      ? {
          message: `${capital(subject(fact))} cannot be connected: ${what} ${areThey} not in place.`,
          help: `${bringBack(there.others)} before this step.`,
        }
      : {
          message: `${capital(subject(fact))} ${agree(fact, 'goes', 'go')} back on ${what}, which ${areThey} not there.`,
          help: `${bringBack(there.others)} before this step.`,
        };
  },
};
