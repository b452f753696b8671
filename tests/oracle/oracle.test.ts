/** The oracle itself, on a wrong and a right job for each row of the chapter on states (see rows.ts). */
import { describe, expect, it } from 'vitest';
import { execute } from './executor.ts';
import { jobText, ROWS } from './rows.ts';

function found(steps: string, headers?: string): string[] {
  const files = { 'job.dowel': jobText(steps, headers) };
  return [...new Set(execute(files, 'job.dowel').map(({ kind }) => kind))].sort();
}

describe.each(Object.entries(ROWS))('%s', (_, rows) => {
  it.each(rows)('$finds: $bad', ({ finds, bad, good, headers }) => {
    expect(found(bad, headers)).toEqual([finds]);
    expect(found(good, headers)).toEqual([]);
  });
});
