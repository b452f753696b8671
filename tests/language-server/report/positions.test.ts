/**
 * Offsets against lines and columns. Outside judge: the text document of the editor protocol's own library,
 * and the lines as the protocol counts them (Language Server Protocol 3.17, "Text Documents": `\n`, `\r\n`
 * and `\r` end a line; columns in UTF-16 units).
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { linesOf } from '../../../language-server/report/positions.ts';

const texts = fc
  .array(fc.constantFrom('a', 'é', '🔧', '水', '\n', '\r\n', '\r', '\t', ' '), { maxLength: 40 })
  .map((pieces) => pieces.join(''));

test('says the same as the text document of the editor protocol', () => {
  fc.assert(
    fc.property(texts, fc.integer({ min: -2, max: 90 }), (text, offset) => {
      const document = TextDocument.create('file:///a', 'dowel', 1, text);
      const lines = linesOf(text);
      const { line, character } = document.positionAt(offset);
      expect(lines.at(offset)).toEqual({ line, column: character });
      expect(lines.count).toBe(document.lineCount);
    }),
    { seed: 1, numRuns: 2000 },
  );
});

test('finds every offset again, except those inside a line end', () => {
  fc.assert(
    fc.property(texts, (text) => {
      const lines = linesOf(text);
      for (let line = 0; line < lines.count; line++) {
        const { start, end } = lines.span(line);
        for (let offset = start; offset <= end; offset++) {
          expect(lines.offset(lines.at(offset))).toBe(offset);
        }
      }
    }),
    { seed: 2, numRuns: 500 },
  );
});

test('joins to the text again', () => {
  fc.assert(
    fc.property(texts, (text) => {
      const lines = linesOf(text);
      const rows = Array.from({ length: lines.count }, (_, line) => lines.text(line));
      expect(rows).toEqual(text.split(/\r\n|\r|\n/));
    }),
    { seed: 3, numRuns: 500 },
  );
});

test('moves what is outside to the nearest place', () => {
  const lines = linesOf('ab\r\ncd');
  expect(lines.offset({ line: -1, column: 5 })).toBe(0);
  expect(lines.offset({ line: 0, column: 9 })).toBe(2);
  expect(lines.offset({ line: 7, column: 0 })).toBe(6);
  expect(lines.text(7)).toBe('');
});
