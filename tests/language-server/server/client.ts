/**
 * An editor for tests: the session is spoken to over streams in this process, in the protocol's own words. The
 * protocol's library is the client. (session.test.ts speaks to the built program instead.)
 */
import { PassThrough } from 'node:stream';
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type Position,
  ProposedFeatures,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import { serve } from '../../../language-server/server/session.ts';

/** What the build puts in its place. */
(globalThis as unknown as { VERSION: string }).VERSION = 'test';

export const MARK = '▮';

export interface Editor {
  client: ProtocolConnection;
  initialized: InitializeResult;
  /** The texts as they are, by name. */
  texts: Map<string, string>;
  uri(name: string): string;
  ask<Answer>(method: string, params: unknown): Promise<Answer>;
  /** The place of a piece of a text: its beginning, `offset` characters on. */
  at(name: string, piece: string, offset?: number): Position;
  open(name: string, text: string): Promise<void>;
  change(name: string, text: string): Promise<void>;
  /** What was last told to be wrong in a file, once it suits. */
  diagnostics(name: string, ready?: (all: readonly Diagnostic[]) => boolean): Promise<readonly Diagnostic[]>;
  close(): Promise<void>;
}

export async function editor(
  files: Readonly<Record<string, string>>,
  capabilities: ClientCapabilities = {},
  initializationOptions: unknown = {},
): Promise<Editor> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  serve(createConnection(ProposedFeatures.all, new StreamMessageReader(up), new StreamMessageWriter(down)));
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const told = new Map<string, readonly Diagnostic[]>();
  const waiting = new Set<() => void>();
  client.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    told.set(params.uri, params.diagnostics);
    for (const one of [...waiting]) one();
  });
  client.onRequest('client/registerCapability', () => null);
  client.onRequest('workspace/configuration', () => [initializationOptions]);
  client.onRequest('workspace/semanticTokens/refresh', () => null);
  client.onRequest('workspace/codeLens/refresh', () => null);
  client.onRequest('workspace/inlayHint/refresh', () => null);
  client.onRequest('workspace/diagnostic/refresh', () => null);
  client.onRequest('window/workDoneProgress/create', () => null);
  client.listen();
  const uri = (name: string) => `file:///workshop/${name}`;
  const texts = new Map<string, string>();
  const versions = new Map<string, number>();
  const initialized = await client.sendRequest<InitializeResult>('initialize', {
    processId: null,
    rootUri: null,
    capabilities,
    initializationOptions,
  });
  await client.sendNotification('initialized', {});
  const made: Editor = {
    client,
    initialized,
    texts,
    uri,
    ask: (method, params) => client.sendRequest(method, params),
    at: (name, piece, offset = 0) => positionOf(texts.get(name)!, texts.get(name)!.indexOf(piece) + offset),
    open: async (name, text) => {
      texts.set(name, text);
      versions.set(name, 1);
      await client.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uri(name), languageId: 'dowel', version: 1, text },
      });
    },
    change: async (name, text) => {
      texts.set(name, text);
      versions.set(name, versions.get(name)! + 1);
      told.delete(uri(name));
      await client.sendNotification('textDocument/didChange', {
        textDocument: { uri: uri(name), version: versions.get(name)! },
        contentChanges: [{ text }],
      });
    },
    diagnostics: (name, ready = () => true) =>
      new Promise((done) => {
        const look = () => {
          const all = told.get(uri(name));
          if (!all || !ready(all)) return;
          waiting.delete(look);
          done(all);
        };
        waiting.add(look);
        look();
      }),
    close: async () => {
      await client.sendRequest('shutdown');
      client.dispose();
    },
  };
  for (const [name, text] of Object.entries(files)) await made.open(name, text);
  return made;
}

export function positionOf(text: string, offset: number): Position {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length - 1, character: before.at(-1)!.length };
}

export function offsetIn(text: string, { line, character }: Position): number {
  return text.split('\n').slice(0, line).join('\n').length + (line > 0 ? 1 : 0) + character;
}

/** A text after some edits, which do not overlap. */
export function edited(text: string, edits: readonly TextEdit[]): string {
  const sorted = [...edits].sort((a, b) => offsetIn(text, b.range.start) - offsetIn(text, a.range.start));
  return sorted.reduce(
    (now, { range, newText }) =>
      now.slice(0, offsetIn(text, range.start)) + newText + now.slice(offsetIn(text, range.end)),
    text,
  );
}

/** The texts of an editor after a change to the project, by name. */
export function changed(editor: Editor, { changes = {} }: WorkspaceEdit): Record<string, string> {
  return Object.fromEntries(
    [...editor.texts].map(([name, text]) => [name, edited(text, changes[editor.uri(name)] ?? [])]),
  );
}
