import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const torqueBelowUsual: Check = {
  name: 'torque-below-usual',
  group: 'Fastening',
  severity: 'information',
  title: 'A torque is far below what seats such a thread.',
  explanation: `
A digit that was lost (9 for 90) or a unit that was swapped (lbf·in for N·m) leaves a bolt that is hardly loaded, and that
comes loose. The checker works out the load with the usual nut factor (K = 0.2), or the one that the machine file states,
and speaks up where that is less than 28 % of the proof load: a third of what such joints usually get. Of a range it
takes the upper end; the lower one where that is less than a third of the upper. A torque that only seats the joint for an angle has to reach a twentieth or so; a castle nut with a
split pin, which may only keep parts together, a tenth.

It may be meant: a plastic cover, a soft seal. Say so with \`not over\`: a limit that is not more than twice the torque
shows that little is wanted. Only where thread and class are declared, and not where a feel or a back-off makes the joint.`,
  source:
    'Proof loads: ISO 898-1 and SAE J429; K = 0.2 and the usual preload of 75 % of proof: Shigley, 9th ed.; torques in tables: VDI 2230; a third of these as the limit is judgement, no source',
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
    const { torque, thread, class: grade, share, low, high, seats } = fact.words!;
    const bolt = `${subject(fact)} (${thread}, ${grade})`;
    if (seats)
      return {
        message: `A torque of ${torque} hardly seats ${bolt} for the angle that follows: it gives about ${share} % of the proof load.`,
        help: 'Check the value and its unit: an angle counts from parts that are down on each other.',
      };
    return {
      message: `A torque of ${torque} hardly loads ${bolt}: it gives about ${share} % of the proof load.`,
      help: `Check the value and its unit; such a thread usually takes ${low} to ${high}. Where so little is meant, say so with \`not over\` and a limit.`,
    };
  },
};
