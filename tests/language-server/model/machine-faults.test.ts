/**
 * Machines that cannot be as declared: things on themselves, in each other's way, out of reach, or with numbers
 * that do not add up. Which of them are impossible follows from what the clauses mean (language reference); the
 * machines are invented.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

function found(...items: string[]): { check: string; at: string; case?: string }[] {
  const text = `machine rig "rig" {\n  ${items.join('\n  ')}\n}\n`;
  return checkTexts({ 'rig.dowel': text }).findings.map(({ check, start, end, case: inCase }) => ({
    check,
    at: text.slice(start, end),
    ...(inCase ? { case: inCase } : {}),
  }));
}

const BASE = 'part base "base" fixed';

describe('circles', () => {
  test('of seats, once, at the first thing', () => {
    expect(found('part a "a" on c', 'part b "b" on a', 'part c "c" on b')).toEqual([
      { check: 'seat-cycle', at: 'a' },
    ]);
  });

  test('of covers, once, at the first thing', () => {
    expect(found(BASE, 'part a "a" on base under b', 'part b "b" on base under a')).toEqual([
      { check: 'cover-cycle', at: 'a' },
    ]);
  });

  test('two circles are two findings', () => {
    expect(found('part a "a" on a', 'part b "b" on b')).toEqual([
      { check: 'seat-cycle', at: 'a' },
      { check: 'seat-cycle', at: 'b' },
    ]);
  });

  test('things that no variant has together are in nobody’s way', () => {
    expect(
      found(
        'variant size: small, large',
        BASE,
        'part a "a" on base under b only size is small',
        'part b "b" on base under a only size is large',
      ),
    ).toEqual([]);
  });

  test('a seal under what it seals is the ordinary case', () => {
    expect(found(BASE, 'part lid "lid" on base sealed by ring', 'seal ring "ring" on base')).toEqual([]);
  });
});

describe('out of reach', () => {
  test('under a thing that never comes off', () => {
    expect(found(BASE, 'part box "box" on base fixed', 'part ram "ram" on base under box')).toEqual([
      { check: 'out-of-reach', at: 'ram' },
    ]);
  });

  test('the fasteners are named, not what they hold: one cause, one finding', () => {
    expect(
      found(
        BASE,
        'part box "box" on base fixed',
        'part ram "ram" on base held by screws',
        'part lid "lid" on base under ram',
        'fastener screws "screws" x2 under box',
      ),
    ).toEqual([{ check: 'out-of-reach', at: 'screws' }]);
  });

  test('a cover whose screws lie under what it covers', () => {
    expect(
      found(
        BASE,
        'part plate "plate" on base held by screws',
        'part knob "knob" on base under plate',
        'fastener screws "screws" x2 under knob',
      ),
    ).toEqual([{ check: 'out-of-reach', at: 'plate' }]);
  });

  test('in the variant that has the cover', () => {
    expect(
      found(
        'variant size: small, large',
        BASE,
        'part box "box" on base fixed only size is large',
        'part ram "ram" on base under box',
      ),
    ).toEqual([{ check: 'out-of-reach', at: 'ram', case: 'size is large' }]);
  });

  test.each([
    [
      'a thing that is fixed itself',
      ['part box "box" on base fixed', 'part core "core" on base fixed under box'],
    ],
    ['a seal of a fixed part', ['part box "box" on base fixed sealed by ring', 'seal ring "ring" on base']],
    [
      'screws inside an assembly that comes off whole',
      [
        'part plate "plate" on base',
        'part knob "knob" on plate under plate-lid held by screws',
        'part plate-lid "lid" on plate',
        'fastener screws "screws" x2 clamps knob to plate under plate-lid',
      ],
    ],
    [
      'a hose behind a part that swings aside on it',
      ['part box "box" on base joined by hose', 'connection hose "hose" joins box to base slack under box'],
    ],
  ])('nothing is said of %s', (_, items) => {
    expect(found(BASE, ...items)).toEqual([]);
  });
});

describe('numbers that do not add up', () => {
  test.each([
    ['layout 2 rows of 4', 'layout 2 rows of 4', '2 rows of 4'],
    ['layout at 0 0, 50 0, 50 40 mm', 'layout at 0 0, 50 0, 50 40 mm', 'at 0 0, 50 0, 50 40 mm'],
  ])('six bolts and %s', (_, clause, at) => {
    expect(found(BASE, `fastener bolts "bolts" x6 clamps base ${clause}`)).toEqual([
      { check: 'count-differs', at },
    ]);
  });

  test('six bolts for three caps at three each', () => {
    expect(
      found(BASE, 'part caps "caps" x3 on base held by bolts 3 each', 'fastener bolts "bolts" x6'),
    ).toEqual([{ check: 'count-differs', at: 'held by bolts 3 each' }]);
  });

  test.each([
    ['a count that is not declared', ['fastener bolts "bolts" clamps base layout 2 rows of 4']],
    ['numbers that do', ['fastener bolts "bolts" x6 clamps base layout 2 rows of 3']],
    [
      'a group that two parts share',
      [
        'part front "front caps" x2 on base held by bolts 2 each',
        'part rear "rear caps" x3 on base held by bolts 2 each',
        'fastener bolts "bolts" x10',
      ],
    ],
  ])('nothing is said of %s', (_, items) => {
    expect(found(BASE, ...items)).toEqual([]);
  });
});

describe('things that belong to nothing', () => {
  test.each([
    ['fastener bolts "bolts" x2', 'bolts'],
    ['seal ring "ring"', 'ring'],
  ])('%s', (item, at) => {
    expect(found(BASE, item)).toEqual([{ check: 'holds-nothing', at }]);
  });

  test.each([
    ['a drain plug', ['fastener plug "plug" x1', 'system sump "sump" holds 1 L drained at plug']],
    ['a seal of a kit', ['seal ring "ring"', 'kit rings "rings" contains ring']],
  ])('nothing is said of %s', (_, items) => {
    expect(found(BASE, ...items)).toEqual([]);
  });
});
