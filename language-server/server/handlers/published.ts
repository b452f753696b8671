/**
 * What a reader will get, for panels of the editor: `dowel/preview` (the page of the procedure at a place),
 * `dowel/chart` (what comes off and goes back) and `dowel/map` (how the machine hangs together). Params
 * `{ uri, position }`; null where no procedure or machine is there, or where a chart would tell nothing. With each
 * comes which of its elements belongs to which place of the texts (./shown.ts). The publisher is loaded with the first of
 * these, not with the server.
 */
import type { Position } from 'vscode-languageserver/node';
import type { Drawing } from '../../publish/drawings/svg.ts';
import type { Handler } from './handler.ts';
import type { Shown } from './shown.ts';

export interface Preview extends Shown {
  procedure: string;
}

export type ShownDrawing = Drawing & Shown;

export interface Asked {
  uri: string;
  position: Position;
}

export const published: Handler = {
  capabilities: {},
  register(services) {
    const views = () => import('./published-views.ts');
    const { connection } = services;
    connection.onRequest('dowel/preview', async (asked: Asked) => (await views()).preview(services, asked));
    connection.onRequest('dowel/chart', async (asked: Asked) => (await views()).chart(services, asked));
    connection.onRequest('dowel/map', async (asked: Asked) => (await views()).map(services, asked));
  },
};
