/**
 * Tightening orders that somebody wrote, in a machine file or behind `in order`: against the positions there are,
 * the layout, and the order that the machine file declares. Facts `order-incomplete`, `order-not-across`,
 * `order-not-from-centre`, `order-differs`. Where the numbering of the layout is not known nothing is claimed.
 */
import type { Position, Span, Order as TypedOrder } from '../../grammar/syntax/tree.ts';
import {
  acrossOrder,
  aroundCircle,
  fromMiddleOrder,
  isAcross,
  type Layout,
  type OrderCheck,
  placesOf,
  positionCount,
  startsFromMiddle,
} from '../fastening/index.ts';
import type { Place } from '../report/finding.ts';
import type { Fact } from './facts.ts';
import { clauseOf, placeIn } from './fastening-declared.ts';
import { layoutFrom } from './fastening-layout.ts';
import type { Model, Thing } from './model.ts';
import { list } from './model.ts';

/** What is wrong with the `order` clause of a thing. */
export function declaredOrderFaults(model: Model, thing: Thing): Fact[] {
  const order = clauseOf(thing, 'order')?.order;
  if (order?.kind !== 'listed') return [];
  const at = placeIn(thing, order);
  const numbers = numbersOf(thing, order.positions, true);
  if (!numbers) return [];
  const whole = thing.positions.map((_, index) => index + 1);
  const incomplete = incompleteOrder(thing, numbers, whole);
  if (incomplete) return [fact(model, thing, 'order-incomplete', at, incomplete)];
  const asked = askedOfLayout(thing, numbers);
  return asked ? [fact(model, thing, asked.check, at, asked.words)] : [];
}

export interface OrderInStep {
  readonly thing: Thing;
  /** The positions that the step works, numbered from 1. */
  readonly working: readonly number[];
  readonly order: TypedOrder;
  readonly at: Place;
  /** A step that loosens or takes out: the order backwards is as good. */
  readonly loosening: boolean;
  /** The same group was tightened by an earlier step: a last round in turn is usual. */
  readonly again: boolean;
}

/** What is wrong with the order of a step. At most one fact. */
export function orderInStepFault(model: Model, step: OrderInStep): Fact | undefined {
  const { thing, order, at } = step;
  const declared = clauseOf(thing, 'order')?.order;
  const story = declared
    ? [{ at: placeIn(thing, declared), what: 'declared' as const, thing }]
    : [{ at: thing.place, what: 'declared' as const, thing }];
  if (order.kind === 'named') {
    if (order.name !== 'in turn' || step.loosening || step.again) return undefined;
    if (declared?.kind !== 'named' || !(declared.name in WANTED)) return undefined;
    const words = { order: 'in turn', declared: declared.name };
    return { ...fact(model, thing, 'order-differs', at, words), story };
  }
  const numbers = numbersOf(thing, order.positions);
  if (!numbers) return undefined;
  const incomplete = incompleteOrder(thing, numbers, step.working);
  if (incomplete) return fact(model, thing, 'order-incomplete', at, { ...incomplete, step: 'yes' });
  if (step.working.length < thing.positions.length || step.again) return undefined;
  if (declared?.kind === 'listed') {
    const wanted = numbersOf(thing, declared.positions);
    if (!wanted || wanted.length !== numbers.length || isSame(numbers, wanted)) return undefined;
    // Backwards, as most are loosened; any other order of loosening may have its reason.
    if (step.loosening) return undefined;
    const words = { order: namesOf(thing, numbers), declared: namesOf(thing, wanted) };
    return { ...fact(model, thing, 'order-differs', at, words), story };
  }
  if (step.loosening) return undefined;
  if (declared && declared.name in WANTED) {
    const reason = against(WANTED[declared.name as keyof typeof WANTED], thing, numbers);
    if (!reason) return undefined;
    const words = { order: namesOf(thing, numbers), declared: declared.name, reason };
    return { ...fact(model, thing, 'order-differs', at, words), story };
  }
  const asked = askedOfLayout(thing, numbers);
  return asked && fact(model, thing, asked.check, at, asked.words);
}

/** The items of a step as positions from 1. */
export function workingPositions(thing: Thing, items: readonly number[]): number[] {
  return items.map((item) => item - thing.first + 1);
}

const WANTED = { across: isAcross, 'from the middle': startsFromMiddle } as const;

type Ask = (order: readonly number[], layout: Layout) => OrderCheck;

