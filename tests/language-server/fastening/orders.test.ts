/**
 * Tightening orders and their checks.
 * Sources: tests/outside/bolt-patterns.csv (ASME PCC-1, legacy cross pattern; 4 to 24 seen, larger from memory and
 * used for their properties only). Orders from the middle: common practice, no source.
 */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../../language-server/fastening/index.ts';
import {
  acrossOrder,
  circleOf,
  circularOrder,
  crossOrder,
  fromMiddleOrder,
  isAcross,
  isCompleteOrder,
  isReverseOf,
  layoutProblem,
  orderText,
  placesOf,
  positionCount,
  positionNamed,
  reverseOrder,
  rowsOf,
  startsFromMiddle,
} from '../../../language-server/fastening/index.ts';
import { howKnown, outside } from './outside.ts';

const STYLES = ['cross', 'spiral', 'pairs'] as const;

function sortedNumbers(order: readonly number[]): number[] {
  return [...order].sort((a, b) => a - b);
}

describe('published cross patterns', () => {
  for (const row of outside('bolt-patterns.csv')) {
    const count = Number(row.bolts);
    const printed = row.sequence!.split(' ').map(Number);
    if (howKnown(row) === 'seen') {
      it(`${count} bolts as printed: ${row.groups} (${row.source}, seen)`, () => {
        expect(crossOrder(count)).toEqual(printed);
        expect(orderText(printed)).toBe(row.groups!.replaceAll(' > ', ' '));
      });
    }
    it(`${count} bolts: the ${howKnown(row)} pattern is complete and across`, () => {
      expect(isCompleteOrder(printed, circleOf(count))).toEqual({ ok: true, reasons: [] });
      expect(isAcross(printed, circleOf(count))).toEqual({ ok: true, reasons: [] });
    });
    it(`${count} bolts: our order has the properties that hold for the table`, () => {
      const order = crossOrder(count);
      for (let i = 0; i < count; i += 4) {
        const group = order.slice(i, i + 4).map((position) => (position - 1) % (count / 4));
        expect(new Set(group).size, 'each four is a square').toBe(1);
        expect((order[i + 1]! - order[i]! + count) % count).toBe(count / 2);
        expect((order[i + 3]! - order[i + 2]! + count) % count).toBe(count / 2);
      }
    });
  }

  it('8 and 16 bolts are in bit-reversed order (computed)', () => {
    const reversed = (bits: number) =>
      Array.from(
        { length: 2 ** bits },
        (_, i) => Number.parseInt([...i.toString(2).padStart(bits, '0')].reverse().join(''), 2) + 1,
      );
    expect(crossOrder(8)).toEqual(reversed(3));
    expect(crossOrder(16)).toEqual(reversed(4));
  });

  it('five bolts make the star 1-3-5-2-4 (common practice, no source)', () => {
    expect(crossOrder(5)).toEqual([1, 3, 5, 2, 4]);
  });
});

