/** Lines with places of their own: what an edit does to them, and to the places of the others. */
import { expect, test } from 'vitest';
import { LineSpace, linesIn } from '../../../language-server/engine/line-space.ts';

const places = (space: LineSpace) => Array.from({ length: space.count }, (_, index) => space.place(index));

test('lines end as the Language Server Protocol says: \\n, \\r\\n, \\r', () => {
  expect(linesIn('a\nb\r\nc\rd')).toEqual(['a\n', 'b\r\n', 'c\r', 'd']);
  expect(linesIn('')).toEqual(['']);
  expect(linesIn('a\n')).toEqual(['a\n', '']);
});

test('a line keeps its place while others come, go and grow', () => {
  const space = new LineSpace('one\ntwo\nthree\n');
  const [one, two, three] = places(space);
  space.edit({ line: 1, column: 0 }, { line: 1, column: 0 }, 'new\n');
  expect(space.text).toBe('one\nnew\ntwo\nthree\n');
  expect([space.place(0), space.place(2), space.place(3)]).toEqual([one, two, three]);
  expect(space.place(1)).toBeGreaterThan(one!);
  expect(space.place(1)).toBeLessThan(two!);
  space.edit({ line: 0, column: 3 }, { line: 2, column: 0 }, ' and more\n');
  expect(space.text).toBe('one and more\ntwo\nthree\n');
  expect(places(space).slice(0, 3)).toEqual([one, two, three]);
});

test('a place is a line and a column, and an offset in the text', () => {
  const space = new LineSpace('ab\r\ncd');
  const place = space.place(1) + 1;
  expect(space.positionAt(place)).toEqual({ line: 1, column: 1 });
  expect(space.offsets()(place)).toBe(5);
  expect(space.placing()(5)).toBe(place);
  expect(space.slice(space.place(0) + 1, place)).toBe('b\r\nc');
  expect(space.after(space.place(0) + 1, 4)).toBe(place);
});

test('a lone \\r and a \\n that meet become one line end', () => {
  const space = new LineSpace('a\rb');
  space.edit({ line: 1, column: 0 }, { line: 1, column: 1 }, '\nc');
  expect(space.text).toBe('a\r\nc');
  expect(space.count).toBe(2);
});

test('where there is no room left between two lines all get new places, in order', () => {
  const space = new LineSpace('a\nb\n');
  const change = space.edit({ line: 1, column: 0 }, { line: 1, column: 0 }, 'x\n'.repeat(2_000));
  expect(change.renumbered).toBe(true);
  const all = places(space);
  expect(all).toEqual([...all].sort((a, b) => a - b));
  expect(space.count).toBe(2_003);
});
