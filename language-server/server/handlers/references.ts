/** Where a thing is declared, and everywhere it is named. */
import { placesOf, thingAt } from '../../features/place.ts';
import { type Handler, offsetOf } from './handler.ts';

export const references: Handler = {
  capabilities: { definitionProvider: true, referencesProvider: true, documentHighlightProvider: true },
  register(services) {
    const { connection, host, lines, paths } = services;
    connection.onDefinition(({ textDocument: { uri }, position }) => {
      const meant = thingAt(host, uri, offsetOf(services, uri, position));
      return meant ? lines.location(meant.thing.place.file, meant.thing.place) : null;
    });
    connection.onReferences(({ textDocument: { uri }, position }) => {
      const meant = thingAt(host, uri, offsetOf(services, uri, position));
      if (!meant) return [];
      const files = new Set([meant.thing.place.file, uri, ...paths()]);
      return placesOf(host, [...files], meant).map((place) => lines.location(place.file, place));
    });
    connection.onDocumentHighlight(({ textDocument: { uri }, position }) => {
      const meant = thingAt(host, uri, offsetOf(services, uri, position));
      return meant ? placesOf(host, [uri], meant).map((place) => ({ range: lines.range(uri, place) })) : [];
    });
  },
};
