import type { Check } from '../check.ts';
import { capital, subject } from '../speak.ts';

export const limitExceeded: Check = {
  name: 'limit-exceeded',
  group: 'Hazards',
  severity: 'error',
  title: 'A value is above a limit that must not be exceeded.',
  explanation: `
\`not over 1 bar\` says what a thing stands at the most: a tank, a nut, a seal under test. The checker holds every value that a step works to
(\`to 1.4 bar\`, \`to 95 N·m\`, and “to 1.4 bar” in its sentence) against the limit of the thing and against a \`not over\` of the step itself, and
the torques and pressures of the machine file against the limit beside them. A value with a tolerance counts with its upper end.

Lower the value, or correct the limit if that is what is wrong.`,
  source:
    'TB 9-2320-335-13&P, 7-2.1: a pressure tank not to exceed 15 psi is given 138 kPa (20 psi) in its second unit',
  bad: `
machine brake-bleeder "brake bleeder" {
  part tank "tank" fixed
  control tap "tap" in air normally closed
  system air "air in the tank" pressure 1 bar not over 1.1 bar relieved at tap
}
procedure fill-tank "Test the tank" for brake-bleeder {
  open tap
  close tap
  pressurise air to 1.4 bar
                    ^^^^^^^
}
`,
  good: `
machine brake-bleeder "brake bleeder" {
  part tank "tank" fixed
  control tap "tap" in air normally closed
  system air "air in the tank" pressure 1 bar not over 1.1 bar relieved at tap
}
procedure fill-tank "Test the tank" for brake-bleeder {
  open tap
  close tap
  pressurise air to 1 bar
}
`,
  says: (fact) => {
    const { value, limit, declared } = fact.words!;
    const of = fact.subject ? `${capital(subject(fact))} must not go over` : 'This step must not go over';
    return {
      message: `${of} ${limit}, and ${value} is ${declared ? 'declared' : 'asked for here'}.`,
      help: 'Lower the value, or correct the limit.',
    };
  },
};
