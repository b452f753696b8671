/**
 * What the scanner makes of a line. Thread designations as ISO 68/965 and ASME B1.1 write them (from memory);
 * everything else as the description of the language has it.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edits, nearest } from '../../../grammar/parser/near.ts';
import { scan } from '../../../grammar/tokens/scan.ts';

const kinds = (text: string) =>
  scan(text).tokens.map(({ start, end, type }) => `${type} ${text.slice(start, end)}`);

describe('tokens', () => {
  it.each([
    ['20 N·m', ['number 20', 'unit N·m']],
    ['15 lbf·ft', ['number 15', 'unit lbf·ft']],
    ['60°', ['number 60', 'unit °']],
    ['25 ± 3 N·m', ['number 25', 'mark ±', 'number 3', 'unit N·m']],
    ['25 +- 3 N.m', ['number 25', 'mark +-', 'number 3', 'unit N.m']],
    ['5..60 N·m', ['number 5', 'mark ..', 'number 60', 'unit N·m']],
    ['1/6 turn', ['number 1/6', 'unit turn']],
    ['1/4..3/8 turn', ['number 1/4', 'mark ..', 'number 3/8', 'unit turn']],
    ['1 1/2 in', ['number 1 1/2', 'unit in']],
    ['500 +1/-0 micron', ['number 500', 'number +1/-0', 'unit micron']],
    ['-40 °C', ['number -40', 'unit °C']],
    ['1 h 30 min', ['number 1', 'unit h', 'number 30', 'unit min']],
  ])('quantity %s', (text, expected) => {
    expect(kinds(text)).toEqual(expected);
  });

  it('a unit is one only right after a number, on its line and as a whole word', () => {
    expect(kinds('m 5 m')).toEqual(['word m', 'number 5', 'unit m']);
    expect(kinds('5\nm')).toEqual(['number 5', 'word m']);
    expect(kinds('2 min-gap')).toEqual(['number 2', 'word min-gap']);
  });

  it.each([
    'M8x1.25',
    'M16×1.5',
    'M10x1.25-6g',
    '1/2-13',
    '1/2-13 UNC',
    '3/8-24 UNF',
    '#10-32',
    '#10-32 UNF-2A',
    '1 1/8-7 UNC',
  ])('thread %s anywhere', (designation) => {
    expect(kinds(`bolt ${designation} x6`)).toEqual(['word bolt', `thread ${designation}`, 'count x6']);
  });

  it.each(['1-8', '1-8 UNC', 'G 1/2', 'G1/2', 'R3/4', '1/2 NPT', 'M8-6g'])(
    'thread %s after the word thread',
    (designation) => {
      expect(kinds(`thread ${designation} stay`)).toEqual([
        'word thread',
        `thread ${designation}`,
        'word stay',
      ]);
    },
  );

  it('positions, counts, words and marks', () => {
    expect(kinds('caps #1..#4, #left x2 ×3 x 4 x')).toEqual([
      'word caps',
      'position #1',
      'mark ..',
      'position #4',
      'mark ,',
      'position #left',
      'count x2',
      'count ×3',
      'count x 4',
      'word x',
    ]);
    expect(kinds('a-b2 a - b = (c) / d;')).toEqual([
      'word a-b2',
      'word a',
      'mark -',
      'word b',
      'mark =',
      'mark (',
      'word c',
      'mark )',
      'mark /',
      'word d',
      'mark ;',
    ]);
  });

  it('texts with escapes end at their own quotation mark, comments with their line', () => {
    const { lexemes, comments } = scan('note "a \\" b" // c "d"  \nx');
    expect(lexemes.map((lexeme) => lexeme.image)).toEqual(['note', '"a \\" b"', 'x']);
    expect(comments).toEqual([{ start: 14, end: 22, text: '// c "d"' }]);
  });

  it('says which tokens begin a line, whatever ends it', () => {
    for (const end of ['\n', '\r\n', '\r', '// c\n', '\n\n  ']) {
      const { lexemes } = scan(`a b${end}c d`);
      expect(lexemes.map((lexeme) => lexeme.beginsLine)).toEqual([true, false, true, false]);
    }
  });
});

describe('the nearest word', () => {
  it('is a few edits away and the only one so near', () => {
    expect(nearest('removee', ['remove', 'refit'])).toBe('remove');
    expect(nearest('Remove', ['remove'])).toBe('remove');
    expect(nearest('tsak', ['task', 'stop'])).toBe('task');
    expect(nearest('polish', ['bolt up', 'pole'])).toBeUndefined();
    expect(nearest('fut', ['fit', 'cut'])).toBeUndefined();
    expect(nearest('b', ['by'])).toBeUndefined();
  });

  it('is else the only one that has been begun', () => {
    const verbs = ['connect', 'disconnect', 'lubricate', 'loosen', 'loop', 'remove'];
    expect(nearest('discon', verbs)).toBe('disconnect');
    expect(nearest('Lubr', verbs)).toBe('lubricate');
    expect(nearest('disconnexion', verbs)).toBeUndefined();
    expect(nearest('dis', verbs)).toBeUndefined();
    expect(nearest('refitt', ['refitting-tool', 'refitting-jig'])).toBeUndefined();
  });

  // Published examples: kitten/sitting 3 (Levenshtein distance), ca/abc 3 (optimal string alignment); from memory.
  it('counts edits as published', () => {
    expect(edits('kitten', 'sitting', 9)).toBe(3);
    expect(edits('ca', 'abc', 9)).toBe(3);
    expect(edits('abcd', 'acbd', 9)).toBe(1);
    expect(edits('kitten', 'sitting', 1)).toBe(2);
  });

  it('gives up early only where there are more edits than the limit', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', '-', 'é'), maxLength: 8 });
    fc.assert(
      fc.property(word, word, fc.integer({ min: 0, max: 3 }), (one, other, limit) => {
        const within = (count: number) => Math.min(count, limit + 1);
        expect(within(edits(one, other, limit))).toBe(within(edits(one, other, 99)));
      }),
      { seed: 20_261_125, numRuns: 3000 },
    );
  });
});
