/**
 * A sentence with thousands of quantities costs as many times more as it is longer, not the square of it. Counted are
 * the looks into the text, which know nothing of the speed of a machine.
 */
import { expect, test } from 'vitest';
import { findQuantities, readQuantity } from '../../../grammar/quantity/index.ts';

/** A text that counts how often something is asked of it. */
function counted(text: string): { text: string; looks: () => number } {
  let looks = 0;
  const proxy = new Proxy(Object(text) as object, {
    get(target, name) {
      looks++;
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
  return { text: proxy as unknown as string, looks: () => looks };
}

function looksFor(text: string, read: (text: string) => unknown): number {
  const asked = counted(text);
  read(asked.text);
  return asked.looks();
}

test('looks are counted, and what is read is the same', () => {
  const { text, looks } = counted('Tighten to 25 N·m, then 30 N·m.');
  expect(findQuantities(text)).toEqual(findQuantities('Tighten to 25 N·m, then 30 N·m.'));
  expect(findQuantities(text)).toHaveLength(2);
  expect(looks()).toBeGreaterThan(30);
});

test.each([
  '25 N·m ',
  '1 h 30 min ',
  '1 mm and ',
  '1.5..2 mm, ',
  '10 N·m (7 lbf·ft) ',
  '25 ± 5 % ',
  '1 1/2 ',
  '-1 ',
  '1-',
  '9',
  '1,5 ',
])('%j over and over', (piece) => {
  const of = (times: number) => looksFor(piece.repeat(times), findQuantities);
  expect(of(2000) / of(500)).toBeLessThan(4.5);
});

test('a row of quantities is none, however long it is', () => {
  const read = (times: number) => readQuantity('25 N·m '.repeat(times).trim());
  expect(read(2).ok).toBe(false);
  expect(read(2000).ok).toBe(false);
  expect(readQuantity('1 d 2 h 3 min 4 s').ok).toBe(true);
});
