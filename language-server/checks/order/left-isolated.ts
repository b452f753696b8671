import type { Check } from '../check.ts';
import { capital, DEFER, isAre, subject, typed } from '../speak.ts';

export const leftIsolated: Check = {
  name: 'left-isolated',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A supply is still isolated at the end.',
  explanation: `
A job that ends with the supply off leaves a dead machine and a riddle for the next shift. The checker asks that every
system that was isolated is restored by the end of the job, once everything is closed and the locks are off.

Write the steps that bring it back, or say \`ends with … isolated\`.`,
  source:
    '29 CFR 1910.147 (e), release from lockout; a published city lockout sequence has no return to service',
  bad: `
machine saw "bench saw" {
  part table "saw table" fixed
  part motor-brush "motor brush" on table opens mains
  isolator breaker "breaker" in mains normally on
  system mains "mains supply" live 230 V isolated at breaker
}
procedure renew-brush "Renew the motor brush" for saw supplies motor-brush {
  isolate mains
          ^^^^^
  remove motor-brush and discard
  fit new motor-brush
}
`,
  good: `
machine saw "bench saw" {
  part table "saw table" fixed
  part motor-brush "motor brush" on table opens mains
  isolator breaker "breaker" in mains normally on
  system mains "mains supply" live 230 V isolated at breaker
}
procedure renew-brush "Renew the motor brush" for saw supplies motor-brush {
  isolate mains
  remove motor-brush and discard
  fit new motor-brush
  restore mains
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still isolated at the end of the job.`,
    help: `Write \`restore ${typed(fact.subject)}\` when everything is closed and the locks are off. ${DEFER}`,
  }),
};
