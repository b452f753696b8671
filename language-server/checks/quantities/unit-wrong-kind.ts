import type { Check } from '../check.ts';
import { capital } from '../speak.ts';

export const unitWrongKind: Check = {
  name: 'unit-wrong-kind',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A quantity is of another kind than its place takes.',
  explanation: `
A mass in newton metres or a torque in newtons is a slip that a technician cannot resolve at the bench. Each clause,
tail and verb takes quantities of certain kinds: \`mass\` takes a mass, \`wait\` a time, \`inflate … to\` a pressure. The
outcomes of one measurement, the rows of one table and the members of a sum are all of one kind.

Where several kinds are right, nothing is said. A torque is not an energy, and a pound in a torque unit is the
pound-force.`,
  source:
    'US Army TM 55-1905-223-24-1, rod bolts: 270 lb-ft is printed beside 365 N, a force; kinds of quantity after the SI brochure',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4 torque 25 N
                                                 ^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4 torque 25 N·m
}
`,
  says: ({ words = {} }) => {
    const { typed, kind, wanted, near } = words;
    const what = words.what!;
    const message = what.startsWith('The ')
      ? `${what} are of one kind: ${typed} is ${kind}, and this place takes ${wanted}.`
      : `${capital(what)} takes ${wanted}, and ${typed} is ${kind}.`;
    return {
      message,
      help: near ? `Perhaps ${near} is meant.` : 'Mend the unit, or write the quantity where it belongs.',
    };
  },
};
