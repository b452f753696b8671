import type { Check } from '../check.ts';
import { others, subject, typed } from '../speak.ts';

export const torqueMissing: Check = {
  name: 'torque-missing',
  group: 'Fastening',
  severity: 'information',
  title: 'A step asks for a torque that nobody gives.',
  explanation: `
A torque wrench in the hand and no value to set it to: the technician looks for it elsewhere, or guesses. The checker speaks
up where a step takes a torque wrench or speaks of a torque, and neither the machine file nor the step, nor any note of the
procedure, gives a value or says where it stands. "Securely" is no value either; it is reported where thread and class are
declared, because then a torque could be.

Work by hand and by feel is trade practice and is not reported, nor is a wrench that is set for good.`,
  source: 'FAA AC 43.13-1B CHG 1, 9-18: wheel bolts are torqued, and no value is on the page',
  bad: `
machine trailer "flat trailer" {
  part axle "axle" fixed
  part hub "hub" on axle held by hub-bolts
  fastener hub-bolts "hub bolts" x5
  tool torque-wrench "torque wrench" range 20..100 N·m
}
procedure fit-hub "Fit the hub" for trailer tools torque-wrench starts with hub off {
  fit hub
  fit hub-bolts by hand
  tighten hub-bolts with torque-wrench
          ^^^^^^^^^
}
`,
  good: `
machine trailer "flat trailer" {
  part axle "axle" fixed
  part hub "hub" on axle held by hub-bolts
  fastener hub-bolts "hub bolts" x5 torque 80 N·m
  tool torque-wrench "torque wrench" range 20..100 N·m
}
procedure fit-hub "Fit the hub" for trailer tools torque-wrench starts with hub off {
  fit hub
  fit hub-bolts by hand
  tighten hub-bolts with torque-wrench
}
`,
  says: (fact) => {
    const { why } = fact.words!;
    const asks =
      why === 'tool'
        ? `This step tightens ${subject(fact)} with ${others(fact)}`
        : why === 'vague'
          ? `This step says in words how tight ${subject(fact)} must be`
          : `This step speaks of the torque of ${subject(fact)}`;
    return {
      message: `${asks}, and no value is given anywhere.`,
      help: `Declare it once, in the machine file: \`fastener ${typed(fact.subject)} … torque …\`; or say in the step where it stands.`,
    };
  },
};
