/**
 * A share of the seeded faults of `tests/bench/seeded.ts`: each is found, or is none for the independent executor
 * (tests/oracle), which is written from the reference alone and judges states, notices, compounds, lifting and headers.
 */
import { describe, expect, it } from 'vitest';
import { judge } from '../oracle/executor.ts';
import { filesFor, RIGHT } from './right.ts';
import { SEED_KINDS, type SeedKind } from './seeds.ts';
import { rows, trySeeds } from './try-seeds.ts';

/** By other checks, too, where the fault is also another one. */
const ALSO_OTHERWISE: readonly SeedKind[] = ['lock dropped', 'bleeding dropped', 'filling dropped'];
const SHARE = 3;

describe('seeded faults', () => {
  const results = RIGHT.map((path) => trySeeds(path, SHARE));
  const all = rows(results.flatMap(({ tried }) => tried));

  it('are none on the right procedures, for the checks and for the executor', () => {
    expect(results.flatMap(({ onRight }) => onRight)).toEqual([]);
    expect(RIGHT.filter((path) => judge(filesFor(path), path).length > 0)).toEqual([]);
  });

  it.each(Object.keys(SEED_KINDS) as SeedKind[])('%s: none is left open', (kind) => {
    const row = all.find((one) => one.kind === kind)!;
    expect(row.open.map(({ path, seed }) => `${path}:${seed.line} ${seed.what}`)).toEqual([]);
    if (!ALSO_OTHERWISE.includes(kind)) expect(row.byItsOwn).toBe(row.found);
  });

  it('are found by far more often than not', () => {
    const seeded = all.reduce((sum, row) => sum + row.seeded, 0);
    const found = all.reduce((sum, row) => sum + row.found, 0);
    expect(seeded).toBeGreaterThan(100);
    expect(found / seeded).toBeGreaterThan(0.85);
  });
});
