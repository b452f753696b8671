import type { Check } from '../check.ts';
import { agree, capital, clear, isAre, others, subject, told } from '../speak.ts';

export const covered: Check = {
  name: 'covered',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something is worked on while another thing hides it.',
  explanation: `
Nobody can reach a belt through its guard. The machine file says what lies under what (\`under\`, \`sealed by\`); the
checker asks that nothing of that is in place when a step touches the thing. It also finds the cover that goes back too
early, before the work under it is done. Looking and measuring are not asked for.

Take off what is in the way before this step, or put it back after it.`,
  source: 'common practice, no source',
  bad: `
machine compressor "garage compressor" {
  part base "base" fixed
  part guard "belt guard" on base held by guard-screws
  part belt "drive belt" on base under guard
  fastener guard-screws "guard screws" x4 torque 6 N·m
}
procedure renew-belt "Renew the drive belt" for compressor supplies belt {
  remove belt and discard
         ^^^^
  unbolt guard
  fit new belt
  bolt up guard
}
`,
  good: `
machine compressor "garage compressor" {
  part base "base" fixed
  part guard "belt guard" on base held by guard-screws
  part belt "drive belt" on base under guard
  fastener guard-screws "guard screws" x4 torque 6 N·m
}
procedure renew-belt "Renew the drive belt" for compressor supplies belt {
  unbolt guard
  remove belt and discard
  fit new belt
  bolt up guard
}
`,
  says: (fact) => {
    const tooEarly = told(fact, 'put back') || told(fact, 'connected') || told(fact, 'fitted on trial');
    return {
      message: tooEarly
        ? `${capital(subject(fact))} cannot be reached any more: ${others(fact)} went back too early.`
        : `${capital(subject(fact))} cannot be reached: ${others(fact)} ${isAre(fact, 'others')} in the way.`,
      help: tooEarly
        ? `Do this step before ${others(fact)} ${agree(fact, 'goes', 'go', 'others')} back.`
        : `${clear(fact.others!)} before this step.`,
    };
  },
};
