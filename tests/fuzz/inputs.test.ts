/** The texts of the fuzzing are what they are meant to be: the same for the same seed, of all kinds, reaching far. */
import { expect, it } from 'vitest';
import { parse } from '../../grammar/parser/parse.ts';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import { input, KINDS } from './inputs.ts';

it('is the same text for the same seed, and another for another', () => {
  const texts = Array.from({ length: 200 }, (_, seed) => input(seed).text);
  expect(texts).toEqual(Array.from({ length: 200 }, (_, seed) => input(seed).text));
  expect(new Set(texts).size).toBeGreaterThan(195);
  expect(new Set(Array.from({ length: 8 }, (_, seed) => input(seed).kind))).toEqual(new Set(KINDS));
});

it('derived texts use every verb and are read without a problem now and then', () => {
  const derived = Array.from({ length: 10_000 }, (_, seed) => input(seed * KINDS.length + 1));
  expect(new Set(derived.map(({ kind }) => kind))).toEqual(new Set(['derived']));
  const all = derived.map(({ text }) => text).join('\n');
  expect(VERBS.filter(({ verb }) => !all.includes(verb)).map(({ verb }) => verb)).toEqual([]);
  expect(
    derived.slice(0, 2000).filter(({ text }) => parse(text).problems.length === 0).length,
  ).toBeGreaterThan(20);
});
