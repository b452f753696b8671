/** Steps made into a task of their own, or into a procedure that is used in their place. */
import { formatText } from '../../grammar/format/format.ts';
import type { Block, Procedure, Span, Statement } from '../../grammar/syntax/tree.ts';
import type { LoadedFile } from '../model/names.ts';
import { type StateGroup, statesOf } from './state-at.ts';
import { Trial } from './trial.ts';
import type { View } from './view.ts';
import { type Edit, spliced } from './write-out-edits.ts';

export interface Extraction {
  title: string;
  edits: Edit[];
}

/** What can be made of the statements that a selection touches; each was tried and adds no finding. */
export function extractions(
  view: View,
  path: string,
  selection: Span,
  trial = new Trial(view.host, path),
): Extraction[] {
  const file = view.file(path);
  const procedure = file?.procedures.find(
    ({ start, end }) => start <= selection.start && selection.end <= end,
  );
  if (!file || !procedure?.body) return [];
  const picked = pickedIn(procedure.body, selection);
  if (picked.length === 0) return [];
  const span = { start: picked[0]!.start, end: picked.at(-1)!.end };
  const text = file.text.slice(span.start, span.end);
  const all = [intoTask(file, span, text), intoProcedure(view, file, procedure, span, text)];
  const before = trial.findings(file.text).length;
  return all.flatMap((one) => {
    if (!one) return [];
    const changed = formatText(spliced(file.text, { start: 0, end: file.text.length }, one.edits));
    if (trial.findings(changed).length > before) return [];
    return [{ title: one.title, edits: [{ start: 0, end: file.text.length, text: changed }] }];
  });
}

/** Whole statements of one block, none of which is a task already. */
function pickedIn(block: Block, { start, end }: Span): Statement[] {
  const touched = block.statements.filter((one) => one.start < end && one.end > start);
  const [only] = touched;
  if (touched.length === 1 && only && (only.kind === 'task' || only.kind === 'step') && only.body) {
    const inner = pickedIn(only.body, { start, end });
    if (inner.length > 0 && (start > only.body.start || end < only.body.end)) return inner;
  }
  return touched.some(({ kind }) => kind === 'task' || kind === 'continues' || kind === 'broken')
    ? []
    : touched;
}

function free(file: LoadedFile, wanted: string): string {
  let name = wanted;
  for (let count = 2; new RegExp(`\\b${name}\\b`).test(file.text); count++) name = `${wanted}-${count}`;
  return name;
}

function intoTask(file: LoadedFile, span: Span, text: string): Extraction {
  const name = free(file, 'new-task');
  return {
    title: 'Make these steps a task',
    edits: [{ ...span, text: `task ${name} "New task" {\n${text}\n}` }],
  };
}

function intoProcedure(
  view: View,
  file: LoadedFile,
  procedure: Procedure,
  span: Span,
  text: string,
): Extraction | undefined {
  const found = view.machineOf(procedure, file);
  const header = procedure.headers.find((one) => one.header === 'for');
  if (!found || !header) return undefined;
  const at = (offset: number) => view.at(procedure, file, found.model, offset, statesOf);
  const starts = claims(at(span.start));
  const ends = claims(at(span.end));
  const name = free(file, 'new-procedure');
  const lists = procedure.headers
    .filter((one) => one.header === 'tools' || one.header === 'wear')
    .map((one) => `\n  ${file.text.slice(one.start, one.end)}`);
  const heads = [
    `\n  ${file.text.slice(header.start, header.end)}`,
    ...lists,
    starts ? `\n  starts with ${starts}` : '',
    ends ? `\n  ends with ${ends}` : '',
  ];
  return {
    title: 'Make these steps a procedure of their own',
    edits: [
      {
        start: procedure.start,
        end: procedure.start,
        text: `procedure ${name} "New procedure"${heads.join('')}\n{\n${text}\n}\n\n`,
      },
      { ...span, text: `do ${name}` },
    ],
  };
}

/** How a state is claimed, where there is a word for it. */
const WORDS: Readonly<Record<string, string>> = {
  off: 'off',
  'thrown away': 'off',
  out: 'off',
  aside: 'aside',
  loose: 'loose',
  'started by hand': 'hand-tight',
  disconnected: 'disconnected',
  capped: 'capped',
  drained: 'drained',
  relieved: 'relieved',
  cool: 'cool',
  isolated: 'isolated',
  'proved safe': 'safe',
  locked: 'locked',
  supported: 'supported',
  marked: 'marked',
  clean: 'clean',
  'in place': 'fitted',
};

function claims(groups: readonly StateGroup[]): string {
  const byWord = new Map<string, string[]>();
  for (const { state, things } of groups) {
    const word = WORDS[state];
    if (!word) continue;
    for (const { name, positions } of things) {
      const text = positions ? `${name} ${positions.map((one) => `#${one}`).join(', ')}` : name;
      const list = byWord.get(word) ?? [];
      if (!list.includes(text)) list.push(text);
      byWord.set(word, list);
    }
  }
  return [...byWord].map(([word, names]) => `${names.join(', ')} ${word}`).join(' and ');
}
