/**
 * The tables of the reference that are made from data: between `<!-- verbs -->` and `<!-- /verbs -->` stands what
 * `TABLES.verbs()` gives. `npm run -s reference` writes them anew; a test fails where text and data differ.
 */
import { MAX_DEPTH } from '../../grammar/parser/braces.ts';
import { MAX_PROBLEMS } from '../../grammar/parser/parse.ts';
import {
  ambiguousUnits,
  kinds,
  type Unit,
  unitLabel,
  unitNamed,
  units,
} from '../../grammar/quantity/index.ts';
import { CLAUSES_OF, DECLARATION_KINDS, HARM_WORDS, HAZARDS, STATES } from '../../grammar/tokens/clauses.ts';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import { ALL_CHECKS, checkNamed } from '../../language-server/checks/all.ts';
import { MOST_FINDINGS } from '../../language-server/cli/findings-cut.ts';
import { SIZE_LIMIT } from '../../language-server/cli/read.ts';
import { READINGS, reading } from './readings.ts';

export const TABLES: Readonly<Record<string, () => string>> = {
  verbs: () =>
    table(
      ['verb', 'also written', 'acts on', 'undone by'],
      VERBS.map((verb) => [
        code(verb.closing ? `${verb.verb} … ${verb.closing}` : verb.verb),
        codes(verb.also ?? []),
        verb.on.join(', ') || 'nothing',
        verb.undone ? code(verb.undone) : '',
      ]),
    ),
  clauses: () =>
    table(
      ['kind', 'clauses'],
      DECLARATION_KINDS.map((kind) => [
        code(kind),
        codes([...CLAUSES_OF[kind]].map((clause) => (clause === 'count' ? 'x6' : clause)).sort()),
      ]),
    ),
  hazards: () => `${codes(HAZARDS)}. How bad it is at its worst: ${codes(HARM_WORDS)}.`,
  states: () =>
    table(
      ['state', 'said of'],
      Object.entries(STATES).map(([state, of]) => [code(state), of.join(', ')]),
    ),
  units: () =>
    table(
      ['quantity', 'unit', 'name', 'also written'],
      kinds
        .flatMap(({ name }) => units.filter((unit) => unit.kind === name))
        .map((unit) => [unit.kind, code(unit.symbol), unit.name, spellings(unit)]),
    ),
  'ambiguous-units': () =>
    table(
      ['written', 'may mean'],
      ambiguousUnits.map(({ spellings: written, readings }) => [
        codes(written),
        readings.map((symbol) => `${code(symbol)} (${unitLabel(unitNamed(symbol)!, false)})`).join(', '),
      ]),
    ),
  readings: () =>
    table(
      ['written', 'read as', 'because'],
      Object.values(READINGS)
        .flat()
        .map((one) => [
          one.written
            .split('\n')
            .map((line) => code(line.trim()))
            .join('<br>'),
          reading(one).join('<br>'),
          one.because,
        ]),
    ),
  checks: () => groups().join('\n\n'),
  limits: () =>
    [
      `- Blocks in one another: ${MAX_DEPTH}. What is deeper is reported and not read.`,
      `- Problems of the text itself that are listed for one file: ${MAX_PROBLEMS}.`,
      '- Brackets and `sum of` in one another: 40. `any … of any …` in one another: 8.',
      '- Positions of a group that are told apart: 200. A larger group is treated as one.',
      `- Size of a file: ${SIZE_LIMIT / 1024 / 1024} MB.`,
      `- Findings of one file that a report lists: ${MOST_FINDINGS}, the gravest of them.`,
      ...NOT_YET.flatMap(([check, sentence]) => (checkNamed(check) ? [] : [`- ${sentence}`])),
    ].join('\n'),
};

/** What the language can say and no check judges, until there is a check of that name. */
const NOT_YET: readonly (readonly [check: string, sentence: string])[] = [
  [
    'rule-broken',
    'Rules of the house are read, and the names in them are checked. Whether a job keeps them is not.',
  ],
  ['waiver-unused', '`allow` is read. It does not hold a finding back yet.'],
  ['caution-missing', 'That a notice stands before every step with a hazard is not checked.'],
  [
    'tool-unlisted',
    'The list of tools is not held against the steps, but for torque wrenches and angle gauges.',
  ],
  ['time-differs', 'Stated times are not held against the sum of the steps.'],
  ['people-short', 'The number of people is not held against what the steps need.'],
  ['supply-short', 'The list of supplies is not held against what the steps use.'],
];

export function withTables(markdown: string): string {
  return markdown.replace(
    /(<!-- ([a-z-]+) -->\n)[\s\S]*?(<!-- \/\2 -->)/g,
    (whole, open: string, name: string, close: string) => {
      const make = TABLES[name];
      return make ? `${open}\n${make()}\n\n${close}` : whole;
    },
  );
}

function groups(): string[] {
  const names = [...new Set(ALL_CHECKS.map(({ group }) => group))];
  return names.map((name) => {
    const checks = ALL_CHECKS.filter(({ group }) => group === name);
    const rows = checks.map((check) => [code(check.name), check.severity, check.title]);
    return `### ${name}\n\n${table(['finding', 'severity', 'what is wrong'], rows)}`;
  });
}

/** As it is typed; the look-alike letters that keyboards give are read as well. */
function spellings(unit: Unit): string {
  return codes(unit.spellings);
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(head), `|${head.map(() => '---').join('|')}|`, ...rows.map(line)].join('\n');
}

function codes(words: readonly string[]): string {
  return words.map(code).join(', ');
}

function code(word: string): string {
  return `\`${word}\``;
}
