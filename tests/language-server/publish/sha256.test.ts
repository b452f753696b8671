/** Against Node's own SHA-256 and base64 (OpenSSL), on texts of every length around the edges of a block. */
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { base64 } from '../../../language-server/publish/page/base64.ts';
import { policyHash, sha256 } from '../../../language-server/publish/page/sha256.ts';

test('the same as Node on 0 to 200 bytes', () => {
  for (let length = 0; length <= 200; length++) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 37 + length) & 255);
    expect(Buffer.from(sha256(bytes)).toString('hex')).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
  }
});

test('long texts, with letters beyond Latin', () => {
  const text = 'Öl 20 N·m → fest. '.repeat(5000);
  expect(policyHash(text)).toBe(`'sha256-${createHash('sha256').update(text).digest('base64')}'`);
  const bytes = new TextEncoder().encode(text);
  expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
});
