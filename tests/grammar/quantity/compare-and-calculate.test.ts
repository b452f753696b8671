/**
 * Comparing and calculating. Sources are named beside the checks; interval relations follow from their
 * definition.
 */
import { describe, expect, test } from 'vitest';
import {
  addQuantities,
  compareCentres,
  contains,
  convert,
  divideQuantities,
  exact,
  gap,
  liesWithin,
  multiplyQuantities,
  overlap,
  printSource,
  readQuantity,
  relate,
  subtractQuantities,
} from '../../../grammar/quantity/index.ts';
import { must, problemOf, read, unit } from './read.ts';

describe('relations', () => {
  test.each([
    ['20 N·m', '5..60 N·m', 'within'],
    ['5..60 N·m', '20 N·m', 'around'],
    ['5..60 N·m', '5 N·m..60 N·m', 'equal'],
    ['5..60 N·m', '50..70 N·m', 'overlapping'],
    ['5 N·m', '6 N·m', 'below'],
    ['7 N·m', '6 N·m', 'above'],
    ['1 ft', '12 in', 'equal'],
    ['at least 5 mm', 'at least 6 mm', 'around'],
    ['at most 5 mm', 'at least 5 mm', 'overlapping'],
    ['below 5 mm', 'at least 5 mm', 'below'],
    ['at most 5 mm', 'over 5 mm', 'below'],
    ['over 5 mm', 'at least 5 mm', 'within'],
    ['below 5 mm', 'at most 5 mm', 'within'],
    ['over 5 mm', 'over 5 mm', 'equal'],
    ['over 5 mm', 'below 6 mm', 'overlapping'],
    ['5 mm', 'over 5 mm', 'below'],
    // Fixed points of the two scales: unit-factors.csv, row `degC from degF`.
    ['212 °F', '100 °C', 'equal'],
    ['-40 °F', '-40 °C', 'equal'],
  ])('%s to %s: %s', (a, b, expected) => {
    expect(must(relate(read(a), read(b)))).toBe(expected);
  });

  test('overlap and contains follow', () => {
    expect(must(overlap(read('5..6 mm'), read('6..7 mm')))).toBe(true);
    expect(must(overlap(read('below 6 mm'), read('6..7 mm')))).toBe(false);
    expect(must(contains(read('5..60 N·m'), read('25 ± 3 N·m')))).toBe(true);
    expect(must(contains(read('25 ± 3 N·m'), read('5..60 N·m')))).toBe(false);
    expect(must(compareCentres(read('25 ± 3 N·m'), read('2500 cN·m')))).toBe(0);
    expect(exact.toDecimal(must(gap(read('90 mm'), read('8 cm'))))).toBe('10');
  });

  test.each([
    ['20 N·m', '20 J', 'unit-wrong-kind'],
    ['20 mm', '20 kg', 'unit-wrong-kind'],
    ['500 micron', '3 µm', 'unit-wrong-kind'],
    ['50 Hz', '50 rpm', 'unit-wrong-kind'],
    ['20 °C', '20 Δ°C', 'unit-wrong-kind'],
    // Refrigeration manual: evacuate to 500 microns, then break to 2 psig; one is absolute, the other gauge.
    ['500 micron', '2 psig', 'pressure-reference'],
  ])('%s and %s cannot be compared', (a, b, code) => {
    expect(problemOf(relate(read(a), read(b)))).toBe(code);
  });

  test('gauge pressure compares with a pressure that does not say', () => {
    expect(must(relate(read('2 psig'), read('3 psi')))).toBe('below');
  });

  test.each([
    ['25 N·m', '25 ± 3 N·m', true],
    ['28.5 N·m', '25 ± 3 N·m', false],
    ['24..26 N·m', '25 ± 3 N·m', true],
    ['18 lbf·ft', '25 ± 3 N·m', true],
    ['15 lbf·ft', '25 ± 3 N·m', false],
    // Exactly 20.65 lbf·ft at the top: 21 is the nearest whole one, 22 is not.
    ['21 lbf·ft', '25 ± 3 N·m', true],
    ['22 lbf·ft', '25 ± 3 N·m', false],
    ['25 N·m', '25 N·m', true],
    ['26 N·m', '25 N·m', false],
    ['25 ± 5 N·m', '25 ± 3 N·m', false],
    // Connecting-rod bolt table of a US Army engine manual: 80 ft-lb printed with 110 N·m.
    ['110 N·m', '80 ft-lb', true],
    ['130 N·m', '80 ft-lb', false],
    ['90 N·m', 'at least 80 N·m', true],
    ['at least 80 N·m', '80..90 N·m', false],
  ])('%s lies within %s: %s', (typed, declared, expected) => {
    expect(must(liesWithin(read(typed), read(declared)))).toBe(expected);
  });
});

