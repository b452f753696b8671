/**
 * Publishing is one act: whatever fails, and whenever the process is killed, the old site is as it was. Every call of
 * the file system fails once; a process of its own is killed by force before every call.
 */
import { spawnSync } from 'node:child_process';
import * as fs from 'node:fs';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { buildSync } from 'esbuild';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type SiteDisk, writeSite } from '../../../language-server/cli/write-site.ts';

let top = '';
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'site-'));
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

const NEW = new Map([
  ['index.html', 'new index'],
  ['procedures/a/b.html', 'new page'],
  ['.dowel-site', 'marker'],
]);
const OLD = { '.dowel-site': 'marker', 'index.html': 'old index', 'procedures/old.html': 'old page' };

function put(folder: string, files: Record<string, string>): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(folder, name, '..'), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}

function all(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true }))
    if (entry.isFile()) {
      const path = join(entry.parentPath, entry.name);
      found[path.slice(folder.length + 1)] = readFileSync(path, 'utf8');
    }
  return found;
}

test('a new folder, an empty one, an own one are written, and nothing is left beside it', () => {
  for (const before of ['none', 'empty', 'own']) {
    const folder = join(top, before, 'site');
    if (before !== 'none') mkdirSync(folder, { recursive: true });
    if (before === 'own') put(folder, OLD);
    expect(writeSite(folder, NEW, [])).toEqual({ files: 3 });
    expect(all(folder)).toEqual(Object.fromEntries(NEW));
    expect(readdirSync(join(top, before))).toEqual(['site']);
  }
});

describe('what is not an own site is never touched', () => {
  test('a folder with other things', () => {
    put(join(top, 'mine'), { 'letter.txt': 'dear' });
    expect(writeSite(join(top, 'mine'), NEW, [])).toMatchObject({
      reason: expect.stringMatching(/other things/),
    });
    expect(all(top)).toEqual({ 'mine/letter.txt': 'dear' });
  });

  test('a file of that name', () => {
    put(top, { site: 'a file' });
    expect(writeSite(join(top, 'site'), NEW, [])).toMatchObject({
      reason: expect.stringMatching(/file of that name/),
    });
    expect(all(top)).toEqual({ site: 'a file' });
  });

  test('a link to a folder with other things', () => {
    put(join(top, 'mine'), { 'letter.txt': 'dear' });
    symlinkSync(join(top, 'mine'), join(top, 'site'));
    expect(writeSite(join(top, 'site'), NEW, [])).toMatchObject({
      reason: expect.stringMatching(/other things/),
    });
    expect(all(join(top, 'mine'))).toEqual({ 'letter.txt': 'dear' });
  });

  test('the folder that the procedures lie in, even with a marker', () => {
    put(join(top, 'jobs'), { '.dowel-site': '', 'a.dowel': 'machine' });
    expect(writeSite(join(top, 'jobs'), NEW, [join(top, 'jobs', 'a.dowel')])).toMatchObject({
      reason: expect.stringMatching(/procedures lie in/),
    });
    expect(all(join(top, 'jobs'))).toEqual({ '.dowel-site': '', 'a.dowel': 'machine' });
  });

  test('an address that leads out', () => {
    const folder = join(top, 'site');
    put(folder, OLD);
    expect(writeSite(folder, new Map([['../out.html', 'x']]), [])).toHaveProperty('reason');
    expect(all(top)).toEqual(
      Object.fromEntries(Object.entries(OLD).map(([name, text]) => [`site/${name}`, text])),
    );
  });
});

/** The file system, of which the call of that number fails. */
function failingAt(number: number): { disk: SiteDisk; count(): number } {
  let calls = 0;
  const disk = Object.fromEntries(
    Object.entries(fs).map(([name, value]) => [
      name,
      typeof value !== 'function' || !/Sync$/.test(name)
        ? value
        : (...args: unknown[]) => {
            calls += 1;
            if (calls === number) throw Object.assign(new Error('ENOSPC: no space left'), { code: 'ENOSPC' });
            return (value as (...all: unknown[]) => unknown)(...args);
          },
    ]),
  );
  return { disk: disk as unknown as SiteDisk, count: () => calls };
}

test('whichever call fails, there is the old site or the new one, whole', () => {
  const folder = join(top, 'site');
  let failed = 0;
  for (let number = 1; ; number++) {
    rmSync(folder, { recursive: true, force: true });
    put(folder, OLD);
    const { disk, count } = failingAt(number);
    const written = writeSite(folder, NEW, [], disk);
    if (count() < number) break;
    if ('reason' in written) {
      failed += 1;
      expect(written.reason).toMatch(/^the disk is full; .*unchanged/);
      expect(all(folder)).toEqual(OLD);
    } else expect(all(folder)).toEqual(Object.fromEntries(NEW));
  }
  expect(failed).toBeGreaterThan(8);
  expect(writeSite(folder, NEW, [])).toEqual({ files: 3 });
  expect(readdirSync(top)).toEqual(['site']);
});

test('killed before any call, the next run finds a whole site', () => {
  const program = join(top, 'write-and-die.cjs');
  buildSync({
    entryPoints: [resolve(import.meta.dirname, '../../support/write-and-die.ts')],
    outfile: program,
    ...{ bundle: true, platform: 'node', format: 'cjs', logLevel: 'error' },
  });
  const folder = join(top, 'place', 'site');
  const run = (number: number) =>
    spawnSync(process.execPath, [program, folder, String(number)], { encoding: 'utf8' });
  put(folder, OLD);
  const { calls } = JSON.parse(run(0).stdout) as { calls: number };
  let between = 0;
  for (let point = 1; point <= calls; point++) {
    rmSync(folder, { recursive: true, force: true });
    put(folder, OLD);
    expect(run(point).signal).toBe('SIGKILL');
    // Between the renames the old site lies beside its place; what a run does first is to put it back.
    if (!fs.existsSync(folder)) {
      between += 1;
      expect(writeSite(folder, new Map([['x/../../y', '']]), [])).toHaveProperty('reason');
    }
    const found = all(folder);
    if (found['index.html'] !== 'new index') expect(found).toEqual(OLD);
  }
  expect(between).toBe(1);
});
