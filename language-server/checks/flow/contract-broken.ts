import type { Check } from '../check.ts';
import { capital, isAre, lower, subject } from '../speak.ts';

export const contractBroken: Check = {
  name: 'contract-broken',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'A procedure does not end as it says.',
  explanation: `
What a procedure says in \`ends with\` is what the next one builds on: if the valve is said to be off at the end and no
step takes it off, the work that follows cannot begin.

The checker carries out the steps in every case and compares how things stand at the end with what \`ends with\`
promises. Work that ends in \`stop\`, or in a text that \`continues\`, is not asked.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  part ram "ram" on bed under cover
  fastener cover-screws "cover screws" x4
}
procedure strip "Strip the press" for press ends with cover off, ram off {
                                                                 ^^^^^^^
  unbolt cover
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  part ram "ram" on bed under cover
  fastener cover-screws "cover screws" x4
}
procedure strip "Strip the press" for press ends with cover off, ram off {
  unbolt cover
  remove ram
}
`,
  says: (fact) => {
    const { state, side, inner, procedure } = fact.words!;
    if (side === 'does')
      return {
        message: `In \`${procedure}\`, which is used here: ${lower(inner!)}`,
        help: 'Bring about before this step what it needs, or use it where that holds.',
      };
    if (side === 'starts')
      return {
        message: `${capital(subject(fact))} ${isAre(fact)} not ${state} here, and the procedure that is used starts so.`,
        help: `Bring it about before this step, or use the procedure where it holds.`,
      };
    return {
      message: `The procedure says that ${subject(fact)} ${isAre(fact)} ${state} at the end, and no step has made it so.`,
      help: `Write the step that makes it so, or take it out of \`ends with\`.`,
    };
  },
};
