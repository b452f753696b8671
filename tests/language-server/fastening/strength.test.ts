/**
 * Strength classes and proof loads.
 * Sources: tests/outside/fastener-strength.csv (ISO 898-1; SAE J429 and ASTM as in Shigley and Mischke, 5th ed.)
 * and tests/outside/proof-loads.csv (ISO 898-1), source and how it was obtained per row.
 */

import { describe, expect, it } from 'vitest';
import type { Thread } from '../../../language-server/fastening/index.ts';
import {
  KSI,
  MEGAPASCAL,
  minimumTensileLoad,
  proofLoad,
  proofLoadOf,
  readThread,
  strengthNames,
  strengthOf,
  yieldLoad,
} from '../../../language-server/fastening/index.ts';
import { howKnown, outside } from './outside.ts';

function thread(text: string): Thread {
  const reading = readThread(text);
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.thread;
}

/** Ends of the printed size ranges, as threads on which the row must hold. */
const ENDS: Record<string, string[]> = {
  'M3-M39': ['M3', 'M39'],
  'd<=16': ['M3', 'M16'],
  'd>16': ['M18', 'M39'],
  '1/4-1 1/2 in': ['1/4-20', '1-1/2-6'],
  '1/4-3/4 in': ['1/4-20', '3/4-10'],
  '7/8-1 1/2 in': ['7/8-9', '1-1/2-6'],
  '1/4-1 in': ['1/4-20', '1-8'],
  '1 1/8-1 1/2 in': ['1-1/8-7', '1-1/2-6'],
  '1/2-1 in': ['1/2-13', '1-8'],
  '1/2-1 1/2 in': ['1/2-13', '1-1/2-6'],
  '1 3/4-3 in': ['1-3/4-5', '3-4'],
  // The row of the textbook goes to 4 in; the current standard is lower above 2-1/2 in, so we stop there.
  '1/4-4 (textbook; current ASTM lowers it above 2 1/2) in': ['1/4-20', '2-1/2-4'],
};

describe('published strength classes and grades', () => {
  for (const row of outside('fastener-strength.csv')) {
    const name = row.class_or_grade!.replace(' type 1/2/3', ' type 2');
    it(`${row.standard} ${name}, ${row.size_range} (${howKnown(row)})`, () => {
      const ends = ENDS[row.size_range!]!;
      expect(ends).toHaveLength(2);
      const unit = row.unit === 'MPa' ? MEGAPASCAL : KSI;
      for (const end of ends) {
        const found = strengthOf(name, thread(end));
        if (!found.known) throw new Error(found.problem.message);
        expect(found.value.proof / unit).toBeCloseTo(Number(row.proof), 9);
        expect(found.value.yield / unit).toBeCloseTo(Number(row.yield_or_Rp02), 9);
        expect(found.value.tensile / unit).toBeCloseTo(Number(row.tensile_min), 9);
      }
    });
  }

  it('keeps ksi as 1000 lbf/in2 = 6.894757293168361 MPa (NIST SP 811: psi = 6.894757 kPa)', () => {
    expect(KSI / MEGAPASCAL).toBeCloseTo(6.894757293168361, 12);
  });
});

describe('published proof loads', () => {
  for (const row of outside('proof-loads.csv')) {
    const printed = row.proof_load_table_N === '' ? row.proof_load_rounded_N : row.proof_load_table_N;
    it(`${row.thread} class ${row.property_class}: ${printed} N (${row.source}, ${howKnown(row)})`, () => {
      const load = proofLoadOf(row.property_class!, thread(row.thread!));
      if (!load.known) throw new Error(load.problem.message);
      expect(Math.abs(load.value / Number(printed) - 1)).toBeLessThan(0.006);
    });
  }

  // ISO 898-1 minimum tensile loads (seen): M4 10.9, M20 10.9, M12 9.8.
  it.each([
    ['M4', '10.9', 9130],
    ['M20', '10.9', 255000],
    ['M12', '9.8', 75900],
  ])('%s class %s breaks at no less than %d N', (name, written, printed) => {
    const on = thread(name);
    const strength = strengthOf(written, on);
    if (!strength.known) throw new Error(strength.problem.message);
    expect(Math.abs(minimumTensileLoad(on, strength.value) / printed - 1)).toBeLessThan(0.006);
    expect(proofLoad(on, strength.value)).toBeLessThan(yieldLoad(on, strength.value));
    expect(yieldLoad(on, strength.value)).toBeLessThan(minimumTensileLoad(on, strength.value));
  });
});

describe('what is not known is not guessed', () => {
  it.each([
    // ISO 898-1: class 9.8 ends at 16 mm, the standard at 39 mm; SAE J429 grades begin at 1/4 in.
    ['9.8', 'M18', 'class-size-out-of-range'],
    ['8.8', 'M42', 'class-size-out-of-range'],
    ['8.8', 'M2', 'class-size-out-of-range'],
    ['5', '#10-32', 'class-size-out-of-range'],
    ['5', '1-3/4-5', 'class-size-out-of-range'],
    // SAE J429 grade 2 changes between 3/4 and 7/8 in: nothing is said for 13/16.
    ['2', '13/16-20', 'class-size-out-of-range'],
    ['A354 BD', '3-4', 'class-size-out-of-range'],
    ['8.8', '1/2-13', 'class-of-other-system'],
    ['8', 'M8', 'class-of-other-system'],
    ['8.9', 'M8', 'class-unknown'],
    ['A2-70', 'M8', 'class-unknown'],
    ['', 'M8', 'class-unknown'],
    ['SAE 8.8', 'M8', 'class-unknown'],
  ])('%s on %s: %s', (written, name, code) => {
    const found = strengthOf(written, thread(name));
    expect(found).toMatchObject({ known: false, problem: { code } });
    expect(proofLoadOf(written, thread(name))).toEqual(found);
  });

  it('says what the range is and what was probably meant', () => {
    expect(strengthOf('8.8', thread('M42'))).toMatchObject({
      problem: { message: expect.stringContaining('M3 to M16 and above M16 to M39') },
    });
    expect(strengthOf('88', thread('M8'))).toMatchObject({ problem: { remedy: 'Did you mean 8.8?' } });
    expect(strengthOf('10,9', thread('M8'))).toMatchObject({ problem: { remedy: 'Did you mean 10.9?' } });
  });

  it('reads the ways a class is written', () => {
    for (const written of ['8.8', 'class 8.8', ' Class  8.8 ', 'ISO 898-1 class 8.8', 'property class 8.8'])
      expect(strengthOf(written, thread('M8'))).toMatchObject({ value: { title: 'ISO 898-1 class 8.8' } });
    for (const written of ['5', 'grade 5', 'Gr 5', 'SAE 5', 'SAE J429 grade 5'])
      expect(strengthOf(written, thread('1/2-13'))).toMatchObject({ value: { title: 'SAE J429 grade 5' } });
    expect(strengthOf('ASTM A325 type 1', thread('1/2-13'))).toMatchObject({ value: { title: 'ASTM A325' } });
  });

  it('lists names for completion by system', () => {
    expect(strengthNames('metric')).toContain('10.9');
    expect(strengthNames('metric')).not.toContain('5');
    expect(strengthNames('inch')).toContain('A325');
  });
});
