/** The lines in which two texts differ: as replacements in the first, and in words for the title of a mend. */
import type { Edit } from '../../grammar/format/format.ts';

export interface Hunk {
  /** Lines of the first text, from 0; `count` may be 0. */
  from: number;
  removed: string[];
  /** Lines of the second text. */
  to: number;
  added: string[];
}

/** Above this many pairs of lines a difference is taken as one piece. */
const MOST_PAIRS = 4_000_000;

/**
 * The fewest lines to take out and put in, from the longest common subsequence (Hunt and McIlroy 1976, here as
 * the plain table of Wagner and Fischer 1974 between the lines that differ first and last).
 */
export function hunksBetween(before: string, after: string): Hunk[] {
  const a = before.split('\n');
  const b = after.split('\n');
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  let endA = a.length;
  let endB = b.length;
  while (endA > start && endB > start && a[endA - 1] === b[endB - 1]) {
    endA--;
    endB--;
  }
  const hunks: Hunk[] = [];
  let open: Hunk | undefined;
  const step = (i: number, j: number): Hunk => {
    if (!open) {
      open = { from: i, to: j, removed: [], added: [] };
      hunks.push(open);
    }
    return open;
  };
  const width = endB - start + 1;
  const height = endA - start + 1;
  const common = width * height > MOST_PAIRS ? undefined : table(a, b, start, endA, endB);
  let i = start;
  let j = start;
  while (i < endA || j < endB) {
    if (common && i < endA && j < endB && a[i] === b[j]) {
      open = undefined;
      i++;
      j++;
    } else if (j >= endB || (i < endA && longer(common, i - start, j - start, width))) {
      step(i, j).removed.push(a[i++]!);
    } else step(i, j).added.push(b[j++]!);
  }
  return hunks;
}

/** Whether taking out a line of the first text keeps at least as much in common. */
function longer(common: Uint32Array | undefined, i: number, j: number, width: number): boolean {
  return !common || common[(i + 1) * width + j]! >= common[i * width + j + 1]!;
}

function table(
  a: readonly string[],
  b: readonly string[],
  start: number,
  endA: number,
  endB: number,
): Uint32Array {
  const width = endB - start + 1;
  const common = new Uint32Array((endA - start + 1) * width);
  for (let i = endA - 1; i >= start; i--) {
    for (let j = endB - 1; j >= start; j--) {
      const here = (i - start) * width + (j - start);
      common[here] =
        a[i] === b[j] ? common[here + width + 1]! + 1 : Math.max(common[here + width]!, common[here + 1]!);
    }
  }
  return common;
}

/** The replacements that make the first text the second. */
export function editsBetween(before: string, after: string): Edit[] {
  const lines = before.split('\n');
  const starts: number[] = [0];
  for (const line of lines) starts.push(starts[starts.length - 1]! + line.length + 1);
  return hunksBetween(before, after).map(({ from, removed, added }) => {
    const until = from + removed.length;
    // Past the last line there is no line end to take with it.
    if (until >= lines.length) {
      const start = Math.max(0, starts[from]! - 1);
      return { start, end: before.length, text: added.map((line) => `\n${line}`).join('') };
    }
    return { start: starts[from]!, end: starts[until]!, text: added.map((line) => `${line}\n`).join('') };
  });
}

/** What a mend does, in words: ``Write `refit cover` after `clean face` ``, `Move …`, `Delete …`. */
export function titleOf(before: string, after: string): string {
  const hunks = hunksBetween(before, after);
  const lines = after.split('\n');
  const removed = steps(hunks.flatMap((hunk) => hunk.removed));
  const added = steps(hunks.flatMap((hunk) => hunk.added));
  const moved = removed.filter((line) => added.includes(line));
  const gone = removed.filter((line) => !moved.includes(line));
  const written = added.filter((line) => !moved.includes(line));
  const place = (line: string): string => {
    const hunk = hunks.find((one) => one.added.some((other) => other.trim() === line));
    const above =
      hunk &&
      lines
        .slice(0, hunk.to)
        .reverse()
        .find((one) => /\w/.test(one));
    return above === undefined ? '' : ` after ${quoted(above.trim())}`;
  };
  const parts = [
    ...(written.length > 0 && gone.length > 0 ? [`Write ${all(written)} instead of ${all(gone)}`] : []),
    ...(written.length > 0 && gone.length === 0 ? [`Write ${all(written)}${place(written[0]!)}`] : []),
    ...(written.length === 0 && gone.length > 0 ? [`Delete ${all(gone)}`] : []),
    ...(moved.length > 0 ? [`Move ${all(moved)}${place(moved[0]!)}`] : []),
  ];
  return parts.join('; ') || 'Lay it out anew';
}

/** A long list is told by its beginning. */
const MOST_TOLD = 3;

function all(lines: readonly string[]): string {
  const told = lines.slice(0, MOST_TOLD).map(quoted);
  const more = lines.length - told.length;
  if (more > 0) return `${told.join(', ')} and ${more} more`;
  return told.length < 2 ? told.join('') : `${told.slice(0, -1).join(', ')} and ${told[told.length - 1]}`;
}

function quoted(line: string): string {
  const words = line.replace(/\s*\{$/, '').replace(/\s+"[^"]*"$/, '');
  return `\`${words.length > 60 ? `${words.slice(0, 57)}…` : words}\``;
}

function steps(lines: readonly string[]): string[] {
  return lines.map((line) => line.trim()).filter((line) => /\w/.test(line));
}
