/**
 * What the checker says, word for word, as it was said before (`npx tsx tests/language-server/said/record.ts` writes the
 * record anew: read what changed in it).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CASES, RECORD, recorded, said } from './cases.ts';

const record = recorded(readFileSync(RECORD, 'utf8'));

test('the record has every case, and no other', () => {
  expect([...record.keys()]).toEqual(CASES.map(({ name }) => name));
  expect([...record.values()].flat().length).toBeGreaterThan(600);
});

describe('it says what it said', () => {
  test.each(CASES.map((one) => [one.name, one] as const))('%s', (name, one) => {
    expect(said(one)).toEqual(record.get(name));
  });
});
