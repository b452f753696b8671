/**
 * The record of pairs.test.ts against the independent executor (tests/oracle), which is written from grammar/STATE.md alone
 * and knows nothing of the product: a job of the record is wrong for both or right for both. Where the chapter leaves
 * it open, the reason stands here. A share of the jobs; `DOWEL_LONG=1`: all of them.
 */
import { expect, test } from 'vitest';
import { execute, KINDS } from '../../oracle/executor.ts';
import { jobText } from './courses.ts';
import { jobsIn, MACHINE, recorded } from './pairs.ts';

const EVERY = process.env.DOWEL_LONG === '1' ? 1 : 7;
const BEFORE = MACHINE.split('\n').length - 1;

/** Judged otherwise, and why. */
const OPEN: readonly (readonly [RegExp, string])[] = [
  [/^secure (?!pinned)/, 'a fastener that declares no securing may be secured at any time'],
  [/^(drain|recover|isolate|restore) /, 'what the machine file does not say of a system is unknown'],
  [/^move (aside|back) (plug|pipe|lead)$/, 'no finding is named for a connection that is moved aside'],
  [/^tighten \S+ to 10 N·m$/, 'a value that is one stage of the plan means that stage'],
  [/stretch/, 'a bolt tightened to yield is found at the step that loads it again, putting it back too'],
  [/^loosen eased$/, 'loosening that is a stage of the plan'],
];

test('the record and the independent executor judge alike', { timeout: 600_000 }, () => {
  const jobs = [...jobsIn(recorded())].filter((_, index) => index % EVERY === 0);
  const differ: string[] = [];
  let same = 0;
  for (const { steps, names } of jobs) {
    const text = `${MACHINE}${jobText(steps)}`;
    const judged = execute({ 'a.dowel': text }, 'a.dowel').map(
      ({ kind, line }) => `${line - BEFORE - 1} ${kind}`,
    );
    const mine = [...new Set(names.filter((one) => KINDS.has(one.split(' ')[1]!)))];
    if (mine.toSorted().join() === judged.toSorted().join()) same++;
    if (mine.length > 0 === judged.length > 0 || OPEN.some(([open]) => steps.some((step) => open.test(step))))
      continue;
    differ.push(`${steps.join('; ')}: ${mine.join(', ') || 'right'}, judged ${judged.join(', ') || 'right'}`);
  }
  expect(differ).toEqual([]);
  // Nearly all agree on every name and line; the rest on whether anything is wrong.
  expect(same / jobs.length).toBeGreaterThan(0.85);
});
