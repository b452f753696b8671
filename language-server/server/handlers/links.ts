/** Links to the files that a text uses and shows. */
import { linksIn } from '../../features/links.ts';
import type { Handler } from './handler.ts';

export const links: Handler = {
  capabilities: { documentLinkProvider: {} },
  register({ connection, view, host, lines }) {
    connection.onDocumentLinks(({ textDocument: { uri } }) => {
      const file = view().file(uri);
      return (file ? linksIn(file.parsed) : []).map((link) => ({
        range: lines.range(uri, link),
        target: host.resolve(uri, link.target),
        tooltip: link.what === 'use' ? 'Open the file that is used' : 'Open the picture',
      }));
    });
  },
};
