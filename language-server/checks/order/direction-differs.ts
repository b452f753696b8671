import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const directionDiffers: Check = {
  name: 'direction-differs',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A step says to turn something the wrong way.',
  explanation: `
A left-hand thread that is loosened counter-clockwise is tightened until it breaks; a back-seating valve closes the other way
round than its neighbour. The checker compares “clockwise” and “counter-clockwise” in the sentence of a step with the thread
of the fastener (\`left-hand\`, or a declared \`thread\`), and with \`closes clockwise\` and \`closes counter-clockwise\`
of a valve.

Where the machine does not say which way, nothing is asked.`,
  source:
    'US Army TM 10-8145-222-23, WP 0014: “open clockwise”, true of back-seating service valves, said of manifold valves too',
  bad: `
machine mower "flail mower" {
  part deck "deck" fixed
  part blade "blade" on deck held by blade-nut
  fastener blade-nut "blade nut" x1 thread M20x1.5 left-hand torque 120 N·m
}
procedure swap-blade "Renew the blade" for mower supplies blade {
  remove blade-nut "Turn it counter-clockwise."
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  remove blade and discard
  fit new blade
  fit blade-nut
}
`,
  good: `
machine mower "flail mower" {
  part deck "deck" fixed
  part blade "blade" on deck held by blade-nut
  fastener blade-nut "blade nut" x1 thread M20x1.5 left-hand torque 120 N·m
}
procedure swap-blade "Renew the blade" for mower supplies blade {
  remove blade-nut "Left-hand thread: turn it clockwise."
  remove blade and discard
  fit new blade
  fit blade-nut
}
`,
  says: (fact) => {
    const { told, right, leftHand } = fact.words!;
    const why = leftHand ? ': the thread is left-hand' : '';
    return {
      message: `The step says ${told}, but ${right} is the way to turn ${subject(fact)} here${why}.`,
      help: 'Mend the sentence, or the machine file if that is what is wrong.',
    };
  },
};
