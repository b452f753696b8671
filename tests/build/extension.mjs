/** Builds the editor extension into extension/dist: the client, the panels' page, the server beside it, the colouring. */
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const dist = join(root, 'extension/dist');
mkdirSync(dist, { recursive: true });

const shared = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
};
await esbuild.build({
  ...shared,
  entryPoints: [join(root, 'extension/extension.ts')],
  outfile: join(dist, 'extension.cjs'),
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  external: ['vscode'],
});
await esbuild.build({
  ...shared,
  entryPoints: [join(root, 'extension/webview/panel.ts')],
  outfile: join(dist, 'panel.js'),
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
  // It stands inside a page, between `<script>` and `</script>`.
  charset: 'ascii',
});
copyFileSync(join(root, '.build/server.cjs'), join(dist, 'server.cjs'));

const { outputFiles } = await esbuild.build({
  absWorkingDir: root,
  entryPoints: [join(root, 'tests/build/colouring.ts')],
  bundle: true,
  platform: 'node',
  format: 'cjs',
  write: false,
});
const made = { exports: {} };
new Function('module', 'exports', 'require', outputFiles[0].text)(
  made,
  made.exports,
  (await import('node:module')).createRequire(import.meta.url),
);
writeFileSync(join(dist, 'dowel.tmLanguage.json'), `${JSON.stringify(made.exports.colouring(), null, 2)}\n`);
