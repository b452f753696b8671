/** `dowel format`: what it changes, what it leaves alone, and its exit codes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dowel, folderWith, RIGHT } from './dowel.ts';

/** The same job with every line pushed in and blank lines doubled: certainly not laid out. */
const RAGGED = RIGHT.replace(/^/gm, '       ').replaceAll('\n', '\n\n\n');

test('lays a file out once; a second time there is nothing to do', () => {
  const folder = folderWith({ 'a.dowel': RAGGED });
  const first = dowel(['format', 'a.dowel'], { cwd: folder });
  expect(first).toEqual({ code: 0, out: 'a.dowel laid out\n', err: '' });
  const text = readFileSync(join(folder, 'a.dowel'), 'utf8');
  expect(text).not.toBe(RAGGED);
  expect(dowel(['format', 'a.dowel'], { cwd: folder })).toEqual({ code: 0, out: '', err: '' });
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(text);
});

test('--check changes nothing and says so by its exit code', () => {
  const folder = folderWith({ 'a.dowel': RAGGED });
  const before = dowel(['format', '--check', '.'], { cwd: folder });
  expect(before).toEqual({ code: 1, out: 'a.dowel is not laid out\n', err: '' });
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(RAGGED);
  dowel(['format', '.'], { cwd: folder });
  expect(dowel(['format', '--check', '.'], { cwd: folder }).code).toBe(0);
});

test('what cannot be read is left alone', () => {
  const bytes = Uint8Array.from([0xc3, 0x28, 0x0a]); // a lead byte without its second one (RFC 3629)
  const folder = folderWith({ 'a.dowel': bytes });
  const { code, err } = dowel(['format', 'a.dowel'], { cwd: folder });
  expect(code).toBe(2);
  expect(err).toContain('cannot lay out a.dowel: it is not UTF-8 text.');
  expect(Uint8Array.from(readFileSync(join(folder, 'a.dowel')))).toEqual(bytes);
});
