/** `dowel check` as a person or a pipeline meets it: codes, forms, colour, order, and that it writes nothing. */

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEFERENCE } from '../../../language-server/report/deference.ts';
import { DOWEL, dowel, folderWith, RIGHT, ROOT, WRONG } from './dowel.ts';

test('a right job: silent, exit code 0', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  expect(dowel(['check', 'a.dowel'], { cwd: folder })).toEqual({
    code: 0,
    out: `No findings; 1 file checked.\n${DEFERENCE}\n`,
    err: '',
  });
});

test('a wrong job: the finding, the count, exit code 1', () => {
  const folder = folderWith({ 'a.dowel': WRONG, 'b.dowel': 'use "a.dowel"\n' });
  const { code, out, err } = dowel(['check', '.'], { cwd: folder });
  expect(code).toBe(1);
  expect(out).toContain('error still-held\n');
  expect(out).toMatch(/\n\d+ findings? in 1 file: \d+ errors?.*; 2 files checked\.\n/);
  expect(out.endsWith(`\n${DEFERENCE}\n`)).toBe(true);
  expect(err).toBe('');
});

test('--severity says what fails the run, not what is shown', () => {
  // The message of the mildest finding decides: nothing milder than an error is in WRONG's first finding.
  const folder = folderWith({ 'a.dowel': WRONG });
  const outs = ['error', 'warning', 'information', 'hint'].map((severity) =>
    dowel(['check', '--severity', severity, 'a.dowel'], { cwd: folder }),
  );
  for (const { code, out } of outs) {
    expect(code).toBe(1);
    expect(out).toBe(outs[0]!.out);
  }
  const silent = folderWith({ 'a.dowel': RIGHT });
  expect(dowel(['check', '--severity', 'hint', 'a.dowel'], { cwd: silent }).code).toBe(0);
});

test('JSON tells the same findings as the text', () => {
  const folder = folderWith({ 'a.dowel': WRONG });
  const text = dowel(['check', 'a.dowel', 'gone.dowel'], { cwd: folder });
  const json = dowel(['check', '--format', 'json', 'a.dowel', 'gone.dowel'], { cwd: folder });
  expect(json.code).toBe(text.code);
  const report = JSON.parse(json.out) as {
    findings: { check: string; message: string; file: string; start: { line: number; column: number } }[];
    unread: { file: string }[];
  };
  expect(report.findings.length).toBeGreaterThan(0);
  for (const { check, message, file, start } of report.findings) {
    expect(text.out).toContain(check);
    expect(text.out).toContain(message);
    expect(text.out).toContain(`${file}:${start.line}:${start.column}`);
  }
  expect(report.unread).toEqual([{ file: 'gone.dowel', reason: 'no such file or folder' }]);
});

test('colour only where it is asked for or a terminal is seen', () => {
  const folder = folderWith({ 'a.dowel': WRONG });
  const run = (...args: string[]) => dowel(['check', ...args, 'a.dowel'], { cwd: folder }).out;
  const ESCAPE = '\u001b[';
  expect(run()).not.toContain(ESCAPE);
  expect(run('--no-color')).not.toContain(ESCAPE);
  expect(run('--color')).toContain(ESCAPE);
  const plain = run('--color').replace(new RegExp(`${ESCAPE.replace('[', '\\[')}\\d+m`, 'g'), '');
  expect(plain.replace(/ +$/gm, '')).toBe(run());
});

test('the same files in any order of asking give the same findings', () => {
  const folder = folderWith({ 'a.dowel': WRONG, 'b.dowel': WRONG.replaceAll('pump', 'press') });
  const one = dowel(['check', 'a.dowel', 'b.dowel'], { cwd: folder });
  expect(dowel(['check', 'b.dowel', 'a.dowel'], { cwd: folder })).toEqual(one);
  expect(dowel(['check', '.'], { cwd: folder })).toEqual(one);
});

test('writes nothing, neither beside the files nor beside itself', () => {
  const folder = folderWith({ 'a.dowel': WRONG });
  const before = [listing(folder), listing(join(ROOT, '.build/parts'))];
  dowel(['check', '.'], { cwd: folder });
  expect([listing(folder), listing(join(ROOT, '.build/parts'))]).toEqual(before);
});

test('a reader that leaves early is no failure', () => {
  const folder = folderWith({ 'a.dowel': WRONG.repeat(200) });
  const { stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${DOWEL}" check a.dowel | head -n 1`], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
});

function listing(folder: string): string[] {
  return readdirSync(folder)
    .sort()
    .map((name) => {
      const { mtimeMs, size } = statSync(join(folder, name));
      return `${name} ${size} ${mtimeMs} ${readFileSync(join(folder, name)).length}`;
    });
}
