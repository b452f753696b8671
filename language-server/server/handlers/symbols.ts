/** The outline of a file. */
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver/node';
import { parse } from '../../../grammar/parser/parse.ts';
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
  capabilities: { documentSymbolProvider: true },
  register({ connection, host, lines }) {
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
      return shown(outline(parse(host.read(uri) ?? '').tree));
    });
  },
};
