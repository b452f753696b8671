import type { Check } from '../check.ts';
import { isAre, subject, them, typed } from '../speak.ts';

export const chosenNotFitted: Check = {
  name: 'chosen-not-fitted',
  group: 'Order and completeness',
  severity: 'warning',
  title: 'A part is chosen and no later step puts it in.',
  explanation: `
A shim, a bearing shell or a bolt is chosen in order to go in. Where a step chooses it and the job ends without a step
that puts it in, the old one stays, or none is in. Where shims are shared out between two places, it is easy to fit one pack
and to forget that the other place has to be opened, too.

It is told where the place is closed again (what covers it goes back) or where another one of the group goes in. A procedure
that only measures and chooses leaves the rest to the one that uses it. In a repeat every step of it counts: what one round
chooses, the next one may fit.`,
  source:
    'US Army TM 5-3805-261-34, paragraph 10-4: shims are shared out between two covers, and only one cover is opened (case 12)',
  bad: `
machine drill "pillar drill" {
  part column "column" fixed
  part spindle "spindle" on column
  part shims "shims" on column under bearing-cap
  part bearing-cap "bearing cap" on column
}
procedure set-play "Set the play" for drill {
  remove bearing-cap
  measure play of spindle as play
  choose shims by play
         ^^^^^
  refit bearing-cap
}
`,
  good: `
machine drill "pillar drill" {
  part column "column" fixed
  part spindle "spindle" on column
  part shims "shims" on column under bearing-cap
  part bearing-cap "bearing cap" on column
}
procedure set-play "Set the play" for drill {
  remove bearing-cap
  measure play of spindle as play
  choose shims by play
  remove shims
  fit shims
  refit bearing-cap
}
`,
  says: (fact) => ({
    message: `This step chooses ${subject(fact)}, and no later step puts ${them(fact)} in.`,
    help: `Write the steps that take the old ones off and \`fit ${typed(fact.subject)}\`, or choose only what ${isAre(fact)} fitted.`,
  }),
};
