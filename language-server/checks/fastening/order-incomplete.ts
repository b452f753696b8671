import { list } from '../../model/model.ts';
import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const orderIncomplete: Check = {
  name: 'order-incomplete',
  group: 'Fastening',
  severity: 'error',
  title: 'A tightening order misses a position or names one twice.',
  explanation: `
A bolt that is not in the order stays loose; one that is in it twice was mostly meant to be its neighbour. The checker
compares the order with the positions of the group, or with those that the step names.

A group that is not counted has no number that could be missing; what is named twice is reported all the same.`,
  source: 'ASME PCC-1, legacy cross patterns: each order has every bolt once (two agreeing public copies)',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-bolts
  fastener cover-bolts "cover bolts" x4 layout circle order #1, #3, #3, #4
                                                            ^^^^^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-bolts
  fastener cover-bolts "cover bolts" x4 layout circle order #1, #3, #2, #4
}
`,
  says: (fact) => {
    const { missing, repeated, extra, step } = fact.words!;
    const parts = [
      ...(missing ? [`misses ${missing}`] : []),
      ...(repeated ? [`names ${repeated} twice`] : []),
      ...(extra ? [`has ${extra}, which the ${step ? 'step does not work' : 'group does not have'}`] : []),
    ];
    return {
      message: `The order of ${subject(fact)} ${list(parts)}.`,
      help: 'Name every position once.',
    };
  },
};
