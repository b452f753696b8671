/** The editor's side: starts the language server that stands beside this file and passes everything on to it. */
import { join } from 'node:path';
import { commands, type ExtensionContext, window } from 'vscode';
import {
  LanguageClient,
  type LanguageClientOptions,
  type ServerOptions,
  TransportKind,
} from 'vscode-languageclient/node';

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const module = join(context.extensionPath, 'dist', 'server.cjs');
  const server: ServerOptions = { module, transport: TransportKind.ipc };
  const options: LanguageClientOptions = { documentSelector: [{ language: 'dowel' }] };
  client = new LanguageClient('dowel', 'Dowel', server, options);
  context.subscriptions.push(
    commands.registerCommand('dowel.restartServer', async () => {
      await client?.restart();
      void window.setStatusBarMessage('Dowel: the language server was started again.', 3_000);
    }),
  );
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
