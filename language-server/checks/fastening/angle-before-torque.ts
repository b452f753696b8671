import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const angleBeforeTorque: Check = {
  name: 'angle-before-torque',
  group: 'Fastening',
  severity: 'warning',
  title: 'An angle stage has nothing in front of it that seats the joint.',
  explanation: `
An angle counts from the point where the parts are down on each other. Without a stage that brings them there, part of the
angle is lost in closing the gap, and nobody knows how much. A torque seats the joint; so do a percentage of one, a stop
that is felt, and \`by hand\` where the parts lie flat.

After a stage that loosens, the joint has to be seated again.`,
  source: 'US Army TM 10-3930-669-20, E-4: preload with a torque wrench first, then the angles',
  bad: `
machine engine "barge engine" {
  part block "engine block" fixed
  part cap "bearing cap" on block held by cap-bolts
  fastener cap-bolts "cap bolts" x2 plan { 60°; 30° }
                                           ^^^
}
`,
  good: `
machine engine "barge engine" {
  part block "engine block" fixed
  part cap "bearing cap" on block held by cap-bolts
  fastener cap-bolts "cap bolts" x2 plan { 30 N·m; 60°; 30° }
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `Stage ${words.stage} turns ${subject(fact)} by ${words.angle}, and no stage before it seats the joint.`,
    help: 'Put the torque that seats the joint in front of it, or `by hand` where the parts lie flat on each other.',
  }),
};