describe('across', () => {
  // Common practice, no source, unless said otherwise.
  const good: [string, number, number[]][] = [
    ['five bolts, the other star', 5, [1, 4, 2, 5, 3]],
    ['six bolts', 6, [1, 4, 2, 5, 3, 6]],
    ['six bolts, the other way round', 6, [1, 4, 6, 3, 5, 2]],
    ['four bolts', 4, [2, 4, 1, 3]],
    ['twelve bolts by quadrants', 12, [1, 7, 4, 10, 3, 9, 6, 12, 2, 8, 5, 11]],
    ['ten bolts', 10, [1, 6, 4, 9, 2, 7, 5, 10, 3, 8]],
  ];
  it.each(good)('%s: accepted', (_, count, order) => {
    expect(isAcross(order, circleOf(count))).toEqual({ ok: true, reasons: [] });
  });

  it.each([
    [4, 'not-opposite', 2],
    [5, 'not-opposite', 2],
    [8, 'not-opposite', 2],
    [40, 'not-opposite', 2],
  ])('going round %d bolts is not across', (count, code, step) => {
    expect(isAcross(circularOrder(count), circleOf(count))).toMatchObject({
      ok: false,
      reasons: [{ code, step }],
    });
  });

  it('names the position that is opposite', () => {
    expect(isAcross([1, 2, 3, 4], circleOf(4)).reasons[0]?.message).toBe(
      '#2 follows #1, and opposite #1 is #3.',
    );
    expect(isAcross([1, 2, 3, 4, 5], circleOf(5)).reasons[0]?.message).toBe(
      '#2 follows #1, and #3 and #4 are on the far side of #1.',
    );
  });

  it('does not take opposite pairs side by side for across', () => {
    const walking = [1, 5, 2, 6, 3, 7, 4, 8];
    expect(isAcross(walking, circleOf(8))).toMatchObject({
      ok: false,
      reasons: [{ code: 'pair-beside-last', step: 3 }],
    });
  });

  it('does not take every second bolt of seven for a star', () => {
    expect(isAcross([1, 3, 5, 7, 2, 4, 6], circleOf(7)).ok).toBe(false);
  });

  it('neighbours in blocks are for large circles only, and the blocks must go across', () => {
    const blocks = (order: number[]) => order.flatMap((k) => [3 * k - 2, 3 * k - 1, 3 * k]);
    expect(isAcross(blocks(crossOrder(12)), circleOf(36)).ok).toBe(true);
    expect(isAcross(blocks(circularOrder(12)), circleOf(36)).ok).toBe(false);
    expect(isAcross(blocks(crossOrder(4)), circleOf(12)).ok).toBe(false);
  });

  it('sees a circle in coordinates, whatever the numbering', () => {
    // Six places on a pitch circle of 60 mm radius, numbered by hand: 1 top, 2 bottom, then the rest.
    const angles = [0, 180, 60, 240, 120, 300];
    const layout: Layout = {
      kind: 'positions',
      places: angles.map((a, i) => ({
        x: 0.06 * Math.sin((a * Math.PI) / 180),
        y: 0.06 * Math.cos((a * Math.PI) / 180),
        name: String.fromCharCode(65 + i),
      })),
    };
    expect(isAcross([1, 2, 3, 4, 5, 6], layout).ok).toBe(true);
    expect(isAcross([1, 3, 2, 4, 5, 6], layout).reasons[0]?.message).toBe(
      'C follows A, and opposite A is B.',
    );
    expect(isAcross(acrossOrder(layout), layout).ok).toBe(true);
    expect(positionNamed(layout, 'C')).toBe(3);
    expect(positionNamed(layout, '#3')).toBe(3);
    expect(positionNamed(layout, 'G')).toBeUndefined();
  });

  it('in rows, the next one is on the other side of the middle', () => {
    expect(isAcross([1, 4, 2, 3], rowsOf(2, 2)).ok).toBe(true);
    expect(isAcross([1, 2, 3, 4], rowsOf(2, 2)).ok).toBe(false);
    expect(isAcross([1, 6, 3, 4, 2, 5], rowsOf(2, 3)).ok).toBe(true);
    expect(isAcross([1, 2, 3, 4, 5, 6], rowsOf(2, 3))).toMatchObject({
      ok: false,
      reasons: [{ code: 'not-opposite-half', positions: [1, 2] }],
    });
  });
});

describe('complete orders', () => {
  it('tells missing, repeated and unknown positions with their places', () => {
    expect(isCompleteOrder([1, 3, 3, 7], circleOf(6)).reasons).toEqual([
      { code: 'position-repeated', message: '#3 comes twice: 2nd and 3rd.', positions: [3], step: 3 },
      { code: 'unknown-position', message: '#7 is not one of the 6 positions.', positions: [7], step: 4 },
      {
        code: 'position-missing',
        message: '#2, #4, #5 and #6 are not in the order.',
        positions: [2, 4, 5, 6],
      },
    ]);
  });

  it('an incomplete order is judged for that and nothing else', () => {
    expect(isAcross([1, 2, 3], circleOf(4))).toEqual(isCompleteOrder([1, 2, 3], circleOf(4)));
    expect(startsFromMiddle([1, 2, 3], rowsOf(2, 2))).toEqual(isCompleteOrder([1, 2, 3], rowsOf(2, 2)));
  });

  it('finds every position that was dropped, doubled or made up', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.nat(),
        fc.constantFrom('dropped', 'doubled', 'unknown'),
        (count, at, how) => {
          const order = crossOrder(count);
          const i = at % count;
          const changed = [...order];
          if (how === 'dropped') changed.splice(i, 1);
          else if (how === 'doubled') changed.splice(i, 0, order[i]!);
          else changed[i] = count + 1 + at;
          const { reasons } = isCompleteOrder(changed, circleOf(count));
          const codes = reasons.map((reason) => reason.code);
          if (how === 'dropped') expect(codes).toEqual(['position-missing']);
          else if (how === 'doubled') expect(codes).toEqual(['position-repeated']);
          else expect(codes).toEqual(['unknown-position', 'position-missing']);
          if (how !== 'unknown') expect(reasons[0]?.positions).toEqual([order[i]]);
        },
      ),
      { seed: 421, numRuns: 400 },
    );
  });
});

