import type { Check } from '../check.ts';
import { capital, isAre, subject, typed } from '../speak.ts';

export const leftLocked: Check = {
  name: 'left-locked',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A lock is still on at the end.',
  explanation: `
A lock that stays on stops the machine, or breaks what is turned against it. The checker asks that whatever this job
locks, by a lock of its own or by locking out, is unlocked by the end of it.

Write the \`unlock\` step. Where the lock is meant to stay on, say \`ends with … locked\`.`,
  source:
    '29 CFR 1910.147 (e), release from lockout, for locks on isolators; else common practice, no source',
  bad: `
machine mill "milling machine" {
  part head "mill head" fixed
  part spindle "spindle" on head fixed
  part chuck "chuck" on spindle
}
procedure renew-chuck "Renew the chuck" for mill supplies chuck {
  lock spindle
       ^^^^^^^
  remove chuck and discard
  fit new chuck
}
`,
  good: `
machine mill "milling machine" {
  part head "mill head" fixed
  part spindle "spindle" on head fixed
  part chuck "chuck" on spindle
}
procedure renew-chuck "Renew the chuck" for mill supplies chuck {
  lock spindle
  remove chuck and discard
  fit new chuck
  unlock spindle
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} still locked at the end of the job.`,
    help: `Write \`unlock ${typed(fact.subject)}\` when the work that needed the lock is done.`,
  }),
};
