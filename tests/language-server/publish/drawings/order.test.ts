/**
 * Drawn tightening orders against the legacy cross pattern of ASME PCC-1 (tests/outside/bolt-patterns.csv, rows seen
 * in two public copies): read back from the drawing itself, by where the rings stand.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { overlap } from '../../../../language-server/publish/drawings/boxes.ts';
import { orderDrawing } from '../../../../language-server/publish/drawings/order.ts';
import { layOutOrder } from '../../../../language-server/publish/drawings/order-layout.ts';
import { orderPictures } from '../../../../language-server/publish/drawings/order-pictures.ts';
import { type Element, elementsOf, machinesIn, readSvg, TEXTS } from './demos.ts';

const HERE = import.meta.dirname;

/** Pictures of the fasteners of a machine that has `lines`. */
function picturesOf(...lines: string[]) {
  const text = `machine m "M" {\npart frame fixed\npart cover on frame\n${lines.join('\n')}\n}\n`;
  return orderPictures(machinesIn({ 'm.dowel': text })[0]!.model);
}

const fastener = (name: string, clauses: string) => `fastener ${name} ${clauses}`;

interface Ring {
  position: string;
  order: number | undefined;
  x: number;
  y: number;
}

async function ringsOf(svg: string): Promise<Ring[]> {
  const groups = elementsOf(await readSvg(svg)).filter((one) => one.$?.['data-position'] !== undefined);
  return groups.map((group) => {
    const circle = (group.$$ ?? []).find((one: Element) => one['#name'] === 'circle')!.$!;
    const order = group.$!['data-order'];
    return {
      position: group.$!['data-position']!,
      order: order === undefined ? undefined : Number(order),
      x: Number(circle.cx),
      y: Number(circle.cy),
    };
  });
}

function middleOf(rings: readonly Ring[]): { x: number; y: number } {
  return {
    x: rings.reduce((sum, { x }) => sum + x, 0) / rings.length,
    y: rings.reduce((sum, { y }) => sum + y, 0) / rings.length,
  };
}

interface Row {
  count: number;
  sequence: string[];
}

const SEEN: Row[] = readFileSync(join(HERE, '../../../outside/bolt-patterns.csv'), 'utf8')
  .split('\n')
  .slice(1)
  .filter((line) => line.includes('SEEN'))
  .map((line) => {
    const [count, , sequence] = line.split(',');
    return { count: Number(count), sequence: sequence!.split(' ') };
  });

test('the table of printed patterns is there', () => {
  expect(SEEN.map(({ count }) => count)).toEqual([4, 8, 12, 16, 20, 24]);
});

describe.each(SEEN)('a circle of $count', ({ count, sequence }) => {
  const [picture] = picturesOf(fastener('bolts', `x${count} layout circle order across torque 20 N·m`));
  const drawing = orderDrawing(picture!, { prefix: 'o' })!;

  test('is worked in the printed order', async () => {
    const rings = await ringsOf(drawing.svg);
    const byOrder = [...rings].sort((a, b) => a.order! - b.order!);
    expect(byOrder.map(({ position }) => position)).toEqual(sequence);
  });

  test('the positions run clockwise from the top', async () => {
    const rings = await ringsOf(drawing.svg);
    const middle = middleOf(rings);
    rings.forEach((ring, index) => {
      // SVG: y grows downwards, so clockwise is from the top to the right.
      const angle = (Math.atan2(ring.x - middle.x, middle.y - ring.y) * 180) / Math.PI;
      expect((((angle - (360 * index) / count) % 360) + 540) % 360).toBeCloseTo(180, 0);
    });
  });

  test('every pair in the order lies on a diameter', async () => {
    const byOrder = (await ringsOf(drawing.svg)).sort((a, b) => a.order! - b.order!);
    const middle = middleOf(byOrder);
    for (let at = 0; at < count; at += 2) {
      expect((byOrder[at]!.x + byOrder[at + 1]!.x) / 2).toBeCloseTo(middle.x, 1);
      expect((byOrder[at]!.y + byOrder[at + 1]!.y) / 2).toBeCloseTo(middle.y, 1);
    }
  });

  test('the table beside it says the same', () => {
    expect(drawing.alternative.kind === 'table' && drawing.alternative.rows.map(([, at]) => at)).toEqual(
      sequence.map((position) => `#${position}`),
    );
  });
});

