/** The outline of a file, and looking for a name in all files. */
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver/node';
import { findSymbols } from '../../features/find-symbols.ts';
import { type OutlineItem, outline } from '../../features/outline.ts';
import type { Handler } from './handler.ts';

const SYMBOLS: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  machine: SymbolKind.Module,
  procedure: SymbolKind.Class,
  thing: SymbolKind.Field,
  task: SymbolKind.Method,
  step: SymbolKind.Event,
};

export const symbols: Handler = {
  capabilities: { documentSymbolProvider: true, workspaceSymbolProvider: true },
  register({ connection, view, paths, lines }) {
    connection.onDocumentSymbol(({ textDocument: { uri } }) => {
      const shown = (items: readonly OutlineItem[]): DocumentSymbol[] =>
        items.map((item) => ({
          name: item.name,
          detail: item.detail,
          kind: SYMBOLS[item.kind],
          range: lines.range(uri, item),
          selectionRange: lines.range(uri, item.at),
          children: shown(item.children),
        }));
      const file = view().file(uri);
      return file ? shown(outline(file.parsed.tree)) : [];
    });
    connection.onWorkspaceSymbol(({ query }) =>
      findSymbols(view(), [...new Set([...paths(), ...view().known()])], query).map(
        ({ path, item, within }) => ({
          name: item.name,
          kind: SYMBOLS[item.kind],
          location: lines.location(path, item.at),
          containerName: within ?? item.detail,
        }),
      ),
    );
  },
};
