/**
 * Unit factors against outside values.
 *
 * Sources: tests/outside/unit-factors.csv (definition chains; each row names how it was derived and
 * what it was cross-checked with) and mathjs 15.2.0, an independent unit library.
 */
import { readFileSync } from 'node:fs';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { convertNumber, exact, units } from '../../../grammar/quantity/index.ts';
import { readCsv } from './csv.ts';
import { unit } from './read.ts';

const rows = readCsv(readFileSync(new URL('../../outside/unit-factors.csv', import.meta.url), 'utf8'));

/** Names in the table that are not the symbol with a dot for the middle dot. */
const symbols: Record<string, string> = {
  'thou (mil, 0.001 in)': 'thou',
  'lb (avoirdupois)': 'lb',
  'oz (avoirdupois)': 'oz',
  'kgf (kp)': 'kgf',
  'psi (lbf/in2)': 'psi',
  'atm (standard)': 'atm',
  'kgf/cm2 (at)': 'kgf/cm²',
  'inHg (conventional)': 'inHg',
  'mmHg (conventional)': 'mmHg',
  'US qt (liquid)': 'US-qt',
  'US pt (liquid)': 'US-pt',
  'in3 (cu in)': 'in³',
  'hp (mechanical, 550 ft.lbf/s)': 'hp',
  'degF interval': 'Δ°F',
};

const withFraction = rows.filter((row) => row.factor_as_fraction !== '');
const affine = rows.filter((row) => row.factor_as_fraction === '');

describe('unit-factors.csv', () => {
  test('the table is all there', () => {
    expect(withFraction.length).toBe(36);
    expect(affine.map((row) => row.unit)).toEqual(['degC from degF', 'K from degC']);
  });

  test.each(withFraction.map((row) => [row.unit!, row]))('%s is that fraction, exactly', (name, row) => {
    const known = unit(symbols[name] ?? name);
    expect(known.factor).toEqual(exact.parseRational(row.factor_as_fraction!));
    const decimal = row.factor_to_SI_exact!;
    if (!decimal.endsWith('...')) expect(exact.toDecimal(known.factor)).toBe(decimal);
    else expect(exact.toDecimal(known.factor)).toBeUndefined();
    expect(known.inexact).toBeUndefined();
  });

  test('the affine rows: °F to °C at the points the table gives, °C to K', () => {
    const points = [...affine[0]!.derivation!.matchAll(/(-?\d+) F = (-?\d+) C/g)];
    expect(points.length).toBe(3);
    for (const [, f, c] of points) {
      const value = convertNumber(exact.parseRational(f!)!, unit('°F'), unit('°C'));
      expect(exact.toDecimal(value)).toBe(c);
    }
    expect(affine[1]!.factor_to_SI_exact).toBe('C+273.15');
    expect(exact.toDecimal(convertNumber(exact.ZERO, unit('°C'), unit('K')))).toBe('273.15');
  });
});