describe('from the middle', () => {
  // Two rows of five:  1 2 3 4 5 / 6 7 8 9 10. All common practice, no source.
  const head = rowsOf(2, 5);
  it.each([
    ['spiral', [3, 8, 7, 2, 4, 9, 10, 5, 1, 6]],
    ['cross', [3, 8, 2, 9, 4, 7, 1, 10, 5, 6]],
    ['pairs, right then left', [3, 8, 4, 9, 2, 7, 5, 10, 1, 6]],
    ['zigzag', [8, 3, 9, 2, 7, 4, 10, 1, 6, 5]],
    ['one ring ahead on one side', [3, 8, 4, 9, 5, 10, 2, 7, 1, 6]],
  ])('two rows of five, %s: accepted', (_, order) => {
    expect(startsFromMiddle(order, head)).toEqual({ ok: true, reasons: [] });
  });

  it.each([
    ['row by row', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 1],
    ['from the ends', [1, 6, 5, 10, 2, 7, 4, 9, 3, 8], 1],
    ['the other middle bolt last', [3, 2, 4, 7, 9, 1, 5, 6, 10, 8], 2],
    ['the end before the inner bolts', [3, 8, 1, 2, 4, 7, 9, 5, 6, 10], 3],
  ])('two rows of five, %s: refused', (_, order, step) => {
    const check = startsFromMiddle(order, head);
    expect(check).toMatchObject({ ok: false, reasons: [{ code: 'not-from-middle', step }] });
  });

  it('says which positions should have come before', () => {
    expect(startsFromMiddle([1, 2, 3, 4, 5, 6], rowsOf(2, 3)).reasons[0]?.message).toBe(
      '#1 comes 1st, before #2 and #5 nearer the middle.',
    );
  });

  it('with an even number of columns either middle column is the middle', () => {
    const four = rowsOf(2, 4);
    expect(startsFromMiddle([2, 6, 3, 7, 1, 5, 4, 8], four).ok).toBe(true);
    expect(startsFromMiddle([2, 6, 1, 5, 3, 7, 4, 8], four).ok).toBe(true);
    expect(startsFromMiddle([3, 7, 2, 6, 4, 8, 1, 5], four).ok).toBe(true);
    expect(startsFromMiddle([1, 5, 2, 6, 3, 7, 4, 8], four).ok).toBe(false);
  });

  it('a square grid goes by distance or by rectangles', () => {
    const grid = rowsOf(3, 3);
    expect(startsFromMiddle([5, 2, 8, 4, 6, 1, 9, 3, 7], grid).ok).toBe(true);
    expect(startsFromMiddle([5, 1, 2, 3, 6, 9, 8, 7, 4], grid).ok).toBe(true);
    expect(startsFromMiddle([2, 5, 8, 4, 6, 1, 9, 3, 7], grid).ok).toBe(false);
  });

  it('writes the usual orders for two rows of three', () => {
    const small = rowsOf(2, 3);
    expect(fromMiddleOrder(small)).toEqual([2, 5, 1, 6, 3, 4]);
    expect(fromMiddleOrder(small, 'pairs')).toEqual([2, 5, 1, 4, 3, 6]);
    expect(isCompleteOrder(fromMiddleOrder(small, 'spiral'), small).ok).toBe(true);
  });

  it('a circle has no middle bolt: every order passes, and the one written is across', () => {
    for (const count of [3, 5, 6, 8]) {
      expect(startsFromMiddle(circularOrder(count), circleOf(count)).ok).toBe(true);
      expect(fromMiddleOrder(circleOf(count))).toEqual(crossOrder(count));
    }
  });

  it('loosening is the reverse', () => {
    const order = fromMiddleOrder(head);
    expect(isReverseOf(reverseOrder(order), order)).toBe(true);
    expect(isReverseOf(order, order)).toBe(false);
    expect(startsFromMiddle(reverseOrder(order), head).ok).toBe(false);
  });
});

