import type { Check } from '../check.ts';
import { agree, capital, subject, them, typed } from '../speak.ts';

export const openedFull: Check = {
  name: 'opened-full',
  group: 'Fluids, faces, consumables',
  severity: 'error',
  title: 'A full system is opened, and what ran out is not made good.',
  explanation: `
Taking a thermostat off a full cooling circuit lets out what stands above it. The checker takes a system that is opened
while it is full to be low from then on, and asks that it is drained before it is opened, or topped up, filled or bled
after it. A vacuum pump likewise asks for a system that is empty.

Write \`drain …\` before this step and \`fill …\` at the end, or \`top up …\` where only a little runs out.`,
  source: 'common practice, no source',
  bad: `
machine engine "barn engine" {
  part block "engine block" fixed
  part thermostat "thermostat" on block opens coolant
  fluid water-mix "coolant mix"
  system coolant "cooling circuit" holds 6 L water-mix
}
procedure renew-thermostat "Renew the thermostat" for engine supplies thermostat {
  remove thermostat and discard
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  fit new thermostat
}
`,
  good: `
machine engine "barn engine" {
  part block "engine block" fixed
  part thermostat "thermostat" on block opens coolant
  fluid water-mix "coolant mix"
  system coolant "cooling circuit" holds 6 L water-mix
}
procedure renew-thermostat "Renew the thermostat" for engine supplies thermostat, 1 L water-mix {
  remove thermostat and discard
  fit new thermostat
  top up coolant
}
`,
  says: (fact) => {
    const pumping = fact.words!.verb === 'evacuate';
    return {
      message: pumping
        ? `${capital(subject(fact))} still ${agree(fact, 'holds', 'hold')} fluid when this step evacuates ${them(fact)}.`
        : `This step opens ${subject(fact)} undrained, and nothing makes good by the end of the job what ${agree(fact, 'it loses', 'they lose')}.`,
      help: pumping
        ? `Write \`recover ${typed(fact.subject)}\` or \`drain ${typed(fact.subject)}\` before this step.`
        : `Drain ${subject(fact)} before this step and fill ${them(fact)} afterwards, or write \`top up ${typed(fact.subject)}\` where only a little runs out.`,
    };
  },
};
