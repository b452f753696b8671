import type { Check } from '../check.ts';
import { CAUTION, capital, DEFER, isAre, others, subject } from '../speak.ts';

export const relievedBeforeLock: Check = {
  name: 'relieved-before-lock',
  group: 'Hazards',
  severity: 'warning',
  title: 'Stored energy is let out before the lock is on.',
  explanation: `
The order of a lockout is: isolate, lock, let stored energy out, prove. Where pressure or a spring is let go before the lock is
on, somebody can switch on again half-way, and the machine fills or moves with a hand in it. The checker looks at the steps of making safe that
follow one another in a task: letting out, and then a lock on a breaker or valve that isolates.

Write the \`lock out\` before the step that lets the energy out. ${CAUTION}`,
  source:
    '29 CFR 1910.147 (d) (4) and (5); a city code of 54-5-5 lets stored energy out one step before the lock',
  bad: `
machine press "moulding press" {
  part platen "platen" fixed
  part ram-seal "ram seal" on platen opens oil, mains
  isolator main-switch "main switch" in mains normally on
  control dump-valve "dump valve" in oil normally closed
  tool padlock "padlock and tag"
  system mains "mains supply" live 400 V isolated at main-switch
  system oil "hydraulic oil" pressure 140 bar relieved at dump-valve
}
procedure renew-seal "Renew the ram seal" for press tools padlock supplies ram-seal {
  isolate mains
  open dump-valve
       ^^^^^^^^^^
  lock out main-switch with padlock
  remove ram-seal and discard
  fit new ram-seal
  close dump-valve
  unlock main-switch
  restore mains
}
`,
  good: `
machine press "moulding press" {
  part platen "platen" fixed
  part ram-seal "ram seal" on platen opens oil, mains
  isolator main-switch "main switch" in mains normally on
  control dump-valve "dump valve" in oil normally closed
  tool padlock "padlock and tag"
  system mains "mains supply" live 400 V isolated at main-switch
  system oil "hydraulic oil" pressure 140 bar relieved at dump-valve
}
procedure renew-seal "Renew the ram seal" for press tools padlock supplies ram-seal {
  isolate mains
  lock out main-switch with padlock
  open dump-valve
  remove ram-seal and discard
  fit new ram-seal
  close dump-valve
  unlock main-switch
  restore mains
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} let out here, before the lock goes on ${others(fact)}: somebody can switch on again half-way.`,
    help: `Lock out first, then let out what is stored. ${DEFER}`,
  }),
};
