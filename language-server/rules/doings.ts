/**
 * What a step does, in the verbs that a rule may name. A rule that forbids to loosen a bolt is not kept by writing
 * `remove` or `unbolt` for it: who takes a bolt out has loosened it. LANGUAGE.md lists what counts as what.
 */
import { exact } from '../../grammar/quantity/index.ts';
import type { Action } from '../../grammar/syntax/tree.ts';
import { bandIn, readTyped } from '../model/fastening-amounts.ts';
import type { Model } from '../model/model.ts';
import type { EventDemand } from './compile.ts';

/** By the verb that is written: the verbs that it is, too, whatever it acts on. */
export const ALSO_IS: Readonly<Record<string, readonly string[]>> = {
  'back off': ['loosen'],
  unbolt: ['remove'],
  refit: ['fit'],
  'bolt up': ['fit', 'refit'],
  recover: ['drain', 'relieve'],
  inflate: ['pressurise'],
  pressurise: ['inflate'],
  raise: ['support'],
};

/** The same by the kind of thing that it acts on. */
export const ALSO_IS_ON: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  fastener: {
    remove: ['loosen'],
    fit: ['tighten'],
    refit: ['tighten'],
  },
  connection: {
    remove: ['disconnect', 'open'],
    disconnect: ['remove', 'open'],
    open: ['disconnect', 'remove'],
    fit: ['connect', 'close'],
    refit: ['connect', 'close', 'fit'],
    connect: ['fit', 'refit', 'close'],
    close: ['connect', 'fit', 'refit'],
  },
};

/** One step on things that are worked together, as rules see it. */
export interface Doing {
  readonly action: Action;
  readonly file: string;
  /** It belongs to a procedure that the present one uses. */
  readonly used: boolean;
  /** Verb -> items that the step does this to. */
  readonly done: ReadonlyMap<string, ReadonlySet<number>>;
}

export function doingOf(
  model: Model,
  { action, file, used }: Omit<Doing, 'done'>,
  items: readonly number[],
): Doing {
  const done = new Map<string, Set<number>>();
  const add = (verb: string, item: number) => {
    let set = done.get(verb);
    if (!set) {
      set = new Set();
      done.set(verb, set);
    }
    set.add(item);
  };
  const { verb } = action;
  if (items.length === 0) for (const one of [verb, ...(ALSO_IS[verb] ?? [])]) done.set(one, new Set());
  const named = action.fresh === 'kit' ? items.flatMap((item) => [item, ...model.contains[item]!]) : items;
  const byHand = action.tails.some(({ tail }) => tail === 'by hand');
  for (const item of named) {
    const { type } = model.thingOf[item]!;
    add(verb, item);
    for (const other of ALSO_IS[verb] ?? []) if (!(other === 'refit' && action.fresh)) add(other, item);
    for (const other of ALSO_IS_ON[type]?.[verb] ?? [])
      if (!(other === 'tighten' && byHand)) add(other, item);
    if (action.tails.some(({ tail }) => tail === 'and discard')) add('discard', item);
    if (verb === 'unbolt') for (const bolt of model.heldBy[item]!) for (const one of OUT) add(one, bolt);
    if (verb === 'bolt up') for (const bolt of model.heldBy[item]!) for (const one of IN) add(one, bolt);
  }
  return { action, file, used, done };
}

/** What happens to the fasteners of a part that is unbolted, and of one that is bolted up. */
const OUT = ['remove', 'loosen'];
const IN = ['fit', 'tighten'];

/** Kinds of quantity that add up over steps: two turns are one turn and another. Of others one step reaches it. */
const ADDS_UP: ReadonlySet<string> = new Set(['angle', 'time']);

/**
 * How much of what the demand counts the step does to the item: 1 for one time, or an amount in the unit of the
 * demand. 0 where it does nothing of the kind, or does not say how much.
 */
export function amountOf(
  model: Model,
  { action, done }: Doing,
  demand: Pick<EventDemand, 'verb' | 'quantity' | 'target'>,
  item: number | undefined,
): number {
  const items = done.get(demand.verb);
  if (!items || (item !== undefined && !items.has(item))) return 0;
  const { quantity, target } = demand;
  if (!quantity) return timesOf(action);
  for (const typed of [
    action.quantity,
    ...action.tails.map((tail) => ('quantity' in tail ? tail.quantity : undefined)),
  ]) {
    const read = readTyped(typed, model.values);
    if (!read || read.unit.kind !== quantity.unit.kind) continue;
    const { low, high } = bandIn(read, quantity.unit.symbol);
    const amount = (Number.isFinite(high) ? Math.max(low, high) : low) * timesOf(action);
    return ADDS_UP.has(quantity.unit.kind) || amount >= target ? amount : 0;
  }
  return 0;
}

function timesOf(action: Action): number {
  const tail = action.tails.find((one) => one.tail === 'times');
  return tail?.tail === 'times' ? tail.count : 1;
}

/** The number that a quantity of a rule asks for, in its own unit: the low end of a range. */
export function targetOf(quantity: NonNullable<EventDemand['quantity']>): number {
  const low = quantity.low ?? quantity.nominal ?? quantity.high;
  return low === undefined ? 0 : exact.toNumber(low);
}
