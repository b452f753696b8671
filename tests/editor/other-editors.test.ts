/**
 * What README.md tells users of Neovim and Emacs to write works: the block is taken from there and run in the real
 * editor, which must show a finding and lose it when the step is mended. Where the editor is not installed, the test is
 * left out and says so.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { ROOT } from '../language-server/cli/dowel.ts';

const README = readFileSync(join(ROOT, 'README.md'), 'utf8');
const SERVER = join(ROOT, '.build/server.cjs');
const FILES = {
  'press.dowel': `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed  held by cover-screws
  fastener cover-screws "cover screws" x4
}
`,
  'open-up.dowel': `use "press.dowel"

procedure open-up "Open the press" for press ends with cover, cover-screws off {
  remove covr
}
`,
};

function block(language: string): string {
  const found = new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(README)?.[1];
  expect(found).toBeDefined();
  return found!;
}

function installed(command: string, ...given: string[]): boolean {
  return spawnSync(command, given, { timeout: 30_000 }).status === 0;
}

/** A folder with the files, and the editor's configuration in it. */
function folderWith(configuration: string, text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'dowel-editor-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries({ ...FILES, [configuration]: text }))
    writeFileSync(join(folder, name), content);
  return folder;
}

/** Runs an editor; answers what it printed. */
function run(folder: string, command: string, ...given: string[]): string {
  const { status, stdout, stderr, error } = spawnSync(command, given, {
    cwd: folder,
    encoding: 'utf8',
    timeout: 150_000,
    env: { ...process.env, HOME: folder, DOWEL_SERVER: SERVER, DOWEL_FILE: join(folder, 'open-up.dowel') },
  });
  expect(status, `${error ?? ''}${stderr}${stdout}`).toBe(0);
  return stdout;
}

const hasNeovim = installed('nvim', '--version');
if (!hasNeovim) console.warn('nvim is not installed: what README says about Neovim is not tried.');
const hasEmacs = installed('emacs', '--batch', '--eval', "(progn (package-initialize) (require 'eglot))");
if (!hasEmacs) console.warn('emacs with eglot is not installed: what README says about Emacs is not tried.');

test.skipIf(!hasNeovim)('Neovim shows the findings', { timeout: 160_000 }, () => {
  const check = readFileSync(join(import.meta.dirname, 'neovim.lua'), 'utf8');
  const folder = folderWith('init.lua', `${block('lua')}\n${check}`);
  const out = run(folder, 'nvim', '--headless', '--clean', '-n', '-u', 'init.lua', 'open-up.dowel');
  expect(out).toMatch(/^4 dowel .*covr/m);
  expect(out).toContain('mended');
});

test.skipIf(!hasEmacs)('Emacs shows the findings', { timeout: 160_000 }, () => {
  const check = readFileSync(join(import.meta.dirname, 'emacs.el'), 'utf8');
  const folder = folderWith('init.el', `(package-initialize)\n${block('elisp')}\n${check}`);
  const out = run(folder, 'emacs', '--batch', '--load', 'init.el');
  expect(out).toMatch(/^4 .*covr/m);
  expect(out).toContain('mended');
});
