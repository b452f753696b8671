import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, them, told, typed } from '../speak.ts';

export const trialNotUndone: Check = {
  name: 'trial-not-undone',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A fit on trial becomes the final one.',
  explanation: `
A part that is fitted to measure a gap goes in dry: without its seal, its shims or its torque. The checker asks that
whatever was fitted on trial comes off again before it is fitted for good, and by the end of the job.

Write the \`remove\` step after the measurement.`,
  source:
    'US Army TM 5-4320-300-14, paragraph 5-21: impeller and volute are fitted to measure, and no step takes them off again',
  bad: `
machine slurry-pump "slurry pump" {
  part casing "pump casing" fixed
  part wear-ring "wear ring" on casing under impeller
  part impeller "impeller" on casing
}
procedure renew-ring "Renew the wear ring" for slurry-pump supplies wear-ring {
  remove impeller
  remove wear-ring and discard
  fit new wear-ring
  trial fit impeller
  measure gap between impeller and casing {
    up to 0.5 mm { }
    over 0.5 mm { stop "Send for a new impeller." }
  }
  refit impeller
        ^^^^^^^^
}
`,
  good: `
machine slurry-pump "slurry pump" {
  part casing "pump casing" fixed
  part wear-ring "wear ring" on casing under impeller
  part impeller "impeller" on casing
}
procedure renew-ring "Renew the wear ring" for slurry-pump supplies wear-ring {
  remove impeller
  remove wear-ring and discard
  fit new wear-ring
  trial fit impeller
  measure gap between impeller and casing {
    up to 0.5 mm { }
    over 0.5 mm { stop "Send for a new impeller." }
  }
  remove impeller
  refit impeller
}
`,
  says: (fact) => ({
    message: fact.words!.over
      ? `${capital(subject(fact))}, fitted on trial, ${isAre(fact)} still over the ${fact.words!.over}.`
      : told(fact, 'fitted on trial')
        ? `${capital(subject(fact))} ${isAre(fact)} still fitted on trial when this step fits ${them(fact)} for good.`
        : `${capital(subject(fact))} ${isAre(fact)} fitted on trial and never ${agree(fact, 'comes', 'come')} off again to be fitted for good.`,
    help: `Write \`remove ${typed(fact.subject)}\` after the trial, then fit ${them(fact)} for good.`,
  }),
};
