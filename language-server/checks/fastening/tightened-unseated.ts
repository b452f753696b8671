import type { Check } from '../check.ts';
import { agree, apartFromItself, bringBack, capital, isAre, others, subject, them, typed } from '../speak.ts';

export const tightenedUnseated: Check = {
  name: 'tightened-unseated',
  group: 'Fastening',
  severity: 'error',
  title: 'A fastener is tightened before it, or what it clamps, is in place.',
  explanation: `
A bolt that meets the wrench before it was started by hand cuts its own thread; a bolt that goes in before its part is
there clamps nothing. The checker asks that a fastener is in its hole before it is tightened, and that everything it
clamps is together.

Start the fastener by hand first (\`fit … by hand\`), or fit the part before it.`,
  source: 'common practice, no source',
  bad: `
machine engine "marine engine" {
  part block "engine block" fixed
  part tappet "tappet" on block under head
  part head "cylinder head" on block held by head-bolts
  fastener head-bolts "head bolts" x6 torque 60 N·m
}
procedure renew-tappet "Renew the tappet" for engine supplies tappet {
  unbolt head
  remove tappet and discard
  fit new tappet
  refit head
  tighten head-bolts
          ^^^^^^^^^^
}
`,
  good: `
machine engine "marine engine" {
  part block "engine block" fixed
  part tappet "tappet" on block under head
  part head "cylinder head" on block held by head-bolts
  fastener head-bolts "head bolts" x6 torque 60 N·m
}
procedure renew-tappet "Renew the tappet" for engine supplies tappet {
  unbolt head
  remove tappet and discard
  fit new tappet
  refit head
  fit head-bolts by hand
  tighten head-bolts
}
`,
  says: (fact) => {
    const missing = apartFromItself(fact);
    if (missing.others.length > 0)
      return {
        message: `${capital(subject(fact))} ${agree(fact, 'clamps', 'clamp')} ${others(missing)}, which ${isAre(missing, 'others')} not in place yet.`,
        help: `${bringBack(missing.others)} before this step.`,
      };
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} out when this step tightens ${them(fact)}.`,
      help: `Write \`fit ${typed(fact.subject)} by hand\` before this step.`,
    };
  },
};
