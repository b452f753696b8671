/**
 * Runs the built program on samples in this process and stores the code that V8 compiled for each part.
 * Run by build.mjs with the folder and the names of the parts; what the program prints here is of no interest.
 */
const { readFileSync, writeFileSync } = require('node:fs');
const { join, resolve } = require('node:path');
const { PassThrough } = require('node:stream');
const { pathToFileURL } = require('node:url');

const [parts, ...names] = process.argv.slice(2);
const { load, scripts } = require(join(parts, 'dowel.cjs')).partsIn(parts);

/** Command lines that reach the code worth storing; their exit codes do not matter here. */
const SAMPLES = [
  ['check', 'procedures'],
  ['check', '--format', 'json', 'procedures'],
  ['explain'],
  ['format', '--check', 'procedures'],
  ['state', 'procedures/tarnbrook/valve-plate.dowel', '--at', '20'],
];

// Code fits only where V8's options are those of the run that loads it: those of a start, not of a long run.
require('node:v8').setFlagsFromString = () => {};

async function run() {
  for (const sample of SAMPLES) await load('main').main(sample);
  await serveSamples();
  for (const name of names) {
    load(name);
    writeFileSync(join(parts, `${name}.code`), scripts.get(name).createCachedData());
  }
}

/** Asks the server what an editor asks first, over pipes. */
async function serveSamples() {
  const input = new PassThrough();
  const output = new PassThrough();
  load('server-main').run({ input, output });
  const send = (message) => {
    const text = JSON.stringify({ jsonrpc: '2.0', ...message });
    input.write(`Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`);
  };
  const said = (what) =>
    new Promise((resolve) => {
      let all = '';
      output.on('data', (piece) => {
        all += piece;
        if (all.includes(what)) resolve();
      });
    });
  const file = resolve('procedures/tarnbrook/valve-plate.dowel');
  const uri = pathToFileURL(file).href;
  send({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
  await said('"capabilities"');
  send({ method: 'initialized', params: {} });
  const version = 1;
  const found = said('publishDiagnostics');
  const text = readFileSync(file, 'utf8');
  send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri, languageId: 'dowel', version, text } },
  });
  await found;
}

// The server would go on listening.
run().then(() => process.exit(0));
