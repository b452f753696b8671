/** A file that goes on for ever does not hold up the others. The slow ones here are loops and one regular expression. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { FileChecked } from '../../../language-server/checks/together.ts';
import { type EachCheck, isFinished, withTimeLimit } from '../../../language-server/cli/time-limit.ts';
import { dowel, folderWith, RIGHT } from './dowel.ts';

const result = (path: string): FileChecked => ({
  ...{ path, findings: [], waived: [], statements: 1, rules: [], uses: [path] },
});

/** Checks that never end for some names; `made` counts how often the check was made anew. */
function slowFor(slow: Readonly<Record<string, () => unknown>>): { make: () => EachCheck; made: number[] } {
  const made: number[] = [];
  const make = () => {
    made.push(made.length);
    const check: EachCheck = (paths, done) =>
      paths.flatMap((path) => {
        slow[path]?.();
        done?.();
        return path === 'gone' ? [] : [result(path)];
      });
    return check;
  };
  return { make, made };
}

const forEver = () => {
  for (let round = 0; ; round++) if (round < 0) return round;
};
const backtracks = () => /^(a+)+$/.test(`${'a'.repeat(60)}b`);
/** An error caught on the way does not save the work from its end. */
const caught = () => {
  for (;;) {
    try {
      forEver();
    } catch {
      // Goes on.
    }
  }
};

test.each([
  ['a loop', forEver],
  ['a regular expression', backtracks],
  ['a loop that catches all errors', caught],
])('%s is ended, and the other files are checked', (_, slow) => {
  const { make, made } = slowFor({ b: slow });
  let done = 0;
  const found = withTimeLimit(make, 0.2)(['a', 'b', 'c', 'gone'], () => done++);
  expect(found.map(({ path }) => path)).toEqual(['a', 'b', 'c']);
  expect(found.map(isFinished)).toEqual([true, false, true]);
  expect(found[1]!.findings).toEqual([
    {
      ...{ file: 'b', start: 0, end: 0, check: 'file-not-finished', severity: 'error', related: [] },
      message: 'Checking this file took longer than 0.2 s and was ended: nothing is known about it.',
      help: 'Split it into procedures that use one another, or give more time with --time-limit.',
    },
  ]);
  expect(done).toBe(4);
  // Once at first, once after the run of four was ended, once after b was.
  expect(made).toHaveLength(3);
});

test('many files are checked in their order, and each is told of', () => {
  const { make, made } = slowFor({});
  const paths = Array.from({ length: 30 }, (_, at) => `file ${at}`);
  let done = 0;
  const found = withTimeLimit(make)(paths, () => done++);
  expect(found).toEqual(paths.map(result));
  expect([done, made.length]).toEqual([30, 1]);
});

test('a fault of the check itself is not taken for slowness', () => {
  const check = withTimeLimit(() => () => {
    throw new RangeError('a fault');
  });
  expect(() => check(['a'])).toThrow('a fault');
});

test('the command line ends a check, says so, and keeps no such result', () => {
  const cwd = folderWith({ 'a.dowel': RIGHT });
  const run = (...more: string[]) => dowel(['check', '.', '--cache', 'kept', ...more], { cwd });
  const ended = run('--time-limit', '0.001');
  expect(ended.out).toContain('error file-not-finished');
  expect(ended.out).toContain('took longer than 0.001 s and was ended');
  expect(ended.code).toBe(1);
  expect(readdirSync(cwd)).toContain('a.dowel');
  const whole = run();
  expect(whole.out).toContain('No findings');
  expect(whole.code).toBe(0);
});

test('a limit that is none', () => {
  const cwd = folderWith({ 'a.dowel': RIGHT });
  for (const wrong of ['0', '-1', 'soon', '1e9']) {
    const { code, err } = dowel(['check', 'a.dowel', '--time-limit', wrong], { cwd });
    expect(err).toContain('It is a number of seconds above 0');
    expect(code).toBe(2);
  }
});
