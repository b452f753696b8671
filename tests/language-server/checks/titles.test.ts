/**
 * Titles of things inside sentences. Outside source: English grammar (regular plurals, and words that are the same in
 * both numbers); the expected words were written by hand.
 */
import { describe, expect, test } from 'vitest';
import {
  called,
  definite,
  isPlural,
  isPluralMention,
  plural,
  singular,
} from '../../../language-server/checks/grammatical.ts';
import type { Mentioned } from '../../../language-server/model/facts.ts';

const group = (title: string, positions: readonly string[], first = 10) =>
  ({ title, positions, first }) as unknown as Mentioned['thing'];

describe('the number of a title', () => {
  test.each([
    ['washer', 'washers'],
    ['Bush', 'Bushes'],
    ['latch', 'latches'],
    ['box', 'boxes'],
    ['boss', 'bosses'],
    ['body', 'bodies'],
    ['key', 'keys'],
    ['guide', 'guides'],
    ['hose', 'hoses'],
    ['bolt of the lid', 'bolts of the lid'],
    ['bolt on the lid', 'bolts on the lid'],
    ['bolt for the lid', 'bolts for the lid'],
    ['bolt with lock', 'bolts with lock'],
    ['bolt in the lid', 'bolts in the lid'],
    ['pipe to the tanks', 'pipes to the tanks'],
    ['bolt at the ends', 'bolts at the ends'],
    ['pipe from the tanks', 'pipes from the tanks'],
    ['shim under the pads', 'shims under the pads'],
    ['shim between the pads', 'shims between the pads'],
    ['screw, hexagons', 'screws, hexagons'],
    ['screw (spares)', 'screws (spares)'],
  ])('%s, %s', (one, many) => {
    expect([plural(one), singular(many)]).toEqual([many, one]);
    expect([plural(many), singular(one)]).toEqual([many, one]);
    expect([isPlural(one), isPlural(many)]).toEqual([false, true]);
  });

  test.each(['gas', 'lens', 'canvas', 'bias', 'chassis', 'axis', 'boss', 'apparatus', 'GLASS', 'Series'])(
    '%s is one',
    (title) => {
      expect(isPlural(title)).toBe(false);
      expect(singular(title)).toBe(title);
    },
  );

  test.each(['gear', 'running gear', 'lifting equipment', 'test series', 'Gear', 'pump 2', 'cover M8'])(
    '%s has no other form',
    (title) => expect(plural(title)).toBe(title),
  );

  test('a word in the middle does not count', () => {
    expect(isPlural('brakes pedal')).toBe(false);
    expect(isPlural('gas bottles')).toBe(true);
    expect(isPlural('series resistors')).toBe(true);
    expect(plural('boxing ring')).toBe('boxing rings');
    expect(plural('gear case')).toBe('gear cases');
    expect(singular('mixes of paints')).toBe('mix of paints');
    expect(plural('earth bus')).toBe('earth buses');
  });
});

describe('what is mentioned', () => {
  const bolts = group('head bolts', ['1', '2', '3', '4', '5', '6']);
  const pads = group('brake pad', ['left', 'middle', 'right']);
  const mixed = group('caps', ['1', 'left', '3']);
  const lid = group('lid', ['1']);
  const coded = group('caps', ['a1', 'b2', 'c3']);
  const rivets = group('rivets', ['8', '9', '10', '11', '13']);
  const mains = group('mains', ['1']);

  test.each<[string, Mentioned, string, string, boolean]>([
    ['one thing', { thing: lid }, 'lid', 'the lid', false],
    ['one thing by its position', { thing: lid, items: [10] }, 'lid', 'the lid', false],
    ['one thing with a title of many', { thing: mains, items: [10] }, 'mains', 'the mains', true],
    ['a whole group', { thing: bolts }, 'head bolts', 'the head bolts', true],
    ['all of it', { thing: bolts, items: [10, 11, 12, 13, 14, 15] }, 'head bolts', 'the head bolts', true],
    ['one of it', { thing: bolts, items: [12] }, 'head bolt #3', 'head bolt #3', false],
    ['two of it', { thing: bolts, items: [10, 11] }, 'head bolts #1 and #2', 'head bolts #1 and #2', true],
    [
      'three in a row',
      { thing: bolts, items: [10, 11, 12] },
      'head bolts #1 to #3',
      'head bolts #1 to #3',
      true,
    ],
    [
      'rows with gaps',
      { thing: bolts, items: [10, 11, 12, 14, 15] },
      'head bolts #1 to #3, #5 and #6',
      'head bolts #1 to #3, #5 and #6',
      true,
    ],
    ['beyond nine', { thing: rivets, items: [10, 11, 12, 13] }, 'rivets #8 to #11', 'rivets #8 to #11', true],
    [
      'names that end in figures',
      { thing: coded, items: [10, 11] },
      'a1 and b2 caps',
      'the a1 and b2 caps',
      true,
    ],
    ['two apart', { thing: bolts, items: [10, 12] }, 'head bolts #1 and #3', 'head bolts #1 and #3', true],
    ['a group by a title of one', { thing: pads }, 'brake pads', 'the brake pads', true],
    ['one by its name', { thing: pads, items: [10] }, 'left brake pad', 'the left brake pad', false],
    [
      'two by their names',
      { thing: pads, items: [10, 12] },
      'left and right brake pads',
      'the left and right brake pads',
      true,
    ],
    ['numbers and names', { thing: mixed, items: [10, 11] }, '1 and left caps', 'the 1 and left caps', true],
    ['a position that is not there', { thing: pads, items: [19] }, ' brake pad', 'the  brake pad', false],
  ])('%s', (_, mentioned, words, withArticle, many) => {
    expect(called(mentioned)).toBe(words);
    expect(definite(mentioned)).toBe(withArticle);
    expect(isPluralMention(mentioned)).toBe(many);
  });
});
