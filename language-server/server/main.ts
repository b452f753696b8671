/** The language server as a program: `dowel-server --stdio`, or started by an editor over IPC. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from './session.ts';

serve(createConnection(ProposedFeatures.all));
