/** Every feature of the protocol that answers about a place, in one list. */
import type { ServerCapabilities } from 'vscode-languageserver/node';
import { codeActions } from './code-actions.ts';
import { completion } from './completion.ts';
import { formatting } from './formatting.ts';
import type { Handler, Services } from './handler.ts';
import { hover } from './hover.ts';
import { references } from './references.ts';
import { rename } from './rename.ts';
import { state } from './state.ts';
import { symbols } from './symbols.ts';

const HANDLERS: readonly Handler[] = [
  completion,
  hover,
  references,
  rename,
  symbols,
  formatting,
  codeActions,
  state,
];

/** What all of them together can do. */
export function capabilities(): ServerCapabilities {
  return Object.assign({}, ...HANDLERS.map((handler) => handler.capabilities)) as ServerCapabilities;
}

export function registerAll(services: Services): void {
  for (const handler of HANDLERS) handler.register(services);
}
