/**
 * Builds what runs: `.build/dowel.cjs` and its parts. Every `import('./x.ts')` in the sources becomes a part
 * of its own, loaded only when it is reached. Then the parts are run once on samples, so that V8's compiled
 * code can be stored beside them (see language-server/cli/start.ts).
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const out = join(root, '.build');
/** Built aside and moved into place at the end, so that a running program never meets half a build. */
const parts = join(out, `parts-${process.pid}`);

/** Settings that all bundles share. */
const shared = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  // Short source is read faster; names stay, so that a stack trace can be read.
  minifySyntax: true,
  minifyWhitespace: true,
  charset: 'ascii',
  legalComments: 'none',
  logLevel: 'warning',
  // Left alone, they are made once; esbuild would make them anew wherever they are used.
  supported: { 'regexp-unicode-property-escapes': true },
  plugins: [{ name: 'lazy', setup: lazily }],
  define: {
    'import.meta.dirname': '__dirname',
    'import.meta.filename': '__filename',
    VERSION: JSON.stringify(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).version),
  },
};

// How the grammar decides is worked out once, here (grammar/parser/decisions.ts).
shared.define.PARSER_DECISIONS = JSON.stringify(await decisions());

mkdirSync(parts, { recursive: true });
process.on('exit', () => rmSync(parts, { recursive: true, force: true }));

await build({
  ...shared,
  entryPoints: [join(root, 'language-server/cli/start.ts')],
  outfile: join(parts, 'dowel.cjs'),
  banner: { js: '#!/usr/bin/env node' },
  footer: { js: 'if (require.main === module) module.exports.run();' },
});

await build({
  ...shared,
  entryPoints: [join(root, 'language-server/cli/start.ts')],
  outfile: join(parts, 'server.cjs'),
  footer: { js: 'if (require.main === module) module.exports.runServer();' },
});

const waiting = new Map([
  ['main', join(root, 'language-server/cli/main.ts')],
  ['server-main', join(root, 'language-server/server/main.ts')],
]);
const built = new Set();
for (let next = take(waiting); next !== undefined; next = take(waiting)) {
  const [name, file] = next;
  built.add(name);
  await build({
    ...shared,
    entryPoints: [file],
    outfile: join(parts, `${name}.cjs`),
    // `import()` becomes a promise of `require`, which start.ts answers.
    supported: { ...shared.supported, 'dynamic-import': false },
    plugins: [...shared.plugins, { name: 'parts', setup }],
  });
}

const stored = spawnSync(process.execPath, [join(root, 'tests/build/store-code.cjs'), parts, ...built], {
  cwd: root,
  stdio: ['ignore', 'ignore', 'inherit'],
});
if (stored.status !== 0) process.exit(1);

const place = join(out, 'parts');
const old = `${parts}-old`;
if (existsSync(place)) renameSync(place, old);
renameSync(parts, place);
renameSync(join(place, 'dowel.cjs'), join(out, 'dowel.cjs'));
renameSync(join(place, 'server.cjs'), join(out, 'server.cjs'));
chmodSync(join(out, 'dowel.cjs'), 0o755);
rmSync(old, { recursive: true, force: true });

/**
 * esbuild says itself what is wrong. Parts are read byte by byte, so that V8 need not decode them: what esbuild leaves
 * unescaped with `charset: 'ascii'`, which is literal regular expressions, is escaped here.
 */
async function build(settings) {
  await esbuild.build(settings).catch(() => process.exit(1));
  const text = readFileSync(settings.outfile, 'utf8');
  const escaped = (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
  writeFileSync(settings.outfile, text.replace(/[\u0080-\uffff]/g, escaped));
}

/**
 * Commander loads Node's processes, and with them its network, for commands that are programs of their own. There are none
 * here; loading them is a tenth of a start.
 */
function lazily(builder) {
  builder.onLoad({ filter: /commander[/\\]lib[/\\]command\.js$/ }, ({ path }) => {
    const eager = "const childProcess = require('node:child_process');";
    const text = readFileSync(path, 'utf8');
    if (!text.includes(eager))
      throw new Error(`${path} has changed: it does not load its processes as it did.`);
    const lazy = "const childProcess = { get spawn() { return require('node:child_process').spawn; } };";
    return { contents: text.replace(eager, lazy), loader: 'js' };
  });
}

async function decisions() {
  const { outputFiles } = await esbuild.build({
    ...shared,
    stdin: {
      contents: `import { decisionsOf } from './grammar/parser/decisions.ts';
        import { DowelParser } from './grammar/parser/file.ts';
        module.exports = decisionsOf(new DowelParser());`,
      resolveDir: root,
    },
    write: false,
  });
  const made = { exports: '' };
  new Function('module', 'exports', outputFiles[0].text)(made, made.exports);
  return made.exports;
}

/** Gives every relative `import()` a part of its own. */
function setup(builder) {
  builder.onResolve({ filter: /^\./ }, ({ kind, path, resolveDir }) => {
    if (kind !== 'dynamic-import') return undefined;
    const file = join(resolveDir, path);
    const name = relative(join(root, 'language-server'), file).replace(/\.ts$/, '').replace(/[/\\]/g, '-');
    if (!built.has(name)) waiting.set(name, file);
    return { path: `part:${name}`, external: true };
  });
  // The server reads configurations while it answers, so it cannot wait for a part; it loads the reader of
  // configurations, which is a third of it, with the first one all the same.
  builder.onResolve({ filter: /\/config\/config\.ts$/ }, ({ importer, resolveDir, path }) => {
    if (!importer.endsWith(join('server', 'houses.ts'))) return undefined;
    if (!built.has('config-config')) waiting.set('config-config', join(resolveDir, path));
    return { path: 'config-config', namespace: 'late' };
  });
  builder.onLoad({ filter: /./, namespace: 'late' }, ({ path }) => ({
    contents: `exports.readConfig = (...given) => require('part:${path}').readConfig(...given);`,
  }));
  builder.onResolve({ filter: /^part:/ }, ({ path }) => ({ path, external: true }));
}

function take(map) {
  for (const entry of map) {
    map.delete(entry[0]);
    return entry;
  }
  return undefined;
}
