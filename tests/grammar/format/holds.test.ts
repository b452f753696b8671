/**
 * What holds of every text: only blanks change, the tree and the problems stay, a second time changes nothing.
 * Fixed seeds. These follow from what the formatter promises and need no source.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatText } from '../../../grammar/format/format.ts';
import { parse } from '../../../grammar/parser/parse.ts';
import { expectLayoutHolds } from './holds.ts';
import { samples } from './samples.ts';
import { files } from './texts.ts';

const SEED = 20261102;
const texts = [
  ...samples.map(({ typed }) => typed),
  ...files.map(({ text }) => text).filter((text) => text.length < 6000),
];
const someText = fc.constantFrom(...texts);

describe('every file of the project', () => {
  test.each(files)('$name', ({ text }) => {
    const laidOut = expectLayoutHolds(text);
    // Lines that could not be read keep their blanks.
    if (parse(text).problems.length > 0) return;
    expect(laidOut).not.toMatch(/[ \t]$/m);
    expect(laidOut).toMatch(/[^\n]\n$/);
    expect(laidOut).not.toMatch(/\n\n\n|\{\n\n|\n\n *\}/);
  });

  test.each(files)('$name with CRLF and a byte-order mark comes out the same', ({ text }) => {
    expect(formatText(`\uFEFF${text.replace(/\n/g, '\r\n')}`)).toBe(formatText(text));
  });
});

describe('texts that are no longer whole', () => {
  test('cut off anywhere', () => {
    const cut = fc.tuple(someText, fc.double({ min: 0, max: 1, noNaN: true }));
    fc.assert(
      fc.property(cut, ([text, part]) => {
        expectLayoutHolds(text.slice(0, Math.floor(text.length * part)));
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  const JUNK = [
    '{',
    '}',
    '"',
    ',',
    '..',
    ' x2 ',
    '\n',
    '{ }',
    ' of ',
    ' held by ',
    '\notherwise ',
    ' 5 mm',
    '+',
    '-',
    '(',
    ')',
    ';',
    '//',
    '=',
    '±',
    '\u00a0',
    '\u2028',
    ' plan {',
    '1/2',
    '\r',
    '\u0000',
    '”',
    '😀',
  ];
  const slip = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    drop: fc.integer({ min: 0, max: 12 }),
    put: fc.oneof(fc.constantFrom(...JUNK), fc.constant('')),
  });

  test('with slips of the pen', () => {
    fc.assert(
      fc.property(someText, fc.array(slip, { minLength: 1, maxLength: 4 }), (text, slips) => {
        let typed = text;
        for (const { at, drop, put } of slips) {
          const place = Math.floor(typed.length * at);
          typed = typed.slice(0, place) + put + typed.slice(place + drop);
        }
        expectLayoutHolds(typed);
      }),
      { seed: SEED + 1, numRuns: 250 },
    );
  });

  test('of nothing but pieces of the language', () => {
    const pieces = fc.constantFrom(
      ...JUNK,
      'machine m ',
      'procedure p ',
      'task t ',
      'part a ',
      'remove a ',
      'measure gap of a ',
      'up to 1 mm ',
      'use "x"',
      ' ',
      '  ',
      '\n\n\n',
      '\t',
      '// c',
      '"text"',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), (list) => {
        expectLayoutHolds(list.join(''));
      }),
      { seed: SEED + 2, numRuns: 400 },
    );
  });
});

describe('right texts with other blanks', () => {
  const BLANKS = [
    ' ',
    '   ',
    '\t',
    '\n',
    '\n\n\n',
    ' \r\n ',
    '\n      ',
    '  // said here\n',
    '\n// said here\n',
    '\n\n    // said here\n\n',
  ];
  const change = fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(...BLANKS)), {
    minLength: 1,
    maxLength: 25,
  });

  test('keep their tokens, comments and meaning', () => {
    fc.assert(
      fc.property(someText, change, (text, changes) => {
        const { tokens } = parse(text);
        const gaps = new Map(changes.map(([at, blank]) => [1 + Math.floor((tokens.length - 1) * at), blank]));
        let typed = '';
        for (const [i, token] of tokens.entries()) {
          const end = tokens[i - 1]?.end ?? 0;
          const gap = text.slice(end, token.start);
          typed += (gap === '' ? gap : (gaps.get(i) ?? gap)) + text.slice(token.start, token.end);
        }
        expectLayoutHolds(typed);
      }),
      { seed: SEED + 3, numRuns: 250 },
    );
  });
});

test('0.8 MB are laid out whole, and the same again', () => {
  const once = `${files
    .filter(({ name }) => name.startsWith('procedures/'))
    .map(({ text }) => text)
    .join('\n')}\n`;
  const text = once.repeat(Math.ceil(800_000 / once.length));
  const parsed = parse(text);
  const laidOut = formatText(text, parsed);
  expect(laidOut.length).toBeGreaterThan(700_000);
  expect(formatText(laidOut) === laidOut).toBe(true);
});
