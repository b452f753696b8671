import type { Check } from '../check.ts';
import { apartFromItself, capital, clear, isAre, others, subject } from '../speak.ts';

export const stillHeld: Check = {
  name: 'still-held',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A part comes off while fasteners still hold it.',
  explanation: `
A part cannot come off while a bolt, nut or screw joins it to what stays behind. The machine file says what holds
what (\`held by\`, \`clamps\`); fasteners inside an assembly that comes off as one are not counted, nor are studs that
\`stay\`. The same is said of a thing that is thrown away before it came off at all.

Take the fasteners out first, or write \`unbolt\`, which takes them out with the part.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover
         ^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover-screws
  remove cover
}
`,
  says: (fact) => {
    const { others: held } = apartFromItself(fact);
    if (!held.length)
      return {
        message: `${capital(subject(fact))} ${isAre(fact)} still in place and cannot be thrown away yet.`,
        help: `${clear([fact.subject!])} before this step.`,
      };
    const loosenOnly = held.every(({ thing }) => thing.freesWhenLoose);
    return {
      message: `${capital(subject(fact))} cannot come off: ${others(fact)} ${isAre(fact, 'others')} still ${loosenOnly ? 'tight' : 'in'}.`,
      help: loosenOnly
        ? `Loosen ${others(fact)} before this step.`
        : `Take out ${others(fact)} before this step, or write \`unbolt\`.`,
    };
  },
};
