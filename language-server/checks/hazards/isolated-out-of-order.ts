import type { Check } from '../check.ts';
import { agree, CAUTION, capital, DEFER, isAre, subject } from '../speak.ts';

export const isolatedOutOfOrder: Check = {
  name: 'isolated-out-of-order',
  group: 'Hazards',
  severity: 'error',
  title: 'A lock goes on before the supply is off.',
  explanation: `
A lock on a breaker that is still on protects nobody: it keeps the supply on. The order is: isolate, lock, let stored energy out,
prove. The checker asks that an isolator is off or closed, or its system isolated, before it is locked out.

Isolate first, then lock. ${CAUTION}`,
  source:
    '29 CFR 1910.147 (d) (3) to (5); a published city sequence lets stored energy out before the lock is on',
  bad: `
machine mixer "feed mixer" {
  part drum "drum" fixed
  part brush "motor brush" on drum opens mains
  isolator disconnector "disconnector" in mains normally on
  tool padlock "padlock and tag"
  system mains "mains supply" live 400 V isolated at disconnector
}
procedure renew-brush "Renew the motor brush" for mixer tools padlock supplies brush {
  lock out disconnector with padlock
           ^^^^^^^^^^^^
  isolate mains
  remove brush and discard
  fit new brush
  unlock disconnector
  restore mains
}
`,
  good: `
machine mixer "feed mixer" {
  part drum "drum" fixed
  part brush "motor brush" on drum opens mains
  isolator disconnector "disconnector" in mains normally on
  tool padlock "padlock and tag"
  system mains "mains supply" live 400 V isolated at disconnector
}
procedure renew-brush "Renew the motor brush" for mixer tools padlock supplies brush {
  isolate mains
  lock out disconnector with padlock
  remove brush and discard
  fit new brush
  unlock disconnector
  restore mains
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} locked out while ${agree(fact, 'it is', 'they are')} still on.`,
    help: `Switch ${subject(fact)} off, or isolate ${agree(fact, 'its', 'their')} system, before this step. ${DEFER}`,
  }),
};
