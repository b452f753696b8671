/** What stands between and above the lines: code lenses, inlay hints, the form of the verb being typed. */
import { InlayHintKind } from 'vscode-languageserver/node';
import { inlays } from '../../features/inlay.ts';
import { lenses } from '../../features/lenses.ts';
import { signatureAt } from '../../features/signature.ts';
import { type Handler, offsetOf } from './handler.ts';

export const hints: Handler = {
  capabilities: {
    codeLensProvider: {},
    inlayHintProvider: true,
    signatureHelpProvider: { triggerCharacters: [' '] },
  },
  register(services) {
    const { connection, view, lines, findings, settings } = services;
    connection.onCodeLens(({ textDocument: { uri } }) => {
      if (!settings().codeLens) return [];
      return lenses(view(), uri, findings(uri)).map((lens) => ({
        range: lines.range(uri, lens),
        command:
          lens.offset === undefined
            ? { title: lens.title, command: '' }
            : {
                title: lens.title,
                // The client opens its panel there; one that has none shows the words alone.
                command: 'dowel.showState',
                arguments: [uri, lines.range(uri, { start: lens.offset, end: lens.offset }).start],
              },
      }));
    });
    connection.languages.inlayHint.on(({ textDocument: { uri }, range }) => {
      const from = offsetOf(services, uri, range.start);
      const to = offsetOf(services, uri, range.end);
      return inlays(view(), uri, from, to, settings().inlayHints).map(({ offset, text }) => ({
        position: lines.range(uri, { start: offset, end: offset }).start,
        label: text,
        kind: InlayHintKind.Parameter,
        paddingLeft: true,
      }));
    });
    connection.onSignatureHelp(({ textDocument: { uri }, position }) => {
      const found = signatureAt(view(), uri, offsetOf(services, uri, position));
      if (!found) return null;
      const { label, documentation, parameters, active } = found;
      return {
        signatures: [{ label, documentation: { kind: 'markdown', value: documentation }, parameters }],
        activeSignature: 0,
        ...(active === undefined ? {} : { activeParameter: active }),
      };
    });
  },
};
