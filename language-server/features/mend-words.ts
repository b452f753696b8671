/** What a mend does, in words: ``Write `refit cover` after `clean lid-face` ``, `Move …`, `Delete …`. */
import type { Block } from '../../grammar/syntax/tree.ts';
import { hunksBetween } from './mend-lines.ts';
import { blocksOf } from './mend-outline.ts';
import type { Tried } from './trial.ts';

interface Step {
  block: Block;
  /** How deep in blocks it stands: out of a block is another place. */
  depth: number;
  /** Without sentences for the reader, for a title. */
  label: string;
  /** All of it but its outcomes: two steps with the same words are the same step. */
  words: string;
}

export function titleOf(before: Tried, after: Tried): string {
  const a = stepsOf(before);
  const b = stepsOf(after);
  const keys = (steps: readonly Step[]) => steps.map(({ depth, words }) => `${depth} ${words}`).join('\n');
  const hunks = hunksBetween(keys(a), keys(b));
  const removed = hunks.flatMap(({ from, removed: list }) => list.map((_, index) => a[from + index]!));
  const moves: string[] = [];
  const writes: string[] = [];
  for (const { to, added } of hunks) {
    const steps = added.map((_, index) => b[to + index]!).filter(({ words }) => words !== '');
    const isMoved = ({ words }: Step) => removed.some((one) => one.words === words);
    const where = place(b, to, added.length);
    const moved = steps.filter(isMoved);
    const written = steps.filter((step) => !isMoved(step));
    for (const step of moved)
      removed.splice(
        removed.findIndex((one) => one.words === step.words),
        1,
      );
    if (moved.length > 0) moves.push(`${all(moved)}${where}`);
    if (written.length > 0) writes.push(`${all(written)}${where}`);
  }
  const gone = removed.filter(({ words }) => words !== '');
  const instead = writes.length === 1 && gone.length > 0 && moves.length === 0;
  const parts = instead
    ? [
        `write ${all(hunks.flatMap(({ to, added }) => added.map((_, index) => b[to + index]!)))} instead of ${all(gone)}`,
      ]
    : [
        ...(writes.length > 0 ? [`write ${list(writes)}`] : []),
        ...(moves.length > 0 ? [`move ${list(moves)}`] : []),
        ...(gone.length > 0 ? [`delete ${all(gone)}`] : []),
      ];
  if (parts.length === 0) return byLines(before.text, after.text);
  const title = parts.join('; ');
  return title.charAt(0).toUpperCase() + title.slice(1);
}

/** Where the steps stand, told by a step beside them in the same block. */
function place(steps: readonly Step[], at: number, count: number): string {
  const { block } = steps[at] ?? {};
  const above = steps[at - 1];
  const below = steps[at + count];
  if (above && above.block === block) return ` after ${quoted(above.label)}`;
  if (below && below.block === block) return ` before ${quoted(below.label)}`;
  return above ? ` after ${quoted(above.label)}` : '';
}

function stepsOf({ text, file }: Tried): Step[] {
  const steps: Step[] = [];
  const walk = (block: Block | undefined, depth: number): void => {
    for (const statement of block?.statements ?? []) {
      if (statement.kind === 'action') {
        const outcomes = statement.outcomes[0]?.start ?? statement.end;
        const until = Math.min(statement.text?.start ?? outcomes, outcomes);
        steps.push({
          block: block!,
          depth,
          label: line(text.slice(statement.start, until)),
          words: line(text.slice(statement.start, outcomes)),
        });
      } else if (statement.kind === 'notice') {
        const until = statement.text?.start ?? statement.end;
        steps.push({
          block: block!,
          depth,
          label: line(text.slice(statement.start, until)),
          words: line(text.slice(statement.start, statement.end)),
        });
      } else if (statement.kind === 'reverse' || statement.kind === 'stop') {
        const words = line(text.slice(statement.start, statement.end));
        steps.push({ block: block!, depth, label: words, words });
      }
      for (const inner of blocksOf(statement)) walk(inner, depth + 1);
    }
  };
  for (const { body } of file.procedures) walk(body, 0);
  return steps;
}

/** Changes outside the steps: the lines themselves. */
function byLines(before: string, after: string): string {
  const hunks = hunksBetween(before, after);
  const told = (lines: readonly string[]) =>
    lines.filter((one) => /\w/.test(one)).map((words) => ({ label: line(words) }));
  const gone = told(hunks.flatMap(({ removed }) => removed));
  const written = told(hunks.flatMap(({ added }) => added));
  if (gone.length === 1 && written.length === 1) return withinLine(gone[0]!.label, written[0]!.label);
  if (written.length === 0) return gone.length === 0 ? 'Change the layout' : `Delete ${all(gone)}`;
  return `Write ${all(written)}${gone.length === 0 ? '' : ` instead of ${all(gone)}`}`;
}

/** The words in which two lines differ. */
function withinLine(before: string, after: string): string {
  const a = before.split(' ');
  const b = after.split(' ');
  let start = 0;
  while (start < Math.min(a.length, b.length) && a[start] === b[start]) start++;
  let same = 0;
  while (same < Math.min(a.length, b.length) - start && a.at(-1 - same) === b.at(-1 - same)) same++;
  const words = (list: readonly string[]) => ({ label: list.slice(start, list.length - same).join(' ') });
  const gone = words(a);
  const written = words(b);
  if (gone.label === '') return `Write ${quoted(written.label)}`;
  return written.label === ''
    ? `Delete ${quoted(gone.label)}`
    : `Write ${quoted(written.label)} instead of ${quoted(gone.label)}`;
}

/** A long list is told by its beginning. */
const MOST_TOLD = 3;
const WIDEST = 60;

function all(steps: readonly { label: string }[]): string {
  const told = steps.slice(0, MOST_TOLD).map(({ label }) => quoted(label));
  const more = steps.length - told.length;
  return more > 0 ? `${told.join(', ')} and ${more} more` : list(told);
}

function list(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

function quoted(label: string): string {
  return `\`${label.length > WIDEST ? `${label.slice(0, WIDEST - 1)}…` : label}\``;
}

function line(text: string): string {
  return text
    .replace(/\/\/.*$/gm, '')
    .replace(/\s+/g, ' ')
    .replace(/(?: ?\{)? ?$/, '')
    .trim();
}
