/** Product and oracle agree on many small right jobs and on every mutant of each (see agreement.ts). */
import { describe, it } from 'vitest';
import { RIGHT_JOBS } from '../oracle/jobs.ts';
import { jobText, ROWS } from '../oracle/rows.ts';
import { expectAgreementOnText } from './agreement.ts';

describe('jobs on the mill', () => {
  it.each(RIGHT_JOBS.map((text, index) => [index + 1, text] as const))('%s', (_, text) => {
    expectAgreementOnText(text);
  });
});

describe.each(Object.entries(ROWS))('right twins: %s', (_, rows) => {
  it.each(rows)('$good', ({ good, headers }) => expectAgreementOnText(jobText(good, headers)));
});
