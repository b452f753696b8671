import { CONVENTION_NAMES, type Convention, meaningOf, type Signal } from '../../hazards/index.ts';
import type { Check } from '../check.ts';
import { subject } from '../speak.ts';
import { hazardSaid } from './hazard-words.ts';

export const signalWordWeak: Check = {
  name: 'signal-word-weak',
  group: 'Hazards',
  severity: 'warning',
  title: 'The word of a notice is milder than the hazard that it is about.',
  explanation: `
The word of a notice says how bad it can get, and readers skip the mild ones. A machine file may say it: \`hazard pressure can kill\`, \`will
kill\`, \`can hurt\`, \`can damage\` (\`kill\` stands for death or serious injury). A live system of 50 V and more can kill, said or not.
Where nobody says how bad it is, only a \`note\` or \`notice\` is too mild: the hazard hurts people.

Which word is needed depends on the convention of the house. ANSI Z535.6 and ISO 3864-2: \`danger\` will kill, \`warning\` can kill,
\`caution\` can hurt, \`notice\` is about damage. MIL-STD-38784 and ASD-STE100: \`warning\` is about people, \`caution\` about equipment. A
stronger word than needed is not reported.`,
  source:
    'ANSI Z535.6, ISO 3864-2:2016; MIL-STD-38784, ASD-STE100; ANSI Z535.4: of several outcomes the worst credible one; 50 V: 29 CFR 1910.333(a)(1), from memory',
  bad: `
machine oven "drying oven" {
  part body "body" fixed
  part heater "heater" on body opens mains
  isolator breaker "breaker" in mains normally on
  system mains "mains supply" live 230 V isolated at breaker hazard live
}
procedure renew-heater "Renew the heater" for oven supplies heater {
  caution live "Live parts give a shock. Switch off before you open the oven."
  ^^^^^^^
  isolate mains
  remove heater and discard
  fit new heater
  restore mains
}
`,
  good: `
machine oven "drying oven" {
  part body "body" fixed
  part heater "heater" on body opens mains
  isolator breaker "breaker" in mains normally on
  system mains "mains supply" live 230 V isolated at breaker hazard live
}
procedure renew-heater "Renew the heater" for oven supplies heater {
  warning live "Live parts give a deadly shock. Switch off before you open the oven."
  isolate mains
  remove heater and discard
  fit new heater
  restore mains
}
`,
  says: (fact) => {
    const { signal, needed, harm } = fact.words!;
    const convention = fact.words!.convention as Convention;
    const meaning = meaningOf(signal as Signal, convention);
    const bad = harm ? `that ${HARMS[harm]}` : 'that hurts people';
    return {
      message: `\`${signal}\` is too mild for ${hazardSaid(fact)} of ${subject(fact)}, a hazard ${bad}.`,
      help: `Write \`${needed}\`: in ${CONVENTION_NAMES[convention]}, \`${signal}\` is ${meaning ? `for ${meaning}` : 'no word for a hazard'}.`,
    };
  },
};

const HARMS: Readonly<Record<string, string>> = {
  'will kill': 'kills or seriously injures',
  'can kill': 'can kill or seriously injure',
  'can hurt': 'can hurt people',
  'can damage': 'can damage the machine',
};
