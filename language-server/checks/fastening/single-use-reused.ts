import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';
import { agree, apartFromItself, capital, isAre, others, subject, told, typed } from '../speak.ts';

export const singleUseReused: Check = {
  name: 'single-use-reused',
  group: 'Fastening',
  severity: 'error',
  title: 'A one-time bolt, nut or seal is used again.',
  explanation: `
A nut whose lock is worn or a gasket that has been pressed once does not hold or seal a second time. The machine
file says what is \`single-use\`. The checker follows each one: a fastener that has been out may only be renewed, and
a seal counts as used once its joint was parted, even where no step names it.

Write \`fit new …\` for the fastener, or renew the seal before the joint is closed.`,
  source: 'common practice, no source',
  bad: `
machine barrow "motor barrow" {
  part axle "axle" fixed
  part bearing "wheel bearing" on axle under wheel
  part wheel "wheel" on axle held by wheel-nut
  fastener wheel-nut "wheel nut" x1 single-use torque 110 N·m
}
procedure renew-bearing "Renew the wheel bearing" for barrow supplies bearing, wheel-nut {
  unbolt wheel
  remove bearing and discard
  fit new bearing
  refit wheel
  fit wheel-nut
      ^^^^^^^^^
}
`,
  good: `
machine barrow "motor barrow" {
  part axle "axle" fixed
  part bearing "wheel bearing" on axle under wheel
  part wheel "wheel" on axle held by wheel-nut
  fastener wheel-nut "wheel nut" x1 single-use torque 110 N·m
}
procedure renew-bearing "Renew the wheel bearing" for barrow supplies bearing, wheel-nut {
  unbolt wheel
  remove bearing and discard
  fit new bearing
  refit wheel
  fit new wheel-nut
}
`,
  says: (fact) => {
    const joint = apartFromItself(fact);
    const help = `Write \`fit new ${typed(fact.subject)}\`${joint.others.length > 0 ? ' before this step' : ''}.`;
    if (joint.others.length > 0)
      return {
        message: `${capital(subject(fact))} ${isAre(fact)} for one use only, and the joint of ${others(joint)} was parted: ${agree(fact, 'it', 'they')} must be renewed before it closes.`,
        help,
      };
    const was = agree(fact, 'was', 'were');
    const before = told(fact, 'discarded')
      ? `${was} thrown away`
      : `${agree(fact, 'has', 'have')} been ${out(fact)}`;
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} for one use only and ${before}: only ${agree(fact, 'a new one', 'new ones')} may go in.`,
      help,
    };
  },
};

function out(fact: Fact): string {
  const type = fact.subject!.thing.type;
  return type === 'fastener' || type === 'seal' ? 'out' : type === 'connection' ? 'apart' : 'off';
}
