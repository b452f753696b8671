/**
 * Thread designations, diameters and stress areas.
 * Sources: tests/outside/thread-areas.csv (ISO 898-1, ISO 261/262/724, ASME B1.1; source per row) and
 * tests/outside/ac43-torque.csv (FAA AC 43.13-1B table 7-1, thread names only).
 */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Thread } from '../../../language-server/fastening/index.ts';
import { readThread } from '../../../language-server/fastening/index.ts';
import { howKnown, outside } from './outside.ts';

function thread(text: string): Thread {
  const reading = readThread(text);
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.thread;
}

function refusal(text: string) {
  const reading = readThread(text);
  if (reading.ok) throw new Error(`${text} was read as ${reading.thread.designation}`);
  return reading.problem;
}

describe('published thread dimensions', () => {
  const SERIES: Record<string, [string, string]> = {
    'ISO metric coarse': ['metric', 'coarse'],
    'ISO metric fine': ['metric', 'fine'],
    UNC: ['inch', 'coarse'],
    UNF: ['inch', 'fine'],
  };
  for (const row of outside('thread-areas.csv')) {
    it(`${row.thread} (${row.source}, ${howKnown(row)})`, () => {
      const read = thread(row.thread!);
      const metric = row.area_unit === 'mm2';
      const length = metric ? 1e-3 : 0.0254;
      expect([read.system, read.series]).toEqual(SERIES[row.series!]);
      expect(read.listed).toBe('yes');
      expect(read.nominalDiameter / length).toBeCloseTo(Number(row.d_nominal), 6);
      expect(Math.abs(read.pitch / length - Number(row.pitch))).toBeLessThan(1e-6);
      if (row.tpi !== '') expect(read.threadsPerInch).toBe(Number(row.tpi));
      // The columns d2, d1 and d3 are printed to four decimals.
      expect(Math.abs(read.pitchDiameter / length - Number(row.d2_pitch_dia))).toBeLessThan(1.01e-4);
      expect(Math.abs(read.minorDiameter / length - Number(row.d1_basic_minor))).toBeLessThan(1.01e-4);
      expect(Math.abs(read.rootDiameter / length - Number(row.d3_root_or_design_minor))).toBeLessThan(
        1.01e-4,
      );
      const area = read.stressArea / length ** 2;
      if (metric) expect(Number(area.toPrecision(3))).toBe(Number(row.As_table));
      else expect(Math.abs(area / Number(row.As_table) - 1)).toBeLessThan(0.004);
    });
  }

  // A second, finer print of the same areas, in mm2: J. H. Bickford, Introduction to the Design and Behavior
  // of Bolted Joints, 4th ed. (seen); agreement 3e-5.
  it.each([
    ['M5', 14.183],
    ['M10', 57.99],
    ['M12', 84.267],
    ['M16', 156.67],
    ['M36', 816.72],
  ])('%s has a stress area of %d mm2 in five digits', (name, area) => {
    expect(Math.abs((thread(name).stressArea * 1e6) / area - 1)).toBeLessThan(5e-5);
  });

  it('agrees with the one-term form As = (pi/4)(d - 0.938194 P)^2 (seen in a transcription of ISO 898-1)', () => {
    for (const name of ['M3', 'M8x1', 'M20', 'M39x3']) {
      const { nominalDiameter, pitch, stressArea } = thread(name);
      expect(stressArea / ((Math.PI / 4) * (nominalDiameter - 0.938194 * pitch) ** 2)).toBeCloseTo(1, 6);
    }
  });

  // FAA AC 43.13-1B table 7-1 (seen): its thread names, used as names only.
  for (const row of outside('ac43-torque.csv')) {
    it(`reads ${row.thread} of FAA AC 43.13-1B table 7-1`, () => {
      const read = thread(row.thread!);
      expect(read.listed).toBe('yes');
      // 1-14 was the fine thread of that table; ASME B1.1 keeps it as a special one (from memory).
      expect(read.series).toBe(row.thread === '1-14' ? 'special' : row.series);
      expect(Math.abs(read.stressArea / 0.0254 ** 2 / Number(row.As_in2_computed) - 1)).toBeLessThan(5e-4);
    });
  }
});

