/**
 * Puts the workbench (code-server: a whole VS Code, served on loopback) where tests find it: a folder of its own in
 * the user's cache, named after its lock file, so that it is installed once. `npm ci` without install scripts.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

const here = import.meta.dirname;
const lock = readFileSync(join(here, 'package-lock.json'));
const name = createHash('sha256').update(lock).digest('hex').slice(0, 16);
const cache = join(process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache'), 'dowel-workbench');
const folder = join(cache, name);

export const VSCODE = join(folder, 'node_modules/code-server/lib/vscode');

/** Installs it where it is not there yet. Throws with what to do where that fails. */
export function install() {
  if (existsSync(join(VSCODE, 'out/server-main.js'))) return;
  process.stdout.write('installing the workbench for editor tests (about 290 MB, once) …\n');
  const aside = `${folder}-${process.pid}`;
  mkdirSync(aside, { recursive: true });
  for (const file of ['package.json', 'package-lock.json', 'link.mjs'])
    cpSync(join(here, file), join(aside, file));
  for (const [command, ...given] of [
    ['npm', 'ci', '--ignore-scripts', '--no-audit', '--no-fund'],
    ['node', 'link.mjs'],
  ]) {
    const done = spawnSync(command, given, { cwd: aside, encoding: 'utf8' });
    if (done.status !== 0) {
      rmSync(aside, { recursive: true, force: true });
      throw new Error(
        `The workbench could not be installed: ${command} ${given.join(' ')} said:\n${done.stderr || done.error}\nA network and about 300 MB of disk are needed once.`,
      );
    }
  }
  rmSync(folder, { recursive: true, force: true });
  renameSync(aside, folder);
}

if (process.argv[1] === import.meta.filename) install();
