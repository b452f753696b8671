/** The one layout: of a whole file, of some lines, and of the line that was just typed. */
import { formatRange, formatText } from '../../../grammar/format/format.ts';
import { type Handler, offsetOf } from './handler.ts';

export const formatting: Handler = {
  capabilities: {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
  },
  register(services) {
    const { connection, host, lines } = services;
    connection.onDocumentFormatting(({ textDocument: { uri } }) => {
      const text = host.read(uri) ?? '';
      const formatted = formatText(text);
      return formatted === text ? [] : [lines.edit(uri, { start: 0, end: text.length }, formatted)];
    });
    connection.onDocumentRangeFormatting(({ textDocument: { uri }, range }) => {
      const text = host.read(uri) ?? '';
      const from = offsetOf(services, uri, range.start);
      const to = offsetOf(services, uri, range.end);
      return formatRange(text, from, to).map((edit) => lines.edit(uri, edit, edit.text));
    });
    connection.onDocumentOnTypeFormatting(({ textDocument: { uri }, position, ch }) => {
      const text = host.read(uri) ?? '';
      const at = offsetOf(services, uri, position);
      // A new line: the one before it is finished, and the one with the cursor is left to the author.
      const end = ch === '\n' ? text.lastIndexOf('\n', at - 1) : at;
      const start = text.lastIndexOf('\n', end - 1) + 1;
      if (end < 0 || text.slice(start, end).trim() === '') return [];
      return formatRange(text, start, end)
        .filter((edit) => ch !== '\n' || edit.end <= end)
        .map((edit) => lines.edit(uri, edit, edit.text));
    });
  },
};
