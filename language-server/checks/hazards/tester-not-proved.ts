import type { Check } from '../check.ts';
import { CAUTION, capital, DEFER, isAre, others, subject, typed } from '../speak.ts';

export const testerNotProved: Check = {
  name: 'tester-not-proved',
  group: 'Hazards',
  severity: 'warning',
  title: 'The tester is not tried on a known live source before and after.',
  explanation: `
A tester with a flat battery or a broken lead shows every supply dead. So it is tried on a source that is known to be live, then the circuit is
tested, then the tester is tried again: only the second try shows that it worked when it counted.

The checker reports a test for dead where the tester is tried on one side only, and, where the machine file says that the system is above
600 V, where nobody tries it. Write \`check …\` of the tester on both sides, or say it in the sentence of the \`prove\` step. At lower
voltages a text that says nothing of it is left alone. ${CAUTION}`,
  source:
    '29 CFR 1910.333 (b) (2) (iv) (above 600 V before and after; from memory) and NFPA 70E, 120.5 (any voltage; seen second hand)',
  bad: `
machine saw "stone saw" {
  part frame "frame" fixed
  part motor "motor" on frame opens mains
  isolator breaker "breaker" in mains normally on
  tool tester "two-pole tester"
  system mains "mains supply" live 400 V isolated at breaker proved with tester
}
procedure renew-motor "Renew the motor" for saw supplies motor {
  isolate mains
  check tester "On a known live source."
  prove mains safe with tester
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  remove motor and discard
  fit new motor
  restore mains
}
`,
  good: `
machine saw "stone saw" {
  part frame "frame" fixed
  part motor "motor" on frame opens mains
  isolator breaker "breaker" in mains normally on
  tool tester "two-pole tester"
  system mains "mains supply" live 400 V isolated at breaker proved with tester
}
procedure renew-motor "Renew the motor" for saw supplies motor {
  isolate mains
  check tester "On a known live source."
  prove mains safe with tester
  check tester "On the same source again."
  remove motor and discard
  fit new motor
  restore mains
}
`,
  says: (fact) => {
    const missing = fact.words!.missing!;
    const where =
      missing === 'before and after' ? 'before this step and once more after it' : `${missing} this step`;
    return {
      message: `${capital(others(fact))} ${isAre(fact, 'others')} tested for dead here, and ${subject(fact)} ${isAre(fact)} not tried on a known live source ${missing} it.`,
      help: `Write \`check ${typed(fact.subject)} "On a known live source."\` ${where}. ${DEFER}`,
    };
  },
};
