/**
 * The one place where offsets become lines and columns, and back. Offsets are UTF-16 positions in a text.
 * A line ends with `\n`, `\r\n` or a lone `\r`, as editors count them. Nothing here knows how wide a
 * character is on a screen (see width.ts).
 */

/** Both count from 0; `column` counts UTF-16 units. People see them counted from 1. */
export interface Position {
  line: number;
  column: number;
}

export interface Lines {
  readonly count: number;
  /** Where an offset stands; one outside the text, or inside a line end, is moved to the text before it. */
  at(offset: number): Position;
  /** The offset of a position; one outside the text is moved to the end of its line or of the text. */
  offset(position: Position): number;
  /** The text of a line without its line end; empty where there is no such line. */
  text(line: number): string;
  /** Where a line begins, and where it ends before its line end. */
  span(line: number): { start: number; end: number };
}

/** Splits a text into lines once, so that each later question takes the logarithm of their number. */
export function linesOf(text: string): Lines {
  const starts = lineStarts(text);
  const span = (line: number) => {
    if (line < 0 || line >= starts.length) return { start: text.length, end: text.length };
    const start = starts[line]!;
    let end = starts[line + 1] ?? text.length;
    if (end > start && text.charCodeAt(end - 1) === LF && line + 1 < starts.length) end--;
    if (end > start && text.charCodeAt(end - 1) === CR && line + 1 < starts.length) end--;
    return { start, end };
  };
  return {
    count: starts.length,
    at(offset) {
      const inside = Math.max(0, Math.min(offset, text.length));
      const line = lastAtOrBefore(starts, inside);
      const { start, end } = span(line);
      return { line, column: Math.min(inside, end) - start };
    },
    offset({ line, column }) {
      if (line < 0) return 0;
      const { start, end } = span(line);
      return Math.max(start, Math.min(start + column, end));
    },
    text(line) {
      const { start, end } = span(line);
      return text.slice(start, end);
    },
    span,
  };
}

const LF = 10;
const CR = 13;

function lineStarts(text: string): number[] {
  const starts = [0];
  if (!text.includes('\r')) {
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
    return starts;
  }
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === LF || (code === CR && text.charCodeAt(at + 1) !== LF)) starts.push(at + 1);
  }
  return starts;
}

/** The index of the last number that is not above `value`; the first number is 0. */
function lastAtOrBefore(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sorted[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}
