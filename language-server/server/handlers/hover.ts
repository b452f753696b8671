/** What a thing is, shown where the pointer rests. */
import { hoverAt } from '../../features/hover.ts';
import { type Handler, offsetOf } from './handler.ts';

export const hover: Handler = {
  capabilities: { hoverProvider: true },
  register(services) {
    const { connection, host, lines } = services;
    connection.onHover(({ textDocument: { uri }, position }) => {
      const found = hoverAt(host, uri, offsetOf(services, uri, position));
      return found
        ? { contents: { kind: 'markdown', value: found.text }, range: lines.range(uri, found) }
        : null;
    });
  },
};
