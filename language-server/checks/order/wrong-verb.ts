import type { Check } from '../check.ts';
import { agree, capital, DEFER, isAre, subject, them, typed } from '../speak.ts';

export const wrongVerb: Check = {
  name: 'wrong-verb',
  group: 'Order and completeness',
  severity: 'error',
  title: 'The action cannot have the effect that it states.',
  explanation: `
A hose that is still connected cannot be capped, and a valve that is locked cannot be opened. The checker compares what a
step does with how the thing stands, and with what such a thing can do at all.

Use the verb that fits, or write the step that makes it possible first.`,
  source:
    'US Army TM 10-8145-222-23, work package 0014: valves are told to turn the way that cannot open them',
  bad: `
machine loader "compact loader" {
  part boom "boom" fixed
  part cylinder "tilt cylinder" on boom fixed
  part clip "hose clip" on boom under hose
  connection hose "tilt hose" joins cylinder to boom
}
procedure renew-clip "Renew the hose clip" for loader supplies clip {
  cap hose
      ^^^^
  remove clip and discard
  fit new clip
  connect hose
}
`,
  good: `
machine loader "compact loader" {
  part boom "boom" fixed
  part cylinder "tilt cylinder" on boom fixed
  part clip "hose clip" on boom under hose
  connection hose "tilt hose" joins cylinder to boom
}
procedure renew-clip "Renew the hose clip" for loader supplies clip {
  disconnect hose
  cap hose
  remove clip and discard
  fit new clip
  connect hose
}
`,
  says: (fact) => {
    const { verb, needs } = fact.words!;
    return needs === 'disconnected'
      ? {
          message: `${capital(subject(fact))} cannot be capped: ${agree(fact, 'it is', 'they are')} still connected.`,
          help: `Write \`disconnect ${typed(fact.subject)}\` before this step.`,
        }
      : {
          message: `${capital(subject(fact))} ${isAre(fact)} locked: \`${verb}\` cannot move ${them(fact)}.`,
          help: `Write \`unlock ${typed(fact.subject)}\` before this step, when the work under the lock is done. ${DEFER}`,
        };
  },
};
