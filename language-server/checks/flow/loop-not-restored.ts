import type { Check } from '../check.ts';
import { lower } from '../speak.ts';

export const loopNotRestored: Check = {
  name: 'loop-not-restored',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'The second round of a repeat cannot be done as the first one left the machine.',
  explanation: `
The steps of a repeat are done again until its condition holds. Each round must leave the machine so that the next one
can start. Printed procedures go wrong here more often than anywhere else: "repeat steps 1 to 5" when step 1 needs what
step 4 took away.

Put back at the end of the round what its first steps need, or begin the round where it can begin.`,
  source:
    'case 18: a repeat whose second pull starts from another state; case 02: a repeat without a re-entry step',
  bad: `
machine feeder "grain feeder" {
  part hopper "hopper" fixed
  part gate "gate" on hopper held by gate-screws
  part shim "shim" on hopper under gate
  fastener gate-screws "gate screws" x2
}
procedure set-gap "Set the gap" for feeder {
  repeat until "the gap is right" at most 4 times {
    unbolt gate
           ^^^^
    adjust shim
  } otherwise {
    stop "Report the hopper as worn."
  }
  bolt up gate
}
`,
  good: `
machine feeder "grain feeder" {
  part hopper "hopper" fixed
  part gate "gate" on hopper held by gate-screws
  part shim "shim" on hopper under gate
  fastener gate-screws "gate screws" x2
}
procedure set-gap "Set the gap" for feeder {
  repeat until "the gap is right" at most 4 times {
    unbolt gate
    adjust shim
    bolt up gate
  } otherwise {
    stop "Report the hopper as worn."
  }
}
`,
  says: (fact) => ({
    message: `In the second round: ${lower(fact.words!.inner!)}`,
    help: 'Put back within the round what its first steps need.',
  }),
};