describe('mathjs', () => {
  /** Ours, mathjs's name, and how far the two may be apart where mathjs rounds its factor. */
  const pairs: [string, string, string, string, number?][] = [
    ['mm', 'mm', 'm', 'm'],
    ['cm', 'cm', 'm', 'm'],
    ['km', 'km', 'm', 'm'],
    ['µm', 'um', 'm', 'm'],
    ['in', 'inch', 'm', 'm'],
    ['ft', 'ft', 'm', 'm'],
    ['thou', 'mil', 'm', 'm'],
    ['in²', 'sqin', 'm²', 'm^2'],
    ['L', 'L', 'm³', 'm^3'],
    ['mL', 'ml', 'm³', 'm^3'],
    ['cm³', 'cc', 'm³', 'm^3'],
    ['in³', 'cuin', 'm³', 'm^3'],
    ['US-gal', 'gallon', 'm³', 'm^3'],
    ['US-qt', 'quart', 'm³', 'm^3'],
    ['US-pt', 'pint', 'm³', 'm^3'],
    ['US-fl-oz', 'fluidounce', 'm³', 'm^3'],
    ['kg', 'kg', 'g', 'g'],
    ['t', 'tonne', 'kg', 'kg'],
    ['lb', 'lbm', 'kg', 'kg'],
    ['oz', 'oz', 'kg', 'kg'],
    ['US-ton', 'ton', 'kg', 'kg'],
    ['lbf', 'lbf', 'N', 'N'],
    ['kgf', 'kgf', 'N', 'N'],
    ['kN', 'kN', 'N', 'N'],
    ['lbf·ft', 'lbf ft', 'N·m', 'N m'],
    ['lbf·in', 'lbf inch', 'N·m', 'N m'],
    ['kgf·m', 'kgf m', 'N·m', 'N m'],
    ['kgf·cm', 'kgf cm', 'N·m', 'N m'],
    ['cN·m', 'cN m', 'N·m', 'N m'],
    ['daN·m', 'daN m', 'N·m', 'N m'],
    ['psi', 'psi', 'Pa', 'Pa', 1e-10],
    ['ksi', 'psi', 'kPa', 'Pa', 1e-10],
    ['bar', 'bar', 'Pa', 'Pa'],
    ['mbar', 'mbar', 'Pa', 'Pa'],
    ['atm', 'atm', 'Pa', 'Pa'],
    ['mmHg', 'mmHg', 'Pa', 'Pa', 3e-6],
    ['Torr', 'torr', 'Pa', 'Pa', 3e-6],
    ['mmH2O', 'mmH2O', 'Pa', 'Pa', 1e-5],
    ['MPa', 'N/mm^2', 'Pa', 'Pa'],
    ['N/mm', 'N/mm', 'N/m', 'N/m'],
    ['lbf/in', 'lbf/inch', 'N/m', 'N/m'],
    ['L/min', 'L/minute', 'm³/s', 'm^3/s'],
    ['cSt', 'mm^2/s', 'm²/s', 'm^2/s'],
    ['min', 'minute', 's', 's'],
    ['h', 'hour', 's', 's'],
    ['d', 'day', 's', 's'],
    ['rad', 'rad', '°', 'deg'],
    ['turn', 'cycle', '°', 'deg'],
    ['hp', 'hp', 'W', 'W', 1e-10],
    ['kJ', 'kJ', 'J', 'J'],
    ['kV', 'kV', 'V', 'V'],
    ['mA', 'mA', 'A', 'A'],
    ['kΩ', 'kohm', 'Ω', 'ohm'],
    ['MΩ', 'Mohm', 'Ω', 'ohm'],
    ['µF', 'uF', 'mF', 'F'],
    ['A·h', 'A hour', 'C', 'C'],
    ['kHz', 'kHz', 'Hz', 'Hz'],
  ];
  /** Coherent units that have no symbol of their own in the language. */
  const coherent = new Set(['N/m', 'm³/s', 'm²/s', 'mF', 'C']);

  test.each(pairs)('%s is what mathjs calls %s', (symbol, name, base, mathBase, tolerance = 1e-14) => {
    const from = unit(symbol);
    const ours = coherent.has(base) ? from.factor : convertNumber(exact.ONE, from, unit(base));
    const theirs = mathUnit(1, name).toNumber(mathBase);
    expect(Math.abs(exact.toNumber(ours) / theirs - 1)).toBeLessThanOrEqual(tolerance);
  });

  test.each([-40, 0, 32, 60, 98.6, 212])('%d °F in °C and K', (reading) => {
    const f = exact.parseRational(String(reading))!;
    for (const [symbol, name] of [
      ['°C', 'degC'],
      ['K', 'K'],
    ] as const) {
      const ours = exact.toNumber(convertNumber(f, unit('°F'), unit(symbol)));
      expect(ours).toBeCloseTo(mathUnit(reading, 'degF').toNumber(name), 10);
    }
  });
});

describe('definitions the other two lack', () => {
  // Source: SI Brochure, 9th edition (from memory): 1 rad = 180°/π. π by Machin's formula of 1706,
  // π/4 = 4 arctan(1/5) − arctan(1/239), worked out here in whole numbers to 60 digits.
  test('the radian is good to 40 digits', () => {
    const scale = 10n ** 60n;
    const arctanOfInverse = (n: bigint): bigint => {
      let sum = 0n;
      let power = scale / n;
      for (let k = 0n; power !== 0n; k += 1n) {
        sum += (k % 2n === 0n ? power : -power) / (2n * k + 1n);
        power /= n * n;
      }
      return sum;
    };
    const pi = 4n * (4n * arctanOfInverse(5n) - arctanOfInverse(239n));
    const degrees = exact.multiply(unit('rad').factor, exact.rational(360));
    const product = exact.multiply(degrees, exact.rational(pi, scale));
    const off = exact.abs(exact.subtract(product, exact.rational(180)));
    expect(exact.compare(off, exact.powerOfTen(-40))).toBeLessThan(0);
    expect(units.filter((u) => u.inexact).map((u) => u.symbol)).toEqual(['rad']);
  });

  // Source: NIST SP 811 Appendix B.8 (from memory): inch of water, conventional, 2.490 889 E+02 Pa;
  // micron of mercury (millitorr) 1.333 224 E-01 Pa; long ton 1.016 047 E+03 kg.
  test.each([
    ['inH2O', 249.0889],
    ['micron', 0.1333224],
    ['imp-ton', 1016.047],
  ])('%s', (symbol, printed) => {
    expect(exact.toNumber(exact.roundSignificant(unit(symbol).factor, 7))).toBe(printed);
  });
});
