/**
 * `dowel fastener`: the sheet from words, friendly complaints, exit codes. Outside values: ISO 898-1 (M10 10.9: proof
 * load 48,100 N, stress area 58.0 mm2, seen), SAE J429 (1/2-13 grade 5: 85 ksi on 0.1419 in2, seen), T = K·d·F.
 */
import { describe, expect, test } from 'vitest';
import { readFacts } from '../../../language-server/cli/fastener.ts';
import { dowel } from './dowel.ts';

const fastener = (words: string) => dowel(['fastener', ...words.split(' ')]);

test('a metric bolt', () => {
  const { code, out, err } = fastener('M10x1.5 class 10.9 torque 45 N·m');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('M10x1.5, ISO 898-1 class 10.9');
  expect(out).toMatch(/Stress area +58 mm²/);
  expect(out).toMatch(/Proof load +48\.1 kN/);
  // 45/(0.12 · 10 mm) = 37.5 kN and 45/(0.30 · 10 mm) = 15 kN.
  expect(out).toMatch(/Preload +15 to 37\.5 kN/);
  expect(out).toContain("The machine's own documentation governs.");
});

test('an inch bolt with a stated K and an angle', () => {
  const { code, out } = fastener('1/2-13 UNC grade 5 torque 50 lbf·ft K 0.15 angle 90°');
  expect(code).toBe(0);
  // 50·12/(0.15·0.5) = 8000 lbf of 85,000·0.1419 = 12,060 lbf.
  expect(out).toMatch(/Preload .* 8000 lbf/);
  expect(out).toMatch(/Share of proof load +66 %/);
  // A quarter of 25.4/13 mm.
  expect(out).toMatch(/Advance in 90° +0\.488\d mm/);
});

test('a wrench with an adapter', () => {
  // TM 1-1500-204-23-9, figure 8-16: 300 lbf·in with 10 in and 4 in: set 214 lbf·in, which is 24.2 N·m.
  const { code, out } = fastener('M10x1.5 torque 300 lbf·in wrench 10 in adapter 4 in');
  expect(code).toBe(0);
  expect(out).toMatch(/Wrench setting with adapter +24\.2 N·m/);
  expect(fastener('M10x1.5 torque 30 N·m adapter 40 mm').err).toContain('wrench 400 mm');
});

test('words in any order, in one argument or several', () => {
  const facts = {
    thread: 'M8x1 LH',
    strengthClass: '8.8',
    torque: { low: 20, high: 25 },
    condition: 'zinc plated',
  };
  const words = [
    'torque',
    '20..25',
    'Nm',
    'condition',
    'zinc',
    'plated',
    'thread',
    'M8x1',
    'LH',
    'CLASS',
    '8.8',
  ];
  expect(readFacts(words)).toEqual({ facts });
  expect(readFacts([words.join(' ')])).toEqual({ facts });
});

describe('what cannot be read is said, with exit code 2', () => {
  test.each([
    ['M10x1.5 class 10.9 torque 45', 'The torque 45 has no unit. Write 45 N·m or 45 lbf·ft.'],
    ['M8 class 8.8 angle 90', 'The angle 90 has no unit. Write 90° or 90 turn.'],
    ['torque 45 N·m', 'No thread is given. Begin with one: dowel fastener M10x1.5'],
    ['M10 class', 'After class comes a property class: class 10.9.'],
    ['M10 class 109', 'Did you mean 10.9?'],
    ['M10 class 8.8 class 10.9', 'class is given twice.'],
    ['M10 class 8.8 grade 5', 'A class and a grade are given.'],
    ['M10 class 8.8 torq 30 N·m', 'Did you mean the word torque?'],
    ['M10 torque 30 mm', '30 mm is a length. After torque comes a torque with its unit'],
    ['M10 torque 10 ftlb', 'lbf·ft'],
    ['M10 torque -5 N·m', 'is not above zero'],
    ['M10 torque 0 N·m', 'is not above zero'],
    ['M10 K 15 %', 'K 15 % is no nut factor.'],
    ['M10 K 0', 'K 0 is no nut factor.'],
    ['M10 K 0.3..0.1', 'is no nut factor'],
    ['M10x60 class 8.8', 'A bolt length is no part of the thread.'],
    ['1/2-13 class 8.8', 'Give an SAE J429 or ASTM grade.'],
    ['M10 --json', 'There is no option --json.'],
    ['M10 __proto__', '"M10 __proto__" is not a metric thread designation.'],
  ])('%s', (words, complaint) => {
    const { code, out, err } = fastener(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(complaint);
    expect(err.startsWith('dowel: ')).toBe(true);
  });

  test('nothing at all', () => {
    const { code, err } = dowel(['fastener']);
    expect(code).toBe(2);
    expect(err).toContain('words');
  });
});

test('its own help shows an example that works', () => {
  const { code, out } = dowel(['fastener', '--help']);
  expect(code).toBe(0);
  const example = /Example: dowel (fastener .*)/.exec(out)?.[1];
  expect(dowel(example!.split(' ')).code).toBe(0);
});
