/** Printing, and second units typed beside the first. Printed pairs come from published texts, named here. */
import { describe, expect, test } from 'vitest';
import {
  checkSecond,
  exact,
  printBoth,
  printReader,
  printReaderIn,
  printSource,
} from '../../../grammar/quantity/index.ts';
import { must, problemOf, read, unit } from './read.ts';

describe('in its own unit', () => {
  test.each([
    ['25 +- 3 Nm', '25 ± 3 N·m', '25 ± 3 N·m'],
    ['5..60 N.m', '5..60 N·m', '5 to 60 N·m'],
    ['500 +1/-0 micron', '500 +1/-0 microns', '500 +1/−0 microns'],
    ['25 N·m ± 5 %', '25 N·m ± 5 %', '25 N·m ± 5 %'],
    ['1 h 30 min', '1 h 30 min', '1 h 30 min'],
    ['2 h 0 min', '2 h 0 min', '2 h 0 min'],
    ['-1 ft 6 in', '-1 ft 6 in', '−1 ft 6 in'],
    ['90 deg', '90°', '90°'],
    ['1/6 rev', '1/6 turn', '1/6 turn'],
    ['2 turn', '2 turns', '2 turns'],
    ['1 1/2 in', '1 1/2 in', '1 1/2 in'],
    ['6.50 l', '6.50 L', '6.50 L'],
    ['0.10..0.30 mm', '0.10..0.30 mm', '0.10 to 0.30 mm'],
    ['9.5..10 mm', '9.5..10 mm', '9.5 to 10 mm'],
    ['25 ± 0.5 mm', '25 ± 0.5 mm', '25 ± 0.5 mm'],
    ['-20 degC', '-20 °C', '−20 °C'],
    ['2 US gal', '2 US-gal', '2 US gal'],
    ['3 days', '3 d', '3 days'],
    ['1 day', '1 d', '1 day'],
    ['up to 0.04 mm', 'at most 0.04 mm', 'at most 0.04 mm'],
    ['over 0.04 mm', 'over 0.04 mm', 'over 0.04 mm'],
    ['5 percent', '5 %', '5 %'],
  ])('%s', (typed, source, reader) => {
    expect(printSource(read(typed))).toBe(source);
    expect(printReader(read(typed))).toBe(reader);
  });
});

describe('in another unit', () => {
  // The exact values are those of unit-factors.csv; which digits are kept is common practice, no source.
  test.each([
    ['25 N·m', 'lbf·ft', '18.4 lbf·ft'],
    ['80 lbf·ft', 'N·m', '108 N·m'],
    ['12 in', 'mm', '305 mm'],
    ['3/8 in', 'mm', '9.5 mm'],
    ['5..60 N·m', 'lbf·ft', '4 to 44 lbf·ft'],
    ['25 ± 3 N·m', 'lbf·ft', '18.4 ± 2.1 lbf·ft'],
    ['28..33 lbf·ft', 'N·m', '38.0 to 44.7 N·m'],
    ['at least 20 lbf·ft', 'N·m', 'at least 27.2 N·m'],
    ['at most 15 psi', 'kPa', 'at most 100 kPa'],
    ['-20..40 °C', '°F', '−4 to 104 °F'],
    ['80 ± 5 °C', '°F', '176 ± 9 °F'],
    ['1 h 30 min', 'h', '1.5 h'],
    ['0 mm', 'in', '0 in'],
    ['20 °C', '°F', '68 °F'],
  ])('%s in %s', (typed, to, expected) => {
    expect(must(printReaderIn(read(typed), unit(to)))).toBe(expected);
  });

  test('both, the second in brackets', () => {
    expect(must(printBoth(read('5..60 N·m'), unit('lbf·ft')))).toBe('5 to 60 N·m (4 to 44 lbf·ft)');
    expect(problemOf(printBoth(read('5 N·m'), unit('N')))).toBe('unit-wrong-kind');
  });
});

describe('a typed second unit', () => {
  const verdict = (first: string, second: string): string =>
    must(checkSecond(read(first), read(second))).verdict;

  test.each([
    // Connecting-rod bolt tables of a US Army engine manual.
    ['80 ft-lb', '110 N·m'],
    ['160 ft-lb', '215 N·m'],
    ['240 ft-lb', '325 N·m'],
    ['270 ft-lb', '365 N·m'],
    // Angle-tightening tables of a US Army engine manual.
    ['29.5 lb-ft', '40 N·m'],
    ['59..66 lb-ft', '80..90 N·m'],
    ['21 lb-ft', '28 N·m'],
    ['7 lb-ft', '10 N·m'],
    ['22.14 ft-lb', '30 N·m'],
    ['18.45 ft-lb', '25 N·m'],
    ['36.9 ft-lb', '50 N·m'],
    // Tyre and side-ring procedure of a US Army manual.
    ['10 ft', '3.1 m'],
    ['3 psi', '21 kPa'],
    // NIOSH Publication 94-110: 51 lb with 23 kg.
    ['51 lb', '23 kg'],
    ['25 ± 3 N·m', '18 ± 2 lbf·ft'],
    ['25 ± 3 N·m', '18 lbf·ft'],
    ['150 °F', '66 °C'],
    ['at most 15 psi', 'at most 103 kPa'],
  ])('%s (%s) agrees', (first, second) => {
    expect(verdict(first, second)).toBe('agrees');
  });

  test.each([
    // Brake bleeding text of a US Army manual: 12-15 psi is 83-103 kPa.
    ['12..15 psi', '103..138 kPa'],
    // Angle-tightening manual: 0.005 in is 0.127 mm.
    ['0.005 in', '0.15 mm'],
    ['25 N·m', '34 lbf·ft'],
    ['25 N·m', '25 lbf·ft'],
    ['12..15 psi', '83 kPa'],
    ['at least 15 psi', 'at most 103 kPa'],
    ['25 ± 3 N·m', '18 ± 4 lbf·ft'],
  ])('%s (%s) differs', (first, second) => {
    expect(verdict(first, second)).toBe('differs');
  });

  test.each([
    ['80 ft-lb', '100 N·m'],
    // ASME PCC-1, snug pass (metric pair seen, ft-lb from memory).
    ['15..30 N·m', '10..20 ft-lb'],
  ])('%s (%s) is coarse', (first, second) => {
    expect(verdict(first, second)).toBe('coarse');
  });

  test('the worst end is shown: 15 psi is 103.4 kPa, not 138', () => {
    const check = must(checkSecond(read('12..15 psi'), read('83..138 kPa')));
    expect(check.verdict).toBe('differs');
    expect(exact.toSignificant(check.exact, 4)).toBe('103.4');
    expect(exact.toDecimal(check.typed)).toBe('138');
  });

  test('a unit of another kind is a problem of its own (270 ft-lb printed with 365 N)', () => {
    expect(problemOf(checkSecond(read('270 ft-lb'), read('365 N')))).toBe('unit-wrong-kind');
  });
});
