/** Folding and widening of selections. */
import { FoldingRangeKind, type SelectionRange } from 'vscode-languageserver/node';
import { folds, selections } from '../../features/folding.ts';
import { type Handler, offsetOf } from './handler.ts';

export const ranges: Handler = {
  capabilities: { foldingRangeProvider: true, selectionRangeProvider: true },
  register(services) {
    const { connection, view, lines } = services;
    connection.onFoldingRanges(({ textDocument: { uri } }) => {
      const file = view().file(uri);
      return (file ? folds(file.parsed, file.text) : []).map((fold) => {
        const { start, end } = lines.range(uri, fold);
        // The closing brace stays in sight.
        const last = file!.text[fold.end - 1] === '}' ? end.line - 1 : end.line;
        return {
          startLine: start.line,
          endLine: Math.max(start.line, last),
          ...(fold.kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
          ...(fold.kind === 'uses' ? { kind: FoldingRangeKind.Imports } : {}),
        };
      });
    });
    connection.onSelectionRanges(({ textDocument: { uri }, positions }) => {
      const file = view().file(uri);
      return positions.map((position): SelectionRange => {
        const offset = offsetOf(services, uri, position);
        const chain = file ? selections(file.parsed, file.text, offset) : [];
        const outer = [...chain].reverse();
        return (
          outer.reduce<SelectionRange | undefined>(
            (parent, span) => ({ range: lines.range(uri, span), ...(parent ? { parent } : {}) }),
            undefined,
          ) ?? { range: { start: position, end: position } }
        );
      });
    });
  },
};
