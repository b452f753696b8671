/**
 * Texts with faults, and what the checker says about them, line by line. The words are recorded so that a change of any of
 * them is seen; whether a finding is right is judged elsewhere: by the carets of the examples, the comments of the broken
 * demos, and the independent executor (tests/mutation).
 */
import { ALL_CHECKS } from '../../../language-server/checks/all.ts';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { mutantsOf } from '../../mutation/mutants.ts';
import { FILES, filesFor, RIGHT } from '../../mutation/right.ts';
import { lineOf } from '../../real/expected.ts';
import { unmark } from '../../support/marked.ts';
import { IN_OTHER_NUMBER } from './other-number.ts';
import { SLIPS } from './slips.ts';
import { FASTENING_SLIPS } from './slips-fastening.ts';
import { FLOW_SLIPS } from './slips-flow.ts';
import { FLUID_SLIPS } from './slips-fluids.ts';
import { HAZARD_SLIPS } from './slips-hazards.ts';
import { NAME_SLIPS } from './slips-machine.ts';
import { ORDER_SLIPS } from './slips-order.ts';
import { RESOURCE_SLIPS } from './slips-resources.ts';
import { RULE_SLIPS } from './slips-rules.ts';

export interface SaidCase {
  name: string;
  files: Readonly<Record<string, string>>;
  path: string;
}

/** A share of what is spoiled in the long demos tells the same as all of it. */
const EVERY_OF_DEMOS = 45;

const ALL: readonly SaidCase[] = [
  ...ALL_CHECKS.map(({ name, bad }) => ({
    name: `example of ${name}`,
    files: { 'a.dowel': unmark(bad).text },
    path: 'a.dowel',
  })),
  ...Object.keys(FILES)
    .filter((path) => path.includes('/broken/'))
    .map((path) => ({ name: path, files: filesFor(path), path })),
  ...[
    ...SLIPS,
    ...IN_OTHER_NUMBER,
    ...FASTENING_SLIPS,
    ...FLOW_SLIPS,
    ...FLUID_SLIPS,
    ...HAZARD_SLIPS,
    ...NAME_SLIPS,
    ...ORDER_SLIPS,
    ...RESOURCE_SLIPS,
    ...RULE_SLIPS,
  ].map(({ name, text }) => ({ name, files: { 'a.dowel': text }, path: 'a.dowel' })),
  ...RIGHT.flatMap((path) => spoiled(path)),
];

/** Each name once: two of the same get a number. */
export const CASES: readonly SaidCase[] = ALL.map((one, index) => {
  const before = ALL.slice(0, index).filter(({ name }) => name === one.name).length;
  return before === 0 ? one : { ...one, name: `${one.name}, ${before + 1}` };
});

function spoiled(path: string): SaidCase[] {
  const demo = path.startsWith('procedures/');
  return [...mutantsOf(FILES[path]!)].flatMap(({ text, description }, index) => {
    if (demo ? index % EVERY_OF_DEMOS > 0 : !description.startsWith('left out')) return [];
    return [{ name: `${path}, ${description}`, files: filesFor(path, text), path }];
  });
}

/** One line for each finding, and below it the case that shows it, the places it tells of, and its mends. */
export function said({ files, path }: SaidCase): string[] {
  const place = (of: { file: string; start: number }) =>
    `${of.file === path ? '' : `${of.file}:`}${lineOf(files[of.file]!, of.start)}`;
  return checkTexts(files, path).findings.flatMap((finding) => {
    const { check, severity, message, help, related, mends = [] } = finding;
    return [
      `${place(finding)} ${check} (${severity}): ${message}${help ? ` / ${help}` : ''}`,
      ...(finding.case ? [`  when ${finding.case}`] : []),
      ...(related.length > 0
        ? [`  see ${related.map((one) => `${place(one)} ${one.message}`).join('; ')}`]
        : []),
      ...mends.map(({ title, edits }) => `  mend ${title}: ${JSON.stringify(edits.map(({ text }) => text))}`),
    ];
  });
}

export const RECORD = new URL('said.txt', import.meta.url);

/** The record: a line with a name, then what is said, each behind two blanks. */
export function written(cases: readonly { name: string; lines: readonly string[] }[]): string {
  return cases
    .map(({ name, lines }) => `${[name, ...lines.map((line) => `  ${line}`)].join('\n')}\n`)
    .join('');
}

export function recorded(text: string): Map<string, string[]> {
  const found = new Map<string, string[]>();
  let lines: string[] = [];
  for (const line of text.split('\n')) {
    if (line.startsWith('  ')) lines.push(line.slice(2));
    else if (line !== '') {
      lines = [];
      found.set(line, lines);
    }
  }
  return found;
}
