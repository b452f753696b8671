/** `dowel state`: what it prints for a job that is small enough to be followed by hand. */

import { expect, test } from 'vitest';
import { DEFERENCE } from '../../../language-server/report/deference.ts';
import { dowel, folderWith, RIGHT } from './dowel.ts';

/** The line of the job, counted from 1, that begins with these words. */
const lineOf = (words: string) => RIGHT.split('\n').findIndex((line) => line.trim().startsWith(words)) + 1;

test('tells what is off and out, and since when', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const at = lineOf('inspect');
  const { code, out } = dowel(['state', 'a.dowel', '--at', String(at)], { cwd: folder });
  expect(code).toBe(0);
  expect(out).toBe(`Before line ${at} of a.dowel (Look inside):

off
  cover        since line ${lineOf('remove cover') + 1}

out
  cover-bolts  since line ${lineOf('remove cover-bolts')}

${DEFERENCE}
`);
});

test('says so where nothing has been done yet', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const { code, out } = dowel(['state', 'a.dowel', '--at', String(lineOf('remove cover-bolts'))], {
    cwd: folder,
  });
  expect(code).toBe(0);
  expect(out).toContain('Everything stands as it did at the start.');
});

test('what cannot be told: exit code 2 and a remedy', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const err = (...args: string[]) => {
    const ended = dowel(['state', ...args], { cwd: folder });
    expect(ended.code, args.join(' ')).toBe(2);
    expect(ended.out).toBe('');
    return ended.err;
  };
  expect(err('gone.dowel', '--at', '3')).toContain('cannot read gone.dowel: no such file or folder.');
  expect(err('a.dowel', '--at', '9999')).toContain('so no line 9999');
  expect(err('a.dowel', '--at', '1')).toContain('no procedure with a known machine stands at a.dowel:1.');
  expect(err('a.dowel', '--at', '0')).toContain('Lines count from 1.');
  expect(err('a.dowel')).toContain('--at');
});
