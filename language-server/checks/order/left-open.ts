import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, them } from '../speak.ts';

export const leftOpen: Check = {
  name: 'left-open',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A valve or switch does not stand as it stood before the job.',
  explanation: `
A tap left closed starves an engine; a drain left open empties a tank overnight. The checker asks that every control and
isolator is back in its normal position when the job ends. The normal position is the one that the machine file gives
(\`normally open\`); without it, the one before the first step that works the valve.

Write the step that puts it back, or say \`ends with … closed\` where it is meant to stay so.`,
  source:
    'US Army TM 10-8145-222-23, work package 0014: a receiver valve is opened and the text never closes it',
  bad: `
machine mower "ride-on mower" {
  part tank "fuel tank" fixed
  control fuel-tap "fuel tap" on tank normally open
  part bowl "filter bowl" on tank
  part strainer "strainer" on tank under bowl
}
procedure clean-strainer "Clean the fuel strainer" for mower {
  close fuel-tap
        ^^^^^^^^
  remove bowl
  clean strainer
  refit bowl
}
`,
  good: `
machine mower "ride-on mower" {
  part tank "fuel tank" fixed
  control fuel-tap "fuel tap" on tank normally open
  part bowl "filter bowl" on tank
  part strainer "strainer" on tank under bowl
}
procedure clean-strainer "Clean the fuel strainer" for mower {
  close fuel-tap
  remove bowl
  clean strainer
  refit bowl
  open fuel-tap
}
`,
  says: (fact) => {
    const normally = fact.subject!.thing.normally;
    return {
      message: normally
        ? `${capital(subject(fact))} ${isAre(fact)} normally ${normally}, and no step puts ${them(fact)} back so after this one.`
        : `${capital(subject(fact))} ${agree(fact, 'does', 'do')} not stand at the end of the job as before it: this step is the last to work ${them(fact)}.`,
      help: `Write the step that puts ${subject(fact)} back, or say in \`ends with\` how ${agree(fact, 'it is', 'they are')} left.`,
    };
  },
};
