import type { Check } from '../check.ts';
import { agree, capital, isAre, subject } from '../speak.ts';

export const swapped: Check = {
  name: 'swapped',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A matched part goes back in the place of another.',
  explanation: `
Matched parts have worn in where they ran: a piston from one bore is not at home in the next. The checker compares the place
that a step gives (\`at #2\`) with the place that the part came from. A new part may go anywhere.

Give the place it came from, or fit a new one.`,
  source: 'common practice, no source',
  bad: `
machine engine "twin engine" {
  part block "engine block" fixed
  part rings "piston rings" x2 on pistons single-use
  part pistons "pistons" x2 on block matched numbered
}
procedure renew-rings "Renew the piston rings" for engine supplies rings x2 {
  remove pistons
  remove rings and discard
  fit new rings
  refit pistons #1 at #2
        ^^^^^^^^^^
  refit pistons #2
}
`,
  good: `
machine engine "twin engine" {
  part block "engine block" fixed
  part rings "piston rings" x2 on pistons single-use
  part pistons "pistons" x2 on block matched numbered
}
procedure renew-rings "Renew the piston rings" for engine supplies rings x2 {
  remove pistons
  remove rings and discard
  fit new rings
  refit pistons #1 at #1
  refit pistons #2
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} matched to ${agree(fact, 'its', 'their')} place and ${agree(fact, 'goes', 'go')} back at #${fact.words!.to} here.`,
    help: `Put ${subject(fact)} back where ${agree(fact, 'it', 'they')} came from, or fit ${agree(fact, 'a new one', 'new ones')}.`,
  }),
};
