/** The nearest word of a list, for "did you mean": by edits, a swap of neighbours counts as one. */

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
  if (tie && distance > 0) return undefined;
  return best;
}

/** Optimal string alignment distance, or more than `limit` as soon as that is certain. */
export function edits(a: string, b: string, limit: number): number {
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