/** Why the order has not the property, if it is certain that it has not. */
function against(ask: Ask, thing: Thing, numbers: readonly number[]): string | undefined {
  const layout = layoutOf(thing, numbers);
  if (!layout) return undefined;
  return ask(numbers, layout).reasons[0]?.message;
}

/** Across on a circle, from the middle on rows and other places. */
function askedOfLayout(
  thing: Thing,
  numbers: readonly number[],
): { check: string; words: Record<string, string> } | undefined {
  const layout = layoutOf(thing, numbers);
  if (!layout || numbers.length < 4) return undefined;
  const circle = aroundCircle(placesOf(layout)) !== undefined;
  const reason = (circle ? isAcross : startsFromMiddle)(numbers, layout).reasons[0]?.message;
  if (reason === undefined) return undefined;
  const right = circle ? acrossOrder(layout) : fromMiddleOrder(layout);
  return {
    check: circle ? 'order-not-across' : 'order-not-from-centre',
    words: { reason, right: namesOf(thing, right) },
  };
}

/** What is missing, repeated or not meant; undefined where the order is complete. */
function incompleteOrder(
  thing: Thing,
  numbers: readonly number[],
  working: readonly number[],
): Record<string, string> | undefined {
  const repeated = [...new Set(numbers.filter((one, index) => numbers.indexOf(one) !== index))];
  // A group that is not counted has no number that could be missing.
  const counted = thing.count !== undefined && thing.positions.length === thing.count;
  const missing = counted ? working.filter((one) => !numbers.includes(one)) : [];
  const extra = counted ? numbers.filter((one) => !working.includes(one)) : [];
  if (repeated.length + missing.length + extra.length === 0) return undefined;
  return {
    ...(missing.length > 0 ? { missing: andList(thing, missing) } : {}),
    ...(repeated.length > 0 ? { repeated: andList(thing, repeated) } : {}),
    ...(extra.length > 0 ? { extra: andList(thing, [...new Set(extra)]) } : {}),
  };
}

/**
 * The layout, where it is declared, agrees with the count, and says where each number is. Rows whose numbers are
 * not said to run along them may be numbered in the order of tightening, as many drawings are: an order that
 * counts up tells nothing then.
 */
function layoutOf(thing: Thing, numbers: readonly number[]): Layout | undefined {
  const typed = clauseOf(thing, 'layout')?.layout;
  const count = thing.count;
  if (!typed || count === undefined || thing.positions.length !== count) return undefined;
  if (typed.kind !== 'places' && thing.positions.some((name, index) => name !== String(index + 1)))
    return undefined;
  const layout = layoutFrom(typed, count);
  if (!layout || positionCount(layout) !== count) return undefined;
  const countsUp = numbers.every((one, index) => one === index + 1);
  if (typed.kind === 'rows' && countsUp && !typed.first) return undefined;
  return layout;
}

/**
 * Positions as numbers from 1; undefined where one is not known here (a loop variable, a slip). With `beyond`
 * a number that the group does not have is kept: nobody else reports it.
 */
export function numbersOf(
  thing: Thing,
  positions: readonly Position[],
  beyond = false,
): number[] | undefined {
  const numbers: number[] = [];
  for (const { from, to } of positions) {
    const first = indexOf(thing, from, beyond);
    const last = to === undefined ? first : indexOf(thing, to, beyond);
    if (first === undefined || last === undefined || Math.abs(last - first) > 500) return undefined;
    const way = last < first ? -1 : 1;
    for (let one = first; one !== last + way; one += way) numbers.push(one);
  }
  return numbers.length > 0 ? numbers : undefined;
}

function indexOf(thing: Thing, name: string, beyond: boolean): number | undefined {
  const index = thing.positions.indexOf(name);
  if (index >= 0) return index + 1;
  const number = Number(name);
  return (beyond || thing.count === undefined) && Number.isInteger(number) && number > 0 ? number : undefined;
}

function namesOf(thing: Thing, numbers: readonly number[]): string {
  return numbers.map((one) => nameOf(thing, one)).join(', ');
}

function andList(thing: Thing, numbers: readonly number[]): string {
  return list(numbers.map((one) => nameOf(thing, one)));
}

function nameOf(thing: Thing, number: number): string {
  return `#${thing.count === undefined ? number : (thing.positions[number - 1] ?? number)}`;
}

function isSame(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}

function fact(
  model: Model,
  thing: Thing,
  check: string,
  at: Place | (Span & { file: string }),
  words: Record<string, string>,
): Fact {
  return { check, at, subject: { thing }, words, cases: model.cases.and(model.built, thing.exists) };
}
