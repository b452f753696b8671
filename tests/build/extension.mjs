/** Builds the editor extension into extension/dist: the client, the panels' page, the server beside it, the colouring. */
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
copyServer();

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

/** The server and the parts that it can come to, without compiled code: an editor brings a Node of its own. */
function copyServer() {
  copyFileSync(join(root, '.build/server.cjs'), join(dist, 'server.cjs'));
  rmSync(join(dist, 'parts'), { recursive: true, force: true });
  mkdirSync(join(dist, 'parts'));
  const names = new Set(['server-main']);
  for (const name of names) {
    const file = `parts/${name}.cjs`;
    const text = readFileSync(join(root, '.build', file), 'utf8');
    writeFileSync(join(dist, file), text);
    for (const [, other] of text.matchAll(/"part:([\w-]+)"/g)) names.add(other);
  }
}
