/**
 * Packs the extension: what belongs into it is copied into a folder of its own and becomes `.build/dowel.vsix`. Prints
 * its size. Run after build.mjs and extension.mjs.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const from = join(root, 'extension');
const stage = join(root, '.build/extension');
const vsix = join(root, '.build/dowel.vsix');

/** All that goes in; sources, tests and maps do not. */
const PARTS = [
  'README.md',
  'language-configuration.json',
  'package.nls.json',
  'snippets.json',
  'dist',
  'icons',
  'l10n',
  'schemas',
  'walkthrough',
];

rmSync(stage, { recursive: true, force: true });
mkdirSync(stage, { recursive: true });
for (const part of PARTS) cpSync(join(from, part), join(stage, part), { recursive: true });
cpSync(join(root, 'LICENSE'), join(stage, 'LICENSE.txt'));
const { private: _, ...manifest } = JSON.parse(readFileSync(join(from, 'package.json'), 'utf8'));
writeFileSync(join(stage, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);

const vsce = join(root, 'node_modules/@vscode/vsce/vsce');
const packed = spawnSync(
  process.execPath,
  [vsce, 'package', '--no-dependencies', '--allow-missing-repository', '--out', vsix],
  { cwd: stage, encoding: 'utf8' },
);
if (packed.status !== 0) {
  process.stderr.write(packed.stdout + packed.stderr);
  process.exit(1);
}
const kilobytes = Math.round(statSync(vsix).size / 1024);
process.stdout.write(
  `.build/dowel.vsix: ${kilobytes} kB, with client, server and what the server loads when it is asked for\n`,
);
