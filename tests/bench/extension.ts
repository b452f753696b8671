/**
 * How heavy the extension is: size of the package and of its bundles, and how long it takes until it is active. That is
 * two things one after the other: loading the client (here with an editor that is nothing but names) and the server's
 * first answer. Prints medians of processes begun anew. Run `npm run package` before.
 */
import { spawn, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

const ROOT = resolve(import.meta.dirname, '../..');
const RUNS = 7;
const DIST = join(ROOT, 'extension/dist');

/** Loads the client where every name of the editor is a class; prints ms. */
const LOAD = `
const Module = require('node:module');
const load = Module._load;
const made = () => new Proxy(class {}, { get: (own, key) => own[key] ?? 0 });
const named = Object.fromEntries(process.argv[2].split(' ').map((name) => [name, made()]));
Module._load = (name, ...rest) => name === 'vscode' ? named : load(name, ...rest);
const start = performance.now();
require(process.argv[1]);
console.log(performance.now() - start);
`;

/** Every class, list of values and group of functions that an extension can ask an editor for. */
const NAMES = [
  ...readFileSync(join(ROOT, 'node_modules/@types/vscode/index.d.ts'), 'utf8').matchAll(
    /export (?:class|enum|namespace|const) (\w+)/g,
  ),
].map(([, name]) => name!);

function clientMs(): number {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['-e', LOAD, join(DIST, 'extension.cjs'), NAMES.join(' ')],
    {
      encoding: 'utf8',
    },
  );
  if (status !== 0) throw new Error(stderr.slice(-2_000));
  return Number(stdout);
}

async function serverMs(): Promise<number> {
  const start = performance.now();
  const server = spawn(process.execPath, [join(DIST, 'server.cjs'), '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const client = createProtocolConnection(
    new StreamMessageReader(server.stdout),
    new StreamMessageWriter(server.stdin),
  );
  client.listen();
  await client.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  const taken = performance.now() - start;
  client.dispose();
  server.kill();
  return taken;
}

const median = (all: number[]) => Math.round(all.sort((a, b) => a - b)[Math.floor(all.length / 2)]!);
const client: number[] = [];
const server: number[] = [];
for (let run = 0; run < RUNS; run++) {
  client.push(clientMs());
  server.push(await serverMs());
}
const kilobytes = (...paths: string[]) =>
  Math.round(paths.reduce((sum, path) => sum + statSync(path).size, 0) / 1024);
/** What starts the server, and all that it may load. */
const serverFiles = readdirSync(DIST, { recursive: true, withFileTypes: true })
  .filter((one) => one.isFile() && !['extension.cjs', 'panel.js', 'dowel.tmLanguage.json'].includes(one.name))
  .map((one) => join(one.parentPath, one.name));
console.log(`
| the extension | |
|---|---|
| package | ${kilobytes(join(ROOT, '.build/dowel.vsix'))} kB |
| client | ${kilobytes(join(DIST, 'extension.cjs'))} kB, loaded in ${median(client)} ms |
| server | ${kilobytes(...serverFiles)} kB in ${serverFiles.length} files, first answer after ${median(server)} ms |`);
