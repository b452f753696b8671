import { list } from '../../model/model.ts';
import type { Check } from '../check.ts';
import { noticeSaid } from './hazard-words.ts';

export const noticeIncomplete: Check = {
  name: 'notice-incomplete',
  group: 'Hazards',
  severity: 'information',
  title: 'A notice lacks the hazard, what happens, or how to avoid it.',
  explanation: `
"Caution: hot!" tells nobody what to do, and "Wear gloves" tells nobody why. A safety notice has three parts: what the hazard is, what it
does to people or to the machine, and how to avoid it. For \`danger\` and \`warning\` the hazard is the word after the signal word.

The checker reads the sentences by their first words and by words of harm: a sentence that begins with a command is how to avoid it, any
other says what happens. That is a guess, so the finding is quiet; write both and it goes.`,
  source:
    'ANSI Z535.6 (from memory) and IEC/IEEE 82079-1; ASD-STE100 rules 7.2 and 7.3 (numbers as in issue 9)',
  bad: `
machine boiler "steam boiler" {
  part shell "shell" fixed
  part sight-glass "sight glass" on shell hazard hot when removing
}
procedure renew-glass "Renew the sight glass" for boiler supplies sight-glass {
  warning hot "The sight glass burns the skin."
  ^^^^^^^
  remove sight-glass and discard
  fit new sight-glass
}
`,
  good: `
machine boiler "steam boiler" {
  part shell "shell" fixed
  part sight-glass "sight glass" on shell hazard hot when removing
}
procedure renew-glass "Renew the sight glass" for boiler supplies sight-glass {
  warning hot "The sight glass burns the skin. Wear gloves."
  remove sight-glass and discard
  fit new sight-glass
}
`,
  says: (fact) => {
    const { signal, hazard, consequence, avoidance } = fact.words!;
    const lacks = [
      ...(hazard ? ['which hazard it is about'] : []),
      ...(consequence ? ['what happens'] : []),
      ...(avoidance ? ['how to avoid it'] : []),
    ];
    return {
      message: `This ${noticeSaid(signal!)} does not say ${list(lacks).replace(' and ', ' or ')}.`,
      help: hazard
        ? `Write the hazard after the signal word (\`${signal} pressure "…"\`) and, in the sentence, what happens and how to avoid it.`
        : 'Say in the sentence what happens, and in a command what to do about it.',
    };
  },
};
