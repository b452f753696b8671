/**
 * How wide a text is on a terminal, so that a caret stands under the character it means: tabs go to the next
 * stop, marks that combine take no place, wide characters and emoji take two (Unicode Standard Annex 11).
 * Also makes text safe to print: a source file must not be able to steer the terminal.
 */

/** A tab in the source goes to the next multiple of this many columns. */
export const TAB = 4;

export interface Cell {
  /** What to print: one character as a reader sees it, with tabs as blanks. */
  text: string;
  /** Columns it takes. */
  width: number;
  /** Where it stands in the line, in UTF-16 units. */
  start: number;
  end: number;
}

/** The line as cells from left to right, safe to print. */
export function cellsOf(line: string): Cell[] {
  const cells: Cell[] = [];
  let column = 0;
  for (const { segment, index } of characters(line)) {
    const blank = segment === '\t' ? TAB - (column % TAB) : 0;
    const text = blank > 0 ? ' '.repeat(blank) : printable(segment);
    const width = blank > 0 ? blank : widthOf(text);
    cells.push({ text, width, start: index, end: index + segment.length });
    column += width;
  }
  return cells;
}

/**
 * Text that may be printed: control characters become their pictures (U+2400 block), and the marks that
 * turn the direction of writing or break lines unseen become a replacement character.
 */
export function printable(text: string): string {
  if (!UNSAFE.test(text)) return text;
  return text.replace(UNSAFE_ALL, (char) => {
    const code = char.charCodeAt(0);
    if (code < 0x20) return String.fromCharCode(0x2400 + code);
    return code === 0x7f ? '\u2421' : '\ufffd';
  });
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const UNSAFE = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;
const UNSAFE_ALL = new RegExp(UNSAFE.source, 'g');
/**
 * Latin, Greek and Cyrillic letters, punctuation and unit signs: one character, one column. Knowing them
 * saves loading the tables of all scripts, which takes longer than checking a short procedure.
 */
const PLAIN =
  /^[\t\x20-\x7e\u00a0-\u02ff\u0370-\u03ff\u0400-\u0481\u2010-\u2027\u2030-\u205e\u2103-\u2126]*$/;

function* characters(line: string): Iterable<{ segment: string; index: number }> {
  if (PLAIN.test(line)) {
    for (let index = 0; index < line.length; index++) yield { segment: line[index]!, index };
    return;
  }
  yield* new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(line);
}

/** Columns that one character, as a reader sees it, takes. */
function widthOf(segment: string): number {
  if (PLAIN.test(segment)) return segment.length;
  if (/^[\p{Mark}\p{Default_Ignorable_Code_Point}]+$/u.test(segment)) return 0;
  if (/\p{Emoji_Presentation}|\ufe0f/u.test(segment)) return 2;
  const code = segment.codePointAt(0)!;
  return WIDE.some(([from, to]) => code >= from && code <= to) ? 2 : 1;
}

/** The blocks whose characters are Wide or Fullwidth in EastAsianWidth.txt, joined where they touch. */
const WIDE: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0x4dbf],
  [0x4e00, 0xa4cf],
  [0xa960, 0xa97f],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff01, 0xff60],
  [0xffe0, 0xffe6],
  [0x16fe0, 0x18dff],
  [0x1aff0, 0x1b2ff],
  [0x1f200, 0x1f2ff],
  [0x20000, 0x3fffd],
];
