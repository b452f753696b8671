import type { Check } from '../check.ts';
import { capital, isAre, subject, typed } from '../speak.ts';

export const leftDisconnected: Check = {
  name: 'left-disconnected',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A plug, hose or pipe is still apart at the end.',
  explanation: `
A plug that hangs beside its socket and a hose that was never pushed back on are found by the first start, or by the
first leak. The checker asks that every connection that came apart is connected again by the end of the job; a cap on it
does not count.

Write the \`connect\` step, or say \`ends with … disconnected\`.`,
  source: 'common practice, no source',
  bad: `
machine tractor "orchard tractor" {
  part frame "frame" fixed
  part radiator "radiator" on frame fixed under cooling-fan
  part cooling-fan "cooling fan" on frame held by fan-screws
  fastener fan-screws "fan screws" x4 torque 9 N·m
  connection fan-plug "fan plug" joins cooling-fan to frame
}
procedure clean-radiator "Clean the radiator" for tractor {
  disconnect fan-plug
             ^^^^^^^^
  unbolt cooling-fan
  clean radiator
  bolt up cooling-fan
}
`,
  good: `
machine tractor "orchard tractor" {
  part frame "frame" fixed
  part radiator "radiator" on frame fixed under cooling-fan
  part cooling-fan "cooling fan" on frame held by fan-screws
  fastener fan-screws "fan screws" x4 torque 9 N·m
  connection fan-plug "fan plug" joins cooling-fan to frame
}
procedure clean-radiator "Clean the radiator" for tractor {
  disconnect fan-plug
  unbolt cooling-fan
  clean radiator
  bolt up cooling-fan
  connect fan-plug
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} not connected again by the end of the job.`,
    help: `Write \`connect ${typed(fact.subject)}\` when both ends are in place.`,
  }),
};
