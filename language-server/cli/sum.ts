/**
 * The sum of a text, so that two texts can be told apart without either being kept: MurmurHash3, the form for 32-bit
 * machines with 128 bits (Austin Appleby, public domain). No two texts share it by chance; it is no seal against somebody
 * who looks for two that do. Node's own sums are as good and come with all of its cryptography, which takes longer to load
 * than a whole folder takes to look through.
 */

const C1 = 0x239b961b;
const C2 = 0xab0e9789;
const C3 = 0x38b34ae5;
const C4 = 0xa1e38b93;

/** 32 hexadecimal digits. */
export function sumOf(text: string): string {
  return hex(murmur3(Buffer.from(text, 'utf8')));
}

/** Four numbers of 32 bits. */
export function murmur3(bytes: Uint8Array, seed = 0): [number, number, number, number] {
  let h1 = seed;
  let h2 = seed;
  let h3 = seed;
  let h4 = seed;
  const { length } = bytes;
  const whole = length - (length % 16);
  for (let at = 0; at < whole; at += 16) {
    h1 ^= Math.imul(turned(Math.imul(word(bytes, at), C1), 15), C2);
    h1 = (Math.imul((turned(h1, 19) + h2) | 0, 5) + 0x561ccd1b) | 0;
    h2 ^= Math.imul(turned(Math.imul(word(bytes, at + 4), C2), 16), C3);
    h2 = (Math.imul((turned(h2, 17) + h3) | 0, 5) + 0x0bcaa747) | 0;
    h3 ^= Math.imul(turned(Math.imul(word(bytes, at + 8), C3), 17), C4);
    h3 = (Math.imul((turned(h3, 15) + h4) | 0, 5) + 0x96cd1c35) | 0;
    h4 ^= Math.imul(turned(Math.imul(word(bytes, at + 12), C4), 18), C1);
    h4 = (Math.imul((turned(h4, 13) + h1) | 0, 5) + 0x32ac3b17) | 0;
  }
  // What is left over is taken as if zeros followed; a zero leaves its lane as it is.
  const rest = new Uint8Array(16);
  rest.set(bytes.subarray(whole));
  h1 ^= Math.imul(turned(Math.imul(word(rest, 0), C1), 15), C2);
  h2 ^= Math.imul(turned(Math.imul(word(rest, 4), C2), 16), C3);
  h3 ^= Math.imul(turned(Math.imul(word(rest, 8), C3), 17), C4);
  h4 ^= Math.imul(turned(Math.imul(word(rest, 12), C4), 18), C1);
  h1 ^= length;
  h2 ^= length;
  h3 ^= length;
  h4 ^= length;
  h1 = (h1 + h2 + h3 + h4) | 0;
  h2 = (h2 + h1) | 0;
  h3 = (h3 + h1) | 0;
  h4 = (h4 + h1) | 0;
  h1 = mixed(h1);
  h2 = mixed(h2);
  h3 = mixed(h3);
  h4 = mixed(h4);
  h1 = (h1 + h2 + h3 + h4) | 0;
  return [h1 >>> 0, (h2 + h1) >>> 0, (h3 + h1) >>> 0, (h4 + h1) >>> 0];
}

function word(bytes: Uint8Array, at: number): number {
  return bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24);
}

function turned(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}

function mixed(value: number): number {
  let h = value ^ (value >>> 16);
  h = Math.imul(h, 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  return h ^ (h >>> 16);
}

function hex(words: readonly number[]): string {
  return words.map((one) => one.toString(16).padStart(8, '0')).join('');
}

/**
 * A number that is another one after any change of up to four bytes in a row, and most likely after any other: enough to
 * see that a file is not as it was written, and many times faster than a sum, as long as V8 has not compiled either. FNV-1a
 * (Fowler, Noll, Vo; public domain) over words of 32 bits in the place of bytes.
 */
export function quickSumOf(bytes: Uint8Array): string {
  const count = bytes.length >> 2;
  const words = new Int32Array(count);
  new Uint8Array(words.buffer).set(bytes.subarray(0, count * 4));
  let sum = 0x811c9dc5 ^ bytes.length;
  for (let at = 0; at < count; at++) sum = Math.imul(sum ^ words[at]!, 0x01000193);
  for (let at = count * 4; at < bytes.length; at++) sum = Math.imul(sum ^ bytes[at]!, 0x01000193);
  return (sum >>> 0).toString(16).padStart(8, '0');
}
