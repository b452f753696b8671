/** The caret helper itself: what it takes out, and where its ranges lie. Expected values counted by hand. */
import { expect, test } from 'vitest';
import { mark, unmark } from './marked.ts';

test('takes the lines of carets out and gives the places above them', () => {
  const { text, ranges } = unmark('remove cover\n       ^^^^^\nfit a, b\n    ^  ^\nend');
  expect(text).toBe('remove cover\nfit a, b\nend');
  expect(ranges.map(({ start, end }) => text.slice(start, end))).toEqual(['cover', 'a', 'b']);
});

test('leaves a text without carets as it is', () => {
  expect(unmark('remove cover\n')).toEqual({ text: 'remove cover\n', ranges: [] });
});

test('shows places as they were marked', () => {
  const marked = 'remove cover\n       ^^^^^\nfit a, b\n    ^  ^\nend';
  const { text, ranges } = unmark(marked);
  expect(mark(text, ranges)).toBe(marked);
});
