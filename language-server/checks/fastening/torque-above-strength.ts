import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const torqueAboveStrength: Check = {
  name: 'torque-above-strength',
  group: 'Fastening',
  severity: 'error',
  title: 'A torque is more than the thread can carry.',
  explanation: `
A torque that loads a bolt beyond its proof load stretches it for good or strips the thread. Usually the unit is the
wrong one, or a decimal point was lost. The checker works the load out as T = K·d·F, with the highest nut factor K that is
credible (0.30: dry, not plated), or with the K that the machine file states (\`nut factor\`, or both frictions), and
compares it with the proof load of the thread in its strength class.

Only a load beyond proof is reported, and only where thread and class are declared. Of a plan the largest torque counts;
a plan whose last torque is meant \`to yield\` is left alone.`,
  source:
    'Proof loads: ISO 898-1 and SAE J429 (transcriptions; tested against printed tables). T = K·d·F and the highest K: Shigley, 9th ed., table 8-15',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-bolts
  fastener cover-bolts "cover bolts" x4 thread M8x1.25 class 8.8 torque 240 N·m
                                                                        ^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-bolts
  fastener cover-bolts "cover bolts" x4 thread M8x1.25 class 8.8 torque 24 N·m
}
`,
  says: (fact) => {
    const { torque, thread, class: grade, share, k, stated, most } = fact.words!;
    const friction = stated
      ? `with the stated nut factor of ${k}`
      : `even with the highest usual nut factor, ${k}`;
    return {
      message: `A torque of ${torque} loads ${subject(fact)} (${thread}, ${grade}) to ${share} % of the proof load, ${friction}.`,
      help: `Check the value and its unit: the proof load is reached at ${most}${stated ? '' : ' at the latest'}.`,
    };
  },
};