describe('temperature', () => {
  // Source: NIST SP 811 B.8 (from memory): t/°C = (t/°F − 32)/1.8; T/K = t/°C + 273.15.
  test.each([
    ['60 °F', '°C', '140/9'],
    ['0 °C', '°F', '32'],
    ['25 °C', 'K', '5963/20'],
    ['0 K', '°F', '-45967/100'],
  ])('%s in %s', (source, to, expected) => {
    expect(must(convert(read(source), unit(to))).nominal).toEqual(exact.parseRational(expected));
  });

  test('a tolerance on a reading is a difference', () => {
    const f = must(convert(read('80 ± 5 °C'), unit('°F')));
    expect([f.low, f.high].map((end) => exact.toDecimal(end!))).toEqual(['167', '185']);
  });

  test('reading less reading is a difference; reading and difference a reading', () => {
    const rise = must(subtractQuantities(read('90 °C'), read('68 °F')));
    expect(printSource(rise)).toBe('70 Δ°C');
    expect(printSource(must(convert(rise, unit('Δ°F'))))).toBe('126 Δ°F');
    expect(printSource(must(addQuantities(read('20 °C'), rise)))).toBe('90 °C');
    expect(printSource(must(addQuantities(rise, read('20 °C'))))).toBe('90 °C');
    expect(printSource(must(subtractQuantities(read('212 °F'), read('100 Δ°C'))))).toBe('32 °F');
  });

  test('what has no meaning is refused', () => {
    expect(problemOf(addQuantities(read('20 °C'), read('20 °C')))).toBe('temperature-reading');
    expect(problemOf(multiplyQuantities(read('20 °C'), read('50 %')))).toBe('temperature-reading');
    expect(problemOf(divideQuantities(read('20 mm'), read('20 °C')))).toBe('temperature-reading');
    expect(problemOf(subtractQuantities(read('5 Δ°C'), read('20 °C')))).toBe('unit-wrong-kind');
  });
});

describe('sums, products, quotients', () => {
  test.each([
    ['1 ft', '+', '1 in', '13/12 ft'],
    ['25 ± 3 N·m', '+', '5 N·m', '30 ± 3 N·m'],
    ['5..6 mm', '-', '1..2 mm', '3..5 mm'],
    ['200 lbf', '*', '1 ft', '271.16358966628008 N·m'],
    ['100 N·m', '*', '70 %', '70 N·m'],
    ['70 %', '*', '100 lbf·ft', '70 lbf·ft'],
    ['50 ± 1 mm', '*', '200 %', '100 ± 2 mm'],
    ['20 N·m', '/', '0.2 m', '100 N'],
    ['10 kN', '/', '100 mm²', '100000000 Pa'],
    ['10 L', '/', '2 min', '1/12000 m³/s'],
    ['6 mm', '/', '2 mm', '3'],
    ['-2..3 mm', '*', '-1..4 mm', '-1/125000..3/250000 m²'],
    ['1 N·m', '*', '1 kg', '1 m^2·kg^2·s^-2'],
  ])('%s %s %s = %s', (a, sign, b, expected) => {
    const operate = {
      '+': addQuantities,
      '-': subtractQuantities,
      '*': multiplyQuantities,
      '/': divideQuantities,
    }[sign]!;
    const result = printSource(must(operate(read(a), read(b))));
    const plain = expected.replace(/-?\d+\/\d+/g, (f) => {
      const value = exact.parseRational(f)!;
      return exact.toDecimal(value) ?? exact.toFraction(value);
    });
    expect(result).toBe(plain);
  });

  // Source: Shigley, 9th edition, example 8-3(b) (K = 0.2 and the answer from memory): T = K·d·F,
  // 25000 lbf on 3/4 in gives 3750 lbf·in.
  test('the tightening torque of T = K d F comes out as a torque', () => {
    const product = must(
      multiplyQuantities(must(multiplyQuantities(read('3/4 in'), read('25000 lbf'))), read('20 %')),
    );
    expect(product.unit.kind).toBe('torque');
    expect(exact.toDecimal(must(convert(product, unit('lbf·in'))).nominal!)).toBe('3750');
  });

  // Source: Shigley, 9th edition, example 8-3(a): 25 kip on 0.373 in² is 67.02 kpsi.
  test('force by area is a pressure', () => {
    const stress = must(convert(must(divideQuantities(read('25000 lbf'), read('0.373 in²'))), unit('ksi')));
    expect(exact.toFixed(stress.nominal!, 2)).toBe('67.02');
  });

  test('an angle is not a number, a turn a minute not a frequency', () => {
    expect(problemOf(addQuantities(read('90°'), read('50 %')))).toBe('unit-wrong-kind');
    expect(must(divideQuantities(read('90 turns'), read('1 min'))).unit.kind).toBe('speed of rotation');
    expect(must(multiplyQuantities(read('90°'), read('2 mm'))).unit.kind).toBe('derived');
  });

  test('problems are returned', () => {
    expect(problemOf(addQuantities(read('1 mm'), read('1 kg')))).toBe('unit-wrong-kind');
    expect(problemOf(divideQuantities(read('1 mm'), read('-1..1 s')))).toBe('division-by-zero');
    expect(problemOf(addQuantities(read('at least 1 mm'), read('1 mm')))).toBe('open-ended');
    expect(problemOf(multiplyQuantities(read('1 mm'), read('at most 3 mm')))).toBe('open-ended');
    expect(readQuantity('1 mm').ok).toBe(true);
  });
});
