/** A comparison as text for a terminal: what changed in meaning first, then other words, with their places. */
import { DEFERENCE } from '../report/deference.ts';
import type { Place } from '../report/finding.ts';
import type { Lines } from '../report/positions.ts';
import { printable } from '../report/width.ts';
import type { Change, ChangeKind, Comparison, Section } from './change.ts';

export interface Both {
  old(file: string): Lines | undefined;
  now(file: string): Lines | undefined;
}

/** Signs that begin a line; a reader of a patch knows the first two. */
const SIGNS: Readonly<Record<ChangeKind, string>> = {
  added: '+',
  removed: '-',
  moved: '↕',
  changed: '~',
  weakened: '!',
  strengthened: '^',
  reworded: '"',
  record: '#',
};

export function comparisonText(comparison: Comparison, lines: Both): string {
  const { sections } = comparison;
  if (sections.length === 0) return 'Nothing has changed in meaning or wording.\n';
  const parts = sections.map((section) => sectionText(section, lines));
  return `${parts.join('\n')}\n${summary(comparison)}\n${DEFERENCE}\n`;
}

/** `3 changes in meaning, 2 in wording or record.` */
export function summary({ sections, meaning }: Comparison): string {
  const changes = sections.flatMap((section) => section.changes);
  const real = changes.filter((change) => change.meaning).length;
  const words = changes.length - real;
  if (!meaning) return `Nothing has changed in meaning; ${count(words)} of wording, form or record.`;
  return `${count(real)} in meaning${words > 0 ? `, ${words} of wording, form or record` : ''}.`;
}

function count(many: number): string {
  return `${many} ${many === 1 ? 'change' : 'changes'}`;
}

export function headWords({ subject, name, title, oldName }: Section): string {
  if (subject === 'findings') return 'Findings';
  if (subject === 'shared') return `Shared declarations in ${name}`;
  const was = oldName === undefined ? '' : ` (compared with ${oldName})`;
  return `${subject === 'machine' ? 'Machine' : 'Procedure'} ${name} "${title}"${was}`;
}

function sectionText(section: Section, lines: Both): string {
  const sorted = [...section.changes].sort((a, b) => Number(b.meaning) - Number(a.meaning));
  const rows = sorted.map(
    (change) => `  ${SIGNS[change.kind]} ${printable(change.message)}${where(change, lines)}`,
  );
  return [printable(headWords(section)), ...rows, ''].join('\n');
}

function where(change: Change, lines: Both): string {
  const at = change.new ? place(change.new, lines.now) : change.old ? place(change.old, lines.old) : '';
  return at === '' ? '' : `  [${at}]`;
}

export function place({ file, start }: Place, linesOf: (file: string) => Lines | undefined): string {
  const lines = linesOf(file);
  return printable(lines ? `${file}:${lines.at(start).line + 1}` : file);
}
