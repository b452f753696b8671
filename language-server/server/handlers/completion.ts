/** Completion: proposals of ../../features/complete.ts in the protocol's shape. */
import {
  type CompletionItem,
  CompletionItemKind,
  InsertTextFormat,
  type TextEdit,
} from 'vscode-languageserver/node';
import { completeAt, type Proposal, type ProposalKind } from '../../features/complete.ts';
import { type Handler, offsetOf } from './handler.ts';

const KINDS: Readonly<Record<ProposalKind, CompletionItemKind>> = {
  verb: CompletionItemKind.Function,
  word: CompletionItemKind.Keyword,
  thing: CompletionItemKind.Field,
  value: CompletionItemKind.Variable,
  name: CompletionItemKind.Reference,
  state: CompletionItemKind.EnumMember,
  hazard: CompletionItemKind.Enum,
  unit: CompletionItemKind.Unit,
  check: CompletionItemKind.Constant,
  file: CompletionItemKind.File,
  snippet: CompletionItemKind.Snippet,
};

export const completion: Handler = {
  capabilities: { completionProvider: { triggerCharacters: [' ', '#', '{', '"'] } },
  register(services) {
    const { connection, lines, view } = services;
    connection.onCompletion(({ textDocument: { uri }, position, context }) => {
      const offset = offsetOf(services, uri, position);
      const { start, end, proposals } = completeAt(view(), uri, offset);
      const range = lines.range(uri, { start, end });
      const snippets = services.client().textDocument?.completion?.completionItem?.snippetSupport ?? false;
      // A blank that opens the list only where something in particular comes is help; elsewhere it is in the way.
      if (context?.triggerCharacter === ' ' && proposals.length === 0) return [];
      return proposals.map((proposal) => itemOf(proposal, (newText) => ({ range, newText }), snippets));
    });
  },
};

function itemOf(proposal: Proposal, edit: (text: string) => TextEdit, snippets: boolean): CompletionItem {
  const { label, kind, detail, documentation, snippet, rank } = proposal;
  const text =
    snippet === undefined ? label : snippets ? placeholders(snippet) : withoutPlaces(snippet, label);
  return {
    label,
    kind: KINDS[kind],
    sortText: `${String(Math.round(rank * 100)).padStart(5, '0')} ${label}`,
    filterText: label,
    ...(detail ? { detail } : {}),
    ...(documentation ? { documentation: { kind: 'markdown', value: documentation } } : {}),
    ...(snippet !== undefined && snippets ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    textEdit: edit(text),
  };
}

/** `‹name›` as the protocol writes places to fill in: `${1:name}`; `‹›` is where to go on. */
export function placeholders(form: string): string {
  let count = 0;
  return form.replaceAll(/[\\$]/g, '\\$&').replaceAll(/‹([^›]*)›/g, (_, text: string) => {
    if (text === '') return '$0';
    count++;
    return text === '…' ? `$${count}` : `\${${count}:${text}}`;
  });
}

/** For an editor without places to fill in: what comes before the first one, or the word alone. */
function withoutPlaces(form: string, label: string): string {
  const before = form.slice(0, form.indexOf('‹') < 0 ? undefined : form.indexOf('‹'));
  return before.startsWith(label) ? before.replace(/["{]?$/, '') : label;
}
