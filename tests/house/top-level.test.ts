/** The top of the project holds what it is meant to hold, and no file names the machine it was written on. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

const ENTRIES = [
  '.biome.json',
  '.ci',
  '.gitattributes',
  '.gitignore',
  '.npmrc',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'extension',
  'grammar',
  'language-server',
  'package-lock.json',
  'package.json',
  'procedures',
  'tests',
  'tsconfig.json',
];

/** Folders that exist on one machine only; put together here so that this file does not name them. */
const MACHINE_PATHS = ['work', 'root', 'tmp', 'home', 'Users'].map((folder) => `/${folder}/`);

/** Tracked files, as git sees them. */
const tracked = execFileSync('git', ['ls-files', '-z'], { cwd: ROOT, encoding: 'utf8' })
  .split('\0')
  .filter((file) => file !== '' && existsSync(join(ROOT, file)));

/** Places of machine paths in a text: not inside a longer path or an address. */
function machinePathsIn(text: string): string[] {
  return MACHINE_PATHS.flatMap((path) => {
    const pattern = new RegExp(`(?<![\\w.~/-])${path}[\\w.-]+`, 'g');
    return [...text.matchAll(pattern)].map(([hit]) => hit);
  });
}

test('the top level is fixed', () => {
  const top = [...new Set(tracked.map((file) => file.split('/')[0]!))];
  expect(top.filter((entry) => !ENTRIES.includes(entry))).toEqual([]);
  for (const entry of ['README.md', 'DEVELOPERS.md', 'grammar', 'language-server', 'tests'])
    expect(top).toContain(entry);
});

test('no file names the machine it was written on', () => {
  const hits = tracked.flatMap((file) =>
    machinePathsIn(readFileSync(join(ROOT, file), 'utf8')).map((hit) => `${file}: ${hit}`),
  );
  expect(hits).toEqual([]);
});

test('the lock file names no registry', () => {
  const lock = readFileSync(join(ROOT, 'package-lock.json'), 'utf8');
  const hosts = [...lock.matchAll(/"resolved": "https?:\/\/([^/"]+)/g)].map(([, host]) => host);
  expect(hosts.filter((host) => host !== 'registry.npmjs.org')).toEqual([]);
});

test('the search for machine paths finds them', () => {
  const path = `${MACHINE_PATHS[1]}somebody`;
  expect(machinePathsIn(`see "${path}/x.txt"`)).toEqual([path]);
  expect(machinePathsIn(`https://example.org${path}`)).toEqual([]);
});
