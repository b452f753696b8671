import type { Check } from '../check.ts';
import { CAUTION, DEFER, isAre, others, subject, them } from '../speak.ts';

export const notKeptSafe: Check = {
  name: 'not-kept-safe',
  group: 'Hazards',
  severity: 'warning',
  title: 'A lock comes off while something of its system is still open.',
  explanation: `
The lock is what keeps the energy away from the hands at work. Once it is off, anybody can switch on. The checker reports a lock that
comes off a breaker or valve while something that opens its system is off, apart or out, and is put back only later. Where the
energy itself comes back onto the open system, \`restored-out-of-order\` says so.

Close everything first, then take the lock off. ${CAUTION}`,
  source: '29 CFR 1910.147 (e) (1): before a lock comes off, the machine is intact',
  bad: `
machine heater "space heater" {
  part case "case" fixed
  part element "heating element" on case opens mains
  isolator breaker "breaker" in mains normally on
  tool padlock "padlock"
  system mains "mains supply" live 230 V isolated at breaker
}
procedure renew-element "Renew the heating element" for heater tools padlock supplies element {
  isolate mains
  lock out breaker with padlock
  remove element and discard
  unlock breaker
         ^^^^^^^
  fit new element
  restore mains
}
`,
  good: `
machine heater "space heater" {
  part case "case" fixed
  part element "heating element" on case opens mains
  isolator breaker "breaker" in mains normally on
  tool padlock "padlock"
  system mains "mains supply" live 230 V isolated at breaker
}
procedure renew-element "Renew the heating element" for heater tools padlock supplies element {
  isolate mains
  lock out breaker with padlock
  remove element and discard
  fit new element
  unlock breaker
  restore mains
}
`,
  says: (fact) => ({
    message: `The lock comes off ${subject(fact)} while ${others(fact)} ${isAre(fact, 'others')} not back: anybody can bring the ${fact.words!.system} back.`,
    help: `Put ${them(fact, 'others')} back before this step. ${DEFER}`,
  }),
};
