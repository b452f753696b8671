/** What a thing is, shown where the pointer rests. */
import { hoverIn } from '../../features/hover.ts';
import { type Handler, offsetOf } from './handler.ts';

export const hover: Handler = {
  capabilities: { hoverProvider: true },
  register(services) {
    const { connection, view, lines } = services;
    connection.onHover(({ textDocument: { uri }, position }) => {
      const found = hoverIn(view(), uri, offsetOf(services, uri, position));
      return found
        ? { contents: { kind: 'markdown', value: found.text }, range: lines.range(uri, found) }
        : null;
    });
  },
};
