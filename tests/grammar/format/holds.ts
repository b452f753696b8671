/**
 * What must hold of any text and its layout. That only blanks change is checked without the scanner: with every
 * blank taken out the two texts are equal, and so are the stretches between quotation marks.
 */
import { expect } from 'vitest';
import { formatText } from '../../../grammar/format/format.ts';
import { parse } from '../../../grammar/parser/parse.ts';
import type { ParsedFile } from '../../../grammar/syntax/tree.ts';

export function expectLayoutHolds(text: string): string {
  const before = parse(text);
  const laidOut = formatText(text, before);
  const after = parse(laidOut);
  expect(withoutBlanks(laidOut)).toBe(withoutBlanks(text));
  expect(quoted(laidOut)).toEqual(quoted(text));
  expect(words(laidOut, after)).toEqual(words(text, before));
  expect(after.comments.map((comment) => comment.text)).toEqual(
    before.comments.map((comment) => comment.text),
  );
  expect(bare(after.tree)).toEqual(bare(before.tree));
  expect(after.problems.map((problem) => problem.check)).toEqual(
    before.problems.map((problem) => problem.check),
  );
  expect(formatText(laidOut)).toBe(laidOut);
  return laidOut;
}

/** `\s` has every blank of the language but the zero-width space; the byte-order mark is among them. */
function withoutBlanks(text: string): string {
  return text.replace(/[\s\u0085\u200b]+/gu, '');
}

function quoted(text: string): string[] {
  return text.match(/"[^"\r\n]*"/g) ?? [];
}

function words(text: string, { tokens }: ParsedFile): string[] {
  return tokens.map((token) => `${token.type} ${text.slice(token.start, token.end)}`);
}

/** The tree as text without the places of its nodes. */
function bare(tree: unknown): string {
  return JSON.stringify(tree, (key, value: unknown) =>
    key === 'start' || key === 'end' ? undefined : value,
  );
}
