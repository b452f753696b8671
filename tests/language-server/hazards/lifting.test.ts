/**
 * Lifting by hand against published figures: the HSE filter (L23, INDG143), its team rule as worked on two training
 * pages (TH-1, TH-2), and the NIOSH equation (Pub. 94-110) with its worked examples (LI-1 to LI-3). Where a row of
 * tests/outside is from memory, the title of the test says so.
 */
import { describe, expect, test } from 'vitest';
import {
  boxWeight,
  couplingMultiplier,
  frequencyMultiplier,
  frequencyShare,
  type Lift,
  liftingIndex,
  liftWeight,
  mostByHand,
  multipliersOf,
  recommendedWeight,
  teamWeight,
  twistShare,
  weightFrom,
  ZONES,
  type Zone,
} from '../../../language-server/hazards/index.ts';
import { howKnown, outside } from '../fastening/outside.ts';

describe('HSE filter', () => {
  test.each(outside('manual-handling-hse.csv').map((row) => [row.zone!, howKnown(row), row] as const))(
    '%s (L23, %s)',
    (zone, _how, row) => {
      const box = (reach: 'close' | 'arm length') => ({ zone: zone as Zone, reach });
      expect(boxWeight(box('close'), 'man')).toBe(Number(row.men_close_kg));
      expect(boxWeight(box('arm length'), 'man')).toBe(Number(row.men_arm_length_kg));
      expect(boxWeight(box('close'), 'woman')).toBe(Number(row.women_close_kg));
      expect(boxWeight(box('arm length'), 'woman')).toBe(Number(row.women_arm_length_kg));
    },
  );

  test('covers all five zones of the figure', () => {
    expect(outside('manual-handling-hse.csv').map(({ zone }) => zone)).toEqual([...ZONES]);
  });

  test('the smallest of the boxes that are passed counts (L23); no box, no figure', () => {
    const boxes = [
      { zone: 'elbow to knuckle height', reach: 'close' },
      { zone: 'shoulder to elbow height', reach: 'arm length' },
    ] as const;
    expect(liftWeight(boxes, 'man')).toBe(10);
    expect(liftWeight(boxes, 'woman')).toBe(7);
    expect(liftWeight([], 'man')).toBeUndefined();
  });

  test('frequency and twisting (older L23)', () => {
    expect([0.4, 1, 2, 5, 8, 13].map(frequencyShare)).toEqual([1, 0.7, 0.7, 0.5, 0.5, 0.2]);
    expect([0, 45, 46, 90, 91].map(twistShare)).toEqual([1, 1, 0.9, 0.9, 0.8]);
  });

  test('teams: TH-1, two who lift 20 kg each, printed 26.6 kg; TH-2, 50 kg each, printed 66 and 75 kg', () => {
    expect(teamWeight([20, 20])).toBeCloseTo(26.67, 2);
    expect(Math.abs(teamWeight([20, 20]) - 26.6)).toBeLessThan(0.1);
    expect(Math.abs(teamWeight([50, 50]) - 66)).toBeLessThan(1);
    expect(teamWeight([50, 50, 50])).toBe(75);
  });

  test('beyond every box: 25 kg for one, two thirds of 50 kg for two, half of the sum for three and four', () => {
    expect(mostByHand(1)).toBe(25);
    expect(mostByHand(2)).toBeCloseTo(33.3, 1);
    expect(mostByHand(3)).toBe(37.5);
    expect(mostByHand(4)).toBe(50);
    // More than four are unlikely to work together (L23): no figure grows beyond theirs.
    expect(mostByHand(9)).toBe(50);
  });
});

