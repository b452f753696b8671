/** Runs the built program as a person would, in a folder of its own. `npm test` builds it first. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../../..');
export const DOWEL = join(ROOT, '.build/dowel.cjs');

export interface Ended {
  code: number | null;
  out: string;
  err: string;
}

export interface RunOptions {
  cwd?: string;
  env?: Record<string, string>;
  uid?: number;
}

export function dowel(args: readonly string[], { cwd = ROOT, env = {}, uid }: RunOptions = {}): Ended {
  if (!existsSync(DOWEL)) throw new Error('The program is not built: npm run build');
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [DOWEL, ...args], {
    cwd,
    encoding: 'utf8',
    timeout: 120_000,
    maxBuffer: 64 * 1024 * 1024,
    env: { PATH: process.env.PATH, ...env },
    ...(uid === undefined ? {} : { uid }),
  });
  if (error !== undefined) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** A folder for one test with the given files; a path ending in `/` is an empty folder. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'dowel-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, content] of Object.entries(files)) {
    const file = join(folder, path);
    mkdirSync(path.endsWith('/') ? file : dirname(file), { recursive: true });
    if (!path.endsWith('/')) writeFileSync(file, content);
  }
  return folder;
}

/** A right machine and job, small enough to be read here. */
export const RIGHT = `machine pump "Pump" {
  part body "body" fixed
  part cover "cover" on body  held by cover-bolts
  fastener cover-bolts "cover bolts" x4  clamps cover to body  torque 10 N·m
}

procedure look "Look inside"
  for pump
{
  remove cover-bolts
  remove cover
  inspect body for "wear" expect "no scores"
  refit cover
  refit cover-bolts
}
`;

/** The same with the cover pulled off against its bolts. */
export const WRONG = RIGHT.replace('  remove cover-bolts\n', '').replace('  refit cover-bolts\n', '');
