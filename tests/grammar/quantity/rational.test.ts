/** Exact fractions. Source of the laws: the axioms of an ordered field; of the values: bigint arithmetic of the engine. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exact } from '../../../grammar/quantity/index.ts';

const SEED = 20261102;
const sizes = fc.oneof(
  fc.bigInt({ min: -1000n, max: 1000n }),
  fc.bigInt({ min: -(10n ** 18n), max: 10n ** 18n }),
);
const fractions = fc
  .tuple(
    sizes,
    sizes.filter((d) => d !== 0n),
  )
  .map(([n, d]) => ({ n, d, value: exact.rational(n, d) }));

describe('reading', () => {
  test.each([
    ['0.00473', 473n, 100000n],
    ['1/6', 1n, 6n],
    ['1 1/2', 3n, 2n],
    ['-1 1/2', -3n, 2n],
    ['−20', -20n, 1n],
    ['.5', 1n, 2n],
    ['007', 7n, 1n],
    ['0.1000', 1n, 10n],
    ['12345678901234567890.5', 24691357802469135781n, 2n],
  ])('%s', (text, n, d) => {
    const value = exact.parseRational(text)!;
    expect([BigInt(value.n), BigInt(value.d)]).toEqual([n, d]);
  });

  test.each([
    '',
    '-',
    '5.',
    '.',
    '1/0',
    '1/',
    '/2',
    '6,5',
    '1e3',
    '0x10',
    '1.2.3',
    '1 2',
    '½',
    '1.5/2',
    '9'.repeat(61),
  ])('"%s" is no number', (text) => {
    expect(exact.parseRational(text)).toBeUndefined();
  });
});

describe('arithmetic', () => {
  test('agrees with whole-number arithmetic on numerators and denominators', () => {
    fc.assert(
      fc.property(fractions, fractions, (a, b) => {
        const same = (value: exact.Rational, n: bigint, d: bigint): boolean =>
          BigInt(value.n) * d === n * BigInt(value.d) && value.d > 0;
        expect(same(exact.add(a.value, b.value), a.n * b.d + b.n * a.d, a.d * b.d)).toBe(true);
        expect(same(exact.subtract(a.value, b.value), a.n * b.d - b.n * a.d, a.d * b.d)).toBe(true);
        expect(same(exact.multiply(a.value, b.value), a.n * b.n, a.d * b.d)).toBe(true);
        const quotient = exact.divide(a.value, b.value);
        if (b.n === 0n) expect(quotient).toBeUndefined();
        else expect(same(quotient!, a.n * b.d, a.d * b.n)).toBe(true);
        const difference = (a.n * b.d - b.n * a.d) * (a.d * b.d);
        expect(exact.compare(a.value, b.value)).toBe(difference < 0n ? -1 : difference > 0n ? 1 : 0);
      }),
      { seed: SEED },
    );
  });

  test('one value has one shape: lowest terms, no negative zero, small where it can be', () => {
    fc.assert(
      fc.property(fractions, fractions, (a, b) => {
        for (const value of [
          exact.add(a.value, b.value),
          exact.multiply(a.value, b.value),
          exact.negate(a.value),
        ]) {
          expect(value).toStrictEqual(exact.rational(BigInt(value.n), BigInt(value.d)));
          expect(Object.is(value.n, -0)).toBe(false);
          const fits = [value.n, value.d].every(
            (x) => Number.isSafeInteger(Number(x)) && BigInt(Number(x)) === BigInt(x),
          );
          expect(typeof value.n).toBe(fits ? 'number' : 'bigint');
        }
        expect(exact.subtract(exact.add(a.value, b.value), b.value)).toStrictEqual(a.value);
      }),
      { seed: SEED },
    );
  });
});

describe('printing', () => {
  test.each([
    ['1/8', '0.125'],
    ['-1/8', '-0.125'],
    ['3', '3'],
    ['1/3', undefined],
    ['1/1280', '0.00078125'],
  ])('%s ends as %s', (text, decimal) => {
    expect(exact.toDecimal(exact.parseRational(text)!)).toBe(decimal);
  });

  test('significant digits, halves away from zero', () => {
    const at = (text: string, digits: number): string =>
      exact.toSignificant(exact.parseRational(text)!, digits);
    expect([
      at('2/3', 3),
      at('0.00047351', 2),
      at('123456', 2),
      at('-2.5', 1),
      at('9.996', 3),
      at('0', 3),
    ]).toEqual(['0.667', '0.00047', '120000', '-3', '10', '0']);
  });

  test('rounding lands on the step, on the right side, nearer than one step', () => {
    fc.assert(
      fc.property(fractions, fc.integer({ min: -6, max: 6 }), (a, exponent) => {
        const step = exact.powerOfTen(exponent);
        for (const direction of ['nearest', 'down', 'up'] as const) {
          const rounded = exact.roundTo(a.value, step, direction);
          expect(exact.isWhole(exact.divide(rounded, step)!)).toBe(true);
          const off = exact.divide(exact.subtract(rounded, a.value), step)!;
          const [low, high] = { nearest: ['-1/2', '1/2'], down: ['-1', '0'], up: ['0', '1'] }[direction] as [
            string,
            string,
          ];
          expect(exact.compare(off, exact.parseRational(low)!)).toBeGreaterThanOrEqual(0);
          expect(exact.compare(off, exact.parseRational(high)!)).toBeLessThanOrEqual(0);
        }
      }),
      { seed: SEED },
    );
  });

  test('decimal and fraction text read back as the same number', () => {
    fc.assert(
      fc.property(fractions, (a) => {
        expect(exact.parseRational(exact.toFraction(a.value))).toStrictEqual(a.value);
        const decimal = exact.toDecimal(a.value);
        if (decimal !== undefined && decimal.length < 50)
          expect(exact.parseRational(decimal)).toStrictEqual(a.value);
      }),
      { seed: SEED },
    );
  });

  test('toNumber is the nearest double, also for long fractions', () => {
    fc.assert(
      fc.property(fractions, (a) => {
        const value = exact.toNumber(a.value);
        const expected = Number(a.n) / Number(a.d);
        expect(Math.abs(value - expected)).toBeLessThanOrEqual(Math.abs(expected) * 4e-16);
      }),
      { seed: SEED },
    );
  });
});

test('nothing is divided by zero', () => {
  expect(() => exact.rational(1n, 0n)).toThrow('a fraction cannot have zero below the line');
  expect(() => exact.rational(10n ** 30n, 0n)).toThrow('a fraction cannot have zero below the line');
});
