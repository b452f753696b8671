/**
 * Reading quantities. The forms are the language's own; unusual ones are taken from printed procedures,
 * named beside the line.
 */
import { describe, expect, test } from 'vitest';
import { exact, findQuantities, printReader, readQuantity } from '../../../grammar/quantity/index.ts';
import { problemOf, read } from './read.ts';

const text = (value: exact.Rational | undefined): string =>
  value === undefined ? '-' : exact.toFraction(value);
/** form, low, nominal, high, unit */
function parts(source: string): string[] {
  const q = read(source);
  return [q.form, text(q.low), text(q.nominal), text(q.high), q.unit.symbol];
}

describe('forms', () => {
  test.each([
    ['25 N·m', ['value', '25', '25', '25', 'N·m']],
    ['25N.m', ['value', '25', '25', '25', 'N·m']],
    ['1/6 turn', ['value', '1/6', '1/6', '1/6', 'turn']],
    ['1 1/2 in', ['value', '1 1/2', '1 1/2', '1 1/2', 'in']],
    ['90°', ['value', '90', '90', '90', '°']],
    ['-20 °C', ['value', '-20', '-20', '-20', '°C']],
    ['5..60 N·m', ['range', '5', '-', '60', 'N·m']],
    ['5 N·m..60 N·m', ['range', '5', '-', '60', 'N·m']],
    ['50 mm..10 cm', ['range', '5', '-', '10', 'cm']],
    ['-20..40 °C', ['range', '-20', '-', '40', '°C']],
    ['1/4..3/8 turn', ['range', '1/4', '-', '3/8', 'turn']],
    ['5 to 60 N·m', ['range', '5', '-', '60', 'N·m']],
    // US Army/Navy manuals print ranges with a dash (28-33 ft-lb, generator set water pump).
    ['28-33 ft-lb', ['range', '28', '-', '33', 'lbf·ft']],
    ['12–15 psi', ['range', '12', '-', '15', 'psi']],
    ['25 ± 3 N·m', ['tolerance', '22', '25', '28', 'N·m']],
    ['25 +- 3 N·m', ['tolerance', '22', '25', '28', 'N·m']],
    ['25 N·m ± 3 N·m', ['tolerance', '22', '25', '28', 'N·m']],
    ['25 N·m ± 50 cN·m', ['tolerance', '24 1/2', '25', '25 1/2', 'N·m']],
    ['25 N·m ± 5 %', ['tolerance', '23 3/4', '25', '26 1/4', 'N·m']],
    ['25 ± 5 % N·m', ['tolerance', '23 3/4', '25', '26 1/4', 'N·m']],
    ['100 N·m +10/-5 %', ['tolerance', '95', '100', '110', 'N·m']],
    ['50 ± 5 %', ['tolerance', '45', '50', '55', '%']],
    // Refrigeration unit manual: 500 (+1/-0) and 2000 (+/- 25) microns.
    ['500 +1/-0 micron', ['tolerance', '500', '500', '501', 'micron']],
    ['500 -0/+1 micron', ['tolerance', '500', '500', '501', 'micron']],
    ['2000 +/- 25 microns', ['tolerance', '1975', '2000', '2025', 'micron']],
    ['80 ± 5 °C', ['tolerance', '75', '80', '85', '°C']],
    ['68 °F ± 5 Δ°C', ['tolerance', '59', '68', '77', '°F']],
    ['1 h 30 min', ['value', '90', '90', '90', 'min']],
    ['5 ft 2 in', ['value', '62', '62', '62', 'in']],
    ['-1 ft 6 in', ['value', '-18', '-18', '-18', 'in']],
    ['at least 20 ft-lb', ['at least', '20', '-', '-', 'lbf·ft']],
    ['at least 1 h 30 min', ['at least', '90', '-', '-', 'min']],
    ['up to 0.04 mm', ['at most', '-', '-', '1/25', 'mm']],
    ['not over 80 N·m', ['at most', '-', '-', '80', 'N·m']],
    ['over 0.04 mm', ['over', '1/25', '-', '-', 'mm']],
    ['below 0.3 mm', ['below', '-', '-', '3/10', 'mm']],
  ])('%s', (source, expected) => {
    expect(parts(source)).toEqual(expected);
  });

  test('how finely a number was typed is kept', () => {
    const step = (source: string): string => text(read(source).step);
    expect([step('25 mm'), step('6.50 L'), step('3/8 in'), step('9.5..10 mm'), step('25 ± 0.5 mm')]).toEqual([
      '1',
      '1/100',
      '1/80',
      '1',
      '1',
    ]);
  });
});

