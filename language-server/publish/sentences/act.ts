/** One action as its sentence needs it: what it is about, with what, and what is turned tight by it. */
import type { Action, Ref, Tail, TailName } from '../../../grammar/syntax/tree.ts';
import type { MeasureOptions } from '../../lists/measures.ts';
import { readTyped } from '../../model/fastening-amounts.ts';
import { isSquare } from '../../model/fastening-tools.ts';
import { itemsOf } from '../../model/items.ts';
import type { Model, Thing } from '../../model/model.ts';
import type { Fastening } from '../document/types.ts';
import type { Words } from '../words/words.ts';
import { fasteningOf, typedTorque } from './fastening.ts';
import type { Noun } from './noun.ts';
import { itemsNoun, nounOf } from './nouns-of.ts';

export interface ActContext {
  model: Model;
  words: Words;
  measures: MeasureOptions;
  bound: ReadonlyMap<string, string>;
  /** Whether the reader meets the thing for the first time (in this task): then it is told more fully. */
  introduce(id: string): boolean;
}

export interface Act {
  action: Action;
  objects: { noun: Noun; thing: Thing | undefined; items: readonly number[] }[];
  /** The groups that hold what is unbolted or bolted up, for each object. */
  held: { noun: Noun; thing: Thing }[][];
  tools: Noun[];
  people: number | undefined;
  /** What this action turns, tight or loose. */
  fastening: Fastening[];
}

export function actOf(context: ActContext, action: Action): Act {
  const { model } = context;
  const objects = action.objects.map((ref) => {
    const thing = model.byName.get(ref.name.text);
    return {
      noun: nounOf(model, ref, action.fresh === 'new'),
      thing,
      items: thing ? itemsOf(thing, ref).items : [],
    };
  });
  const held = objects.map(({ items }) => heldBy(model, action.verb, items));
  return {
    action,
    objects,
    held,
    tools: toolRefs(action).map((ref) => nounOf(model, ref)),
    people:
      action.tails.find((tail) => tail.tail === 'with' && tail.people !== undefined) === undefined
        ? undefined
        : Math.max(...action.tails.map((tail) => (tail.tail === 'with' ? (tail.people ?? 0) : 0))),
    fastening: fastenings(context, action, objects, held),
  };
}

export function tailOf<Name extends TailName>(
  action: Action,
  name: Name,
): (Tail & { tail: Name }) | undefined {
  return action.tails.find((tail): tail is Tail & { tail: Name } => tail.tail === name);
}

/** What is named after `with`, apart from people. */
function toolRefs(action: Action): Ref[] {
  return action.tails.flatMap((tail) => (tail.tail === 'with' && !tail.quantity ? tail.refs : []));
}

function heldBy(model: Model, verb: string, items: readonly number[]): { noun: Noun; thing: Thing }[] {
  if (verb !== 'unbolt' && verb !== 'bolt up') return [];
  const groups = new Map<Thing, Set<number>>();
  for (const item of items)
    for (const fastener of model.heldBy[item] ?? []) {
      const thing = model.thingOf[fastener]!;
      groups.set(thing, (groups.get(thing) ?? new Set()).add(fastener));
    }
  return [...groups].map(([thing, some]) => {
    // The sentence names the part itself; `that hold it` would be said twice.
    const { holds: _, ...noun } = itemsNoun(model, thing, [...some]);
    return { thing, noun };
  });
}

function fastenings(
  context: ActContext,
  action: Action,
  objects: Act['objects'],
  held: Act['held'],
): Fastening[] {
  const { model } = context;
  const work = workOf(action);
  if (!work) return [];
  const torque = work === 'tighten' || work === 'check' ? typedTorque(model, action) : undefined;
  const stage = Number(tailOf(action, 'stage')?.quantity?.amounts[0]?.number);
  const pass = readTyped(tailOf(action, 'pass')?.quantity, model.values);
  const order = tailOf(action, 'in order')?.order;
  const named = action.tails.flatMap((tail) => (tail.tail === 'with' ? tail.refs : []));
  const tools = named.flatMap(({ name }) => {
    const thing = model.byName.get(name.text);
    return thing?.type === 'tool' ? [thing] : [];
  });
  const turned =
    action.verb === 'unbolt' || action.verb === 'bolt up'
      ? held.flat()
      : objects.flatMap(({ thing, noun }) => (thing && turns(action.verb, thing) ? [{ thing, noun }] : []));
  return turned.map(({ thing, noun }) =>
    fasteningOf(context, {
      thing,
      noun,
      work,
      tools,
      ...(torque ? { torque } : {}),
      ...(Number.isInteger(stage) && stage > 0 ? { stage } : {}),
      ...(pass ? { pass } : {}),
      ...(isSquare(action.text?.value ?? '') ? { square: true } : {}),
      ...(order ? { order } : {}),
      ...(work === 'tighten' && tailOf(action, 'until') ? { byFeel: true } : {}),
    }),
  );
}

function workOf(action: Action): Fastening['work'] | undefined {
  const byHand = tailOf(action, 'by hand') !== undefined;
  switch (action.verb) {
    case 'tighten':
    case 'fit':
    case 'refit':
    case 'bolt up':
    case 'connect':
      return byHand ? 'start' : 'tighten';
    case 'loosen':
    case 'unbolt':
    case 'remove':
      return 'loosen';
    case 'back off':
      return 'back off';
    case 'check':
      return 'check';
    default:
      return undefined;
  }
}

function turns(verb: string, thing: Thing): boolean {
  if (thing.type === 'fastener') return true;
  if (thing.type === 'connection')
    return thing.torque !== undefined && (verb === 'connect' || verb === 'tighten' || verb === 'check');
  return thing.torque !== undefined && (verb === 'tighten' || verb === 'check');
}
