import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, typed } from '../speak.ts';

export const retightenedYield: Check = {
  name: 'retightened-yield',
  group: 'Fastening',
  severity: 'error',
  title: 'A fastener that is tightened to its yield point is used a second time.',
  explanation: `
A bolt that was tightened until it yielded has grown a little for good, and the second time it may neck down or break. The
checker asks that a fastener whose plan ends \`to yield\` is new each time it is tightened. Other plans may be loosened and
tightened again as often as the job wants.

Fit new ones, or take \`to yield\` off the plan where it is not meant.`,
  source: 'common practice, no source',
  bad: `
machine engine "two-cylinder engine" {
  part rod "connecting rod" fixed
  part shell "big-end shell" on rod under cap
  part cap "big-end cap" on rod held by rod-bolts
  fastener rod-bolts "big-end bolts" x2 plan { 15 N·m; 45 N·m } to yield
}
procedure renew-shell "Renew the big-end shell" for engine supplies shell, rod-bolts {
  unbolt cap
  remove shell and discard
  fit new shell
  refit cap
  fit rod-bolts by hand
  tighten rod-bolts
          ^^^^^^^^^
}
`,
  good: `
machine engine "two-cylinder engine" {
  part rod "connecting rod" fixed
  part shell "big-end shell" on rod under cap
  part cap "big-end cap" on rod held by rod-bolts
  fastener rod-bolts "big-end bolts" x2 plan { 15 N·m; 45 N·m } to yield
}
procedure renew-shell "Renew the big-end shell" for engine supplies shell, rod-bolts {
  unbolt cap
  remove shell and discard
  fit new shell
  refit cap
  fit new rod-bolts by hand
  tighten rod-bolts
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} tightened to yield, and ${agree(fact, 'this one has', 'these have')} been tightened so before.`,
    help: `Write \`fit new ${typed(fact.subject)}\` before this step.`,
  }),
};
