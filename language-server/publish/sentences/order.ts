/** The order of tightening as a sentence and as places for a drawing. */
import type { Order } from '../../../grammar/syntax/tree.ts';
import {
  acrossOrder,
  fromMiddleOrder,
  type Layout,
  placesOf,
  reverseOrder,
  rowsOf,
} from '../../fastening/index.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import type { Thing } from '../../model/model.ts';
import type { Fastening, OrderDetail } from '../document/types.ts';
import type { MessageKey, Words } from '../words/words.ts';

/**
 * The order that the step types, else the one declared. Undefined where there is none, or where only some positions
 * are worked. Loosening is worked backwards only where the step says so.
 */
export function orderOf(
  { words }: { words: Words },
  thing: Thing,
  work: Fastening['work'],
  typed: Order | undefined,
  some: boolean,
): OrderDetail | undefined {
  const own = clauseOf(thing, 'order')?.order;
  const turns = work === 'tighten';
  if (!typed && (!turns || some || !own)) return undefined;
  const layout = layoutOf(thing);
  const wanted = typed ?? own!;
  const base = sequenceOf(thing, own, layout);
  const sequence =
    wanted.kind === 'named' && wanted.name === 'reverse'
      ? reverseOrder(base)
      : sequenceOf(thing, wanted, layout);
  const kind = wanted.kind === 'listed' ? 'listed' : wanted.name;
  const names = some ? [] : sequence.map((one) => thing.positions[one - 1] ?? String(one));
  const said = words.say(`order.${kind}` as MessageKey);
  const first = clauseOf(thing, 'layout')?.layout?.first?.value;
  const where =
    first !== undefined && names.length > 0
      ? ` ${words.say('order.first', { number: thing.positions[0] ?? '1', where: first })}`
      : '';
  const line =
    names.length > 0
      ? words.say('order.numbers', { words: said, sequence: names.join(', ') })
      : words.say('order.words', { words: said });
  return {
    kind,
    sentence: line + where,
    sequence: names,
    places: (layout ? placesOf(layout) : []).map(({ position, x, y }) => ({
      position: thing.positions[position - 1] ?? String(position),
      x,
      y,
    })),
    ...(layout ? { layout: layout.kind === 'positions' ? 'places' : layout.kind } : {}),
    ...(first === undefined ? {} : { first }),
  };
}

/** Positions from 1, in the order they are worked; empty where the layout does not tell. */
function sequenceOf(thing: Thing, order: Order | undefined, layout: Layout | undefined): number[] {
  if (!order) return [];
  if (order.kind === 'listed') {
    return order.positions.flatMap(({ from, to }) => {
      const first = thing.positions.indexOf(from);
      const last = to === undefined ? first : thing.positions.indexOf(to);
      if (first < 0 || last < 0) return [];
      const step = last < first ? -1 : 1;
      return Array.from({ length: Math.abs(last - first) + 1 }, (_, index) => first + 1 + index * step);
    });
  }
  switch (order.name) {
    case 'across':
      return layout ? acrossOrder(layout) : [];
    case 'from the middle':
      return layout ? fromMiddleOrder(layout) : [];
    case 'in turn':
      return thing.positions.length > 1 ? thing.positions.map((_, index) => index + 1) : [];
    case 'reverse':
      return [];
  }
}

/** The layout, where its number of places is the number of the group. */
function layoutOf(thing: Thing): Layout | undefined {
  const typed = clauseOf(thing, 'layout')?.layout;
  const count = thing.positions.length;
  if (!typed || count < 2) return undefined;
  switch (typed.kind) {
    case 'circle':
      return { kind: 'circle', count };
    case 'rows':
      return typed.rows * typed.of === count ? rowsOf(typed.rows, typed.of) : undefined;
    case 'places':
      return typed.places.length === count
        ? { kind: 'positions', places: typed.places.map(({ x, y }) => ({ x: Number(x), y: Number(y) })) }
        : undefined;
  }
}
