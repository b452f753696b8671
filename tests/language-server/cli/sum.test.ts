/** The sum against the value by which the author's own test of hash functions (SMHasher) knows it. */
import { expect, it } from 'vitest';
import { murmur3, sumOf } from '../../../language-server/cli/sum.ts';

/**
 * SMHasher's VerificationTest: the sums of the keys (), (0), (0 1), … each with 256 less its length as the seed, one after
 * the other, are summed once more; the first four bytes are the function's own number. 0xB3ECE62A is that of
 * MurmurHash3_x86_128 (SMHasher's main.cpp; from memory).
 */
it('is MurmurHash3 with 128 bits', () => {
  const key = Uint8Array.from({ length: 256 }, (_, at) => at);
  const all = new DataView(new ArrayBuffer(256 * 16));
  for (let length = 0; length < 256; length++)
    murmur3(key.subarray(0, length), 256 - length).forEach((one, at) => {
      all.setUint32(length * 16 + at * 4, one, true);
    });
  expect(murmur3(new Uint8Array(all.buffer))[0]).toBe(0xb3ece62a);
});

it('tells texts apart that differ in one letter, wherever it stands', () => {
  const text = 'remove cover "Keep the bolts – 4 × M8."\n'.repeat(5);
  const sums = new Set([sumOf(''), sumOf('\0'), sumOf(text)]);
  for (let at = 0; at < text.length; at++) sums.add(sumOf(`${text.slice(0, at)}~${text.slice(at + 1)}`));
  expect(sums.size).toBe(3 + text.length);
  for (const sum of sums) expect(sum).toMatch(/^[0-9a-f]{32}$/);
});
