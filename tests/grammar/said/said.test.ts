/**
 * What the reader of texts says of slips, word for word, with its place, its example and its mend. The record was read
 * by hand against the description of the language (grammar/LANGUAGE.md); `npx tsx tests/grammar/said/record.ts` writes it anew.
 */
import { expect, test } from 'vitest';
import { recorded, written } from './said.ts';
import { TEXTS } from './texts.ts';

test('every text is recorded', () => {
  expect(recorded()).toHaveLength(TEXTS.length);
});

const before = recorded();

test.each(TEXTS.map((text, at) => ({ text, at })))('$at $text', ({ text, at }) => {
  expect(written(text)).toBe(before[at]);
});
