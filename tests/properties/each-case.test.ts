/**
 * All cases at once against each case alone (see agreement.test.ts, which tries thousands): a few small jobs in each test.
 */
import { expect, it } from 'vitest';
import { compare } from './each-case.ts';

const JOBS = 4;
const AXES = 3;

it.each(Array.from({ length: 25 }, (_, index) => index))('on small random jobs, row %i', (row) => {
  for (let job = 0; job < JOBS; job++)
    expect(compare(900_000 + row * JOBS + job, AXES).disagreements).toEqual([]);
});
