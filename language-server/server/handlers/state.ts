/** `dowel/state`: how the machine stands before a step, for a panel beside the text. */
import type { Position } from 'vscode-languageserver/node';
import { stateAt } from '../../features/state-at.ts';
import { type Handler, offsetOf } from './handler.ts';

export const state: Handler = {
  capabilities: {},
  register(services) {
    services.connection.onRequest(
      'dowel/state',
      ({ uri, position }: { uri: string; position: Position }) =>
        stateAt(services.host, uri, offsetOf(services, uri, position)) ?? null,
    );
  },
};
