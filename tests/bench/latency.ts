/**
 * Part of `npm run bench`: how long an editor waits for the complete findings after one letter. Three servers with
 * the same content: Dowel, a JSON server with a JSON Schema, a YAML server with the same schema; letter by letter in
 * turn, so that a busy machine is as busy for each. Writes `.build/latency.md`.
 *
 * Where a server waits on purpose before it checks, that time is stated and is part of what the author waits.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { contentOf } from './content.ts';
import { EditorClient } from './editor-client.ts';
import { inDowel } from './in-dowel.ts';
import { inJson, JSON_SCHEMA } from './in-json.ts';
import { inYaml } from './in-yaml.ts';
import { interleaved, quantile, runProgram } from './measure.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const FOLDER = join(ROOT, '.build/bench/latency');
const SIZES = [500, 5_000, 20_000];
const EDITS = 40;
const WARM_UP = 10;
/** ms: a server that takes longer than this for a letter is given one letter in five of the others. */
const SLOW = 1_000;

interface Server {
  name: string;
  command: string[];
  language: string;
  ending: string;
  /** ms that the server waits before it checks; as its sources and its documentation say. */
  waits: number;
  pull: boolean;
  settings: Record<string, unknown>;
  initializationOptions: unknown;
}

mkdirSync(FOLDER, { recursive: true });
const schema = join(FOLDER, 'schema.json');
writeFileSync(schema, JSON.stringify(JSON_SCHEMA));
const schemaUri = pathToFileURL(schema).href;
const bin = (path: string) => join(ROOT, 'node_modules', path);

const DOWEL: Server = {
  name: 'Dowel',
  command: [process.execPath, join(ROOT, '.build/server.cjs'), '--stdio'],
  language: 'dowel',
  ending: 'dowel',
  waits: 0,
  pull: true,
  settings: {},
  initializationOptions: {},
};
const JSON_SERVER: Server = {
  name: 'JSON server',
  command: [process.execPath, bin('vscode-langservers-extracted/bin/vscode-json-language-server'), '--stdio'],
  language: 'json',
  ending: 'json',
  // Asked, it answers at once; unasked it waits 500 ms.
  waits: 0,
  pull: true,
  settings: {
    json: { validate: { enable: true }, schemas: [{ fileMatch: ['*.json'], schema: JSON_SCHEMA }] },
  },
  initializationOptions: { provideFormatter: false },
};
const YAML_SERVER: Server = {
  name: 'YAML server',
  command: [process.execPath, bin('yaml-language-server/bin/yaml-language-server'), '--stdio'],
  language: 'yaml',
  ending: 'yaml',
  waits: 200,
  pull: false,
  settings: {
    yaml: { validate: true, schemas: { [schemaUri]: '*.yaml' }, schemaStore: { enable: false } },
  },
  initializationOptions: {},
};

/** Text, and the place where the letter goes: a name near the middle of the document. */
interface Document {
  text: string;
  at: { line: number; character: number };
}

class Open {
  readonly client: EditorClient;
  readonly times: number[] = [];
  readonly server: Server;
  /** ms from the start of the process to its first findings. */
  first = 0;
  /** ms for the letter before. */
  last = 0;
  private readonly document: Document;
  private readonly uri: string;
  private version = 1;
  private typed = false;

  constructor(server: Server, name: string, document: Document) {
    this.server = server;
    this.document = document;
    this.uri = pathToFileURL(join(FOLDER, `${name}.${server.ending}`)).href;
    this.client = new EditorClient(server.command, server.settings);
  }

  async start(): Promise<void> {
    const began = performance.now();
    const { server, client, uri, document } = this;
    await client.start(
      pathToFileURL(join(FOLDER, 'nothing')).href,
      server.pull,
      server.initializationOptions,
    );
    const told = client.nextPublished();
    client.notify('textDocument/didOpen', {
      textDocument: { uri, languageId: server.language, version: 1, text: document.text },
    });
    await (server.pull ? this.pull() : told);
    this.first = performance.now() - began;
  }

  /** Types a letter, or takes it away again, and waits for the findings: ms. */
  async type(): Promise<number> {
    const { client, uri, server } = this;
    const { at } = this.document;
    const end = this.typed ? { ...at, character: at.character + 1 } : at;
    const text = this.typed ? '' : 'x';
    this.typed = !this.typed;
    const began = performance.now();
    const told = client.nextPublished();
    client.notify('textDocument/didChange', {
      textDocument: { uri, version: ++this.version },
      contentChanges: [{ range: { start: at, end }, text }],
    });
    await (server.pull ? this.pull() : told);
    return performance.now() - began;
  }

