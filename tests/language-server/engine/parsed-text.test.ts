/** A text that is edited has the tree, comments and problems that it would have if it were read anew. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import { ParsedText } from '../../../language-server/engine/parsed-text.ts';
import { findFiles } from './corpus.ts';
import { applied, numbersFrom, randomEdit } from './random-edits.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const FILES = findFiles(join(ROOT, 'procedures'), '.dowel');

/** The same with offsets in the text in the place of places on the number line. */
function inText(node: unknown, offset: (place: number) => number): unknown {
  if (Array.isArray(node)) return node.map((one) => inText(one, offset));
  if (typeof node !== 'object' || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) =>
      (key === 'start' || key === 'end') && typeof value === 'number'
        ? [key, offset(value)]
        : [key, inText(value, offset)],
    ),
  );
}

function same(text: ParsedText, plain: string): void {
  expect(text.text).toBe(plain);
  const whole = parse(plain);
  const offset = text.space.offsets();
  const { tree, comments, problems } = text.parsed;
  expect(inText({ items: tree.items, comments, problems }, offset)).toEqual({
    items: whole.tree.items,
    comments: whole.comments,
    problems: whole.problems,
  });
}

describe('a text that is edited', () => {
  test.each([1, 2, 3, 4])('is as if it were read anew (seed %i)', (seed) => {
    const next = numbersFrom(seed);
    for (let round = 0; round < 25; round++) {
      const file = FILES[Math.floor(next() * FILES.length)]!;
      let plain = readFileSync(file, 'utf8');
      const text = new ParsedText(plain);
      for (let turn = 0; turn < 12; turn++) {
        const edit = randomEdit(plain, next);
        text.edit(edit.start, edit.end, edit.text);
        const before = plain;
        plain = applied(plain, edit);
        try {
          same(text, plain);
        } catch (error) {
          throw new Error(
            `${file}, ${JSON.stringify(edit)} in\n${before
              .split('\n')
              .slice(Math.max(0, edit.start.line - 3), edit.end.line + 3)
              .join('\n')}`,
            { cause: error },
          );
        }
      }
    }
  });
});
