/**
 * The fastener sheet. Outside values: ISO 898-1 proof load of M8 class 8.8, 21 200 N (seen) and its stress area
 * 36.6 mm2; Shigley table 8-15 for K 0.12 to 0.30 (seen); NIST SP 811 for lbf (4.448222 N) and lbf·ft (1.355818 N·m).
 */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FastenerSheet, Known } from '../../../language-server/fastening/index.ts';
import { fastenerSheet, SHEET_CAUTION, sheetText } from '../../../language-server/fastening/index.ts';

function must<T>(known: Known<T>): T {
  if (!known.known) throw new Error(known.problem.message);
  return known.value;
}

function line(sheet: FastenerSheet, label: string): string {
  const found = sheetText(sheet)
    .split('\n')
    .find((each) => each.startsWith(label));
  if (found === undefined) throw new Error(`no line ${label}`);
  return found.replace(/ {2,}/g, ' | ');
}

describe('one bolt, everything given', () => {
  const sheet = fastenerSheet({
    name: 'Head bolts',
    thread: 'M8x1.25',
    strengthClass: '8.8',
    torque: 25,
    angle: 60,
  });

  it('works in SI', () => {
    expect(must(sheet.thread).stressArea * 1e6).toBeCloseTo(36.6, 1);
    expect(Math.abs(must(sheet.proofLoad) / 21200 - 1)).toBeLessThan(0.006);
    expect(must(sheet.preload).low).toBeCloseTo(25 / (0.3 * 0.008), 6);
    expect(must(sheet.preload).high).toBeCloseTo(25 / (0.12 * 0.008), 6);
    expect(must(sheet.shareOfProof).low).toBeCloseTo(10417 / 21228, 3);
    expect(must(sheet.angle)).toMatchObject({ degrees: 60, turns: 1 / 6 });
    expect(must(sheet.angle).advance * 1000).toBeCloseTo(1.25 / 6, 10);
    expect(sheet.nutFactor.from).toBe('assumed');
  });

  it('prints both unit systems', () => {
    expect(line(sheet, 'Head bolts')).toBe('Head bolts: M8x1.25, ISO 898-1 class 8.8');
    expect(line(sheet, 'Diameter d')).toBe('Diameter d | 8 mm | 0.315 in');
    expect(line(sheet, 'Stress area')).toBe('Stress area | 36.6 mm² | 0.0567 in²');
    expect(line(sheet, 'Proof load')).toBe('Proof load | 21.2 kN | 4770 lbf');
    expect(line(sheet, 'Torque')).toBe('Torque | 25 N·m | 18.4 lbf·ft');
    expect(line(sheet, 'Preload')).toBe('Preload | 10.4 to 26 kN | 2340 to 5850 lbf');
    expect(line(sheet, 'Share')).toBe('Share of proof load | 49 to 123 %');
    expect(line(sheet, 'Nut factor K')).toBe(
      'Nut factor K | 0.12 to 0.30 (assumed: nothing is said about the surface)',
    );
    expect(line(sheet, 'Advance')).toBe('Advance in 60° | 0.2083 mm | 0.008202 in');
  });

  it('stands under its caution', () => {
    const text = sheetText(sheet);
    for (const words of SHEET_CAUTION) expect(text).toContain(words);
    expect(text).toMatch(/computed guide/);
    expect(text).toMatch(/K is assumed where it is not stated/);
    expect(text).toMatch(/machine's own documentation governs/);
  });

  it('is narrow enough to read', () => {
    for (const each of sheetText(sheet).split('\n')) expect(each.length).toBeLessThanOrEqual(100);
  });

  it('notes that little friction would take it beyond proof', () => {
    expect(sheet.notes.map((note) => note.code)).toEqual(['may-exceed-proof']);
  });
});

describe('what follows from the facts', () => {
  it('a stated K gives one preload, a condition its scatter band', () => {
    const facts = { thread: 'M10', strengthClass: '8.8', torque: 40 };
    const stated = fastenerSheet({ ...facts, nutFactor: 0.2 });
    expect(must(stated.preload)).toEqual({ low: 20000, high: 20000 });
    const oiled = fastenerSheet({ ...facts, condition: 'engine oil' });
    const nominal = 40 / (0.18 * 0.01);
    expect(must(oiled.preload).low).toBeCloseTo(0.75 * nominal, 6);
    expect(must(oiled.preload).high).toBeCloseTo(1.25 * nominal, 6);
    expect(line(oiled, 'Nut factor K')).toContain('lubricated, usual 0.18');
    expect(line(stated, 'Nut factor K')).toBe('Nut factor K | 0.20 (as stated)');
  });

  it('an inch bolt prints lbf·in for small torques', () => {
    const sheet = fastenerSheet({ thread: '1/4-28', strengthClass: '5', torque: { low: 5.65, high: 7.91 } });
    // 50 to 70 lbf·in (FAA AC 43.13-1B table 7-1 for 1/4-28, seen).
    expect(line(sheet, 'Torque')).toBe('Torque | 5.65 to 7.91 N·m | 50 to 70 lbf·in');
    expect(line(sheet, 'Proof stress')).toBe('Proof stress | 586 MPa | 85 ksi');
  });

  it('a torque beyond proof at every usual K is noted', () => {
    const sheet = fastenerSheet({ thread: 'M8', strengthClass: '8.8', torque: 90 });
    expect(sheet.notes.map((note) => note.code)).toEqual(['above-proof']);
    expect(must(sheet.usualTorque).high).toBeLessThan(90);
  });

  it('a torque with no upper end is printed as "at least"', () => {
    const sheet = fastenerSheet({
      thread: 'M8',
      strengthClass: '8.8',
      torque: { low: 10, high: Number.POSITIVE_INFINITY },
    });
    expect(line(sheet, 'Torque')).toBe('Torque | at least 10 N·m | at least 7.38 lbf·ft');
  });

  it('unknown stays unknown, with the reason', () => {
    const nothing = fastenerSheet({});
    expect(nothing.thread).toMatchObject({ known: false, problem: { code: 'thread-missing' } });
    expect(nothing.preload.known).toBe(false);
    expect(nothing.shareOfProof.known).toBe(false);
    const badThread = fastenerSheet({ thread: 'M13', strengthClass: '8.8', torque: 20 });
    expect(line(badThread, 'Thread')).toContain('ISO 261 lists no M13. Did you mean M12 or M14?');
    const badClass = fastenerSheet({ thread: 'M18', strengthClass: '9.8', torque: 20 });
    expect(must(badClass.preload).low).toBeGreaterThan(0);
    expect(badClass.shareOfProof).toMatchObject({ problem: { code: 'class-size-out-of-range' } });
    expect(line(badClass, 'Strength')).toContain('unknown: ISO 898-1 class 9.8');
  });

  it('notes an odd thread, an unknown condition, a useless K and a strange angle', () => {
    const codes = (facts: Parameters<typeof fastenerSheet>[0]) =>
      fastenerSheet(facts).notes.map((note) => note.code);
    expect(codes({ thread: '1/2-30' })).toEqual(['thread-not-standard']);
    expect(codes({ thread: 'M8', condition: 'thread-locking compound' })).toEqual(['condition-unknown']);
    expect(codes({ thread: 'M8', nutFactor: 0 })).toEqual(['nut-factor-not-positive']);
    expect(codes({ thread: 'M8', angle: 600 })).toEqual(['angle-large']);
    expect(codes({ torque: -1 })).toEqual([]);
    expect(fastenerSheet({ torque: -1 }).torque).toMatchObject({ problem: { code: 'torque-not-positive' } });
  });

  it('never throws and always prints its caution', () => {
    const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
    const facts = fc.record({
      thread: maybe(fc.oneof(fc.string(), fc.constantFrom('M8', '1/2-13', 'M8x1', '#10-32'))),
      strengthClass: maybe(fc.oneof(fc.string(), fc.constantFrom('8.8', '5', 'A325'))),
      torque: maybe(fc.double()),
      nutFactor: maybe(fc.double()),
      condition: maybe(fc.string()),
      angle: maybe(fc.double()),
    });
    fc.assert(
      fc.property(facts, (given) => {
        const kept = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
        const text = sheetText(fastenerSheet(kept));
        expect(text.endsWith(`${SHEET_CAUTION.at(-1)}\n`)).toBe(true);
        expect(text).not.toMatch(/undefined|NaN/);
      }),
      { seed: 15, numRuns: 800 },
    );
  });
});
