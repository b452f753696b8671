/** What a fingerprint survives, and what it does not. */
import { expect, test } from 'vitest';
import type { Finding } from '../../../language-server/report/finding.ts';
import { fingerprintsOf } from '../../../language-server/report/fingerprint.ts';
import { linesOf } from '../../../language-server/report/positions.ts';

function marks(text: string, words: readonly string[], change: Partial<Finding> = {}): string[] {
  let from = 0;
  const findings = words.map((word): Finding => {
    const start = text.indexOf(word, from);
    from = start + 1;
    return {
      check: 'still-held',
      severity: 'error',
      message: 'm',
      file: 'a.dowel',
      start,
      end: start + word.length,
      related: [],
      ...change,
    };
  });
  const lines = linesOf(text);
  return fingerprintsOf(findings, () => lines);
}

const before = 'remove cover\nfit cover\n';

test('lines that move, other layout and another message leave it as it is', () => {
  const [first] = marks(before, ['cover']);
  expect(first).toMatch(/^[0-9a-f]{16}$/);
  expect(marks(`// new\n\n${before}`, ['cover'])).toEqual([first]);
  expect(marks('   remove   cover\nfit cover\n', ['cover'])).toEqual([first]);
  expect(marks('remove cover\r\nfit cover\r\n', ['cover'])).toEqual([first]);
  expect(marks(before, ['cover'], { message: 'in other words' })).toEqual([first]);
});

test('another line, word, check or file is another finding', () => {
  const [first] = marks(before, ['cover']);
  const others = [
    marks('fit cover\n', ['cover']),
    marks('remove housing\n', ['housing']),
    marks(before, ['cover'], { check: 'not-fitted' }),
    marks(before, ['cover'], { file: 'b.dowel' }),
  ].flat();
  expect(new Set([first, ...others]).size).toBe(5);
});

test('equal findings on equal lines are kept apart, in their order', () => {
  const twice = 'remove cover\nremove cover\n';
  const [one, two] = marks(twice, ['cover', 'cover']);
  expect(one).not.toBe(two);
  // The first of them is the one that stood alone before.
  expect(marks(before, ['cover'])).toEqual([one]);
});

test('ten thousand places have ten thousand fingerprints', () => {
  const words = Array.from({ length: 10_000 }, (_, at) => `part-${at}.`);
  expect(new Set(marks(words.map((word) => `remove ${word}\n`).join(''), words)).size).toBe(10_000);
});
