/**
 * One editor's session: the texts it has open lie over the files on the disk, and an engine keeps what is known of
 * all of them. This file only takes in what the editor tells; when files are checked is in ./diagnosing.ts, what
 * is asked about a place in ./handlers/. Paths are the protocol's URIs throughout.
 */
import {
  type ClientCapabilities,
  type Connection,
  DidChangeWatchedFilesNotification,
  type DocumentDiagnosticReport,
  type InitializeResult,
  TextDocumentSyncKind,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver/node';
import { CONFIG_NAME } from '../config/house.ts';
import { Engine } from '../engine/engine.ts';
import { View } from '../features/view.ts';
import type { SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { EngineRanges, LinesCache } from './convert.ts';
import { Diagnosing, type Told } from './diagnosing.ts';
import { filesIn, fromDisk } from './disk.ts';
import { encodingFor } from './encoding.ts';
import { capabilities, registerAll } from './handlers/all.ts';
import { Houses } from './houses.ts';
import { followSettings } from './settings.ts';

/** Where a `use` leads to. What no address can be made of leads nowhere: no file is found there. */
function resolve(from: string, target: string): string {
  try {
    return new URL(encodeURI(target), from).href;
  } catch {
    return NOWHERE;
  }
}

const NOWHERE = 'nowhere:';

export function serve(connection: Connection): void {
  /** Open texts with their versions. */
  const open = new Map<string, number>();
  /** The files of the workspace's folders. */
  const known = new Set<string>();
  let folders: string[] = [];
  let view: View | undefined;
  let client: ClientCapabilities = {};
  const settings = followSettings(connection, () => client);
  /** What a file of the disk said when it was read last. */
  const read = new Map<string, string | undefined>();

  const engine: Engine = new Engine({ read: fromDisk, resolve, houseOf: (uri) => houses.houseOf(uri) });
  const paths = () => [...new Set([...open.keys(), ...known])];
  const host: SourceHost = {
    read: (uri) => engine.text(uri),
    resolve,
    list: paths,
    houseOf: (uri) => houses.houseOf(uri),
  };
  const lines = new LinesCache((uri) => host.read(uri));
  const ranges = new EngineRanges(engine);
  const houses = new Houses({
    resolve,
    read: (uri) => {
      if (open.has(uri)) return engine.text(uri);
      if (!read.has(uri)) read.set(uri, fromDisk(uri));
      return read.get(uri);
    },
  });
  const diagnosing = new Diagnosing({
    connection,
    engine,
    ranges,
    version: (uri) => open.get(uri),
    more: (uri) => {
      const problems = configs.get(uri);
      return problems && engine.placed(uri, problems);
    },
  });

  /** The file itself, then what is open, then what else may use it. */
  const textChanged = (uri: string): void => {
    view = undefined;
    const users = [...known].filter((one) => !open.has(one) && one !== uri && engine.uses(one).includes(uri));
    diagnosing.changed([uri, ...[...open.keys()].filter((one) => one !== uri), ...users]);
  };
  const everythingChanged = (): void => {
    view = undefined;
    diagnosing.changed(paths());
  };
  /** The configurations that hold for what is known: what is wrong with them is told at them. */
  const configs = new Map<string, readonly Finding[]>();
  const agree = (): void => {
    houses.forget();
    read.clear();
    const shown = [...configs.keys()];
    configs.clear();
    for (const uri of paths()) {
      const used = houses.usedFor(uri);
      if (used) configs.set(used.uri, used.problems);
    }
    for (const uri of shown) if (!configs.has(uri)) diagnosing.gone(uri);
    diagnosing.changed([...configs.keys()]);
  };
  const look = (): void => {
    known.clear();
    for (const folder of folders) for (const uri of filesIn(folder)) known.add(uri);
  };
  connection.onInitialize((params): InitializeResult => {
    client = params.capabilities;
    settings.begin(params.initializationOptions);
    folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri ? [params.rootUri] : []);
    const encoding = encodingFor(client);
    ranges.encoding = encoding;
    lines.encoding = encoding;
    diagnosing.pulls = client.textDocument?.diagnostic !== undefined;
    return {
      capabilities: {
        positionEncoding: encoding,
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        diagnosticProvider: { identifier: 'dowel', interFileDependencies: true, workspaceDiagnostics: true },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...capabilities(),
      },
      serverInfo: { name: 'dowel', version: VERSION },
    };
  });
  connection.onInitialized(() => {
    settings.follow();
    if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration) {
      const watchers = [{ globPattern: '**/*.dowel' }, { globPattern: `**/${CONFIG_NAME}` }];
      void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(() => {
        // An editor that cannot watch files says so; open files are still checked as they change.
      });
    }
    if (client.workspace?.workspaceFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => uri));
        folders = [...folders.filter((uri) => !gone.has(uri)), ...added.map(({ uri }) => uri)];
        const before = [...known];
        look();
        for (const uri of before) if (!known.has(uri) && !open.has(uri)) diagnosing.gone(uri);
        agree();
        everythingChanged();
      });
    }
    look();
    agree();
    everythingChanged();
  });

  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    open.set(uri, version);
    engine.put(uri, text);
    if (!known.has(uri)) agree();
    textChanged(uri);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    if (!open.has(uri)) return;
    open.set(uri, version);
    for (const change of contentChanges) {
      if (!('range' in change)) engine.put(uri, change.text);
      else {
        const { start, end } = change.range;
        engine.edit(uri, ranges.inside(uri, start), ranges.inside(uri, end), change.text);
      }
    }
    textChanged(uri);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    open.delete(uri);
    engine.drop(uri);
    if (!known.has(uri)) diagnosing.gone(uri);
    textChanged(uri);
    if (!known.has(uri)) diagnosing.gone(uri);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    const before = new Set(known);
    look();
    for (const { uri } of changes) if (!open.has(uri)) engine.drop(uri);
    for (const uri of before) if (!known.has(uri) && !open.has(uri)) diagnosing.gone(uri);
    if (changes.some(({ uri }) => uri.endsWith(`/${CONFIG_NAME}`))) agree();
    everythingChanged();
    if (client.workspace?.diagnostics?.refreshSupport) connection.languages.diagnostics.refresh();
  });

  const report = (told: Told, before: string | undefined): DocumentDiagnosticReport =>
    told.id === before
      ? { kind: 'unchanged', resultId: told.id }
      : { kind: 'full', resultId: told.id, items: told.diagnostics };
  connection.languages.diagnostics.on(({ textDocument: { uri }, previousResultId }) =>
    report(diagnosing.of(uri), previousResultId),
  );
  connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, token, progress, partial) => {
    const before = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
    const items: WorkspaceDocumentDiagnosticReport[] = [];
    const all = paths();
    progress.begin('Checking procedures', 0, undefined, true);
    for (const [index, uri] of all.entries()) {
      // The editor's messages come first.
      await new Promise((done) => setImmediate(done));
      if (token.isCancellationRequested) break;
      const one = report(diagnosing.of(uri), before.get(uri));
      const item = { ...one, uri, version: open.get(uri) ?? null } as WorkspaceDocumentDiagnosticReport;
      if (partial) partial.report({ items: [item] });
      else items.push(item);
      progress.report(Math.round((100 * (index + 1)) / all.length), `${index + 1} of ${all.length}`);
    }
    progress.done();
    return { items };
  });

  registerAll({
    connection,
    host,
    lines,
    view: () => {
      view ??= new View(host);
      return view;
    },
    paths,
    findings: (uri) => engine.plain(diagnosing.now(uri)),
    version: (uri) => open.get(uri),
    settings: () => settings.now,
    client: () => client,
  });
  connection.listen();
}

declare const VERSION: string;
