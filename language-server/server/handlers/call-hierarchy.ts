/** Which procedure is carried out by which. */
import { type CallHierarchyItem, SymbolKind } from 'vscode-languageserver/node';
import { callsFrom, callsTo, type ProcedurePlace, procedureAt } from '../../features/uses-of-procedures.ts';
import { type Handler, offsetOf, type Services } from './handler.ts';

export const callHierarchy: Handler = {
  capabilities: { callHierarchyProvider: true },
  register(services) {
    const { connection, view, lines, paths } = services;
    connection.languages.callHierarchy.onPrepare(({ textDocument: { uri }, position }) => {
      const found = procedureAt(view(), uri, offsetOf(services, uri, position));
      return found ? [itemOf(services, found)] : null;
    });
    /** The procedure that an item stands for, as the texts are now. */
    const placeOf = ({ uri, selectionRange }: CallHierarchyItem): ProcedurePlace | undefined => {
      const offset = offsetOf(services, uri, selectionRange.start);
      const procedure = view()
        .file(uri)
        ?.procedures.find(({ start, end }) => start <= offset && offset <= end);
      return procedure && { path: uri, procedure };
    };
    connection.languages.callHierarchy.onIncomingCalls(({ item }) => {
      const place = placeOf(item);
      const all = [...new Set([...paths(), ...view().known()])];
      return (place ? callsTo(view(), all, place) : []).map((call) => ({
        from: itemOf(services, call),
        fromRanges: call.at.map((span) => lines.range(call.path, span)),
      }));
    });
    connection.languages.callHierarchy.onOutgoingCalls(({ item }) => {
      const place = placeOf(item);
      return (place ? callsFrom(view(), place) : []).map((call) => ({
        to: itemOf(services, call),
        fromRanges: call.at.map((span) => lines.range(item.uri, span)),
      }));
    });
  },
};

function itemOf({ lines }: Services, { path, procedure }: ProcedurePlace): CallHierarchyItem {
  const name = procedure.name ?? { text: 'procedure', start: procedure.start, end: procedure.start };
  return {
    name: procedure.title?.value ?? name.text,
    detail: name.text,
    kind: SymbolKind.Method,
    uri: path,
    range: lines.range(path, procedure),
    selectionRange: lines.range(path, name),
  };
}
