import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';

export const unknownName: Check = {
  name: 'unknown-name',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A name is used that nothing declares.',
  explanation: `
Every name stands for something: a thing of the machine, a declared value, a table, a variant, a choice, a task. A name
that nothing declares is a slip of the pen or a thing that the machine file does not know yet, and nothing can be
checked about it.

The checker looks for the nearest name that is declared, first among the kinds that fit, and proposes it. Names inside
braces in a text (\`{gap-limit}\`) are looked up as well. Everyday helps (a hoist, a rag, solvent) need no declaration.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  unbolt covre
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
  unbolt cover
}
`,
  says: (fact) => ({ message: sentence(fact), help: help(fact) }),
};

function sentence({ words = {} }: Fact): string {
  const { name, what, axis, near } = words;
  const meant = near ? `; did you mean \`${near}\`?` : '.';
  if (axis) return `\`${axis}\` has no value \`${name}\`${meant}`;
  const nothing = what === 'thing' ? 'Nothing' : `No ${what}`;
  return `${nothing} is called \`${name}\`${meant}`;
}

/** Words of the language, which nobody declares. */
const WORDS: ReadonlySet<string> = new Set([
  'hazard',
  'activity',
  'normal position',
  'way of securing',
  'protective clothing',
  'check',
  'kind',
  'clause',
]);

function help({ words = {} }: Fact): string {
  const { what, axis, near, known } = words;
  if (axis) return `The values of \`${axis}\` are ${known ?? 'listed where it is declared'}.`;
  if (near)
    return what === 'state' || WORDS.has(what!)
      ? `Write \`${near}\`.`
      : `Write \`${near}\`, or declare \`${words.name}\`.`;
  const names = known ? ` Declared so far: ${known}.` : '';
  switch (what) {
    case 'normal position':
      return `Write one of ${known}.`;
    case 'way of securing':
      return 'Name a thing of the machine, or one of `lock-tab`, `wire`, `second-nut`, `compound`, `split-pin`, `clip`.';
    case 'machine':
      return `Bring the file of the machine in with \`use\`.${names}`;
    case 'value':
      return `Declare it, as in \`value ${words.name} = 0.5 mm\`; words for the reader stand in quotation marks.${names}`;
    case 'variant':
      return `Declare it in the machine, as in \`variant supply: single-phase, three-phase\`.${names}`;
    case 'state':
      return 'What the technician sees stands in quotation marks: `if "the pump runs" { }`. A state is one word, such as `off`, `loose`, `drained` or `isolated`.';
    case 'check':
      return '`dowel explain` lists the checks.';
    case 'kind':
    case 'clause':
      return `Use another word.${names.replace('Declared so far', 'There are')}`;
    case 'table':
      return `Declare the table in the machine.${names}`;
    default:
      return `Declare it in the machine.${names}`;
  }
}
