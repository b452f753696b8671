/** The editor's side: starts the language server that stands beside this file, and shows what it answers. */
import { commands, type ExtensionContext } from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { clientOf, restartServer, startServer, stopServer } from './client.ts';
import { Cursor } from './cursor.ts';
import { goTo } from './go-to.ts';
import { newMachine, newProcedure } from './new-files.ts';
import { Panels } from './panels.ts';
import { savePage } from './save-page.ts';
import { StateView } from './state-view.ts';
import { Status } from './status.ts';

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const started = clientOf(context);
  client = started;
  const cursor = new Cursor();
  const state = new StateView(started, cursor);
  const panels = new Panels(context, started, cursor);
  const status = new Status(started, cursor);
  const command = (name: string, run: (...given: never[]) => unknown) =>
    commands.registerCommand(`dowel.${name}`, run);
  context.subscriptions.push(
    cursor,
    state,
    panels,
    status,
    command('goTo', goTo),
    command('newMachine', () => newMachine(context)),
    command('newProcedure', () => newProcedure(context, started)),
    command('showState', async (uri?: string, position?: { line: number; character: number }) => {
      // A lens above a step asks for the state there.
      if (uri && position) await goTo(uri, { start: position, end: position });
      await state.show();
    }),
    command('showPreview', () => panels.show('preview')),
    command('showMap', () => panels.show('map')),
    command('showChart', () => panels.show('chart')),
    command('savePage', () => savePage(started, cursor)),
    command('showOutput', () => started.outputChannel.show()),
    command('restartServer', () => restartServer(started)),
  );
  await commands.executeCommand('setContext', 'dowel.active', true);
  started.onDidChangeState(() => {
    void state.refresh();
    panels.refresh();
    void status.count();
  });
  await startServer(started);
}

export async function deactivate(): Promise<void> {
  if (client) await stopServer(client);
}
