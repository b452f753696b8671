/**
 * The nearest word of a list, for "did you mean": by edits, a swap of neighbours counts as one; else the one that what
 * is typed is the beginning of.
 */

/** So many letters say which word is being written. */
const BEGINNING = 4;

/** The one word within reach of the typed one; undefined where there is none or two are equally near. */
export function nearest(typed: string, words: Iterable<string>): string | undefined {
  const lower = typed.toLowerCase();
  if (lower.length < 3) return undefined;
  const limit = lower.length <= 4 ? 1 : lower.length <= 7 ? 2 : 3;
  let best: string | undefined;
  let distance = limit + 1;
  let tie = false;
  for (const word of words) {
    if (Math.abs(word.length - lower.length) > limit) continue;
    const found = edits(lower, word, limit);
    if (found < distance) {
      best = word;
      distance = found;
      tie = false;
    } else if (found === distance && word !== best) tie = true;
  }
  if (best === undefined) return begunBy(lower, words);
  return tie && distance > 0 ? undefined : best;
}

function begunBy(typed: string, words: Iterable<string>): string | undefined {
  if (typed.length < BEGINNING) return undefined;
  const begun = new Set([...words].filter((word) => word.startsWith(typed)));
  return begun.size === 1 ? [...begun][0] : undefined;
}

/** Optimal string alignment distance, or more than `limit` as soon as that is certain. */
export function edits(a: string, b: string, limit: number): number {
  // An edit takes at most one letter out of a word's set of letters and puts one in.
  if (ones(letters(a) ^ letters(b)) > 2 * limit) return limit + 1;
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let value = Math.min(previous[j]! + 1, row[j - 1]! + 1, previous[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        value = Math.min(value, before[j - 2]! + 1);
      }
      row.push(value);
      if (value < least) least = value;
    }
    if (least > limit) return limit + 1;
    before = previous;
    previous = row;
  }
  return previous[b.length]!;
}

/** Which letters there are, as bits; letters may share one. */
function letters(word: string): number {
  let set = 0;
  for (let at = 0; at < word.length; at += 1) set |= 1 << (word.charCodeAt(at) & 31);
  return set;
}

function ones(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count += 1;
  return count;
}
