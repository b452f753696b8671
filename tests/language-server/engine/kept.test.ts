/**
 * Executions that are carried on after an edit: what is found and how things stand is what an execution from scratch gives,
 * whole, and no more is executed again than the edit touches. Small texts and few edits, so that each test is quick.
 */
import { describe, expect, test } from 'vitest';
import { EditedJob } from './kept.ts';
import { ROWS, textOf } from './kept-rows.ts';
import { lineEdit, longJob } from './long-jobs.ts';
import { numbersFrom } from './random-edits.ts';

function expectAsFromScratch(job: EditedJob): void {
  const carried = job.carriedOn();
  const scratch = job.fromScratch();
  expect(carried.facts.sort()).toEqual(scratch.facts.sort());
  expect(carried.state).toEqual(scratch.state);
}

describe('an edit of a small job', () => {
  test.each(ROWS.map((row) => [row.name, row] as const))('%s', (_, row) => {
    const job = new EditedJob(textOf(row));
    expect(job.usable).toBe(true);
    for (const [old, text, executed] of row.edits) {
      const carriedOn = job.put(old, text);
      expect([old, text, carriedOn]).toEqual([old, text, executed !== 'anew']);
      if (executed !== 'anew') expect(job.executed, `${old} => ${text}`).toBeLessThanOrEqual(executed);
      expectAsFromScratch(job);
    }
  });
});

const EDITS = 5;
const LINES = 15;
/** By seed from 1 on: how many of the edits were carried on with, at least, and how many actions that had executed, at most. */
const MEASURED: readonly (readonly [carriedOn: number, executed: number])[] = [
  [5, 17],
  [3, 4],
  [5, 32],
  [5, 19],
  [4, 18],
  [5, 7],
  [5, 6],
  [4, 8],
  [5, 7],
  [5, 36],
  [4, 12],
  [5, 19],
  [5, 15],
  [5, 11],
  [5, 6],
  [5, 18],
  [3, 12],
  [4, 25],
  [5, 7],
  [5, 7],
  [5, 15],
  [5, 4],
  [5, 16],
  [5, 18],
  [4, 21],
  [5, 30],
  [5, 13],
  [5, 15],
  [5, 7],
  [5, 7],
  [5, 8],
  [4, 13],
  [5, 5],
  [5, 34],
  [4, 1],
  [5, 6],
  [4, 18],
  [5, 6],
  [5, 24],
  [5, 28],
  [4, 105],
  [5, 34],
  [5, 9],
  [5, 3],
  [5, 3],
];

describe('random edits of a procedure by chance', () => {
  test.each(MEASURED.map((row, index) => [index + 1, ...row] as const))(
    'are carried on with (seed %i)',
    (seed, carriedOn, executed) => {
      const next = numbersFrom(1_000 + seed);
      const job = new EditedJob(longJob(next, LINES));
      let carried = 0;
      let again = 0;
      for (let turn = 0; turn < EDITS; turn++) {
        if (job.edit(lineEdit(job.plain, next))) {
          carried++;
          again += job.executed;
        }
        expectAsFromScratch(job);
      }
      expect(carried).toBeGreaterThanOrEqual(carriedOn);
      expect(again).toBeLessThanOrEqual(executed);
    },
  );
});
