import type { Check } from '../check.ts';
import { capital, isAre, subject } from '../speak.ts';

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
  says: (fact) => {
    const { subject: done, story, words } = fact;
    const earlier = story?.at(-1)?.what;
    const what = earlier ?? words!.already!;
    const state = STATES_OF[done!.thing.type]?.[what] ?? STATES[what] ?? what;
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} already ${state}.`,
      help: earlier
        ? 'Delete one of the two steps, or write the step that is missing between them.'
        : 'Delete this step, or write the one that is missing before it.',
    };
  },
};

/** How a thing stands after a step that did this, where it is not the same word. */
const STATES: Readonly<Record<string, string>> = {
  'taken off': 'off',
  'put back': 'in place',
  'moved back': 'in place',
  'put in place': 'in place',
  discarded: 'off and thrown away',
  'moved aside': 'aside',
  'fitted by hand': 'started by hand',
  loosened: 'loose',
  tightened: 'tight',
  opened: 'open',
  'switched on': 'on',
  'switched off': 'off',
  restored: 'live',
  filled: 'full',
};

/** Words of the trade for some kinds of things. */
const STATES_OF: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  fastener: { 'taken off': 'out', tightened: 'in and tight' },
  tool: { 'taken off': 'away' },
};
