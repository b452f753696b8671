/** The built language server with an editor that the tests play: the protocol's own library over stdio. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

const SERVER = resolve(import.meta.dirname, '../../../.build/server.cjs');

/** A folder with these files; `at` gives their addresses. */
export function folder(files: Readonly<Record<string, string>>) {
  const path = mkdtempSync(join(tmpdir(), 'dowel-'));
  const write = (name: string, text: string) => writeFileSync(join(path, name), text);
  for (const [name, text] of Object.entries(files)) write(name, text);
  return { uri: pathToFileURL(path).href, at: (name: string) => pathToFileURL(join(path, name)).href, write };
}

export class Editor {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly server: ChildProcess;
  readonly client: ProtocolConnection;
  started!: InitializeResult;
  private readonly versions = new Map<string, number>();

  constructor() {
    this.server = spawn(process.execPath, [SERVER, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.client = createProtocolConnection(
      new StreamMessageReader(this.server.stdout!),
      new StreamMessageWriter(this.server.stdin!),
    );
    this.client.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.published.push(params);
    });
    this.client.onRequest('client/registerCapability', () => null);
    this.client.listen();
  }

  async start(folders: readonly { uri: string }[], capabilities: ClientCapabilities = {}): Promise<void> {
    this.started = await this.client.sendRequest('initialize', {
      processId: process.pid,
      rootUri: folders[0]?.uri ?? null,
      workspaceFolders: folders.map(({ uri }, index) => ({ uri, name: `folder ${index + 1}` })),
      capabilities,
    });
    await this.client.sendNotification('initialized', {});
  }

  async open(uri: string, text: string): Promise<void> {
    this.versions.set(uri, 1);
    await this.client.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'dowel', version: 1, text },
    });
  }

  /** Replaces what stands between two positions (line, character). */
  async edit(uri: string, from: [number, number], to: [number, number], text: string): Promise<void> {
    const version = this.versions.get(uri)! + 1;
    this.versions.set(uri, version);
    const [start, end] = [from, to].map(([line, character]) => ({ line, character }));
    await this.client.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges: [{ range: { start, end }, text }],
    });
  }

  /** Waits until everything sent so far was taken in and checked: the answers come in order. */
  async quiet(): Promise<void> {
    for (let turn = 0; turn < 3; turn++) {
      await this.client.sendRequest('workspace/diagnostic', { previousResultIds: [] });
      await new Promise((done) => setTimeout(done, 20));
    }
  }

  /** What was told of a file last; undefined where nothing was. */
  told(uri: string): Diagnostic[] | undefined {
    return this.published.findLast((one) => one.uri === uri)?.diagnostics;
  }

  async stop(): Promise<void> {
    await this.client.sendRequest('shutdown');
    await this.client.sendNotification('exit');
    this.client.dispose();
    this.server.kill();
  }
}
