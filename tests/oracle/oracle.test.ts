/** The oracle itself, on a wrong and a right job for each row of the chapter on states (see rows.ts). */
import { describe, expect, it, test } from 'vitest';
import { execute } from './executor.ts';
import { jobText, ROWS } from './rows.ts';

function found(steps: string, headers?: string): string[] {
  const files = { 'job.dowel': jobText(steps, headers) };
  return [...new Set(execute(files, 'job.dowel').map(({ kind }) => kind))].sort();
}

test('a start with a joint closed and its seal out', () => {
  expect(found('remove plate\nfit ring\nrefit plate', 'starts with ring off')).toEqual([
    'start-without-seal',
  ]);
  expect(found('fit ring\nrefit plate', 'starts with plate, ring off')).toEqual([]);
});

describe.each(Object.entries(ROWS))('%s', (_, rows) => {
  it.each(rows)('$finds: $bad', ({ finds, bad, good, headers }) => {
    expect(found(bad, headers)).toEqual([finds]);
    expect(found(good, headers)).toEqual([]);
  });
});
