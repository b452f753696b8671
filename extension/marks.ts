/** Which elements of a panel belong to the line of the cursor. No editor in here: plain data in and out. */
import type { ShownPlace } from '../language-server/server/handlers/shown.ts';

export interface Line {
  uri: string;
  line: number;
  text: string;
}

/**
 * Things: those that the line names, or declares. Steps: those of the line; between two steps the one before, so that
 * a cursor on a notice, a clause or an empty line still has its place. Answers indices of `places`.
 */
export function marksAt(places: readonly ShownPlace[], { uri, line, text }: Line): number[] {
  const here = places
    .map((place, index) => ({ ...place, index }))
    .filter((place) => samePath(place.uri, uri));
  const words = new Set(text.replace(/\/\/.*$/, '').match(/[\p{L}][\p{L}\p{N}]*(?:-[\p{L}\p{N}]+)*/gu) ?? []);
  const named = places.flatMap(({ by, key }, index) => (by === 'thing' && words.has(key) ? [index] : []));
  if (named.length > 0) return named;
  const steps = here.filter(({ by }) => by !== 'thing');
  const exact = steps.filter(({ range }) => range.start.line === line);
  if (exact.length > 0) return exact.map(({ index }) => index);
  const before = steps.filter(({ range }) => range.start.line < line);
  const nearest = Math.max(...before.map(({ range }) => range.start.line));
  return before.filter(({ range }) => range.start.line === nearest).map(({ index }) => index);
}

/** Editors and servers escape addresses in different ways. */
function samePath(one: string, other: string): boolean {
  return one === other || decodeURIComponent(one) === decodeURIComponent(other);
}
