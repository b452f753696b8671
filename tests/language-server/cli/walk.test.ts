/** Which files the named paths mean (the command line's own promise, no outside source). */
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { namesIn } from '../../../language-server/cli/names.ts';
import { filesOf } from '../../../language-server/cli/walk.ts';
import { folderWith } from './dowel.ts';

const TREE = {
  'b.dowel': '',
  'a.dowel': '',
  'notes.txt': '',
  'B/z.dowel': '',
  'a/inner/c.dowel': '',
  'node_modules/x/n.dowel': '',
  '.hidden/h.dowel': '',
};

test('folders are walked in sorted order, without hidden ones and packages', () => {
  const folder = folderWith(TREE);
  const { files, refused } = filesOf([folder], namesIn(folder));
  expect(files).toEqual(['a.dowel', 'b.dowel', 'B/z.dowel', 'a/inner/c.dowel']);
  expect(refused).toEqual([]);
});

test('links met on the way are left alone, named ones are followed', () => {
  const outside = folderWith({ 'secret.dowel': '' });
  const folder = folderWith({ 'a.dowel': '' });
  symlinkSync(outside, join(folder, 'out'));
  symlinkSync(join(outside, 'secret.dowel'), join(folder, 'secret.dowel'));
  symlinkSync('.', join(folder, 'round'));
  expect(filesOf([folder], namesIn(folder)).files).toEqual(['a.dowel']);
  expect(filesOf([join(folder, 'out')], namesIn(folder)).files).toEqual(['out/secret.dowel']);
});

test('a file named twice is one file, however it is written', () => {
  const folder = folderWith({ 'a/x.dowel': '' });
  const file = join(folder, 'a/x.dowel');
  expect(filesOf([file, join(folder, 'a/../a/x.dowel'), folder], namesIn(folder)).files).toEqual([
    'a/x.dowel',
  ]);
});

test('names stay as typed outside the working folder', () => {
  const names = namesIn('/jobs/pump');
  expect(names.of('x.dowel')).toBe('x.dowel');
  expect(names.of('./a/../x.dowel')).toBe('x.dowel');
  expect(names.of('../shared/bolts.dowel')).toBe('../shared/bolts.dowel');
  expect(names.of('/elsewhere/y.dowel')).toBe('/elsewhere/y.dowel');
  expect(names.of('/jobs/pump/x.dowel')).toBe('x.dowel');
  // One file, one name: it keeps the one that came first.
  expect(names.of('/jobs/shared/bolts.dowel')).toBe('../shared/bolts.dowel');
});

test('a use is read from the folder of the file that it stands in', () => {
  const names = namesIn('/jobs/pump');
  expect(names.beside('strip/a.dowel', '../pump.dowel')).toBe('pump.dowel');
  expect(names.beside('../shared/a.dowel', 'b.dowel')).toBe('../shared/b.dowel');
  expect(names.beside('/elsewhere/a.dowel', 'b.dowel')).toBe('/elsewhere/b.dowel');
});