describe('where #1 lies', () => {
  test.each([
    ['at the top', 0, -1],
    ['at the right', 1, 0],
    ['at the bottom', 0, 1],
    ['on the left side', -1, 0],
  ])('a circle is turned: %s', async (words, dx, dy) => {
    const [picture] = picturesOf(fastener('bolts', `x8 layout circle #1 "${words}" order across`));
    const [first, , , , opposite] = await ringsOf(orderDrawing(picture!, { prefix: 'o' })!.svg);
    const length = Math.hypot(first!.x - opposite!.x, first!.y - opposite!.y);
    expect((first!.x - opposite!.x) / length).toBeCloseTo(dx, 3);
    expect((first!.y - opposite!.y) / length).toBeCloseTo(dy, 3);
  });

  test('a corner of rows is where the words put it', async () => {
    const [picture] = picturesOf(
      fastener('b', 'x6 layout 2 rows of 3 #1 "lower right" order from the middle'),
    );
    const rings = await ringsOf(orderDrawing(picture!, { prefix: 'o' })!.svg);
    expect(rings[0]!.x).toBe(Math.max(...rings.map(({ x }) => x)));
    expect(rings[0]!.y).toBe(Math.max(...rings.map(({ y }) => y)));
  });

  test('given places keep their shape, with y upwards', async () => {
    const [picture] = picturesOf(fastener('b', 'x3 layout at 0 0, 40 0, 40 30 mm order #1, #3, #2'));
    const [one, two, three] = await ringsOf(orderDrawing(picture!, { prefix: 'o' })!.svg);
    expect((two!.y - three!.y) / (two!.x - one!.x)).toBeCloseTo(30 / 40, 2);
    expect([one!.order, two!.order, three!.order]).toEqual([1, 3, 2]);
  });

  test('is not made up: rows numbered in the order of work are not drawn', () => {
    expect(picturesOf(fastener('b', 'x4 layout 2 rows of 2 order #1, #2, #3, #4'))).toEqual([]);
    expect(
      picturesOf(fastener('b', 'x4 layout 2 rows of 2 #1 "top left" order #1, #2, #3, #4')),
    ).toHaveLength(1);
  });

  test.each([
    'x4 order across',
    'layout circle order across',
    'x4 layout circle',
    'x5 layout 2 rows of 3 order in turn',
  ])('nothing is drawn where place or order is not known: %s', (clauses) => {
    expect(picturesOf(fastener('b', clauses))).toEqual([]);
  });
});

test('an order of 2 rows from the middle begins in the middle and goes outwards', async () => {
  // Common practice, no source.
  const [picture] = picturesOf(fastener('b', 'x10 layout 2 rows of 5 order from the middle'));
  const rings = (await ringsOf(orderDrawing(picture!, { prefix: 'o' })!.svg)).sort(
    (a, b) => a.order! - b.order!,
  );
  const distances = rings.map(({ x }) => Math.round(Math.abs(x - middleOf(rings).x)));
  expect(distances).toEqual([...distances].sort((a, b) => a - b));
  expect(distances[0]).toBe(0);
});

const EXTREMES = picturesOf(
  fastener('a', 'x32 layout circle order across'),
  fastener('b', 'x48 layout circle order in turn'),
  fastener('c', 'x14 layout 2 rows of 7 order from the middle'),
  fastener('d', 'x40 layout 4 rows of 10 order from the middle'),
  fastener('e', 'x5 layout at 0 0, 100 0, 100 8, 400 0, 400 900 mm order in turn'),
  fastener('f', 'x2 layout circle order in turn'),
);

describe('nothing stands on anything else', () => {
  const all = [...machinesIn(TEXTS).flatMap(({ model }) => orderPictures(model)), ...EXTREMES];
  test('there are demo pictures', () => expect(all.length).toBeGreaterThan(15));

  test.each(all.map((picture) => [picture.name, picture] as const))('%s', (_, picture) => {
    const { holes, radius, width, height } = layOutOrder(picture, 360);
    expect(holes).toHaveLength(picture.places.length);
    holes.forEach((hole, index) => {
      for (const other of holes.slice(index + 1)) {
        expect(Math.hypot(hole.x - other.x, hole.y - other.y)).toBeGreaterThanOrEqual(2 * radius);
        expect(overlap(hole.labelBox, other.labelBox)).toBe(0);
      }
      for (const other of holes) {
        const box = { x: other.x - radius, y: other.y - radius, width: 2 * radius, height: 2 * radius };
        // The corners of the box are outside the ring.
        expect(overlap(hole.labelBox, box)).toBeLessThan(12);
      }
      expect(hole.labelBox.x).toBeGreaterThanOrEqual(0);
      expect(hole.labelBox.x + hole.labelBox.width).toBeLessThanOrEqual(width);
      expect(hole.labelBox.y + hole.labelBox.height).toBeLessThanOrEqual(height);
    });
    expect(radius).toBeGreaterThan(10);
  });
});
