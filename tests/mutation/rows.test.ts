/**
 * The product on the same small wrong and right jobs as the oracle. Source of what is right and wrong: the chapter
 * on states (see ../oracle/rows.ts).
 */
import { describe, expect, it } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { KINDS } from '../oracle/executor.ts';
import { jobText, ROWS } from '../oracle/rows.ts';

/** Names of the same faults where only one side of a branch or one variant has them. */
const ONE_SIDED = ['branch-unfinished', 'variant-uncovered'];

function found(steps: string, headers?: string): string[] {
  const { findings } = checkTexts({ 'job.dowel': jobText(steps, headers) }, 'job.dowel');
  const serious = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
  const names = serious
    .map(({ check }) => check)
    .filter((check) => KINDS.has(check) || ONE_SIDED.includes(check));
  return [...new Set(names)].sort();
}

describe.each(Object.entries(ROWS))('%s', (_, rows) => {
  it.each(rows)('$finds: $bad', ({ finds, bad, good, headers }) => {
    const names = found(bad, headers);
    expect(
      names.some((name) => name === finds || ONE_SIDED.includes(name)),
      names.join(', ') || 'right',
    ).toBe(true);
    expect(found(good, headers)).toEqual([]);
  });
});
