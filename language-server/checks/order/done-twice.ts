import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';
import { capital, isAre, subject, them } from '../speak.ts';

export const doneTwice: Check = {
  name: 'done-twice',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A step does what an earlier step has done already.',
  explanation: `
A part that is fitted twice, a tap that is opened when it is open: one of the two steps is left over, or the step that
belongs between them is missing. The checker looks at the state, so the second of two steps is found however far they are
apart. Work that may well be repeated (cleaning, marking, measuring, turning) never counts.

Delete one of the two steps, or write the missing step between them.`,
  source:
    'US Army TM 5-4320-300-14, paragraph 5-21: the check valve is fitted in step 16 and again in steps 26 and 27',
  bad: `
machine pump-set "trailer pump" {
  part body "pump body" fixed
  part check-valve "check valve" on body
}
procedure clean-valve "Clean the check valve" for pump-set {
  remove check-valve
  clean check-valve
  refit check-valve
  refit check-valve
        ^^^^^^^^^^^
}
`,
  good: `
machine pump-set "trailer pump" {
  part body "pump body" fixed
  part check-valve "check valve" on body
}
procedure clean-valve "Clean the check valve" for pump-set {
  remove check-valve
  clean check-valve
  refit check-valve
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} already ${already(fact)}.`,
    help: 'Delete one of the two steps, or write the step that is missing between them.',
  }),
};

/** How the thing stands already, from what the earlier step did. */
function already(fact: Fact): string {
  const type = fact.subject?.thing.type;
  if (type === 'control' || type === 'isolator') return `as this step would put ${them(fact)}`;
  switch (fact.story?.[fact.story.length - 1]?.what) {
    case 'taken off':
      return type === 'fastener' ? 'out' : type === 'tool' ? 'away' : 'off';
    case 'put back':
    case 'moved back':
    case 'put in place':
      return 'in place';
    case 'discarded':
      return 'off and thrown away';
    case 'moved aside':
      return 'aside';
    case 'fitted on trial':
      return 'fitted on trial';
    case 'fitted by hand':
      return 'started by hand';
    case 'loosened':
      return 'loose';
    case 'tightened':
      return type === 'fastener' ? 'in and tight' : 'tight';
    case 'disconnected':
      return 'disconnected';
    case 'connected':
      return 'connected';
    case 'capped':
      return 'capped';
    case 'locked':
      return 'locked';
    case 'unlocked':
      return 'unlocked';
    case 'isolated':
      return 'isolated';
    case 'restored':
      return 'live';
    case 'drained':
      return 'drained';
    case 'filled':
      return 'full';
    case 'supported':
      return 'supported';
    case 'bypassed':
      return 'bypassed';
    default:
      return `as this step would leave ${them(fact)}`;
  }
}
