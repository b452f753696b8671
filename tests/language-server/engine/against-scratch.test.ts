/**
 * What the engine finds in texts that are being edited is what a check from scratch finds: random edits with fixed
 * seeds over the demo procedures and the everyday jobs. `DOWEL_LONG=1` makes twenty times as many and looks whether
 * the memory grows.
 */
import { join, resolve } from 'node:path';
import { getHeapCodeStatistics, setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { foldersOf, opened, run } from './against-scratch.ts';
import { findFiles } from './corpus.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const everyday = join(ROOT, 'tests/everyday');
const FOLDERS = [
  ...foldersOf(join(ROOT, 'procedures'), findFiles(join(ROOT, 'procedures'), '.dowel')),
  ...findFiles(everyday, '.dowel').flatMap((file) => foldersOf(everyday, [file])),
];
const LONG = process.env.DOWEL_LONG === '1';
const BATCHES = 20;
const EDITS = 250;
/** In the long run: 100,000 edits of texts that stay open all the time. */
const LONG_BATCHES = 50;
const LONG_EDITS = 2_000;

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

  test.runIf(LONG)(
    'are those of a check from scratch after 100,000 edits, and nothing is kept of what is gone',
    { timeout: 24 * 3_600_000 },
    () => {
      const engines = opened(FOLDERS);
      const collect = collector();
      // V8 compiles and drops code all the time: what counts is what the program itself holds.
      const used = () => {
        collect();
        const code = getHeapCodeStatistics();
        const compiled = code.code_and_metadata_size + code.bytecode_and_metadata_size;
        return (process.memoryUsage().heapUsed - compiled) / 2 ** 20;
      };
      let edits = 0;
      let before = 0;
      for (let seed = 1; seed <= LONG_BATCHES; seed++) {
        const ran = run(FOLDERS, seed, LONG_EDITS, engines);
        expect(ran.slip && { ...ran.slip, engine: undefined, scratch: undefined }).toBeUndefined();
        edits += ran.edits;
        // The first tenth makes what stays: models, texts, executions.
        if (seed === LONG_BATCHES / 10) before = used();
        if (seed % 5 === 0) console.log(`${edits} edits, ${used().toFixed(1)} MB`);
      }
      const after = used();
      console.log(`${edits} edits: ${before.toFixed(1)} MB before, ${after.toFixed(1)} MB after`);
      expect(edits).toBe(LONG_BATCHES * LONG_EDITS);
      expect(after / before).toBeLessThan(1.2);
    },
  );
});

/** V8's collector of what is no longer used. */
function collector(): () => void {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc') as () => void;
}
