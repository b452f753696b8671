/**
 * One editor's session: the texts it has open lie over the files on the disk; findings are worked out again
 * when one of them changes. Paths are the protocol's URIs throughout.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  type CodeAction,
  CodeActionKind,
  type Connection,
  DidChangeWatchedFilesNotification,
  type DocumentSymbol,
  type InitializeResult,
  SymbolKind,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { formatText } from '../../grammar/format/format.ts';
import { parse } from '../../grammar/parser/parse.ts';
import { checkProject } from '../checks/check-project.ts';
import { hoverAt } from '../features/hover.ts';
import { mendsFor } from '../features/mend.ts';
import { type OutlineItem, outline } from '../features/outline.ts';
import { placesOf, thingAt } from '../features/place.ts';
import { stateAt } from '../features/state-at.ts';
import type { SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { diagnosticOf, LinesCache } from './convert.ts';

const SYMBOLS: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  machine: SymbolKind.Module,
  procedure: SymbolKind.Class,
  thing: SymbolKind.Field,
  task: SymbolKind.Method,
  step: SymbolKind.Event,
};

export function serve(connection: Connection): void {
  const documents = new TextDocuments(TextDocument);
  const host: SourceHost = {
    read: (uri) => documents.get(uri)?.getText() ?? fromDisk(uri),
    resolve: (from, target) => new URL(encodeURI(target), from).href,
  };
  const lines = new LinesCache((uri) => host.read(uri));
  const found = new Map<string, Finding[]>();

  const check = (uri: string): void => {
    const { findings } = checkProject(host, [uri]);
    const own = findings.filter((finding) => finding.file === uri);
    found.set(uri, own);
    const version = documents.get(uri)?.version;
    void connection.sendDiagnostics({
      uri,
      ...(version === undefined ? {} : { version }),
      diagnostics: own.map((finding) => diagnosticOf(finding, lines)),
    });
  };
  /** The open file itself first, then those that may use it. */
  const checkFrom = (uri: string): void => {
    check(uri);
    for (const other of documents.keys()) if (other !== uri) check(other);
  };

  connection.onInitialize(
    (): InitializeResult => ({
      capabilities: {
        textDocumentSync: TextDocumentSyncKind.Incremental,
        documentFormattingProvider: true,
        hoverProvider: true,
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        documentSymbolProvider: true,
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
      },
      serverInfo: { name: 'dowel', version: VERSION },
    }),
  );
  connection.onInitialized(() => {
    void connection.client
      .register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.dowel' }] })
      .catch(() => {
        // An editor that cannot watch files says so; open files are still checked as they change.
      });
  });
  connection.onDidChangeWatchedFiles(() => {
    for (const uri of documents.keys()) check(uri);
  });
  documents.onDidChangeContent(({ document }) => checkFrom(document.uri));
  documents.onDidClose(({ document }) => {
    found.delete(document.uri);
    void connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    for (const uri of documents.keys()) check(uri);
  });

  const offsetOf = (uri: string, position: { line: number; character: number }) =>
    lines.of(uri).offset({ line: position.line, column: position.character });

  connection.onHover(({ textDocument: { uri }, position }) => {
    const hover = hoverAt(host, uri, offsetOf(uri, position));
    return hover
      ? { contents: { kind: 'markdown', value: hover.text }, range: lines.range(uri, hover) }
      : null;
  });
  connection.onDefinition(({ textDocument: { uri }, position }) => {
    const meant = thingAt(host, uri, offsetOf(uri, position));
    return meant ? lines.location(meant.thing.place.file, meant.thing.place) : null;
  });
  connection.onReferences(({ textDocument: { uri }, position }) => {
    const meant = thingAt(host, uri, offsetOf(uri, position));
    if (!meant) return [];
    const files = new Set([meant.thing.place.file, uri, ...documents.keys()]);
    return placesOf(host, [...files], meant).map((place) => lines.location(place.file, place));
  });
  connection.onDocumentHighlight(({ textDocument: { uri }, position }) => {
    const meant = thingAt(host, uri, offsetOf(uri, position));
    return meant ? placesOf(host, [uri], meant).map((place) => ({ range: lines.range(uri, place) })) : [];
  });
  connection.onDocumentSymbol(({ textDocument: { uri } }) => {
    const symbols = (items: readonly OutlineItem[]): DocumentSymbol[] =>
      items.map((item) => ({
        name: item.name,
        detail: item.detail,
        kind: SYMBOLS[item.kind],
        range: lines.range(uri, item),
        selectionRange: lines.range(uri, item.at),
        children: symbols(item.children),
      }));
    return symbols(outline(parse(host.read(uri) ?? '').tree));
  });
  connection.onDocumentFormatting(({ textDocument: { uri } }) => {
    const text = host.read(uri) ?? '';
    const formatted = formatText(text);
    return formatted === text ? [] : [lines.edit(uri, { start: 0, end: text.length }, formatted)];
  });
  connection.onCodeAction(({ textDocument: { uri }, range }) => {
    const from = offsetOf(uri, range.start);
    const to = offsetOf(uri, range.end);
    const actions: CodeAction[] = [];
    for (const finding of found.get(uri) ?? []) {
      if (finding.end < from || finding.start > to) continue;
      // A correction of a word is certain by itself; the others are looked for and tried when somebody asks.
      const mends = finding.mends && finding.mends.length > 0 ? finding.mends : mendsFor(host, uri, finding);
      for (const mend of mends) {
        const changes: Record<string, ReturnType<typeof lines.edit>[]> = {};
        for (const edit of mend.edits) {
          changes[edit.file] ??= [];
          changes[edit.file]!.push(lines.edit(edit.file, edit, edit.text));
        }
        actions.push({
          title: mend.title,
          kind: CodeActionKind.QuickFix,
          diagnostics: [diagnosticOf(finding, lines)],
          edit: { changes },
        });
      }
    }
    return actions;
  });
  connection.onRequest(
    'dowel/state',
    ({ uri, position }: { uri: string; position: { line: number; character: number } }) =>
      stateAt(host, uri, offsetOf(uri, position)) ?? null,
  );

  documents.listen(connection);
  connection.listen();
}

declare const VERSION: string;

function fromDisk(uri: string): string | undefined {
  try {
    return uri.startsWith('file:') ? readFileSync(fileURLToPath(uri), 'utf8') : undefined;
  } catch {
    return undefined;
  }
}
