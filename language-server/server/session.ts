/**
 * One editor's session: the texts it has open lie over the files on the disk; findings are worked out again
 * when one of them changes. Paths are the protocol's URIs throughout.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  type ClientCapabilities,
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { checkProject } from '../checks/check-project.ts';
import { CONFIG_NAME } from '../config/house.ts';
import { View } from '../features/view.ts';
import type { SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { diagnosticOf, LinesCache } from './convert.ts';
import { capabilities, registerAll } from './handlers/all.ts';
import { Houses } from './houses.ts';
import { settingsFrom, USUAL } from './settings.ts';

export function serve(connection: Connection): void {
  const documents = new TextDocuments(TextDocument);
  const host: SourceHost = {
    read: (uri) => documents.get(uri)?.getText() ?? fromDisk(uri),
    resolve: (from, target) => new URL(encodeURI(target), from).href,
    houseOf: (uri) => houses.houseOf(uri),
  };
  const houses = new Houses(host);
  const lines = new LinesCache((uri) => host.read(uri));
  const found = new Map<string, Finding[]>();
  const configs = new Set<string>();
  let view: View | undefined;
  let client: ClientCapabilities = {};
  let settings = USUAL;

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
  /** What is wrong with the configurations of the open files is shown in these. */
  const checkHouses = (): void => {
    const shown = new Set(configs);
    configs.clear();
    for (const uri of documents.keys()) {
      const used = houses.usedFor(uri);
      if (!used || configs.has(used.uri)) continue;
      configs.add(used.uri);
      const diagnostics = used.problems.map((finding) => diagnosticOf(finding, lines));
      void connection.sendDiagnostics({ uri: used.uri, diagnostics });
    }
    for (const uri of shown) if (!configs.has(uri)) void connection.sendDiagnostics({ uri, diagnostics: [] });
  };
  /** The open file itself first, then those that may use it. */
  const checkFrom = (uri: string): void => {
    view = undefined;
    check(uri);
    for (const other of documents.keys()) if (other !== uri) check(other);
  };

  connection.onInitialize((params): InitializeResult => {
    client = params.capabilities;
    settings = settingsFrom(params.initializationOptions);
    return {
      capabilities: {
        textDocumentSync: TextDocumentSyncKind.Incremental,
        ...capabilities(),
      },
      serverInfo: { name: 'dowel', version: VERSION },
    };
  });
  connection.onInitialized(() => {
    void connection.client
      .register(DidChangeWatchedFilesNotification.type, {
        watchers: [{ globPattern: '**/*.dowel' }, { globPattern: `**/${CONFIG_NAME}` }],
      })
      .catch(() => {
        // An editor that cannot watch files says so; open files are still checked as they change.
      });
  });
  connection.onDidChangeWatchedFiles(() => {
    view = undefined;
    houses.forget();
    checkHouses();
    for (const uri of documents.keys()) check(uri);
  });
  documents.onDidOpen(() => checkHouses());
  documents.onDidChangeContent(({ document }) => checkFrom(document.uri));
  documents.onDidClose(({ document }) => {
    view = undefined;
    found.delete(document.uri);
    void connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    for (const uri of documents.keys()) check(uri);
  });

  registerAll({
    connection,
    host,
    lines,
    view: () => {
      view ??= new View(host);
      return view;
    },
    paths: () => [...documents.keys()],
    findings: (uri) => found.get(uri) ?? [],
    version: (uri) => documents.get(uri)?.version,
    settings: () => settings,
    client: () => client,
  });
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
