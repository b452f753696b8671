/**
 * Angles and turns. Source: tests/outside/worked-examples.csv, AN-1 (definition of pitch); RCSC turn of the nut
 * (table by lengths seen; ratios and tolerance from memory).
 */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  angleForAdvance,
  angleOfTurns,
  hexagonFlats,
  nutAdvance,
  readThread,
  structuralTurn,
  suspiciousAngle,
  turnsOfAngle,
} from '../../../language-server/fastening/index.ts';
import { outside } from './outside.ts';

describe('angle and advance', () => {
  it('AN-1: M10x1.5 turned 90 degrees advances 0.375 mm (definition)', () => {
    const row = outside('worked-examples.csv').find((each) => each.id === 'AN-1')!;
    const [, name, angle] = /^(\S+) turned (\d+) deg/.exec(row.inputs!)!;
    const reading = readThread(name!);
    if (!reading.ok) throw new Error(reading.problem.message);
    const millimetres = Number(/[\d.]+/.exec(row.expected!)![0]);
    expect(nutAdvance(reading.thread.pitch, Number(angle)) * 1000).toBeCloseTo(millimetres, 12);
  });

  it('turns, flats and degrees agree: a sixth of a turn is one flat of a hexagon (geometry)', () => {
    expect(angleOfTurns(1 / 6)).toBeCloseTo(60, 12);
    expect(hexagonFlats(60)).toBe(1);
    expect(turnsOfAngle(90)).toBe(0.25);
  });

  it('advance and angle are inverse', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1e-2, noNaN: true }),
        fc.double({ min: 0, max: 1080, noNaN: true }),
        (pitch, angle) => {
          expect(angleForAdvance(pitch, nutAdvance(pitch, angle))).toBeCloseTo(angle, 8);
          expect(angleOfTurns(turnsOfAngle(angle))).toBeCloseTo(angle, 8);
        },
      ),
      { seed: 360, numRuns: 300 },
    );
  });

  it.each([
    [3, 120, 90, 150],
    [4, 120, 90, 150],
    [6, 180, 150, 210],
    [12, 240, 195, 285],
  ])('structural bolts of length %d d turn %d degrees from snug (RCSC)', (ratio, angle, low, high) => {
    expect(structuralTurn(ratio * 0.02, 0.02)).toEqual({ angle, allowed: { low, high } });
  });

  it('says nothing for structural bolts longer than 12 d', () => {
    expect(structuralTurn(0.26, 0.02)).toBeUndefined();
  });

  it('finds angles suspicious only outside 10 to 360 degrees (judgement, no source)', () => {
    expect(suspiciousAngle(0)?.code).toBe('angle-not-positive');
    expect(suspiciousAngle(5)?.code).toBe('angle-small');
    expect(suspiciousAngle(400)?.code).toBe('angle-large');
    for (const angle of [10, 30, 60, 90, 180, 360]) expect(suspiciousAngle(angle)).toBeUndefined();
  });
});
