/** Aspects and their values are numbers in byte arrays and masks: what is written out agrees with what is listed. */
import { expect, it } from 'vitest';
import { ASPECT, ASPECTS, bit, not } from '../../../language-server/execution/aspects.ts';

it('every aspect has the number of its place in the list', () => {
  expect(Object.entries(ASPECT)).toEqual(ASPECTS.map((name, index) => [name, index]));
});

it('a mask has the bits of its values', () => {
  expect(bit()).toBe(0);
  expect(bit(0, 3)).toBe(0b1001);
  expect(not(0, 3) & 0b1111).toBe(0b0110);
});
