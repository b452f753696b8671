/**
 * What the engine finds in texts that are being edited is what a check from scratch finds: random edits with fixed
 * seeds over the demo procedures and the everyday jobs. `DOWEL_LONG=1` makes twenty times as many and looks whether
 * the memory grows.
 */
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Engine } from '../../../language-server/engine/engine.ts';
import { foldersOf, run } from './against-scratch.ts';
import { findFiles } from './corpus.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const everyday = join(ROOT, 'tests/everyday');
const FOLDERS = [
  ...foldersOf(join(ROOT, 'procedures'), findFiles(join(ROOT, 'procedures'), '.dowel')),
  ...findFiles(everyday, '.dowel').flatMap((file) => foldersOf(everyday, [file])),
];
const LONG = process.env.DOWEL_LONG === '1';
const BATCHES = LONG ? 200 : 20;
const EDITS = LONG ? 500 : 250;

describe('findings of edited texts', () => {
  test.each(Array.from({ length: BATCHES }, (_, seed) => seed + 1))(
    'are those of a check from scratch (seed %i)',
    { timeout: 600_000 },
    (seed) => {
      const { edits, slip } = run(FOLDERS, seed, EDITS);
      expect(edits).toBe(EDITS);
      expect(slip && { ...slip, engine: undefined, scratch: undefined }).toBeUndefined();
    },
  );

  test.runIf(LONG)('keeps nothing of what is gone', { timeout: 3_600_000 }, () => {
    const engines: Engine[] = [];
    const collect = (globalThis as { gc?: () => void }).gc;
    const used = () => {
      collect?.();
      return process.memoryUsage().heapUsed;
    };
    // The first run makes what stays: models, texts, compiled code.
    run(FOLDERS, 1, 2_000, engines);
    const before = used();
    for (let seed = 2; seed <= 20; seed++) run(FOLDERS, seed, 2_000, engines);
    expect(used() / before).toBeLessThan(1.2);
  });
});
