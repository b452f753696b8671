/**
 * Which tightening orders there are to be drawn: of a machine's fasteners as its file declares them, and of one
 * step of a published procedure. A group whose places or order are not known has no picture.
 */
import type { Order, Layout as TypedLayout } from '../../../grammar/syntax/tree.ts';
import {
  acrossOrder,
  circularOrder,
  fromMiddleOrder,
  type Layout,
  placesOf,
  reverseOrder,
} from '../../fastening/index.ts';
import { said } from '../../model/fastening-amounts.ts';
import { clauseOf, declared } from '../../model/fastening-declared.ts';
import { layoutFrom } from '../../model/fastening-layout.ts';
import { numbersOf } from '../../model/fastening-orders.ts';
import type { Model, Thing } from '../../model/model.ts';
import type { Fastening } from '../document/types.ts';
import type { OrderPicture } from './order-layout.ts';

/** Every fastener group of the machine with a layout and an order, in the order of the file. */
export function orderPictures(model: Model): OrderPicture[] {
  return model.things.flatMap((thing) => pictureOf(model, thing) ?? []);
}

function pictureOf(model: Model, thing: Thing): OrderPicture | undefined {
  const layout = clauseOf(thing, 'layout')?.layout;
  const order = clauseOf(thing, 'order')?.order;
  if (!layout || !order || thing.count === undefined || thing.positions.length !== thing.count)
    return undefined;
  // Rows whose #1 is told by what is near it are drawn with #1 at the top left, and the words under them.
  const drawn = layoutFrom(layout, thing.count) ?? layoutFrom(withoutFirst(layout), thing.count);
  if (!drawn) return undefined;
  const places = placesOf(drawn);
  if (places.length !== thing.count) return undefined;
  const numbers =
    order.kind === 'listed' ? numbersOf(thing, order.positions) : inOrder(order.name, drawn, thing.count);
  if (!numbers || new Set(numbers).size !== numbers.length) return undefined;
  const countsUp = numbers.every((one, index) => one === index + 1);
  // Such a list may number the rows in the order of tightening: then nobody knows where each number lies.
  if (order.kind === 'listed' && layout.kind === 'rows' && countsUp && !layout.first) return undefined;
  const name = (number: number) => thing.positions[number - 1] ?? String(number);
  const first = layout.first?.value;
  return {
    thing: thing.name,
    name: thing.title,
    layout: layout.kind,
    places: turned(
      places.map(({ position, x, y }) => ({ position: name(position), x, y })),
      layout.kind,
      first,
    ),
    sequence: numbers.map(name),
    ...(first === undefined ? {} : { first }),
    listed: order.kind === 'listed',
    passes: passesOf(model, thing),
  };
}

function inOrder(name: NamedOrder, layout: Layout, count: number): number[] {
  switch (name) {
    case 'across':
      return acrossOrder(layout);
    case 'from the middle':
      return fromMiddleOrder(layout);
    case 'in turn':
      return circularOrder(count);
    case 'reverse':
      return reverseOrder(circularOrder(count));
  }
}

function withoutFirst(layout: TypedLayout): TypedLayout {
  const { first: _, ...rest } = layout;
  return rest;
}

type NamedOrder = Extract<Order, { kind: 'named' }>['name'];

/** Stages whose order matters: what is done by hand, loosened or waited for has none. */
function passesOf(model: Model, thing: Thing): string[] {
  const { stages, torque } = declared(model, thing);
  if (stages.length === 0) return torque ? [`tighten to ${said(torque)}.`] : [];
  return stages.flatMap(({ stage, torque: own }) => {
    if (stage.kind === 'again') return own ? [`again to ${said(own)}.`] : [];
    if (own) return [`tighten to ${said(own)}.`];
    if (stage.kind !== 'angle') return [];
    const [amount] = stage.quantity.amounts;
    return amount ? [`turn on by ${amount.number}${amount.unit?.text === 'turn' ? ' turn' : '°'}.`] : [];
  });
}

/** The order of one group as a step of a published procedure works it. */
export function pictureOfStep(fastening: Fastening): OrderPicture | undefined {
  const { id, name, order, stages } = fastening;
  if (!order?.layout || order.places.length < 2 || order.sequence.length === 0) return undefined;
  return {
    thing: id,
    name,
    layout: order.layout,
    places: turned(order.places, order.layout, order.first),
    sequence: order.sequence,
    ...(order.first === undefined ? {} : { first: order.first }),
    listed: order.kind === 'listed',
    passes: stages.filter(({ kind }) => TURNED.has(kind)).map(({ sentence }) => lower(sentence)),
  };
}

const TURNED: ReadonlySet<string> = new Set(['torque', 'angle', 'percent']);

function lower(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

/** A circle turned so that #1 lies where the author's words put it: `at the bottom`. */
function turned(
  places: OrderPicture['places'],
  layout: OrderPicture['layout'],
  first: string | undefined,
): OrderPicture['places'] {
  const side = first && /\b(top|right|bottom|left)\b/i.exec(first)?.[1]?.toLowerCase();
  const one = places[0];
  if (layout !== 'circle' || !side || !one) return places;
  const angle = Math.atan2(one.x, one.y) - (SIDES[side as keyof typeof SIDES] * Math.PI) / 2;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return places.map(({ position, x, y }) => ({ position, x: x * cos - y * sin, y: x * sin + y * cos }));
}

const SIDES = { top: 0, right: 1, bottom: 2, left: 3 } as const;
