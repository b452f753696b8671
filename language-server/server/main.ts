/**
 * The language server as a program: `dowel-server --stdio`, or started by an editor over IPC. It comes in parts with
 * the code that V8 compiled for them, as the command line does (see language-server/cli/start.ts).
 */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { keepHeapSmall } from './heap.ts';
import { serve } from './session.ts';

/** Without streams, over what the command line of the process says. */
export function run(streams?: { input: NodeJS.ReadableStream; output: NodeJS.WritableStream }): void {
  keepHeapSmall();
  const { all } = ProposedFeatures;
  serve(streams ? createConnection(all, streams.input, streams.output) : createConnection(all));
}