describe('problems', () => {
  test.each([
    ['25', 'unit-missing'],
    ['5..60', 'unit-missing'],
    ['25 ± 3', 'unit-missing'],
    ['1 h 30', 'unit-missing'],
    ['25 bananas', 'unit-unknown'],
    ['20 nm', 'unit-unknown'],
    ['12"', 'unit-unknown'],
    ['2 gal', 'unit-ambiguous'],
    ['2 pints', 'unit-ambiguous'],
    ['1..2 gal', 'unit-ambiguous'],
    ['6,5 L', 'decimal-comma'],
    ['5..6,5 L', 'decimal-comma'],
    ['1,000 psi', 'decimal-comma'],
    ['60..5 N·m', 'range-reversed'],
    ['5 mm..60 N·m', 'unit-wrong-kind'],
    // Flange make-up text: "30 ft. lbs. + 3 lbs."
    ['30 ft-lb ± 3 lb', 'tolerance-unit'],
    ['25 ± -3 N·m', 'tolerance-negative'],
    ['80 °C ± 5 %', 'temperature-reading'],
    ['5 ft 2 kg', 'mixed-units'],
    ['30 min 1 h', 'mixed-units'],
    ['1.5 h 10 min', 'mixed-units'],
    ['20 °C 5 °C', 'mixed-units'],
    // Brake bleeding text: "5-10 times minimum", a range as a minimum.
    ['at least 5..10 N·m', 'one-number-expected'],
    ['N·m', 'number-malformed'],
    ['', 'number-malformed'],
    ['25 N·m or so', 'text-left-over'],
  ])('%s: %s', (source, code) => {
    expect(problemOf(readQuantity(source))).toBe(code);
  });

  test.each([
    ['6,5 L', ['6.5', '65'], '6,5'],
    ['2 gal', ['US-gal', 'imp-gal'], 'gal'],
    ['20 nm', ['N·m'], 'nm'],
    ['12"', ['in'], '"'],
    ['60..5 N·m', ['5..60 N·m'], '60..5 N·m'],
    ['30 ft-lb ± 3 lb', ['30 ± 3 lbf·ft'], 'lb'],
  ])('%s: what is proposed, and where', (source, proposals, place) => {
    const outcome = readQuantity(source);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.problem.proposals).toEqual(proposals);
    expect(source.slice(outcome.problem.from, outcome.problem.to)).toBe(place);
  });

  test('the message names both readings of an ambiguous unit', () => {
    const outcome = readQuantity('3 qt');
    expect(outcome.ok ? '' : outcome.problem.message).toBe(
      '"qt" may mean US liquid quarts or imperial quarts; say which.',
    );
  });
});

describe('sentences', () => {
  const found = (sentence: string): string[] => findQuantities(sentence).map((f) => printReader(f.quantity));

  test('quantities are found with their places', () => {
    const sentence = 'Tighten to 25 ± 3 N·m (18 lbf·ft).';
    expect(findQuantities(sentence).map((f) => sentence.slice(f.from, f.to))).toEqual([
      '25 ± 3 N·m',
      '18 lbf·ft',
    ]);
  });

  test.each([
    ['Wait 1 h 30 min at 12–15 psi and keep it at -20 °C.', ['1 h 30 min', '12 to 15 psi', '−20 °C']],
    ['Tighten bolts 1 and 2 in order, 4 in all, thread M8x1.25 or 1/2-13.', []],
    ['Leave 3/8 in at the end and 0.5 in above; 12 in.', ['3/8 in', '0.5 in', '12 in']],
    ['Item 7 holds 2 gal; step 3.2 m is no number of metres... but 5 m is.', ['3.2 m', '5 m']],
    ['See T40-02-07 and #3 mm.', []],
    ['Turn it 90°, then 2 turns.', ['90°', '2 turns']],
  ])('%s', (sentence, expected) => {
    expect(found(sentence)).toEqual(expected);
  });
});
