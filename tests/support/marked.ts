/**
 * Texts that show in themselves where something is expected: a line that holds nothing but spaces and carets
 * marks places in the line above it. The lines of carets are taken out before the text is used.
 */

export interface Range {
  start: number;
  end: number;
}

export interface Marked {
  text: string;
  /** UTF-16 offsets into `text`, in reading order; `end` is exclusive. */
  ranges: Range[];
}

export function unmark(marked: string): Marked {
  const kept: string[] = [];
  const ranges: Range[] = [];
  /** Where the last kept line begins. */
  let lineStart = 0;
  let length = 0;
  for (const line of marked.split('\n')) {
    if (!/^ *\^[ ^]*$/.test(line)) {
      lineStart = length;
      length += line.length + 1;
      kept.push(line);
      continue;
    }
    for (const match of line.matchAll(/\^+/g)) {
      ranges.push({ start: lineStart + match.index, end: lineStart + match.index + match[0].length });
    }
  }
  return { text: kept.join('\n'), ranges };
}

/** The text with carets under the ranges, for messages of failed tests. Ranges end on the line they begin on. */
export function mark(text: string, ranges: readonly Range[]): string {
  const result: string[] = [];
  let start = 0;
  for (const line of text.split('\n')) {
    result.push(line);
    const here = ranges.filter((range) => range.start >= start && range.start <= start + line.length);
    if (here.length > 0) {
      const carets = Array.from({ length: Math.max(...here.map(({ end }) => end)) - start }, (_, column) =>
        here.some((range) => start + column >= range.start && start + column < range.end) ? '^' : ' ',
      );
      result.push(carets.join(''));
    }
    start += line.length + 1;
  }
  return result.join('\n');
}
