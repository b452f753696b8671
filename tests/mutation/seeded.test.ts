/**
 * A share of the seeded faults of `tests/bench/seeded.ts`, on the demos. Source of what is no fault: the independent
 * executor (tests/oracle) for what is about states. These kinds leave nothing out: what is not found is no fault.
 */
import { describe, expect, it } from 'vitest';
import { RIGHT } from './right.ts';
import type { SeedKind } from './seeds.ts';
import { rows, trySeeds } from './try-seeds.ts';

const DEMOS = RIGHT.filter((path) => path.startsWith('procedures/'));
const SHARE = 3;

/** Every fault of these kinds is found, by a check that is about it. */
const SURE: readonly SeedKind[] = [
  'hazard word left out',
  'avoidance left out',
  'proof dropped',
  'tester tried on one side',
  'lock dropped',
  'compound swapped',
  'fluid swapped',
  'amount ten times as much',
  'compound or lubricant dropped',
  'cleaning dropped',
];

describe('seeded faults', () => {
  const results = DEMOS.map((path) => trySeeds(path, SHARE));
  const all = rows(results.flatMap(({ tried }) => tried));

  it('are none on the right procedures', () => {
    expect(results.flatMap(({ onRight }) => onRight)).toEqual([]);
  });

  it.each(SURE)('%s: found, or no fault', (kind) => {
    const row = all.find((one) => one.kind === kind)!;
    expect(row.missed.map(({ path, seed }) => `${path}:${seed.line} ${seed.what}`)).toEqual([]);
    expect(row.byItsOwn).toBe(row.found);
  });

  it('are found by far more often than not', () => {
    const seeded = all.reduce((sum, row) => sum + row.seeded - row.noFault, 0);
    const found = all.reduce((sum, row) => sum + row.found, 0);
    expect(seeded).toBeGreaterThan(60);
    expect(found / seeded).toBeGreaterThan(0.7);
  });
});
