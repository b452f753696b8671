/**
 * What a job is issued with against what its steps use up: new parts that are fitted, amounts of fluid that are filled
 * in, fluids and consumables that are used. Fact `supply-short`. Where nothing is listed after `supplies`, nothing is
 * missed; where no fluid and no consumable is listed, these come from the workshop's own shelf. A part that a kit contains or that comes with another one is there with it.
 */
import { addQuantities, type Quantity, relate } from '../../grammar/quantity/index.ts';
import type { ForEach, Header, Ref, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { readTyped, said } from './fastening-amounts.ts';
import { locate, type Visited } from './flow-walk.ts';
import { itemsOf } from './items.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

export function supplyFaults(model: Model, survey: Survey, file: { readonly path: string }): Fact[] {
  const { procedure } = survey;
  const header = procedure.headers.find(
    (one): one is Header & { header: 'supplies' } => one.header === 'supplies',
  );
  if (!header) return [];
  const all = survey
    .each('supplies', [], (one) => (takesSupplies(one) ? [one] : []))
    .flatMap((one) => locate(procedure.body, one) ?? []);
  return [
    ...partFaults(model, header, all, file.path),
    ...fluidFaults(model, header, all, file.path),
    ...unlistedFaults(model, header, all, file.path),
  ];
}

function takesSupplies(statement: Statement): boolean {
  if (statement.kind !== 'action') return false;
  return statement.fresh !== undefined || statement.tails.some(({ tail }) => tail === 'with');
}

type Supplies = Header & { header: 'supplies' };

function partFaults(model: Model, header: Supplies, all: readonly Visited[], file: string): Fact[] {
  const stock = stockOf(model, header);
  const used = new Map<Thing, Set<number>>();
  const facts: Fact[] = [];
  const told = new Set<Thing>();
  for (const one of all) {
    const { statement } = one;
    if (statement.kind !== 'action' || statement.fresh === undefined || !isPlanned(one)) continue;
    for (const ref of statement.objects) {
      const thing = model.byName.get(ref.name.text);
      if (!thing || told.has(thing) || thing.type === 'tool') continue;
      const items = used.get(thing) ?? new Set<number>();
      used.set(thing, items);
      for (const item of itemsFitted(model, thing, ref, one)) items.add(item);
      const there = stock.get(thing) ?? (hasAllOf(model, thing, stock) ? 1 : 0);
      // Of a group without a count one is as many as all.
      const needed = thing.count === undefined ? 1 : Math.max(1, items.size);
      if (there >= needed) continue;
      told.add(thing);
      facts.push({
        check: 'supply-short',
        at: { file, start: ref.start, end: ref.end },
        subject: { thing },
        words: { needed: String(needed), there: String(there) },
        story: [{ at: { file, start: header.word.start, end: header.word.end }, what: 'declared' }],
      });
    }
  }
  return facts;
}

/** The positions that the step means, in all rounds of the `for each` around it: `rings #cylinder`. */
function itemsFitted(model: Model, thing: Thing, ref: Ref, one: Visited): readonly number[] {
  const [position, ...more] = ref.positions;
  for (let at = one.parent; at && position && more.length === 0; at = at.parent) {
    const { statement } = at;
    if (statement.kind !== 'for each' || statement.variable?.text !== position.from) continue;
    return roundsOf(model, statement).flatMap((value) => {
      const index = thing.positions.indexOf(value);
      return index < 0 ? [] : [thing.first + index];
    });
  }
  return itemsOf(thing, ref).items;
}

function roundsOf(model: Model, { over }: ForEach): readonly string[] {
  if (over?.kind === 'names') return over.names.map(({ text }) => text);
  if (over?.kind === 'positions') return model.byName.get(over.ref.name.text)?.positions ?? [];
  // A group has no more positions than can be told apart; the numbers beyond are no positions.
  const { from = 1, to = 0 } = over ?? {};
  const last = Math.min(to, from + 999);
  return last < from ? [] : Array.from({ length: last - from + 1 }, (_, index) => String(from + index));
}

/** The pieces of a kit, each by itself. */
function hasAllOf(model: Model, kit: Thing, stock: ReadonlyMap<Thing, number>): boolean {
  const pieces = model.contains[kit.first]!;
  return pieces.length > 0 && pieces.every((piece) => stock.has(model.thingOf[piece]!));
}

/** How many of each thing there are; a thing listed without a number is there in full. */
function stockOf(model: Model, header: Supplies): Map<Thing, number> {
  const stock = new Map<Thing, number>();
  const add = (thing: Thing, count: number, path: readonly Thing[]) => {
    if (path.includes(thing)) return;
    stock.set(thing, (stock.get(thing) ?? 0) + count);
    for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
      for (const other of [...model.comesWith[item]!, ...model.contains[item]!]) {
        const member = model.thingOf[other]!;
        if (!stock.has(member)) add(member, Number.POSITIVE_INFINITY, [...path, thing]);
      }
    }
  };
  for (const ref of header.refs) {
    const thing = model.byName.get(ref.name.text);
    if (!thing) continue;
    const whole = ref.positions.length > 0 ? itemsOf(thing, ref).items.length : Number.POSITIVE_INFINITY;
    add(thing, ref.count ?? whole, []);
  }
  return stock;
}