describe('ways of writing a thread', () => {
  // Forms of ISO 965-1 and ASME B1.1 (from memory); M8-1.25, 10-32 and NC/NF are common practice, no source.
  it.each([
    ['M8', 'M8x1.25'],
    ['m8', 'M8x1.25'],
    ['M 8 x 1.25', 'M8x1.25'],
    ['M8×1', 'M8x1'],
    ['M8-1.25', 'M8x1.25'],
    ['M8x1-6g', 'M8x1'],
    ['M8-6H', 'M8x1.25'],
    ['M16x1.5 LH', 'M16x1.5 LH'],
    ['M10x1-LH', 'M10x1 LH'],
    ['1/2-13', '1/2-13 UNC'],
    ['1/2-13 UNC', '1/2-13 UNC'],
    ['1/2"-13 UNC-2A', '1/2-13 UNC'],
    ['1/2 UNF', '1/2-20 UNF'],
    ['3/8-24 UNF', '3/8-24 UNF'],
    ['3/8-24NF', '3/8-24 UNF'],
    ['#10-32', '#10-32 UNF'],
    ['10-32', '#10-32 UNF'],
    ['No. 10-24', '#10-24 UNC'],
    ['1-1/8-7', '1-1/8-7 UNC'],
    ['1 1/8-7', '1-1/8-7 UNC'],
    ['1-1/8-8UN', '1-1/8-8 8UN'],
    ['1-8', '1-8 UNC'],
    ['2-4.5', '2-4.5 UNC'],
    ['2-56', '#2-56 UNC'],
    ['.250-20', '1/4-20 UNC'],
    ['7/16-14 UNC LH', '7/16-14 UNC LH'],
  ])('%s is %s', (written, designation) => {
    expect(thread(written).designation).toBe(designation);
  });

  it('says whether the pitch was written or taken from the coarse series', () => {
    expect(thread('M8').pitchStated).toBe(false);
    expect(thread('M8x1.25').pitchStated).toBe(true);
    expect(thread('1/2 UNC').pitchStated).toBe(false);
  });

  it('keeps a pair that no table lists and says so', () => {
    const reading = readThread('1/2-30');
    expect(reading).toMatchObject({
      ok: true,
      thread: { listed: 'no', series: 'unknown', threadsPerInch: 30 },
      notes: [{ code: 'thread-not-standard', remedy: 'Did you mean 1/2-28 UNEF or 1/2-20 UNF?' }],
    });
    expect(readThread('M8x1.2')).toMatchObject({
      ok: true,
      thread: { listed: 'no' },
      notes: [{ remedy: 'Did you mean M8x1.25 or M8x1?' }],
    });
    expect(readThread('M13x1')).toMatchObject({ notes: [{ remedy: 'Did you mean M12 or M14?' }] });
    expect(readThread('10-30')).toMatchObject({ notes: [{ message: expect.stringContaining('#10-30') }] });
  });

  it('does not judge sizes beyond its table', () => {
    expect(readThread('M100x6')).toMatchObject({ ok: true, thread: { listed: 'beyond-table' }, notes: [] });
  });

  it.each([
    ['', 'thread-empty'],
    ['banana', 'thread-not-read'],
    ['M', 'thread-not-read'],
    ['M0', 'thread-size-unknown'],
    ['M8x0', 'thread-pitch-too-large'],
    ['M8x125', 'thread-pitch-too-large'],
    ['M8x5', 'thread-pitch-too-large'],
    ['M8x1,25', 'thread-decimal-comma'],
    ['M8x1.25x30', 'thread-with-length'],
    ['M13', 'thread-size-unknown'],
    ['M25', 'thread-pitch-missing'],
    ['M100', 'thread-pitch-missing'],
    ['1/2', 'thread-pitch-missing'],
    ['1/2-13 UNF', 'thread-series-differs'],
    ['1/2-1', 'thread-pitch-too-large'],
    ['1/0-13', 'thread-not-read'],
    ['1/4-18 NPT', 'thread-not-a-fastener-thread'],
    ['G1/2', 'thread-not-a-fastener-thread'],
    ['Tr 20x4', 'thread-form-unknown'],
  ])('%s is refused with %s and a remedy', (written, code) => {
    const problem = refusal(written);
    expect(problem.code).toBe(code);
    expect(problem.remedy).toMatch(/\S/);
  });

  it('names what was probably meant', () => {
    expect(refusal('M8x125').remedy).toContain('M8x1.25');
    expect(refusal('M8x1,25').remedy).toContain('M8x1.25');
    expect(refusal('M13').remedy).toContain('M12 or M14');
    expect(refusal('1/2').remedy).toBe('Write 1/2-13 UNC or 1/2-20 UNF.');
    expect(refusal('1/2-13 UNF').remedy).toBe('Write 1/2-13 UNC or 1/2-20 UNF.');
  });
});

describe('properties of reading', () => {
  it('never throws, and what it reads has a core', () => {
    const piece = fc.constantFrom(
      'M',
      '#',
      '1',
      '8',
      '10',
      '1/2',
      '-',
      'x',
      '.',
      ',',
      '13',
      'UNC',
      ' ',
      'LH',
      '"',
      '0',
      '6g',
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(piece, { maxLength: 9 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (written) => {
        const reading = readThread(written);
        if (reading.ok) {
          const { nominalDiameter, pitchDiameter, minorDiameter, rootDiameter, stressArea } = reading.thread;
          expect(nominalDiameter).toBeGreaterThan(pitchDiameter);
          expect(pitchDiameter).toBeGreaterThan(minorDiameter);
          expect(minorDiameter).toBeGreaterThan(rootDiameter);
          expect(rootDiameter).toBeGreaterThan(0);
          expect(stressArea).toBeLessThan((Math.PI / 4) * nominalDiameter ** 2);
        } else expect(reading.problem.message).not.toBe('');
      }),
      { seed: 8981, numRuns: 3000 },
    );
  });

  it('reads its own designation back to the same thread', () => {
    for (const row of [...outside('thread-areas.csv'), ...outside('ac43-torque.csv')]) {
      const first = thread(row.thread!);
      const again = thread(first.designation);
      expect(again).toEqual({ ...first, pitchStated: true });
    }
  });
});
