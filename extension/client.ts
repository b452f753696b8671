/**
 * The language server's other end: starts it, passes settings on, and starts it again when it dies. What is typed
 * stays in the editor; a server that comes back is given all open texts anew.
 */
import { once } from 'node:events';
import { join } from 'node:path';
import { type ExtensionContext, l10n, window, workspace } from 'vscode';
import {
  CloseAction,
  ErrorAction,
  ErrorCodes,
  LanguageClient,
  type LanguageClientOptions,
  ResponseError,
  type ServerOptions,
  State,
  TransportKind,
} from 'vscode-languageclient/node';
import { Deaths } from './deaths.ts';

export function clientOf(context: ExtensionContext): LanguageClient {
  const module = join(context.extensionPath, 'dist', 'server.cjs');
  const server: ServerOptions = { module, transport: TransportKind.ipc };
  const deaths = new Deaths();
  const options: LanguageClientOptions = {
    documentSelector: [{ language: 'dowel' }],
    initializationOptions: () => workspace.getConfiguration().get('dowel'),
    // The library would show its own words; `startServer` says it, or the message about the server's end.
    initializationFailedHandler: () => false,
    errorHandler: {
      error: () => ({ action: ErrorAction.Continue }),
      closed: () => {
        const again = deaths.mayRestart(Date.now());
        // The message must not hold up the new start.
        void tell(client, again);
        return { action: again ? CloseAction.Restart : CloseAction.DoNotRestart, handled: true };
      },
    },
  };
  const client = new Client('dowel', 'Dowel', server, options);
  return client;
}

/** In the output stands all that goes wrong; what is told of the server's end is told once, in words of ours. */
class Client extends LanguageClient {
  override error(message: string, data?: unknown, show?: boolean | 'force'): void {
    super.error(message, data, isItsEnd(data) ? false : show);
  }
}

/** A question that had no answer yet when the server ended. */
function isItsEnd(error: unknown): boolean {
  return error instanceof ResponseError && error.code === ErrorCodes.PendingResponseRejected;
}

async function tell(client: LanguageClient, again: boolean): Promise<void> {
  const output = l10n.t('Show Output');
  const restart = l10n.t('Restart');
  const chosen = again
    ? await window.showWarningMessage(
        l10n.t('Dowel’s language server stopped and is started again. Nothing you typed is lost.'),
        output,
      )
    : await window.showErrorMessage(
        l10n.t(
          'Dowel’s language server stopped several times in a few minutes, so it stays off: no findings until it is started again. Nothing you typed is lost. The output says what went wrong last.',
        ),
        restart,
        output,
      );
  if (chosen === output) client.outputChannel.show();
  if (chosen === restart) await restartServer(client);
}

/** Ends the server; one that hangs and does not answer is ended by force. */
export async function stopServer(client: LanguageClient): Promise<void> {
  const server = client.serverProcess;
  try {
    await client.stop();
  } catch {
    server?.kill('SIGKILL');
    // An end that comes after the next start would be taken for the end of that one, and start a second.
    if (server && server.exitCode === null && server.signalCode === null) await once(server, 'close');
  }
}

export async function restartServer(client: LanguageClient): Promise<void> {
  if (client.state === State.Starting) {
    // It hangs before it has answered once; its end makes the client start another.
    client.serverProcess?.kill('SIGKILL');
    return;
  }
  if (client.isRunning()) await stopServer(client);
  await startServer(client);
}

/** Resolves when it runs, or when it is told why it does not. */
export async function startServer(client: LanguageClient): Promise<void> {
  try {
    await client.start();
  } catch (error) {
    // One that dies while it starts is told of, and started again, as at any other time.
    if (isItsEnd(error)) return;
    void window.showErrorMessage(
      l10n.t(
        'Dowel’s language server did not start ({0}). Install the extension again; if that does not help, the output says more.',
        error instanceof Error ? error.message : String(error),
      ),
    );
  }
}
