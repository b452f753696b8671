/** The one layout. */
import { formatText } from '../../../grammar/format/format.ts';
import type { Handler } from './handler.ts';

export const formatting: Handler = {
  capabilities: { documentFormattingProvider: true },
  register({ connection, host, lines }) {
    connection.onDocumentFormatting(({ textDocument: { uri } }) => {
      const text = host.read(uri) ?? '';
      const formatted = formatText(text);
      return formatted === text ? [] : [lines.edit(uri, { start: 0, end: text.length }, formatted)];
    });
  },
};
