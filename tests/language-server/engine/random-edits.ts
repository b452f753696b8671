/** Edits as people make them, and some that nobody makes, from a seed: the same seed gives the same edits. */
import { linesIn } from '../../../language-server/engine/line-space.ts';

/** A generator of numbers in [0, 1) (mulberry32 by Tommy Ettinger, public domain; from memory). */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export interface Edit {
  start: { line: number; column: number };
  end: { line: number; column: number };
  text: string;
}

const PIECES = [
  ...[
    'x',
    ' ',
    '\n',
    '\n\n',
    '{',
    '}',
    '"',
    ',',
    '//',
    '// note\n',
    '#1',
    ' x2',
    '\r\n',
    '\r',
    '(',
    ')',
    ':',
  ],
  ...['remove ', 'fit new ', 'refit ', 'and ', 'with ', 'holding', 'for each #n of ', 'when ', 'stop "x"\n'],
  ...['task t "T" {\n}\n', 'step {', 'note "Look."\n', 'measure gap as g\n', '25 N·m', '0,5', 'part '],
  ...['procedure p "P" for m {\n', 'machine m "M" {\n}\n', 'use "other.dowel"\n', 'otherwise ', 'until "ok"'],
  ...['except ', 'new ', 'all of ', 'not ', 'is ', 'at most 3 times ', '_', '§', 'thread M8x1.25', 'torque '],
];

/** One edit of a text: typing, deleting, moving, doubling and cutting, mostly small. */
export function randomEdit(text: string, next: () => number): Edit {
  const lines = linesIn(text);
  const below = (most: number) => Math.floor(next() * most);
  const place = () => {
    const line = below(lines.length);
    const length = lines[line]!.replace(/[\r\n]+$/, '').length;
    return { line, column: below(length + 1) };
  };
  const start = place();
  const { line } = start;
  const length = lines[line]!.replace(/[\r\n]+$/, '').length;
  switch (below(9)) {
    case 0:
      return { start, end: start, text: PIECES[below(PIECES.length)]! };
    case 1:
    case 2: {
      const column = Math.min(length, start.column + 1 + below(4));
      return { start, end: { line, column }, text: '' };
    }
    case 3:
      return { start: { line, column: 0 }, end: { line: line + 1, column: 0 }, text: '' };
    case 4:
      return { start: { line, column: 0 }, end: { line, column: 0 }, text: lines[below(lines.length)]! };
    case 5:
      return { start: { line, column: length }, end: { line, column: length }, text: ' // seen' };
    case 6: {
      const other = { line: Math.min(lines.length - 1, line + below(4)), column: 0 };
      return { start: { line, column: 0 }, end: other, text: '' };
    }
    case 7: {
      const from = lines[below(lines.length)]!;
      const at = below(from.length + 1);
      return { start, end: start, text: from.slice(at, at + 1 + below(12)) };
    }
    default:
      return { start, end: start, text: String.fromCharCode(97 + below(26)) };
  }
}

/** The text after an edit, worked out the plain way. */
export function applied(text: string, { start, end, text: fresh }: Edit): string {
  const lines = linesIn(text);
  const offset = ({ line, column }: Edit['start']) => {
    if (line >= lines.length) return text.length;
    let at = 0;
    for (let index = 0; index < line; index++) at += lines[index]!.length;
    return at + Math.min(column, lines[line]!.replace(/[\r\n]+$/, '').length);
  };
  return text.slice(0, offset(start)) + fresh + text.slice(offset(end));
}
