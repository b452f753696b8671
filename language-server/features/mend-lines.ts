/** The lines in which two texts differ, and the replacements that make the one the other. */
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
    // Past the last line there is no line end to take with it, but the one before.
    if (until >= lines.length) {
      if (from === 0) return { start: 0, end: before.length, text: added.join('\n') };
      return {
        start: starts[from]! - 1,
        end: before.length,
        text: added.map((line) => `\n${line}`).join(''),
      };
    }
    return { start: starts[from]!, end: starts[until]!, text: added.map((line) => `${line}\n`).join('') };
  });
}