/** Fluids and consumables that planned steps are done with, where the list names others of that sort. */
function unlistedFaults(model: Model, header: Supplies, all: readonly Visited[], file: string): Fact[] {
  const names = [...header.refs, ...header.fluids.flatMap(({ fluid }) => fluid ?? [])];
  const listed = new Set(names.map(({ name }) => name.text));
  const usedUp = (name: string) => ['fluid', 'consumable'].includes(model.byName.get(name)?.type ?? '');
  if (![...listed].some(usedUp)) return [];
  const facts: Fact[] = [];
  for (const one of all) {
    const { statement } = one;
    if (statement.kind !== 'action' || !isPlanned(one)) continue;
    for (const tail of statement.tails) {
      if (tail.tail !== 'with') continue;
      for (const ref of tail.refs) {
        const thing = model.byName.get(ref.name.text);
        if (!thing || !usedUp(ref.name.text) || listed.has(ref.name.text)) continue;
        listed.add(ref.name.text);
        facts.push({
          check: 'supply-short',
          at: { file, start: ref.start, end: ref.end },
          subject: { thing },
          words: { usedUp: 'yes' },
          story: [{ at: { file, start: header.word.start, end: header.word.end }, what: 'declared' }],
        });
      }
    }
  }
  return facts;
}

/** Amounts typed in steps that are all done: what a branch or repeat adds is not certain. */
function fluidFaults(model: Model, header: Supplies, all: readonly Visited[], file: string): Fact[] {
  const facts: Fact[] = [];
  for (const { quantity, fluid } of header.fluids) {
    const listed = readTyped(quantity, model.values);
    if (!fluid || !listed) continue;
    let sum: Quantity | undefined;
    for (const one of all) {
      const { statement } = one;
      if (statement.kind !== 'action' || !isCertain(one)) continue;
      for (const tail of statement.tails) {
        if (tail.tail !== 'with' || !tail.refs.some(({ name }) => name.text === fluid.name.text)) continue;
        const more = readTyped(tail.quantity, model.values);
        if (!more || more.unit.kind !== listed.unit.kind) continue;
        const outcome = sum ? addQuantities(sum, more) : undefined;
        sum = outcome?.ok ? outcome.value : (sum ?? more);
      }
    }
    const outcome = sum && relate(sum, listed);
    if (!sum || !outcome?.ok || outcome.value !== 'above') continue;
    const thing = model.byName.get(fluid.name.text);
    facts.push({
      check: 'supply-short',
      at: { file, start: quantity.start, end: fluid.end },
      ...(thing ? { subject: { thing } } : {}),
      words: { needed: said(sum), there: said(listed), amount: 'yes' },
    });
  }
  return facts;
}

/** Not only where something is found, or in a second try: such parts are fetched when they are needed. */
function isPlanned(one: Visited): boolean {
  for (let at = one.parent; at; at = at.parent) {
    const { kind } = at.statement;
    if (kind === 'action' || kind === 'if' || kind === 'repeat') return false;
  }
  return true;
}

function isCertain(one: Visited): boolean {
  for (let at = one.parent; at; at = at.parent) {
    const { kind } = at.statement;
    if (kind !== 'task' && kind !== 'step' && kind !== 'hold') return false;
  }
  return true;
}
