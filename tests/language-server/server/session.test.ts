/**
 * The built language server, spoken to over standard input and output as an editor does. The protocol's own
 * library is the client.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type CodeAction,
  createProtocolConnection,
  type Diagnostic,
  type DocumentSymbol,
  type Hover,
  type Location,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
} from 'vscode-languageserver/node';

const ROOT = resolve(import.meta.dirname, '../../..');
const PRESS = `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed  held by cover-screws
  fastener cover-screws "cover screws" x4  thread M6x1  class 8.8  torque 9 N·m
}
`;
const JOB = `use "press.dowel"

procedure open-up "Open the press" for press ends with cover off {
  remove covr
}
`;

let server: ChildProcess;
let client: ProtocolConnection;
const received = new Map<string, PublishDiagnosticsParams>();
const waiting: {
  ready: (params: PublishDiagnosticsParams) => boolean;
  resolve: (params: PublishDiagnosticsParams) => void;
}[] = [];

const uri = (name: string) => `file:///workshop/${name}`;

function diagnosticsOf(
  name: string,
  ready: (found: readonly Diagnostic[]) => boolean,
): Promise<PublishDiagnosticsParams> {
  return new Promise((done) => {
    const wanted = (params: PublishDiagnosticsParams) =>
      params.uri === uri(name) && ready(params.diagnostics);
    const known = received.get(uri(name));
    if (known && wanted(known)) done(known);
    else waiting.push({ ready: wanted, resolve: done });
  });
}

beforeAll(async () => {
  server = spawn(process.execPath, [resolve(ROOT, '.build/server.cjs'), '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  client = createProtocolConnection(
    new StreamMessageReader(server.stdout!),
    new StreamMessageWriter(server.stdin!),
  );
  client.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    received.set(params.uri, params);
    for (const one of waiting.splice(0)) {
      if (one.ready(params)) one.resolve(params);
      else waiting.push(one);
    }
  });
  client.onRequest('client/registerCapability', () => null);
  client.listen();
  await client.sendRequest('initialize', { processId: process.pid, rootUri: uri(''), capabilities: {} });
  await client.sendNotification('initialized', {});
  for (const [name, text] of [
    ['press.dowel', PRESS],
    ['open-up.dowel', JOB],
  ] as const) {
    await client.sendNotification('textDocument/didOpen', {
      textDocument: { uri: uri(name), languageId: 'dowel', version: 1, text },
    });
  }
});

afterAll(async () => {
  await client.sendRequest('shutdown');
  await client.sendNotification('exit');
  client.dispose();
  server.kill();
});

describe('the language server', () => {
  it('marks a misspelt name, offers the one that was meant, and is silent once all is right', async () => {
    const { diagnostics } = await diagnosticsOf('open-up.dowel', (all) =>
      all.some(({ code }) => code === 'unknown-name'),
    );
    const misspelt = diagnostics.find(({ code }) => code === 'unknown-name')!;
    expect(misspelt.range).toEqual({ start: { line: 3, character: 9 }, end: { line: 3, character: 13 } });
    const actions: CodeAction[] = await client.sendRequest('textDocument/codeAction', {
      textDocument: { uri: uri('open-up.dowel') },
      range: misspelt.range,
      context: { diagnostics },
    });
    const edit = actions[0]!.edit!.changes![uri('open-up.dowel')]![0]!;
    expect(edit).toEqual({ range: misspelt.range, newText: 'cover' });
    await client.sendNotification('textDocument/didChange', {
      textDocument: { uri: uri('open-up.dowel'), version: 2 },
      contentChanges: [{ range: edit.range, text: edit.newText }],
    });
    const held = await diagnosticsOf('open-up.dowel', (all) => all.some(({ code }) => code === 'still-held'));
    expect(held.version).toBe(2);
    const heldBack = held.diagnostics.find(({ code }) => code === 'still-held')!;
    const mends: CodeAction[] = await client.sendRequest('textDocument/codeAction', {
      textDocument: { uri: uri('open-up.dowel') },
      range: heldBack.range,
      context: { diagnostics: held.diagnostics },
    });
    // The search for mends offers what a technician would do: take the screws out first, or with the part.
    expect(mends.map((mend) => JSON.stringify(mend.edit)).join()).toMatch(/unbolt|remove cover-screws/);
    await client.sendNotification('textDocument/didChange', {
      textDocument: { uri: uri('open-up.dowel'), version: 3 },
      contentChanges: [
        { range: { start: { line: 3, character: 2 }, end: { line: 3, character: 8 } }, text: 'unbolt' },
      ],
    });
    const right = await diagnosticsOf('open-up.dowel', (all) => all.length === 0);
    expect(right.version).toBe(3);
  });

  it('tells what a thing is and how it stands, where it is declared and where it is named', async () => {
    const at = { textDocument: { uri: uri('open-up.dowel') }, position: { line: 3, character: 11 } };
    const hover: Hover = await client.sendRequest('textDocument/hover', at);
    expect(hover.contents).toMatchObject({ value: expect.stringContaining('**cover** · part') });
    expect(hover.contents).toMatchObject({ value: expect.stringContaining('held by cover screws') });
    const screws: Hover = await client.sendRequest('textDocument/hover', {
      textDocument: { uri: uri('press.dowel') },
      position: { line: 3, character: 14 },
    });
    // 9 N·m is 6.64 lbf·ft: 1 lbf·ft is 1.3558 N·m (unit definitions, exact).
    expect(screws.contents).toMatchObject({ value: expect.stringMatching(/×4[\s\S]*9 N·m \(.*lbf/) });
    const declared: Location = await client.sendRequest('textDocument/definition', at);
    expect(declared).toMatchObject({ uri: uri('press.dowel'), range: { start: { line: 2, character: 7 } } });
    const places: Location[] = await client.sendRequest('textDocument/references', {
      ...at,
      context: { includeDeclaration: true },
    });
    expect(places.map((place) => `${place.uri.split('/').pop()}:${place.range.start.line}`)).toEqual([
      'press.dowel:2',
      'open-up.dowel:2',
      'open-up.dowel:3',
    ]);
  });

  it('gives the outline, the layout and the state of the machine', async () => {
    const textDocument = { uri: uri('open-up.dowel') };
    const symbols: DocumentSymbol[] = await client.sendRequest('textDocument/documentSymbol', {
      textDocument: { uri: uri('press.dowel') },
    });
    expect(symbols[0]).toMatchObject({
      name: 'press',
      children: [{ name: 'bed' }, { name: 'cover' }, { name: 'cover-screws' }],
    });
    const edits: TextEdit[] = await client.sendRequest('textDocument/formatting', {
      textDocument,
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(edits.length).toBeLessThanOrEqual(1);
    const state = await client.sendRequest<{ groups: { state: string; things: { name: string }[] }[] }>(
      'dowel/state',
      { uri: textDocument.uri, position: { line: 4, character: 0 } },
    );
    expect(state.groups.map((group) => `${group.state}: ${group.things.map((thing) => thing.name)}`)).toEqual(
      ['off: cover', 'out: cover-screws'],
    );
  });

  it('checks those that use a file when the file changes', async () => {
    await client.sendNotification('textDocument/didChange', {
      textDocument: { uri: uri('press.dowel'), version: 2 },
      contentChanges: [{ text: PRESS.replaceAll('cover', 'lid') }],
    });
    await diagnosticsOf('open-up.dowel', (all) => all.some(({ code }) => code === 'unknown-name'));
    await client.sendNotification('textDocument/didChange', {
      textDocument: { uri: uri('press.dowel'), version: 3 },
      contentChanges: [{ text: PRESS }],
    });
    const right = await diagnosticsOf('open-up.dowel', (all) => all.length === 0);
    expect(right.diagnostics).toEqual([]);
  });
});
