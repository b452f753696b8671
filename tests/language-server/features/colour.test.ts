/** Colouring: each piece of a text and what it is. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import { piecesOf } from '../../../language-server/features/colour.ts';

function coloured(text: string): string[] {
  return piecesOf(parse(text), text).map(
    ({ start, end, colour, declares }) => `${text.slice(start, end)} ${colour}${declares ? '!' : ''}`,
  );
}

test('a machine', () => {
  expect(
    coloured('machine m "M" {\n  part lid "lid" on bed  mass 4 kg  hazard hot can hurt // c\n}'),
  ).toEqual([
    'machine keyword',
    'm machine!',
    '"M" string',
    'part keyword',
    'lid thing!',
    '"lid" string',
    'on keyword',
    'bed thing',
    'mass keyword',
    '4 number',
    'kg unit',
    'hazard keyword',
    'hot hazard',
    'can hazard',
    'hurt hazard',
    '// c comment',
  ]);
});

test('steps: words of two words, positions, values in sentences', () => {
  const text =
    'procedure p "P" for m {\n  warning hot "At {limit} it burns."\n  lock out switch #2 with padlock\n  prove mains safe\n  when drive is hand { do strip }\n}';
  expect(coloured(text).slice(5)).toEqual([
    'warning signal',
    'hot hazard',
    '"At { string',
    'limit value',
    '} it burns." string',
    'lock verb',
    'out verb',
    'switch thing',
    '#2 position',
    'with keyword',
    'padlock thing',
    'prove verb',
    'mains thing',
    'safe verb',
    'when keyword',
    'drive variant',
    'is keyword',
    'hand enumMember',
    'do keyword',
    'strip procedure',
  ]);
});

test('a thing that is called like a word of the language is a thing', () => {
  expect(coloured('machine m "M" {\n  part seal "s" on cover\n}')).toContain('seal thing!');
});

describe('the demo files', () => {
  const root = resolve(import.meta.dirname, '../../../procedures');
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.dowel'),
  );
  test.each(files)('%s: pieces follow one another, and every word has one', (name) => {
    const text = readFileSync(join(root, name), 'utf8');
    const parsed = parse(text);
    const pieces = piecesOf(parsed, text);
    for (let index = 1; index < pieces.length; index++)
      expect(pieces[index]!.start).toBeGreaterThanOrEqual(pieces[index - 1]!.end);
    const starts = new Set(pieces.map(({ start }) => start));
    for (const { type, start } of parsed.tokens)
      if (type === 'word') expect(starts.has(start), `${start}`).toBe(true);
  });
});
