/**
 * Units in text. What is a unit and what is not is the language's own decision (its reference); the
 * expected values here are that decision, and the tables are checked for being one list without doubles.
 */
import { describe, expect, test } from 'vitest';
import {
  allSpellings,
  ambiguousUnits,
  kindNamed,
  matchUnit,
  nearUnits,
  unitByText,
  unitNamed,
  units,
} from '../../../grammar/quantity/index.ts';

/** What is taken as the unit right after the number and its blanks. */
function unitAfterNumber(text: string): string {
  const at = /^[\d./]+ ?/.exec(text)![0].length;
  return text.slice(at, at + matchUnit(text, at));
}

describe('matchUnit', () => {
  test.each([
    ['20 mm', 'mm'],
    ['20 N·m', 'N·m'],
    ['20 N⋅m', 'N⋅m'],
    ['20 Nm', 'Nm'],
    ['20 N.m.', 'N.m'],
    ['20 N', 'N'],
    ['15 ft-lb', 'ft-lb'],
    ['15 lb-ft', 'lb-ft'],
    ['15 ft lb', 'ft lb'],
    ['4 in-lb', 'in-lb'],
    ['90°', '°'],
    ['90°;', '°'],
    ['60 deg', 'deg'],
    ['60 °C', '°C'],
    ['60 deg C', 'deg C'],
    ['1 h 30 min', 'h'],
    ['30 min', 'min'],
    ['2 turns', 'turns'],
    ['1/6 turn', 'turn'],
    ['12 in', 'in'],
    ['12 in order', 'in'],
    ['5 % of it', '%'],
    ['6.5 L}', 'L'],
    ['6.5 L// filled', 'L'],
    ['500 microns', 'microns'],
    ['8 L/min', 'L/min'],
    ['2 US gal', 'US gal'],
    ['2 gal', 'gal'],
    ['4.7 kΩ', 'kΩ'],
    ['3 µm', 'µm'],
    ['3 μm', 'μm'],
    ['12 mm-15 mm', 'mm'],
  ])('%s', (text, expected) => {
    expect(unitAfterNumber(text)).toBe(expected);
  });

  test.each([
    '20 minutes-late',
    '2 rows',
    '3 times',
    '2 each',
    '2 people',
    '3 gaskets',
    '20 m_x',
    '20 m2x',
    '3 mm-long',
    '20 N.x',
    '20 m/s',
    '4 hubs',
    '2 inner',
    '12"',
    "12'",
    '12″',
    '12',
    '12 ',
    '3 é',
    '3 mé',
  ])('%s has none', (text) => {
    expect(unitAfterNumber(text)).toBe('');
  });

  test('every spelling is matched whole and looks up its own unit', () => {
    for (const unit of units) {
      for (const spelling of allSpellings(unit)) {
        expect(matchUnit(`1 ${spelling} x`, 2), spelling).toBe(spelling.length);
        expect(unitNamed(spelling), spelling).toBe(unit);
      }
    }
    for (const { spellings } of ambiguousUnits) {
      for (const spelling of spellings) expect(matchUnit(`1 ${spelling}`, 2), spelling).toBe(spelling.length);
    }
  });
});

describe('the tables', () => {
  test('no spelling has two meanings', () => {
    const seen = [...units.flatMap(allSpellings), ...ambiguousUnits.flatMap((a) => a.spellings)];
    expect(seen.filter((spelling, i) => seen.indexOf(spelling) !== i)).toEqual([]);
  });

  test('every partner is another unit of the same kind', () => {
    const wrong = units.filter((unit) => {
      if (unit.partner === undefined) return false;
      const partner = unitNamed(unit.partner);
      return partner === undefined || partner === unit || partner.kind !== unit.kind;
    });
    expect(wrong.map((unit) => unit.symbol)).toEqual([]);
  });

  test('every symbol that is not ASCII has a plain spelling', () => {
    const plain = /^[ -~]+$/;
    const without = units.filter((unit) => !allSpellings(unit).some((spelling) => plain.test(spelling)));
    expect(without.map((unit) => unit.symbol)).toEqual([]);
  });

  test('feet, inches and minutes of arc are never written with quote marks', () => {
    expect(units.flatMap(allSpellings).filter((spelling) => /['"′″]/.test(spelling))).toEqual([]);
  });

  // Source: SI Brochure, 9th edition, table 4 (from memory): N = kg m s⁻², Pa = kg m⁻¹ s⁻², J = kg m² s⁻²,
  // W = kg m² s⁻³, V = kg m² s⁻³ A⁻¹, Ω = kg m² s⁻³ A⁻², C = A s, F = kg⁻¹ m⁻² s⁴ A². Torque N·m as J.
  test.each([
    ['force', [1, 1, -2, 0]],
    ['pressure', [-1, 1, -2, 0]],
    ['energy', [2, 1, -2, 0]],
    ['torque', [2, 1, -2, 0]],
    ['power', [2, 1, -3, 0]],
    ['voltage', [2, 1, -3, -1]],
    ['resistance', [2, 1, -3, -2]],
    ['charge', [0, 0, 1, 1]],
    ['capacitance', [-2, -1, 4, 2]],
  ] as const)('dimension of %s', (kind, exponents) => {
    expect(kindNamed(kind)!.dimension).toEqual([...exponents, 0, 0]);
  });
});

describe('look-up', () => {
  test.each([
    ['gal', ['US-gal', 'imp-gal']],
    ['gallons', ['US-gal', 'imp-gal']],
    ['qt', ['US-qt', 'imp-qt']],
    ['pt', ['US-pt', 'imp-pt']],
    ['pint', ['US-pt', 'imp-pt']],
    ['fl-oz', ['US-fl-oz', 'imp-fl-oz']],
    ['tons', ['t', 'US-ton', 'imp-ton']],
  ])('%s is ambiguous', (text, readings) => {
    const found = unitByText(text);
    expect(found?.is).toBe('ambiguous');
    expect(found?.is === 'ambiguous' ? found.readings.map((unit) => unit.symbol) : []).toEqual(readings);
    expect(unitNamed(text)).toBeUndefined();
  });

  test('micron is the vacuum unit, µm the length', () => {
    expect(unitNamed('microns')?.kind).toBe('pressure');
    expect(unitNamed('um')?.kind).toBe('length');
  });

  test('spellings are case-sensitive, and the near one is proposed', () => {
    const near = (text: string): string[] => nearUnits(text).map((unit) => unit.symbol);
    expect(unitByText('nm')).toBeUndefined();
    expect(near('nm')).toEqual(['N·m']);
    expect(near('KPA')).toEqual(['kPa']);
    expect(near('Ft.Lbs')).toEqual(['lbf·ft']);
    expect(near('kg-m')).toEqual(['kgf·m']);
    expect(near('"')).toEqual(['in']);
    expect(near("'")).toEqual(['ft', 'min']);
    expect(near('hub')).toEqual([]);
  });
});
