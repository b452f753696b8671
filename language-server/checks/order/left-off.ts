import type { Check } from '../check.ts';
import { capital, isAre, subject, them, typed } from '../speak.ts';

export const leftOff: Check = {
  name: 'left-off',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something that came off is still off at the end.',
  explanation: `
A part, seal or fastener that came off must be back when the job ends, unless \`ends with\` says that it stays off. Of
all faults in maintenance the step that nobody did is the commonest one, and a step that nobody wrote is its
twin on paper. The checker follows every thing through all variants and outcomes; the finding stands at the step that took
it off.

Write the step that puts it back, or say \`ends with … off\` where it is meant to stay off.`,
  source:
    'US Army TM 5-6115-545-12, paragraph 3-205: spacer and pulley of the fan come off and never go back',
  bad: `
machine genset "standby generator" {
  part block "engine block" fixed
  part pump "water pump" on block fixed
  part pulley "pulley" on pump under spacer
  part spacer "spacer" on pump under fan
  part fan "fan" on pump held by fan-screws
  fastener fan-screws "fan screws" x4 torque 30 N·m
}
procedure renew-pulley "Renew the pulley" for genset supplies pulley {
  unbolt fan
  remove spacer
         ^^^^^^
  remove pulley and discard
  fit new pulley
  bolt up fan
}
`,
  good: `
machine genset "standby generator" {
  part block "engine block" fixed
  part pump "water pump" on block fixed
  part pulley "pulley" on pump under spacer
  part spacer "spacer" on pump under fan
  part fan "fan" on pump held by fan-screws
  fastener fan-screws "fan screws" x4 torque 30 N·m
}
procedure renew-pulley "Renew the pulley" for genset supplies pulley {
  unbolt fan
  remove spacer
  remove pulley and discard
  fit new pulley
  refit spacer
  bolt up fan
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still ${fact.subject!.thing.type === 'fastener' ? 'out' : 'off'} at the end of the job: no step puts ${them(fact)} back.`,
    help: `Write \`refit ${typed(fact.subject)}\` (\`fit new …\` where a new one goes in), or say \`ends with ${typed(fact.subject)} off\`.`,
  }),
};
