/** `dowel compare` as a reviewer meets it: files, folders, revisions of git; codes and forms. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { expect, test } from 'vitest';
import { dowel, folderWith, RIGHT } from './dowel.ts';

const OTHER = RIGHT.replace('torque 10 N·m', 'torque 11 N·m');

test('two files: the change with its share, exit code 1; the same file: nothing, exit code 0', () => {
  const folder = folderWith({ 'a.dowel': RIGHT, 'b.dowel': OTHER });
  const run = dowel(['compare', 'a.dowel', 'b.dowel'], { cwd: folder });
  expect(run.err).toBe('');
  expect(run.out).toContain('`torque 10 N·m` is now `torque 11 N·m` (+10 %).  [b.dowel:4]');
  expect(run.out).toMatch(/\n1 change in meaning\.\n/);
  expect(run.code).toBe(1);
  const same = dowel(['compare', 'a.dowel', 'a.dowel'], { cwd: folder });
  expect(same).toEqual({ code: 0, out: 'Nothing has changed in meaning or wording.\n', err: '' });
});

test('two folders are compared file by file', () => {
  const folder = folderWith({ 'old/x/a.dowel': RIGHT, 'new/x/a.dowel': OTHER });
  expect(dowel(['compare', 'old', 'new'], { cwd: folder }).out).toContain('(+10 %)');
});

test('a revision of git against the working folder, and two revisions', () => {
  const folder = folderWith({ 'work shop/ü.dowel': RIGHT });
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'user.name=T', '-c', 'user.email=t@example.org', ...args], { cwd: folder });
  git('init', '-q');
  git('add', '.');
  git('commit', '-q', '-m', 'First');
  writeFileSync(join(folder, 'work shop/ü.dowel'), OTHER);
  const run = dowel(['compare', 'HEAD', '.'], { cwd: folder });
  expect(run.err).toBe('');
  expect(run.out).toContain('(+10 %).  [work shop/ü.dowel:4]');
  git('commit', '-q', '-a', '-m', 'Second');
  // Seen from a folder inside the repository.
  const inside = dowel(['compare', 'HEAD~1', 'HEAD', 'ü.dowel'], { cwd: join(folder, 'work shop') });
  expect(inside.out).toContain('(+10 %).  [ü.dowel:4]');
});

test('what cannot be had is named, exit code 2', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const run = dowel(['compare', 'a.dowel', '--output=x'], { cwd: folder });
  expect(run.code).toBe(2);
  const gone = dowel(['compare', 'gone', 'a.dowel'], { cwd: folder });
  expect(gone.code).toBe(2);
  expect(gone.err).toContain('cannot compare gone: it is no file, no folder and no revision of git.');
});

test('the page is valid HTML and holds texts as texts; JSON has the same changes', () => {
  const nasty = OTHER.replace('"cover bolts"', '"<script>alert(1)</script> & \'bolts\'"');
  const folder = folderWith({ 'a.dowel': RIGHT, 'b.dowel': nasty });
  const page = dowel(['compare', 'a.dowel', 'b.dowel', '--format', 'html'], { cwd: folder }).out;
  expect(page).not.toContain('<script');
  const report = new HtmlValidate({ extends: ['html-validate:standard'] }).validateStringSync(page);
  expect(report.results.flatMap(({ messages }) => messages.map(({ message }) => message))).toEqual([]);
  const json = JSON.parse(
    dowel(['compare', 'a.dowel', 'b.dowel', '--format', 'json'], { cwd: folder }).out,
  ) as {
    sections: { changes: { percent?: number }[] }[];
    meaning: boolean;
  };
  expect(json.meaning).toBe(true);
  expect(json.sections[0]!.changes[0]!.percent).toBeCloseTo(10, 10);
});
