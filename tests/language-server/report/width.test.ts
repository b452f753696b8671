/**
 * Columns on a terminal. Widths from EastAsianWidth.txt and emoji-data.txt of the Unicode Character
 * Database (from memory); control pictures from the chart U+2400.
 */
import { expect, test } from 'vitest';
import { cellsOf, printable } from '../../../language-server/report/width.ts';

const widthOf = (text: string) => cellsOf(text).reduce((sum, cell) => sum + cell.width, 0);

test.each([
  ['N·m', 3], // all narrow
  ['±Ω–é', 4], // narrow or ambiguous: one column outside East Asian terminals
  ['水', 2], // Wide
  ['Ａ', 2], // Fullwidth
  ['ｱ', 1], // Halfwidth
  ['한', 2], // Wide
  ['e\u0301', 1], // a letter and a mark that combines with it
  ['🔧', 2], // Emoji_Presentation
  ['👩‍🔧', 2], // three code points joined by ZERO WIDTH JOINER
  ['⚠\ufe0f', 2], // text sign made an emoji by VARIATION SELECTOR-16
  ['', 0],
])('%s takes %i columns', (text, width) => {
  expect(widthOf(text)).toBe(width);
});

test('a tab goes to the next multiple of four', () => {
  expect(cellsOf('\ta\tb').map((cell) => cell.width)).toEqual([4, 1, 3, 1]);
});

test('cells cover the line without gaps', () => {
  const line = 'a\t水👩‍🔧e\u0301z';
  const cells = cellsOf(line);
  expect(cells.map((cell) => line.slice(cell.start, cell.end)).join('')).toBe(line);
});

test('a source cannot steer the terminal', () => {
  expect(printable('a\u001b[31mb\u0007')).toBe('a␛[31mb␇');
  expect(printable('x\u202etfel')).toBe('x\ufffdtfel');
  expect(printable('\u009b1m')).toBe('\ufffd1m');
  expect(printable('25 N·m, 水')).toBe('25 N·m, 水');
});
