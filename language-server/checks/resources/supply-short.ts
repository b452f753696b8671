import type { Check } from '../check.ts';
import { capital, isAre, subject, typed } from '../speak.ts';

export const supplyShort: Check = {
  name: 'supply-short',
  group: 'Tools, time, people',
  severity: 'warning',
  title: 'The steps use new parts, fluids or consumables that the job is not issued with.',
  explanation: `
What stands after \`supplies\` is fetched from the store before the job. A new part that is missing there is missing when the old one lies in the
scrap. The checker counts the things that the steps fit new against the list, with what a kit contains and what comes with another part; and
the amounts of a fluid that steps fill in for certain against the amount that is listed.

What is only used where something is found (in an outcome, an \`if\` or a repeat) is not asked for: it is fetched when it is needed. Where there
is no list, nothing is missed. A list that names no fluid and no consumable leaves these to the workshop; one that names some has to name each
that a step is done with.`,
  source: 'S1000D and DITA: supplies and spares are listed before the steps',
  bad: `
machine tap-set "tap set" {
  part body "body" fixed
  part bonnet "bonnet" on body held by bonnet-screw sealed by bonnet-ring
  seal bonnet-ring "bonnet ring" on body single-use
  part valve-disc "valve disc" on body under bonnet
  fastener bonnet-screw "bonnet screw" x1 torque 5 N·m
}
procedure renew-disc "Renew the valve disc" for tap-set supplies valve-disc {
  unbolt bonnet
  remove bonnet-ring and discard
  remove valve-disc and discard
  fit new valve-disc
  fit new bonnet-ring
          ^^^^^^^^^^^
  bolt up bonnet
}
`,
  good: `
machine tap-set "tap set" {
  part body "body" fixed
  part bonnet "bonnet" on body held by bonnet-screw sealed by bonnet-ring
  seal bonnet-ring "bonnet ring" on body single-use
  part valve-disc "valve disc" on body under bonnet
  fastener bonnet-screw "bonnet screw" x1 torque 5 N·m
}
procedure renew-disc "Renew the valve disc" for tap-set supplies valve-disc, bonnet-ring {
  unbolt bonnet
  remove bonnet-ring and discard
  remove valve-disc and discard
  fit new valve-disc
  fit new bonnet-ring
  bolt up bonnet
}
`,
  says: (fact) => {
    const { needed, there, amount, usedUp } = fact.words!;
    if (usedUp) {
      return {
        message: `${capital(subject(fact))} ${isAre(fact)} used here and not listed after \`supplies\`, where others of that sort are.`,
        help: `Add \`${typed(fact.subject)}\` to the supplies.`,
      };
    }
    if (amount) {
      return {
        message: `The steps fill in ${needed} of ${subject(fact)}, and ${there} is listed.`,
        help: `List at least ${needed} after \`supplies\`.`,
      };
    }
    if (there === '0') {
      return {
        message: `${capital(subject(fact))} ${isAre(fact)} fitted new here and not listed after \`supplies\`.`,
        help: `Add \`${typed(fact.subject)}\` to the supplies.`,
      };
    }
    return {
      message: `The steps fit ${needed} new of ${subject(fact)}, and ${there} ${there === '1' ? 'is' : 'are'} listed.`,
      help: `Write \`${fact.subject!.thing.name} x${needed}\` after \`supplies\`.`,
    };
  },
};
