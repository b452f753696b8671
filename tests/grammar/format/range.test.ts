/** Edits for a part of a text: small, and together the same as laying out the whole. */
import { expect, test } from 'vitest';
import { type Edit, formatRange, formatText } from '../../../grammar/format/format.ts';
import { files } from './texts.ts';

function apply(text: string, edits: readonly Edit[]): string {
  return edits.reduceRight(
    (done, { start, end, text: put }) => done.slice(0, start) + put + done.slice(end),
    text,
  );
}

const TYPED = 'procedure p {\n    remove   a\n    remove   b\n    remove   c\n}\n';

test('a range touches its own lines only', () => {
  const start = TYPED.indexOf('remove   b');
  const edits = formatRange(TYPED, start, start + 'remove   b'.length);
  expect(apply(TYPED, edits)).toBe('procedure p {\n    remove   a\n  remove b\n  remove   c\n}\n');
});

test('edits are in order, do not overlap, and only replace blanks by blanks', () => {
  const edits = formatRange(TYPED, 0, TYPED.length);
  expect(edits.length).toBe(6);
  let last = 0;
  for (const { start, end, text } of edits) {
    expect(start).toBeGreaterThanOrEqual(last);
    expect(TYPED.slice(start, end).trim() + text.trim()).toBe('');
    last = end;
  }
});

test('a text that is laid out needs no edits', () => {
  expect(formatRange(formatText(TYPED), 0, TYPED.length)).toEqual([]);
});

test.each(files)('the range of all of $name is the whole layout', ({ text }) => {
  expect(apply(text, formatRange(text, 0, text.length))).toBe(formatText(text));
});
