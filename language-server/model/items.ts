/** The positions of a thing, and which items (a thing at one position) a reference names. */
import type { Declaration, Ref } from '../../grammar/syntax/tree.ts';
import type { Thing } from './model.ts';

/** The items of a thing that a reference names: all of them, or its positions. */
export function itemsOf(
  thing: Thing,
  ref: Ref,
): { items: readonly number[]; unknown?: Ref['positions'][number] } {
  if (ref.positions.length === 0) return { items: thing.items };
  const items: number[] = [];
  let unknown: Ref['positions'][number] | undefined;
  for (const position of ref.positions) {
    const from = thing.positions.indexOf(position.from);
    const to = position.to === undefined ? from : thing.positions.indexOf(position.to);
    // A group without a count has no numbers to be wrong about.
    if (from < 0 || to < 0) {
      if (thing.positions[0] !== '') unknown = position;
      else items.push(...thing.items);
      continue;
    }
    for (let index = Math.min(from, to); index <= Math.max(from, to); index++)
      items.push(thing.first + index);
  }
  return { items: [...new Set(items)], ...(unknown ? { unknown } : {}) };
}

/** More positions than this are tracked as one: a thousand rivets are not told apart. */
const MOST_POSITIONS = 200;

/** The names of a thing's positions, as it is declared; a single empty one where there is one or the count is not known. */
export function positionsOf(clauses: Declaration['clauses']): string[] {
  for (const clause of clauses) {
    if (clause.clause === 'positions' && clause.names.length > 0)
      return clause.names.map((name) => name.text);
    if (clause.clause === 'count' && clause.count > 1 && clause.count <= MOST_POSITIONS) {
      return Array.from({ length: clause.count }, (_, index) => String(index + 1));
    }
  }
  return [''];
}