describe('NIOSH equation', () => {
  const example: Lift = {
    units: 'us',
    horizontal: 23,
    vertical: 15,
    travel: 49,
    asymmetry: 0,
    frequency: 0.2,
    hours: 1,
    coupling: 'fair',
  };
  const rows = new Map(outside('worked-examples.csv').map((row) => [row.id!, row]));

  test('LI-1 and LI-2, loading punch-press stock (Pub. 94-110 example 1, from memory): the printed multipliers', () => {
    const origin = multipliersOf(example);
    const end = multipliersOf({ ...example, vertical: 64 });
    // Printed with two digits; HM is printed .44, where 10/23 = .4348.
    const printed = { horizontal: 0.44, distance: 0.86, asymmetric: 1, frequency: 1 };
    const near = (found: Record<string, number>, wanted: Record<string, number>) => {
      for (const [name, value] of Object.entries(wanted))
        expect(Math.abs(found[name]! - value), name).toBeLessThan(0.006);
    };
    near({ ...origin }, { ...printed, vertical: 0.89, coupling: 0.95 });
    near({ ...end }, { ...printed, vertical: 0.75, coupling: 1 });
    const from = (vertical: number, coupling: number) => weightFrom({ ...printed, vertical, coupling }, 'us');
    expect(rows.get('LI-1')!.expected).toContain('RWL=16.3 lb');
    expect(from(0.89, 0.95)).toBeCloseTo(16.3, 1);
    expect(liftingIndex(44, from(0.89, 0.95))).toBeCloseTo(2.7, 1);
    expect(rows.get('LI-2')!.expected).toContain('RWL=14.5 lb');
    expect(from(0.75, 1)).toBeCloseTo(14.5, 1);
    expect(liftingIndex(44, from(0.75, 1))).toBeCloseTo(3.0, 1);
  });

  test('the same without rounding (computed from the formula): 16.0 and 14.2 lb, index 2.75 and 3.11', () => {
    expect(rows.get('LI-1')!.note).toContain('16.0 lb, LI 2.75');
    expect(recommendedWeight(example)).toBeCloseTo(16.0, 1);
    expect(liftingIndex(44, recommendedWeight(example))).toBeCloseTo(2.75, 2);
    const end = recommendedWeight({ ...example, vertical: 64 });
    expect(end).toBeCloseTo(14.15, 1);
    expect(liftingIndex(44, end)).toBeCloseTo(3.11, 2);
  });

  test('LI-3, the ideal lift is the load constant: 23 kg, 51 lb (Pub. 94-110)', () => {
    const ideal: Lift = {
      ...example,
      units: 'metric',
      horizontal: 25,
      vertical: 75,
      travel: 25,
      coupling: 'good',
    };
    expect(recommendedWeight(ideal)).toBeCloseTo(23, 10);
    expect(
      recommendedWeight({ ...ideal, units: 'us', horizontal: 10, vertical: 30, travel: 10 }),
    ).toBeCloseTo(51, 10);
  });

  const half = (text: string) => (text.startsWith('<=') ? Number(text.slice(2)) : Number(text));
  test.each(
    outside('niosh-fm.csv').map(
      (row) => [row.lifts_per_min!, row.seen_or_memory!.split(',')[0]!, row] as const,
    ),
  )('frequency %s (Pub. 94-110 table 5: %s, other columns from memory)', (lifts, _how, row) => {
    const f = lifts.startsWith('>') ? 15.1 : half(lifts);
    const found = [1, 2, 8].flatMap((hours) => [
      frequencyMultiplier(f, hours, true),
      frequencyMultiplier(f, hours, false),
    ]);
    const printed = [
      row.le1h_V_lt_30in,
      row.le1h_V_ge_30in,
      row.le2h_V_lt_30in,
      row.le2h_V_ge_30in,
      row.le8h_V_lt_30in,
      row.le8h_V_ge_30in,
    ].map(Number);
    expect(found).toEqual(printed);
  });

  test('between two rows the row with more lifts is taken', () => {
    expect(frequencyMultiplier(0.3, 1, true)).toBe(0.97);
  });

  test('coupling (Pub. 94-110 table 7, from memory)', () => {
    expect(couplingMultiplier('good', true)).toBe(1);
    expect(couplingMultiplier('fair', true)).toBe(0.95);
    expect(couplingMultiplier('fair', false)).toBe(1);
    expect(couplingMultiplier('poor', false)).toBe(0.9);
  });

  test('beyond the limits of the equation nothing may be lifted (from memory)', () => {
    for (const beyond of [
      { horizontal: 26 },
      { vertical: 71 },
      { vertical: -1 },
      { travel: 71 },
      { asymmetry: 136 },
    ])
      expect(recommendedWeight({ ...example, ...beyond })).toBe(0);
    expect(liftingIndex(10, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  test('nothing that makes a lift worse makes the weight larger (a property of the equation)', () => {
    const weight = (change: Partial<Lift>) => recommendedWeight({ ...example, ...change });
    for (let step = 0; step < 20; step++) {
      expect(weight({ horizontal: 10 + step / 2 })).toBeGreaterThanOrEqual(
        weight({ horizontal: 10.5 + step / 2 }),
      );
      expect(weight({ travel: 10 + step })).toBeGreaterThanOrEqual(weight({ travel: 11 + step }));
      expect(weight({ asymmetry: 6 * step })).toBeGreaterThanOrEqual(weight({ asymmetry: 6 * step + 6 }));
      expect(weight({ frequency: step / 2 })).toBeGreaterThanOrEqual(weight({ frequency: step / 2 + 0.5 }));
    }
  });
});
