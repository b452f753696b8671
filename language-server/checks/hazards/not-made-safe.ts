import { list } from '../../model/model.ts';
import type { Check } from '../check.ts';
import { agree, apartFromItself, CAUTION, capital, DEFER, isAre, others, subject, them } from '../speak.ts';

export const notMadeSafe: Check = {
  name: 'not-made-safe',
  group: 'Hazards',
  severity: 'error',
  title: 'A system is opened or proved while it is still live, hot or under pressure.',
  explanation: `
Opening a line under pressure, touching a live terminal or a hot head is how people are hurt at work. The machine
file says what opens which system (\`opens\`) and what is in it (\`pressure\`, \`temperature\`, \`live\`, \`stored\`); the
checker asks that it is relieved, cooled or isolated before anything of it comes apart, and before it is proved safe.

Write the step that makes it safe first. ${CAUTION}`,
  source:
    '29 CFR 1910.147 (d) (3) to (5): isolate, lock, then relieve stored energy; FAA AC 43.13-1B, 9-17: nothing deflates the tyre before its wheel is parted',
  bad: `
machine compressor "workshop compressor" {
  part receiver "air receiver" fixed
  part filter "line filter" on receiver under air-pipe
  connection air-pipe "air pipe" joins receiver opens air
  control drain-cock "drain cock" in air normally closed
  system air "compressed air" pressure 8 bar relieved at drain-cock
}
procedure renew-filter "Renew the line filter" for compressor supplies filter {
  disconnect air-pipe
             ^^^^^^^^
  remove filter and discard
  fit new filter
  connect air-pipe
}
`,
  good: `
machine compressor "workshop compressor" {
  part receiver "air receiver" fixed
  part filter "line filter" on receiver under air-pipe
  connection air-pipe "air pipe" joins receiver opens air
  control drain-cock "drain cock" in air normally closed
  system air "compressed air" pressure 8 bar relieved at drain-cock
}
procedure renew-filter "Renew the line filter" for compressor supplies filter {
  open drain-cock
  disconnect air-pipe
  remove filter and discard
  fit new filter
  connect air-pipe
  close drain-cock
}
`,
  says: (fact) => {
    const systems = apartFromItself(fact);
    const opening = systems.others.length > 0;
    const states = Object.values(fact.words!).filter((word) => word in SAFE);
    const state = list(states);
    const it = opening ? them(systems, 'others') : them(fact);
    const safe = list(states.map((word) => SAFE[word]!(it)));
    return {
      message: opening
        ? `This step opens ${others(systems)} at ${subject(fact)} while ${agree(systems, 'it is', 'they are', 'others')} still ${state}.`
        : `${capital(subject(fact))} ${isAre(fact)} still ${state}: this step cannot prove ${it} safe.`,
      help: `${capital(safe)} before this step. ${DEFER}`,
    };
  },
};

/** What makes it (or them) safe, by the word that says how it stands. */
const SAFE: Readonly<Record<string, (it: string) => string>> = {
  'under pressure': () => 'let the pressure out',
  hot: (it) => `let ${it} cool`,
  live: (it) => `isolate ${it} and lock ${it} out`,
};
