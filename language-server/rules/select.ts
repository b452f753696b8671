/** What the selectors of a rule mean on a machine: `flywheel-bolt`, `any connection of any system with pressure`. */
import type { Selector } from '../../grammar/syntax/tree.ts';
import { itemsOf } from '../model/items.ts';
import type { Model } from '../model/model.ts';

/** What was met on the way to an item: for `that system`. The nearest stands first. */
export type Met = readonly { readonly what: string; readonly item: number }[];

export interface Chosen {
  readonly item: number;
  readonly met: Met;
}

/** `from`: what was met before. A name that means nothing gives nothing; that is said elsewhere. */
export function chosen(model: Model, selector: Selector, from: Met): Chosen[] {
  switch (selector.kind) {
    case 'named': {
      const thing = model.byName.get(selector.ref.name.text);
      if (!thing) return [];
      const { items } = itemsOf(thing, selector.ref);
      return items.map((item) => ({ item, met: [{ what: thing.type, item }, ...from] }));
    }
    case 'that': {
      const items = from.filter(({ what }) => what === selector.what.text);
      return items.slice(0, 1).map(({ item }) => ({ item, met: from }));
    }
    case 'any': {
      const what = selector.what.text;
      const result: Chosen[] = [];
      const inner = selector.of && chosen(model, selector.of, from);
      for (const thing of model.things) {
        if (thing.type !== what || !hasClause(thing.declaration.clauses, selector.with?.text)) continue;
        for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
          if (!inner) result.push({ item, met: [{ what, item }, ...from] });
          else
            for (const one of inner)
              if (belongsTo(model, item, one.item)) result.push({ item, met: [{ what, item }, ...one.met] });
        }
      }
      return result;
    }
  }
}

function hasClause(clauses: readonly { clause: string }[], name: string | undefined): boolean {
  return name === undefined || clauses.some(({ clause }) => clause === name);
}

/** Whether `item` is one of the other's own: its fasteners, seals, joints, what sits on it, what opens it. */
export function belongsTo(model: Model, item: number, other: number): boolean {
  return BELONGINGS.some((name) => model[name][other]!.includes(item));
}

const BELONGINGS = [
  ...['fastenersOf', 'connectionsOf', 'seals', 'faces', 'riders', 'carries', 'comesWith', 'members'],
  ...['openedBy', 'reliefPoints', 'drainPoints', 'fillPoints', 'bleedPoints', 'isolators'],
  ...['locks', 'contains', 'seats', 'carriedBy', 'sealedParts', 'opens', 'covers'],
] as unknown as readonly ('fastenersOf' | 'members' | 'seals')[];

/**
 * Of a whole group that is named, those that belong to the item that the rule is about: after one wheel is fitted its
 * own nuts are asked for; of the same group, the same position. All of the group where none of them belongs to it.
 */
export function ownOf(model: Model, items: readonly number[], about: number | undefined): readonly number[] {
  if (about === undefined || items.length < 2 || model.thingOf[about]!.positions.length < 2) return items;
  if (items.includes(about)) return [about];
  const own = items.filter((item) => belongsTo(model, item, about) || belongsTo(model, about, item));
  return own.length > 0 ? own : items;
}
