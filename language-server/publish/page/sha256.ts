/**
 * SHA-256 (FIPS 180-4) in base64, for naming a page's own script and style in its content policy. Written here because
 * this room touches no system; a test compares it with Node's.
 */
import { base64 } from './base64.ts';

/** `sha256-…` as a content security policy writes it. */
export function policyHash(text: string): string {
  return `'sha256-${base64(sha256(new TextEncoder().encode(text)))}'`;
}

export function sha256(bytes: Uint8Array): Uint8Array {
  const state = Uint32Array.from(START);
  const words = new Uint32Array(64);
  const blocks = padded(bytes);
  for (let at = 0; at < blocks.length; at += 64) {
    const view = new DataView(blocks.buffer, at, 64);
    for (let i = 0; i < 16; i++) words[i] = view.getUint32(i * 4);
    for (let i = 16; i < 64; i++) {
      const a = words[i - 15]!;
      const b = words[i - 2]!;
      const s0 = turn(a, 7) ^ turn(a, 18) ^ (a >>> 3);
      const s1 = turn(b, 17) ^ turn(b, 19) ^ (b >>> 10);
      words[i] = words[i - 16]! + s0 + words[i - 7]! + s1;
    }
    mix(state, words);
  }
  const result = new DataView(new ArrayBuffer(32));
  state.forEach((word, i) => {
    result.setUint32(i * 4, word);
  });
  return new Uint8Array(result.buffer);
}

function mix(state: Uint32Array, words: Uint32Array): void {
  let [a, b, c, d, e, f, g, h] = state as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  for (let i = 0; i < 64; i++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const one = (h + s1 + ((e & f) ^ (~e & g)) + ROUND[i]! + words[i]!) >>> 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const two = (s0 + ((a & b) ^ (a & c) ^ (b & c))) >>> 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) >>> 0, c, b, a, (one + two) >>> 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    state[i] = state[i]! + word;
  });
}

function padded(bytes: Uint8Array): Uint8Array {
  const blocks = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  blocks.set(bytes);
  blocks[bytes.length] = 0x80;
  new DataView(blocks.buffer).setBigUint64(blocks.length - 8, BigInt(bytes.length) * 8n);
  return blocks;
}

function turn(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

/** The first 32 bits of the fractional parts of the cube roots (rounds) and square roots (start) of the first primes. */
const PRIMES: readonly number[] = firstPrimes(64);
const ROUND: readonly number[] = PRIMES.map((prime) => fraction(Math.cbrt(prime)));
const START: readonly number[] = PRIMES.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

function fraction(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32) >>> 0;
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let next = 2; primes.length < count; next++)
    if (primes.every((prime) => next % prime !== 0)) primes.push(next);
  return primes;
}
