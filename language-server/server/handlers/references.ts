/** Where a name is declared, and everywhere it stands for the same. */
import { DocumentHighlightKind } from 'vscode-languageserver/node';
import { meaningAt, placesOfMeaning } from '../../features/meaning.ts';
import { type Handler, offsetOf } from './handler.ts';

export const references: Handler = {
  capabilities: { definitionProvider: true, referencesProvider: true, documentHighlightProvider: true },
  register(services) {
    const { connection, view, lines, paths } = services;
    connection.onDefinition(({ textDocument: { uri }, position }) => {
      const named = meaningAt(view(), uri, offsetOf(services, uri, position));
      // The declaration that counts comes first; those that it replaces are among the references.
      const place = named?.meaning.declared[0];
      return place ? lines.location(place.file, place) : null;
    });
    connection.onReferences(({ textDocument: { uri }, position, context }) => {
      const named = meaningAt(view(), uri, offsetOf(services, uri, position));
      if (!named) return [];
      const { meaning } = named;
      const declared = (file: string, start: number) =>
        meaning.declared.some((place) => place.file === file && place.start === start);
      return placesOfMeaning(view(), [uri, ...paths()], meaning)
        .filter(({ file, start }) => context.includeDeclaration || !declared(file, start))
        .map((place) => lines.location(place.file, place));
    });
    connection.onDocumentHighlight(({ textDocument: { uri }, position }) => {
      const named = meaningAt(view(), uri, offsetOf(services, uri, position));
      if (!named) return [];
      return placesOfMeaning(view(), [uri], named.meaning)
        .filter(({ file }) => file === uri)
        .map((place) => ({ range: lines.range(uri, place), kind: DocumentHighlightKind.Text }));
    });
  },
};
