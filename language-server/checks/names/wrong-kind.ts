import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';
import { isAre, subject, typed } from '../speak.ts';

export const wrongKind: Check = {
  name: 'wrong-kind',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A thing is named where a thing of another kind belongs.',
  explanation: `
Bolts are tightened, valves are opened, systems are drained. A verb or a clause that is given a thing of a kind that it
cannot act on has either the wrong name or the wrong verb, or the thing is declared as the wrong kind.

The checker compares the kind in the declaration with the kinds that the verb or clause takes.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  loosen cover
         ^^^^^
  unbolt cover
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  loosen cover-screws
  unbolt cover
}
`,
  says: (fact) => {
    const { by, wanted, is } = fact.words!;
    return {
      message: `${by} takes ${wanted}, and ${subject(fact)} ${isAre(fact)} declared as ${/^[aeiou]/.test(is!) ? 'an' : 'a'} ${is}.`,
      help: help(fact),
    };
  },
};

function help(fact: Fact): string {
  const { by, is } = fact.words!;
  const name = typed(fact.subject);
  const verb = OTHERS[by!.replaceAll('`', '')]?.[is!];
  if (verb) return `Write \`${verb} ${name}\`, or name another thing.`;
  return by!.startsWith('The state')
    ? `Use a state that \`${name}\` can be in.`
    : `Name another thing, or declare \`${name}\` as what it is.`;
}

/** The verb for a thing that was given to the wrong one. */
const OTHERS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  remove: { system: 'drain', face: 'clean' },
  unbolt: { fastener: 'remove', connection: 'disconnect', seal: 'remove' },
  'bolt up': { fastener: 'tighten', connection: 'connect', seal: 'refit' },
  loosen: { part: 'unbolt', connection: 'disconnect', control: 'open' },
  tighten: { part: 'bolt up', connection: 'connect', control: 'close' },
  connect: { part: 'refit', fastener: 'refit', system: 'restore' },
  disconnect: { part: 'remove', fastener: 'remove', system: 'isolate' },
  open: { part: 'remove', system: 'relieve', fastener: 'loosen' },
  close: { part: 'refit', fastener: 'tighten' },
  isolate: { isolator: 'switch off', control: 'close' },
  restore: { isolator: 'switch on', control: 'open' },
  'lock out': { system: 'isolate' },
  drain: { control: 'open', part: 'remove' },
  relieve: { control: 'open' },
  'switch off': { system: 'isolate' },
  'switch on': { system: 'restore' },
};