describe('layouts', () => {
  it('puts #1 where the layout says', () => {
    expect(placesOf(circleOf(4))[0]).toMatchObject({ position: 1, name: '#1', x: 0, y: 1 });
    const right = placesOf({ kind: 'circle', count: 4, firstAt: 90, numbered: 'anticlockwise' });
    expect(right[0]!.x).toBeCloseTo(1, 12);
    expect(right[1]!.y).toBeCloseTo(1, 12);
    expect(placesOf(rowsOf(2, 3))[0]).toMatchObject({ x: -1, y: 0.5 });
    expect(placesOf({ kind: 'rows', counts: [3, 3], firstAt: 'bottom-right' })[0]).toMatchObject({
      x: 1,
      y: -0.5,
    });
    const snake = placesOf({ kind: 'rows', counts: [3, 3], numbered: 'back-and-forth' });
    expect(snake[3]).toMatchObject({ position: 4, x: 1, y: -0.5 });
  });

  it('answers unusable layouts with a problem and no positions', () => {
    const bad: Layout[] = [
      circleOf(0),
      circleOf(2.5),
      circleOf(Number.NaN),
      circleOf(1e9),
      rowsOf(0, 3),
      rowsOf(1e9, 1e9),
      { kind: 'rows', counts: [3, -1] },
      { kind: 'positions', places: [] },
      { kind: 'positions', places: [{ x: Number.NaN, y: 0 }] },
    ];
    for (const layout of bad) {
      expect(layoutProblem(layout)?.message).toMatch(/\S/);
      expect(positionCount(layout)).toBe(0);
      expect(acrossOrder(layout)).toEqual([]);
      expect(fromMiddleOrder(layout)).toEqual([]);
      expect(isCompleteOrder([1], layout).ok).toBe(false);
    }
    expect(crossOrder(0)).toEqual([]);
    expect(crossOrder(2.5)).toEqual([]);
  });
});

describe('properties of generated orders', () => {
  it('the cross pattern of every count from 4 to 60 is complete and across', () => {
    for (let count = 4; count <= 60; count++) {
      const order = crossOrder(count);
      expect(isCompleteOrder(order, circleOf(count)), String(count)).toEqual({ ok: true, reasons: [] });
      expect(isAcross(order, circleOf(count)), String(count)).toEqual({ ok: true, reasons: [] });
    }
  });

  it('the smallest circles have an order too', () => {
    for (const count of [1, 2, 3]) expect(crossOrder(count)).toEqual(circularOrder(count));
  });

  it('rows of any shape: every order is a permutation and passes its own check', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 5 }),
        fc.constantFrom('top-left', 'top-right', 'bottom-left', 'bottom-right'),
        fc.constantFrom('same-side', 'back-and-forth'),
        (counts, firstAt, numbered) => {
          const layout: Layout = { kind: 'rows', counts, firstAt, numbered };
          const every = circularOrder(positionCount(layout));
          expect(sortedNumbers(acrossOrder(layout))).toEqual(every);
          expect(isAcross(acrossOrder(layout), layout)).toEqual({ ok: true, reasons: [] });
          for (const style of STYLES) {
            const order = fromMiddleOrder(layout, style);
            expect(sortedNumbers(order)).toEqual(every);
            expect(startsFromMiddle(order, layout)).toEqual({ ok: true, reasons: [] });
          }
        },
      ),
      { seed: 1973, numRuns: 300 },
    );
  });

  it('positions anywhere: every order is a permutation and passes its own check', () => {
    const coordinate = fc.integer({ min: -20, max: 20 }).map((n) => n / 100);
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 1, maxLength: 16 }),
        (places) => {
          const layout: Layout = { kind: 'positions', places };
          const every = circularOrder(places.length);
          expect(sortedNumbers(acrossOrder(layout))).toEqual(every);
          expect(isAcross(acrossOrder(layout), layout)).toEqual({ ok: true, reasons: [] });
          for (const style of STYLES) {
            const order = fromMiddleOrder(layout, style);
            expect(sortedNumbers(order)).toEqual(every);
            expect(startsFromMiddle(order, layout)).toEqual({ ok: true, reasons: [] });
          }
        },
      ),
      { seed: 77, numRuns: 400 },
    );
  });

  it('turning or mirroring a circle changes no verdict', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 40 }),
        fc.nat(),
        fc.boolean(),
        fc.nat(),
        (count, turn, mirror, swap) => {
          const order = crossOrder(count);
          // Half of the time with two neighbours in the order exchanged, which may spoil it.
          if (swap % 2 === 1) {
            const i = swap % (count - 1);
            [order[i], order[i + 1]] = [order[i + 1]!, order[i]!];
          }
          const moved = order.map((k) => (((mirror ? count - k : k - 1) + turn) % count) + 1);
          expect(isAcross(moved, circleOf(count)).ok).toBe(isAcross(order, circleOf(count)).ok);
        },
      ),
      { seed: 8, numRuns: 500 },
    );
  });

  it('exchanging a pair member with a stranger is noticed', () => {
    for (let count = 6; count <= 32; count += 2) {
      const order = crossOrder(count);
      [order[1], order[2]] = [order[2]!, order[1]!];
      expect(isAcross(order, circleOf(count)).ok, String(count)).toBe(false);
    }
  });
});
