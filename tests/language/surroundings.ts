/**
 * What stands around the fragments of the reference, so that they can be checked: a machine around items of a
 * machine, a procedure around steps. Steps are done on the milk cooler, which the reference prints in full.
 */
import { DECLARATION_KINDS } from '../../grammar/tokens/clauses.ts';
import type { Example } from './examples.ts';

export const FRAGMENT = 'fragment.dowel';
const COOLER = 'milk-cooler.dowel';

/** Things that fragments of machines name and do not declare; one declaration a line. */
const STOCK: readonly string[] = [
  'part frame "frame" fixed',
  'part pump-body "pump body" fixed',
  'part pump-cover "pump cover" on pump-body  held by cover-bolts',
  'part shaft "shaft" on pump-body  fixed',
  'fastener cover-bolts "cover bolts" x6  thread M8x1.25  class 8.8  torque 22 N·m',
  'seal cover-gasket "cover gasket" on pump-body  single-use',
  'system water "cooling water" holds 4 L',
  'consumable sealant "flange sealant"',
  'consumable thread-lock "thread-locking compound"',
  'fluid machine-oil "machine oil"',
  'tool gauge "gauge"',
];

/** Steps done before a fragment, by name. */
const BEFORE: Readonly<Record<string, string>> = {
  'cover-off':
    'let cool oil\nremove filler-plug\nremove drain-plug\nremove lid-screws\ndisconnect lamp-lead\nremove lid\n' +
    'unbolt gear-cover\nremove cover-gasket and discard\n',
};

export interface Surrounded {
  files: Record<string, string>;
  /** The file to check. */
  path: string;
}

/** The files of the reference that others may use, by name. */
export function namedFiles(examples: readonly Example[]): Record<string, string> {
  return Object.fromEntries(examples.flatMap(({ path, text }) => (path ? [[path, text]] : [])));
}

export function surround(example: Example, named: Readonly<Record<string, string>>): Surrounded {
  const path = example.path ?? FRAGMENT;
  return { files: { ...named, [path]: textAround(example, named[COOLER] ?? '') }, path };
}

function textAround(example: Example, cooler: string): string {
  switch (example.form) {
    case 'file':
      return example.text;
    case 'machine':
      return `machine example "example" {\n${stockFor(example.text)}${example.text}}\n`;
    case 'steps':
      return procedureAround(example, cooler);
  }
}

/** The declarations that the fragment needs, and what these need in turn. */
function stockFor(fragment: string): string {
  const chosen = new Set<string>();
  const work = [fragment];
  for (const text of work) {
    for (const line of STOCK) {
      const name = nameOf(line);
      if (chosen.has(line) || !mentions(text, name) || declares(fragment, name)) continue;
      chosen.add(line);
      work.push(line);
    }
  }
  return STOCK.filter((line) => chosen.has(line))
    .map((line) => `${line}\n`)
    .join('');
}

function procedureAround({ text, after }: Example, cooler: string): string {
  const before = after === undefined ? '' : BEFORE[after];
  if (before === undefined) throw new Error(`No steps are called ${after}.`);
  const tools = [...cooler.matchAll(/^ *tool ([\w-]+)/gm)].map(([, name]) => name!);
  const used = tools.filter((name) => mentions(before + text, name));
  const header = used.length > 0 ? `  tools ${used.join(', ')}\n` : '';
  return `use "${COOLER}"\n\nprocedure example "Example"\n  for milk-cooler\n${header}{\n${before}${text}continues\n}\n`;
}

function nameOf(declaration: string): string {
  return declaration.split(' ')[1]!;
}

function mentions(text: string, name: string): boolean {
  return new RegExp(`(?<![\\w-])${name}(?![\\w-])`).test(text);
}

function declares(text: string, name: string): boolean {
  return new RegExp(`^\\s*(${DECLARATION_KINDS.join('|')}) ${name}(?![\\w-])`, 'm').test(text);
}
