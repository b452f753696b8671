import type { Check } from '../check.ts';
import { capital, isAre, subject, them, typed } from '../speak.ts';

export const leftDrained: Check = {
  name: 'left-drained',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A system is still drained at the end.',
  explanation: `
An engine that runs without its coolant or its oil does not run for long. The checker asks that every system that was
drained or recovered is filled again by the end of the job.

Write the \`fill\` step after the last joint is closed, or say \`ends with … drained\`.`,
  source: 'common practice, no source',
  bad: `
machine engine "stationary engine" {
  part block "engine block" fixed
  part thermostat "thermostat" on block opens coolant
  fluid water-mix "coolant mix"
  system coolant "cooling circuit" holds 6 L water-mix
}
procedure renew-thermostat "Renew the thermostat" for engine supplies thermostat {
  drain coolant
        ^^^^^^^
  remove thermostat and discard
  fit new thermostat
}
`,
  good: `
machine engine "stationary engine" {
  part block "engine block" fixed
  part thermostat "thermostat" on block opens coolant
  fluid water-mix "coolant mix"
  system coolant "cooling circuit" holds 6 L water-mix
}
procedure renew-thermostat "Renew the thermostat" for engine supplies thermostat, 6 L water-mix {
  drain coolant
  remove thermostat and discard
  fit new thermostat
  fill coolant
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still drained at the end of the job: no step fills ${them(fact)} again.`,
    help: `Write \`fill ${typed(fact.subject)}\` after the last joint is closed.`,
  }),
};
