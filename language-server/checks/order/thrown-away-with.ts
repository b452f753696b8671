import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, them, typed } from '../speak.ts';

export const thrownAwayWith: Check = {
  name: 'thrown-away-with',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something that is needed again is thrown away with what it sits on.',
  explanation: `
A pulley, sensor or dowel that still sits on an old pump goes into the scrap bin with it. The checker carries along
whatever rides on a thing that is discarded; what comes with the new one (\`part of\`, \`supplied with\`) is not missed.
The finding stands at the step that throws it away.

Take it off first, write \`move … to new …\`, or fit a new one.`,
  source: 'common practice, no source',
  bad: `
machine washer "pressure washer" {
  part frame "frame" fixed
  part pump "pump" on frame held by pump-bolts
  part pulley "pump pulley" on pump
  fastener pump-bolts "pump bolts" x3 torque 24 N·m
}
procedure renew-pump "Renew the pump" for washer supplies pump {
  remove pump-bolts
  remove pump and discard
  ^^^^^^^^^^^^^^^^^^^^^^^
  fit new pump
  fit pump-bolts
}
`,
  good: `
machine washer "pressure washer" {
  part frame "frame" fixed
  part pump "pump" on frame held by pump-bolts
  part pulley "pump pulley" on pump
  fastener pump-bolts "pump bolts" x3 torque 24 N·m
}
procedure renew-pump "Renew the pump" for washer supplies pump {
  remove pump-bolts
  remove pump
  move pulley to new pump
  discard pump
  fit new pump
  fit pump-bolts
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} lost with the old part that ${agree(fact, 'it sits', 'they sit')} on, and the machine needs ${them(fact)} again.`,
    help: `Take ${subject(fact)} off first, write \`move ${typed(fact.subject)} to new …\`, or fit ${agree(fact, 'a new one', 'new ones')}.`,
  }),
};
