/** Quick fixes. */
import { type CodeAction, CodeActionKind } from 'vscode-languageserver/node';
import { mendsFor } from '../../features/mend.ts';
import { diagnosticOf } from '../convert.ts';
import { type Handler, offsetOf, workspaceEdit } from './handler.ts';

export const codeActions: Handler = {
  capabilities: { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] } },
  register(services) {
    const { connection, host, lines, findings } = services;
    connection.onCodeAction(({ textDocument: { uri }, range }) => {
      const from = offsetOf(services, uri, range.start);
      const to = offsetOf(services, uri, range.end);
      const actions: CodeAction[] = [];
      for (const finding of findings(uri)) {
        if (finding.end < from || finding.start > to) continue;
        // A correction of a word is certain by itself; the others are looked for and tried when somebody asks.
        const mends =
          finding.mends && finding.mends.length > 0 ? finding.mends : mendsFor(host, uri, finding);
        for (const mend of mends) {
          actions.push({
            title: mend.title,
            kind: CodeActionKind.QuickFix,
            diagnostics: [diagnosticOf(finding, lines)],
            edit: workspaceEdit(services, mend.edits),
          });
        }
      }
      return actions;
    });
  },
};
