import type { Check } from '../check.ts';
import { capital, isAre, subject, them, typed } from '../speak.ts';

export const fixtureLeftOn: Check = {
  name: 'fixture-left-on',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A tool or fixture is still in place at the end.',
  explanation: `
A holding strap, locking pin or clamp that stays on is the tool that is missing from the box tonight and the damage of
tomorrow's first start. The checker asks that every tool that a step puts in place is taken off by the end of the job.

Write the \`remove\` step for the tool.`,
  source: 'common practice, no source',
  bad: `
machine mill "hammer mill" {
  part frame "frame" fixed
  part shaft "shaft" on frame fixed
  part rotor "rotor" on shaft held by rotor-nut
  fastener rotor-nut "rotor nut" x1 torque 120 N·m
  tool holding-bar "holding bar" locks shaft
}
procedure renew-rotor "Renew the rotor" for mill tools holding-bar supplies rotor {
  fit holding-bar
      ^^^^^^^^^^^
  remove rotor-nut
  remove rotor and discard
  fit new rotor
  fit rotor-nut
}
`,
  good: `
machine mill "hammer mill" {
  part frame "frame" fixed
  part shaft "shaft" on frame fixed
  part rotor "rotor" on shaft held by rotor-nut
  fastener rotor-nut "rotor nut" x1 torque 120 N·m
  tool holding-bar "holding bar" locks shaft
}
procedure renew-rotor "Renew the rotor" for mill tools holding-bar supplies rotor {
  fit holding-bar
  remove rotor-nut
  remove rotor and discard
  fit new rotor
  fit rotor-nut
  remove holding-bar
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still in place at the end of the job.`,
    help: `Write \`remove ${typed(fact.subject)}\` when the work that needed ${them(fact)} is done.`,
  }),
};
