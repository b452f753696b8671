/** `dowel write-out`: prints the written-out text and nothing else, changes no file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dowel, folderWith, RIGHT } from './dowel.ts';

const SHORT = RIGHT.replace(
  '  remove cover-bolts\n',
  '  for each n in 1..4 {\n    remove cover-bolts #n\n  }\n',
);

test('prints the steps, and leaves the file as it is', () => {
  const folder = folderWith({ 'a.dowel': SHORT });
  const { code, out, err } = dowel(['write-out', 'a.dowel'], { cwd: folder });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toBe(
    RIGHT.replace('  remove cover-bolts\n', [1, 2, 3, 4].map((n) => `  remove cover-bolts #${n}\n`).join('')),
  );
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(SHORT);
});

test('what cannot be read: exit code 2 and a remedy', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const { code, out, err } = dowel(['write-out', 'gone.dowel'], { cwd: folder });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain('cannot read gone.dowel: no such file or folder.');
  expect(dowel(['write-out'], { cwd: folder }).code).toBe(2);
});
