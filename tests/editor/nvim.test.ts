/**
 * An author's first minutes in Neovim, without a screen: a job with a slip opens, the finding is shown, its fix
 * is applied, a part is renamed in all files. Skipped, and said so, where nvim is not on the PATH.
 */
import { spawn, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const there = spawnSync('nvim', ['--version'], { stdio: 'ignore' }).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'dowel-nvim-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

if (!there) process.stderr.write('SKIPPED: nvim is not on the PATH, so the editor test did not run.\n');

const MACHINE = 'ullock-sprayer.dowel';
const JOB = 'renew-valves.dowel';

test.skipIf(!there)('findings, a fix and a rename', { timeout: 90_000 }, async () => {
  const demo = join(ROOT, 'procedures/ullock-sprayer');
  copyFileSync(join(demo, MACHINE), join(folder, MACHINE));
  const right = readFileSync(join(demo, JOB), 'utf8');
  // One slip in a name, as fingers make it.
  const part = /\b(?:unbolt|remove) ([a-z]+-[a-z]+)/.exec(right)![1]!;
  const slip = part.slice(0, 2) + part.slice(3);
  const broken = right.replace(new RegExp(`\\b${part}\\b`), slip);
  writeFileSync(join(folder, JOB), broken);
  writeFileSync(join(folder, 'make-safe.dowel'), readFileSync(join(demo, 'make-safe.dowel')));
  const { code, out, errors } = await nvim(part);
  const seen = JSON.parse(out.trim().split('\n').at(-1) ?? '{}') as Record<string, string> & {
    findings?: { line: number; code: string }[];
  };
  expect(code, errors + out).toBe(0);
  const line = broken.slice(0, broken.indexOf(slip)).split('\n').length;
  expect(seen.findings).toContainEqual(expect.objectContaining({ line, code: 'unknown-name' }));
  expect(seen.fix).toContain(part);
  expect(seen.fixed!.trim()).toBe(right.trim());
  expect(seen.renamed).not.toMatch(new RegExp(`\\b${part}\\b(?!-)`));
  expect(seen.renamed).toContain('renamed-part');
  expect(seen.machine).toContain('renamed-part');
});

function nvim(part: string): Promise<{ code: number | null; out: string; errors: string }> {
  return new Promise((done) => {
    const child = spawn(
      'nvim',
      ['--headless', '--clean', '-n', '-u', join(import.meta.dirname, 'nvim.lua'), JOB],
      {
        cwd: folder,
        env: {
          ...process.env,
          DOWEL_NODE: process.execPath,
          DOWEL_SERVER: join(ROOT, '.build/server.cjs'),
          DOWEL_PART: part,
          DOWEL_NAME: 'renamed-part',
          DOWEL_MACHINE: MACHINE,
          XDG_STATE_HOME: folder,
          XDG_CACHE_HOME: folder,
          XDG_DATA_HOME: folder,
        },
      },
    );
    let [out, errors] = ['', ''];
    child.stdout.on('data', (piece) => {
      out += piece;
    });
    child.stderr.on('data', (piece) => {
      errors += piece;
    });
    const late = setTimeout(() => child.kill(), 80_000);
    child.on('close', (code) => {
      clearTimeout(late);
      done({ code, out, errors });
    });
  });
}
