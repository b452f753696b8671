import type { Check } from '../check.ts';
import { agree, apartFromItself, capital, isAre, others, subject, them, typedOthers } from '../speak.ts';

export const turnedWhileLocked: Check = {
  name: 'turned-while-locked',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something is turned while a lock, pin or fixture holds it.',
  explanation: `
A crankshaft that is turned against its locking pin bends the pin or breaks the casting. The machine file says which tool
locks what and what turns together (\`locks\`, \`coupled\`); the checker asks that nothing holds what a step turns, or
what turns with it.

Take the lock out before this step.`,
  source: 'common practice, no source',
  bad: `
machine engine "stationary diesel" {
  part block "engine block" fixed
  part crankshaft "crankshaft" on block fixed
  part pulley "crank pulley" on crankshaft held by pulley-bolt
  fastener pulley-bolt "pulley bolt" x1 torque 90 N·m
  tool locking-pin "locking pin" locks crankshaft
}
procedure renew-pulley "Renew the crank pulley" for engine tools locking-pin supplies pulley {
  fit locking-pin
  remove pulley-bolt
  remove pulley and discard
  fit new pulley
  fit pulley-bolt
  turn crankshaft 2 turns by hand
       ^^^^^^^^^^
  remove locking-pin
}
`,
  good: `
machine engine "stationary diesel" {
  part block "engine block" fixed
  part crankshaft "crankshaft" on block fixed
  part pulley "crank pulley" on crankshaft held by pulley-bolt
  fastener pulley-bolt "pulley bolt" x1 torque 90 N·m
  tool locking-pin "locking pin" locks crankshaft
}
procedure renew-pulley "Renew the crank pulley" for engine tools locking-pin supplies pulley {
  fit locking-pin
  remove pulley-bolt
  remove pulley and discard
  fit new pulley
  fit pulley-bolt
  remove locking-pin
  turn crankshaft 2 turns by hand
}
`,
  says: (fact) => {
    const holding = apartFromItself(fact);
    const tools = holding.others.filter(({ thing }) => thing.type === 'tool');
    const by = { ...fact, others: tools };
    if (tools.length > 0)
      return {
        message: `${capital(subject(fact))} cannot turn: ${others(by)} ${agree(by, 'holds', 'hold', 'others')} ${them(fact)}.`,
        help: `Write \`remove ${typedOthers(by)}\` before this step.`,
      };
    const locked = holding.others.length > 0 ? others(holding) : subject(fact);
    return {
      message: `${capital(subject(fact))} cannot turn: ${holding.others.length > 0 ? `${locked}, which ${agree(holding, 'turns', 'turn', 'others')} with ${them(fact)}, ${isAre(holding, 'others')}` : `${agree(fact, 'it is', 'they are')}`} locked.`,
      help: `Unlock ${locked} before this step.`,
    };
  },
};
