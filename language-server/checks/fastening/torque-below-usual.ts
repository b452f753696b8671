import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const torqueBelowUsual: Check = {
  name: 'torque-below-usual',
  group: 'Fastening',
  severity: 'information',
  title: 'A torque is far below what seats such a thread.',
  explanation: `
A digit that was lost (9 for 90) leaves a bolt that is hardly loaded, and that comes loose. The checker works out the load
with the least friction that is credible (K = 0.12: anti-seize compound) and speaks up where even that is less than a sixth
of the proof load.

It may be meant: a plastic cover, a soft seal. Only where thread and class are declared, and not where an angle, a feel or a
back-off makes the joint.`,
  source:
    'Proof loads: ISO 898-1 and SAE J429; usual preload 75 % of proof: Shigley, 9th ed.; the limit of a sixth is judgement, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed held by ram-bolts
  fastener ram-bolts "ram bolts" x4 thread M12x1.75 class 8.8 torque 9 N·m
                                                                     ^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed held by ram-bolts
  fastener ram-bolts "ram bolts" x4 thread M12x1.75 class 8.8 torque 90 N·m
}
`,
  says: (fact) => {
    const { torque, thread, class: grade, share, low, high } = fact.words ?? {};
    return {
      message: `A torque of ${torque} hardly loads ${subject(fact)} (${thread}, ${grade}): ${share} % of the proof load at most.`,
      help: `Check the value and its unit; such a thread usually takes ${low} to ${high}.`,
    };
  },
};
