/** Every feature of the protocol that answers about a place, in one list. */
import type { ServerCapabilities } from 'vscode-languageserver/node';
import { callHierarchy } from './call-hierarchy.ts';
import { cases } from './cases.ts';
import { codeActions } from './code-actions.ts';
import { completion } from './completion.ts';
import { formatting } from './formatting.ts';
import type { Handler, Services } from './handler.ts';
import { hints } from './hints.ts';
import { hover } from './hover.ts';
import { links } from './links.ts';
import { newProcedure } from './new-procedure.ts';
import { published } from './published.ts';
import { ranges } from './ranges.ts';
import { references } from './references.ts';
import { rename } from './rename.ts';
import { semanticTokens } from './semantic-tokens.ts';
import { state } from './state.ts';
import { symbols } from './symbols.ts';

const HANDLERS: readonly Handler[] = [
  completion,
  hover,
  references,
  rename,
  symbols,
  semanticTokens,
  ranges,
  links,
  callHierarchy,
  hints,
  formatting,
  codeActions,
  state,
  published,
  cases,
  newProcedure,
];

/** What all of them together can do. */
export function capabilities(): ServerCapabilities {
  const all: ServerCapabilities = {};
  for (const { capabilities: own } of HANDLERS)
    Object.assign(all, own, own.workspace ? { workspace: { ...all.workspace, ...own.workspace } } : {});
  return all;
}

export function registerAll(services: Services): void {
  for (const handler of HANDLERS) handler.register(services);
}
