/**
 * `dowel init`: what it writes checks clean, is laid out, and its CI examples do what they say. The examples are read by
 * a general YAML parser and their commands are run by a shell, with the program in the place of the installed one; the
 * services themselves cannot be run here.
 */

import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { DEFERENCE } from '../../../language-server/report/deference.ts';
import { DOWEL, dowel, folderWith } from './dowel.ts';

/** A folder with the first files in it. */
function started(ci: string): string {
  const folder = folderWith({ 'job/': '' });
  const run = dowel(['init', 'job', '--ci', ci], { cwd: folder });
  expect(run.err).toBe('');
  expect(run.code).toBe(0);
  return join(folder, 'job');
}

/** Runs a line as the service's shell would; `npx dowel` and `dowel` are the program that was built here. */
function shell(folder: string, command: string) {
  const bin = join(folder, '.bin');
  mkdirSync(bin, { recursive: true });
  writeFileSync(join(bin, 'dowel'), `#!/bin/sh\nexec "${process.execPath}" "${DOWEL}" "$@"\n`);
  writeFileSync(join(bin, 'npx'), '#!/bin/sh\nexec "$@"\n');
  for (const name of ['dowel', 'npx']) chmodSync(join(bin, name), 0o755);
  return spawnSync('sh', ['-ec', command], {
    cwd: folder,
    encoding: 'utf8',
    env: { PATH: `${bin}:${process.env.PATH}` },
  });
}

test('the first files check clean at every severity, and are laid out', () => {
  const folder = started('shell');
  expect(dowel(['check', '--severity', 'hint', '.'], { cwd: folder })).toEqual({
    code: 0,
    out: `No findings; 2 files checked.\n${DEFERENCE}\n`,
    err: '',
  });
  expect(dowel(['format', '--check', '.'], { cwd: folder }).code).toBe(0);
});

test('the shell example runs, writes the reports, and fails where there is a finding', () => {
  const folder = started('shell');
  expect(shell(folder, './check-procedures.sh').status).toBe(0);
  expect(existsSync(join(folder, 'dowel.xml'))).toBe(true);
  expect(existsSync(join(folder, 'dowel.sarif'))).toBe(true);
  const job = join(folder, 'clear-impeller.dowel');
  writeFileSync(
    job,
    readFileSync(job, 'utf8').replace(/.*loosen cover-screws.*\n.*remove cover-screws\n/, ''),
  );
  const broken = shell(folder, './check-procedures.sh');
  expect(broken.status).toBe(1);
  expect(broken.stdout).toContain('still-held');
});

test.each([
  ['github', '.github/workflows/procedures.yml'],
  ['gitlab', '.gitlab-ci.yml'],
])('the example for %s is YAML, and its check runs', (ci, path) => {
  const folder = started(ci);
  const example: unknown = parse(readFileSync(join(folder, path), 'utf8'));
  const commands = commandsIn(example).filter((one) => one.includes('dowel check'));
  expect(commands).toHaveLength(1);
  expect(shell(folder, commands[0]!).status).toBe(0);
  expect(existsSync(join(folder, 'dowel.xml'))).toBe(true);
});

test('nothing is written over, and then nothing at all', () => {
  const folder = folderWith({ 'clear-impeller.dowel': '// mine\n' });
  const run = dowel(['init'], { cwd: folder });
  expect(run.code).toBe(2);
  expect(run.err).toContain('clear-impeller.dowel is there already; nothing was written.');
  expect(readdirSync(folder)).toEqual(['clear-impeller.dowel']);
});

/** Every command of an example: what stands under `run` or in a list under `script`. */
function commandsIn(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]: [string, unknown]) => {
    if (key === 'run' && typeof value === 'string') return [value];
    if (key === 'script' && Array.isArray(value)) return value as string[];
    return commandsIn(value);
  });
}
