import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const torqueAboveUsual: Check = {
  name: 'torque-above-usual',
  group: 'Fastening',
  severity: 'information',
  title: 'A torque is more than such a thread usually gets.',
  explanation: `
A torque three times too much does not always break a bolt on paper: dry and black, with all friction against it, the thread
may just carry it. The checker works out the load with the usual nut factor (K = 0.2) and speaks up where that is more than
120 % of the proof load, though not yet more than the thread can carry with the highest friction: that is an error of its own.

Where an angle follows, the torque only seats the joint. One that alone gives three quarters of the proof load, all that
a joint usually gets, leaves nothing for the angle.

Only where thread and class are declared. Where the bolts are meant to go in dry, state the friction: with \`nut factor\` the
strength is reckoned exactly, and this finding goes.`,
  source:
    'Proof loads: ISO 898-1 and SAE J429; K = 0.2 and the usual preload of 75 % of proof: Shigley, 9th ed.; 120 % is judgement, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed held by ram-bolts
  fastener ram-bolts "ram bolts" x4 thread M16x1.5 class 10.9 plan { 600 N·m; 60° }
                                                                     ^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed held by ram-bolts
  fastener ram-bolts "ram bolts" x4 thread M16x1.5 class 10.9 plan { 60 N·m; 60° }
}
`,
  says: (fact) => {
    const { torque, thread, class: grade, share, k, low, high, seats } = fact.words!;
    const bolt = `${subject(fact)} (${thread}, ${grade})`;
    if (seats)
      return {
        message: `A torque of ${torque} alone loads ${bolt} to about ${share} % of the proof load, with a nut factor of ${k}, and an angle follows.`,
        help: 'Check the value and its unit: before an angle the torque only has to seat the joint.',
      };
    return {
      message: `A torque of ${torque} is more than ${bolt} usually gets: about ${share} % of the proof load, with a nut factor of ${k}.`,
      help: `Check the value and its unit; such a thread usually takes ${low} to ${high}. Where the bolts go in dry, state the \`nut factor\`.`,
    };
  },
};
