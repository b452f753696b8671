import type { Check } from '../check.ts';
import { capital, subject } from '../speak.ts';

export const countMissing: Check = {
  name: 'count-missing',
  group: 'Fastening',
  severity: 'hint',
  title: 'A group of fasteners is tightened to a torque, and nobody says how many there are.',
  explanation: `
Who does not know how many bolts there are cannot see that one is missing or was passed over. Counts are left out of printed
procedures far more often than they are wrong. With a count the checker follows every position, its stages and its order.

Write \`x6\` in the declaration. A fastener whose title is in the singular is one.`,
  source: 'NAVFAC MO-124, page 52: the studs of a manhole cover are tightened across and never counted',
  bad: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-bolts
  fastener cover-bolts "cover bolts" torque 20 N·m
}
procedure close-pump "Close the pump" for pump starts with cover off {
  fit cover
  fit cover-bolts by hand
  tighten cover-bolts
          ^^^^^^^^^^^
}
`,
  good: `
machine pump "feed pump" {
  part casing "casing" fixed
  part cover "cover" on casing held by cover-bolts
  fastener cover-bolts "cover bolts" x8 torque 20 N·m
}
procedure close-pump "Close the pump" for pump starts with cover off {
  fit cover
  fit cover-bolts by hand
  tighten cover-bolts
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} are tightened here, and nobody says how many there are.`,
    help: 'Count them on the machine, and write the number in the declaration: `x6`.',
  }),
};
