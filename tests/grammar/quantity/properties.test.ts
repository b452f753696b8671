/** Properties of quantities, with a fixed seed. They need no source: each follows from what the functions promise. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  checkSecond,
  contains,
  convert,
  exact,
  findQuantities,
  matchUnit,
  printReader,
  printSource,
  type Quantity,
  readQuantity,
  roundedIn,
  sameQuantity,
  type Unit,
  units,
} from '../../../grammar/quantity/index.ts';
import { must, read } from './read.ts';

const SEED = 20261102;
const settings = { seed: SEED, numRuns: 400 };

const numbers = fc.oneof(
  fc.integer({ min: 0, max: 5000 }).map(String),
  fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 999 })).map(([a, b]) => `${a}.${b}`),
  fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 2, max: 64 })).map(([a, b]) => `${a}/${b}`),
);
const positive = numbers.filter((text) => exact.sign(exact.parseRational(text)!) > 0);
const someUnit = fc.constantFrom(...units);
const inOrder = fc.tuple(positive, positive).map(([a, b]) => {
  const order = exact.compare(exact.parseRational(a)!, exact.parseRational(b)!);
  return order <= 0 ? ([a, b] as const) : ([b, a] as const);
});

/** Quantity text of every form but mixed, in any unit. */
const texts = fc.oneof(
  fc.tuple(positive, someUnit).map(([n, u]) => `${n} ${u.symbol}`),
  fc.tuple(inOrder, someUnit).map(([[a, b], u]) => `${a}..${b} ${u.symbol}`),
  fc.tuple(positive, numbers, someUnit).map(([n, t, u]) => `${n} ± ${t} ${u.symbol}`),
  fc.tuple(positive, numbers, numbers, someUnit).map(([n, p, m, u]) => `${n} +${p}/-${m} ${u.symbol}`),
  fc
    .tuple(
      positive,
      fc.integer({ min: 0, max: 100 }),
      someUnit.filter((u) => u.kind !== 'temperature'),
    )
    .map(([n, p, u]) => `${n} ${u.symbol} ± ${p} %`),
  fc
    .tuple(fc.constantFrom('at least', 'at most', 'over', 'below'), positive, someUnit)
    .map(([form, n, u]) => `${form} ${n} ${u.symbol}`),
);

/** A quantity and another unit of its kind. */
const withOther = texts.chain((text) => {
  const q = read(text);
  const others = units.filter(
    (u) => u.kind === q.unit.kind && (u.reference ?? 'none') === (q.unit.reference ?? 'none'),
  );
  return fc.tuple(fc.constant(q), fc.constantFrom(...(others as [Unit, ...Unit[]])));
});

test('there and back again is the same quantity, exactly', () => {
  fc.assert(
    fc.property(withOther, ([q, other]) => {
      const back = must(convert(must(convert(q, other)), q.unit));
      expect(sameQuantity(back, q)).toBe(true);
    }),
    settings,
  );
});

test('what is printed in source form reads back as the same quantity', () => {
  fc.assert(
    fc.property(texts, (text) => {
      const q = read(text);
      const again = read(printSource(q));
      expect(sameQuantity(again, q)).toBe(true);
      expect(printSource(again)).toBe(printSource(q));
    }),
    settings,
  );
});

test('what is printed for readers reads back as the same quantity (differences of temperature apart)', () => {
  fc.assert(
    fc.property(texts, (text) => {
      const q = read(text);
      fc.pre(q.unit.kind !== 'temperature difference');
      expect(sameQuantity(read(printReader(q)), q)).toBe(true);
    }),
    settings,
  );
});

test('mixed units read back', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 59 }), numbers, (h, min, s) => {
      const q = read(`${h} h ${min} min ${s} s`);
      const again = read(printSource(q));
      expect(sameQuantity(again, q)).toBe(true);
      expect(again.parts).toEqual(q.parts);
    }),
    settings,
  );
});

/** Rounding never allows what was not allowed: intervals inwards, values within half a typed unit. */
function staysInside(rounded: Quantity, q: Quantity): boolean {
  if (q.form !== 'value') return must(contains(q, rounded));
  const back = must(convert(rounded, q.unit));
  const off = exact.abs(exact.subtract(back.nominal!, q.nominal!));
  return exact.compare(off, exact.multiply(q.step!, exact.rational(1, 2))) <= 0;
}

test('rounding in another unit stays inside the tolerance', () => {
  fc.assert(
    fc.property(withOther, ([q, other]) => {
      const rounded = must(roundedIn(q, other));
      expect(rounded.form).toBe(q.form);
      expect(rounded.unit).toBe(other);
      expect(staysInside(rounded, q)).toBe(true);
    }),
    settings,
  );
});

test('a rounded value is accepted as a second unit and prints with few digits', () => {
  fc.assert(
    fc.property(withOther, ([q, other]) => {
      fc.pre(q.form === 'value' && q.unit !== other);
      const rounded = must(roundedIn(q, other));
      const typed = read(printSource(rounded));
      expect(must(checkSecond(q, typed)).verdict).toBe('agrees');
    }),
    settings,
  );
});

test('nothing that is typed makes reading throw, and problems lie inside the text', () => {
  const pieces = fc.constantFrom(
    '5',
    '1/6',
    '..',
    '±',
    '+-',
    '+1/-0',
    '%',
    'N·m',
    'gal',
    ' ',
    ',',
    '-',
    'h',
    'min',
    'at least ',
    '°',
    'x',
    '.',
    '/',
    '0',
  );
  const typed = fc.oneof(
    fc.string(),
    fc.array(pieces, { maxLength: 8 }).map((all) => all.join('')),
  );
  fc.assert(
    fc.property(typed, (text) => {
      const outcome = readQuantity(text);
      if (!outcome.ok) {
        const { from, to } = outcome.problem;
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeGreaterThanOrEqual(from!);
        expect(to).toBeLessThanOrEqual(text.length);
      }
      for (let at = 0; at <= text.length; at += 1) {
        const length = matchUnit(text, at);
        expect(length).toBeLessThanOrEqual(text.length - at);
      }
      let end = 0;
      for (const found of findQuantities(text)) {
        expect(found.from).toBeGreaterThanOrEqual(end);
        end = found.to;
      }
    }),
    { seed: SEED, numRuns: 2000 },
  );
});
