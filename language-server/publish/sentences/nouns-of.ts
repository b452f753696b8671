/** Things of the model as nouns of a sentence. */
import type { Ref } from '../../../grammar/syntax/tree.ts';
import { spoken } from '../../lists/combos.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import { itemsOf } from '../../model/items.ts';
import type { Model, Thing } from '../../model/model.ts';
import { headAndRest, isPlural, singular } from '../../wording/nouns.ts';
import type { Noun } from './noun.ts';

export function nounOf(model: Model, ref: Ref, fresh = false): Noun {
  const thing = model.byName.get(ref.name.text);
  if (!thing) {
    const title = spoken(ref.name.text);
    return { id: ref.name.text, title, type: 'unknown', count: ref.count, positions: [], some: false, fresh };
  }
  const { items } = itemsOf(thing, ref);
  return itemsNoun(model, thing, items, fresh, ref.count);
}

export function itemsNoun(
  model: Model,
  thing: Thing,
  items: readonly number[],
  fresh = false,
  asked?: number,
): Noun {
  const whole = items.length >= thing.positions.length;
  const known = thing.positions.length > 1 ? thing.positions.length : (thing.count ?? unsaid(thing));
  const count = asked ?? (whole ? known : items.length);
  const positions = whole ? [] : items.map((item) => thing.positions[item - thing.first]!);
  const thread = clauseOf(thing, 'thread')?.designation?.text;
  const item = clauseOf(thing, 'item')?.number;
  const holds = thing.type === 'fastener' ? heldBy(model, thing, items) : [];
  return {
    id: thing.name,
    title: thing.title,
    type: thing.type,
    count,
    positions,
    some:
      asked === undefined || asked === known
        ? false
        : known !== undefined && asked < known
          ? 'of more'
          : 'some',
    fresh,
    ...(thread === undefined ? {} : { thread }),
    ...(item === undefined ? {} : { item }),
    ...(holds.length > 0 ? { holds } : {}),
  };
}

/** Of what nobody counted: one, unless its title is a plural. */
function unsaid(thing: Thing): number | undefined {
  return isPlural(thing.title) ? undefined : 1;
}

/** What the fastener holds, unless its own title says so: `head bolts` need no `that hold the head`. */
function heldBy(model: Model, thing: Thing, items: readonly number[]): Noun[] {
  const byThing = new Map<Thing, number[]>();
  const to = new Set(clauseOf(thing, 'clamps')?.to.map(({ name }) => name.text));
  for (const item of items)
    for (const held of model.members[item] ?? []) {
      const what = model.thingOf[held];
      if (!what || what === thing || what.fixed || to.has(what.name)) continue;
      byThing.set(what, [...new Set([...(byThing.get(what) ?? []), held])]);
    }
  // What sits on a fixed part is what comes off; of a pair the one that comes off is named.
  const said = wordsOf(thing.title);
  const nouns = [...byThing]
    .filter(([what]) => isHeld(model, what, items))
    .map(([what, held]) => ({ what, held }));
  if (nouns.some(({ what }) => wordsOf(what.title).some((word) => said.includes(word)))) return [];
  return nouns.slice(0, 3).map(({ what, held }) => {
    const { holds: _, ...noun } = { ...itemsNounBare(what, held), holds: undefined };
    return noun;
  });
}

function isHeld(model: Model, what: Thing, items: readonly number[]): boolean {
  return what.positions.some((_, index) =>
    (model.fastenersOf[what.first + index] ?? []).some((one) => items.includes(one)),
  );
}

function itemsNounBare(thing: Thing, items: readonly number[]): Noun {
  const whole = items.length >= thing.positions.length;
  return {
    id: thing.name,
    title: thing.title,
    type: thing.type,
    count: whole
      ? thing.positions.length > 1
        ? thing.positions.length
        : (thing.count ?? unsaid(thing))
      : items.length,
    positions: whole ? [] : items.map((item) => thing.positions[item - thing.first]!),
    some: false,
    fresh: false,
  };
}

/** The words of a title that tell it from others, each as one. */
function wordsOf(title: string): string[] {
  const { head, rest } = headAndRest(title);
  return `${head} ${rest}`
    .toLowerCase()
    .split(/[^\p{L}\d-]+/u)
    .filter((word) => word.length > 2 && !SMALL.has(word))
    .map((word) => singular(word));
}

const SMALL: ReadonlySet<string> = new Set([
  'the',
  'for',
  'with',
  'and',
  'bolts',
  'bolt',
  'screws',
  'screw',
  'nuts',
  'nut',
]);