  private pull(): Promise<unknown> {
    return this.client.request('textDocument/diagnostic', { textDocument: { uri: this.uri } });
  }
}

/** The number of steps with which the content has about so many lines of Dowel. */
function stepsFor(lines: number): number {
  let steps = 5;
  while (inDowel(contentOf({ steps })).split('\n').length < lines)
    steps = Math.ceil((steps * 1.05) / 5) * 5 + 5;
  return steps;
}

function documentOf(text: string, word: RegExp): Document {
  const lines = text.split('\n');
  const middle = Math.floor(lines.length / 2);
  const found = lines.findIndex((line, index) => index >= middle && word.test(line));
  const line = found < 0 ? lines.findIndex((one) => word.test(one)) : found;
  const match = word.exec(lines[line]!)!;
  return { text, at: { line, character: match.index + match[0].length } };
}

/** The same job in several procedures, as a manual has it: a new one with each round of strip and rebuild. */
function inProcedures(text: string): string {
  let count = 0;
  return text.replace(/\n {2}task (strip-\d+)/g, (_, name: string) =>
    count++ === 0
      ? `\n  task ${name}`
      : `\n}\n\nprocedure covers-${count} "Look at more covers"\n  for bench\n{\n  task ${name}`,
  );
}

const STEP = /remove cover-\d+(?=$)/;
const rows: string[][] = [];
for (const lines of SIZES) {
  const content = contentOf({ steps: stepsFor(lines) });
  const dowel = inDowel(content);
  const json = inJson(content);
  const yaml = inYaml(content);
  const opened = [
    new Open(
      { ...DOWEL, name: 'Dowel, several procedures' },
      `many-${lines}`,
      documentOf(inProcedures(dowel), STEP),
    ),
    new Open({ ...DOWEL, name: 'Dowel, one procedure' }, `one-${lines}`, documentOf(dowel, STEP)),
    new Open(JSON_SERVER, `${lines}`, documentOf(json, /"ref": "cover-\d+/)),
    new Open(YAML_SERVER, `${lines}`, documentOf(yaml, /ref: cover-\d+/)),
  ];
  process.stderr.write(`${lines} lines …\n`);
  process.once('exit', () => {
    for (const one of opened) one.client.stop();
  });
  for (const one of opened) await one.start();
  for (let edit = 0; edit < EDITS + WARM_UP; edit++) {
    for (const one of opened) {
      if (one.last > SLOW && edit % 5 !== 0) continue;
      const took = await one.type();
      one.last = took;
      if (edit >= WARM_UP) one.times.push(took);
      await new Promise((done) => setTimeout(done, 10));
    }
  }
  for (const one of opened) {
    const [median, most] = [quantile(one.times, 0.5), quantile(one.times, 0.95)];
    rows.push([
      lines.toLocaleString('en'),
      one.server.name,
      number(median),
      number(most),
      one.server.waits === 0 ? 'none' : `${one.server.waits}`,
      number(one.client.memory),
      number(one.first),
    ]);
    one.client.stop();
  }
}

const started = await start();
const report = [
  `Measured ${new Date().toISOString().slice(0, 10)} with Node ${process.version} on ${cpus().length} cores (shared).`,
  `${EDITS} letters each (a fifth of that where one takes more than a second), typed and taken away in turn near the`,
  'middle; the servers in turn, letter by letter.',
  '',
  '| lines of Dowel | server | median, ms | 95 of 100, ms | waits on purpose, ms | memory, MB | start to first findings, ms |',
  '|---|---|---|---|---|---|---|',
  ...rows.map((row) => `| ${row.join(' | ')} |`),
  '',
  `Start to first findings of a file of 50 steps against \`node -e 0\`: ${number(started)} (aim, at most: 3).`,
  '',
].join('\n');
writeFileSync(join(ROOT, '.build/latency.md'), report);
process.stdout.write(report);

/** How many times as long as `node -e 0` the server takes to its first findings in a small file. */
async function start(): Promise<number> {
  const document = documentOf(inDowel(contentOf({ steps: 50 })), STEP);
  const ratios: number[] = [];
  for (let round = 0; round < 9; round++) {
    const { node } = interleaved([['node', () => runProgram(process.execPath, ['-e', '0'])]], {
      rounds: 1,
      warmUp: 0,
    });
    const one = new Open(DOWEL, 'small', document);
    await one.start();
    one.client.stop();
    ratios.push(one.first / node.ms);
  }
  return quantile(ratios, 0.5);
}

function number(value: number): string {
  return value >= 100 ? Math.round(value).toLocaleString('en') : value.toPrecision(2);
}
