/** Fluids that go in, with amounts, and what is used up on the way: sealant, grease, cleaner. */
import { addQuantities, printSource, type Quantity } from '../../grammar/quantity/index.ts';
import type { Action } from '../../grammar/syntax/tree.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import { clauseOf } from '../model/fastening-declared.ts';
import type { Thing } from '../model/model.ts';
import { type Combos, or } from './combos.ts';
import type { Done, Job } from './job.ts';
import { headerOf, partNumber, withUsed } from './lists.ts';
import { measureOf, measureTyped } from './measures.ts';
import type { ConsumableEntry, FluidEntry } from './types.ts';

interface Use {
  fluid: Thing;
  /** In each combination: what all fills come to. */
  amounts: (Quantity | undefined)[];
  where: Combos;
  into: Set<string>;
  asNeeded: boolean;
}

export function fluidsOf(job: Job, done: readonly Done[]): FluidEntry[] {
  const uses = new Map<Thing, Use>();
  const useOf = (fluid: Thing, where: Combos): Use => {
    const use = uses.get(fluid) ?? {
      fluid,
      amounts: where.map(() => undefined),
      where: where.map(() => false),
      into: new Set<string>(),
      asNeeded: false,
    };
    uses.set(fluid, use);
    use.where = or(use.where, where);
    return use;
  };
  for (const { written, where, ifFound } of done) {
    for (const { fluid, amount, system } of fluidsIn(job, written.action)) {
      const use = useOf(fluid, where);
      if (system) use.into.add(system.title);
      if (!amount || ifFound) use.asNeeded = true;
      else
        where.forEach((inside, index) => {
          if (inside) use.amounts[index] = sum(use.amounts[index], amount);
        });
    }
  }
  const issued = new Map<Thing, Quantity>();
  for (const procedure of withUsed(job)) {
    for (const { quantity, fluid } of headerOf(procedure, 'supplies')?.fluids ?? []) {
      const thing = fluid && job.model.byName.get(fluid.name.text);
      const amount = readTyped(quantity, job.model.values);
      if (!thing || !amount || thing.type !== 'fluid') continue;
      issued.set(thing, sum(issued.get(thing), amount) ?? amount);
      useOf(thing, job.within);
    }
  }
  return [...uses.values()].flatMap((use) => entries(job, use, issued.get(use.fluid)));
}

function entries(job: Job, use: Use, issued: Quantity | undefined): FluidEntry[] {
  const { fluid, amounts, where, into, asNeeded } = use;
  const byAmount = new Map<string, { amount: Quantity | undefined; set: boolean[] }>();
  amounts.forEach((amount, index) => {
    if (!where[index]) return;
    const key = amount ? printSource(amount) : '';
    const known = byAmount.get(key) ?? { amount, set: amounts.map(() => false) };
    known.set[index] = true;
    byAmount.set(key, known);
  });
  return [...byAmount.values()].map(({ amount, set }) => {
    const when = job.combinations.when(set, job.within);
    return {
      id: fluid.name,
      name: fluid.title,
      ...(amount ? { amount: measureOf(amount, job.measures) } : {}),
      ...(issued ? { issued: measureOf(issued, job.measures) } : {}),
      into: [...into],
      ...partNumber(fluid),
      asNeeded: asNeeded || amount === undefined,
      ...(when ? { when } : {}),
    };
  });
}

/** The fluids that an action puts in or on. Without an amount in the step, what a service or the whole filling takes. */
export function fluidsIn(
  job: Job,
  action: Action,
): { fluid: Thing; amount: Quantity | undefined; system: Thing | undefined }[] {
  const { model } = job;
  const [object] = action.objects;
  const first = object && model.byName.get(object.name.text);
  const system = first?.type === 'system' ? first : undefined;
  const filling = action.verb === 'fill';
  const named = action.tails.flatMap((tail) => {
    if (tail.tail !== 'with') return [];
    return tail.refs.flatMap(({ name }) => {
      const fluid = model.byName.get(name.text);
      return fluid?.type === 'fluid' ? [{ fluid, amount: readTyped(tail.quantity, model.values) }] : [];
    });
  });
  const usual = filling && system ? fillOf(job, system) : undefined;
  if (named.length > 0) return named.map(({ fluid, amount }) => ({ fluid, amount: amount ?? usual, system }));
  if (!system || !POURED.has(action.verb)) return [];
  const fluid = fluidOf(job, system);
  return fluid ? [{ fluid, amount: usual, system }] : [];
}

const POURED: ReadonlySet<string> = new Set(['fill', 'top up', 'bleed']);

/** What the system is filled with. */
export function fluidOf({ model }: Pick<Job, 'model'>, system: Thing): Thing | undefined {
  const ref = clauseOf(system, 'holds')?.fluid;
  return ref && model.byName.get(ref.name.text);
}

/** What goes in after draining; else what it holds. */
export function fillOf({ model }: Pick<Job, 'model'>, system: Thing): Quantity | undefined {
  return (
    readTyped(clauseOf(system, 'service fill')?.quantity, model.values) ??
    readTyped(clauseOf(system, 'holds')?.quantity, model.values)
  );
}

function sum(a: Quantity | undefined, b: Quantity): Quantity | undefined {
  if (!a) return b;
  const outcome = addQuantities(a, b);
  return outcome.ok ? outcome.value : a;
}

export function consumablesOf(job: Job, done: readonly Done[]): ConsumableEntry[] {
  const used = new Map<Thing, Combos>();
  for (const procedure of withUsed(job)) {
    const supplies = headerOf(procedure, 'supplies');
    const refs = [...(supplies?.refs ?? []), ...(supplies?.fluids ?? []).flatMap(({ fluid }) => fluid ?? [])];
    for (const { name } of refs) {
      const thing = job.model.byName.get(name.text);
      if (thing?.type === 'consumable') used.set(thing, job.within);
    }
  }
  for (const { written, where } of done) {
    for (const tail of written.action.tails) {
      if (!('refs' in tail)) continue;
      for (const { name } of tail.refs) {
        const thing = job.model.byName.get(name.text);
        if (thing?.type !== 'consumable') continue;
        const known = used.get(thing);
        used.set(thing, known ? or(known, where) : where);
      }
    }
  }
  return [...used].map(([thing, where]) => {
    const when = job.combinations.when(where, job.within);
    const openTime = measureTyped(clauseOf(thing, 'open time')?.quantity, job.model, job.measures);
    const curingTime = measureTyped(clauseOf(thing, 'curing time')?.quantity, job.model, job.measures);
    return {
      id: thing.name,
      name: thing.title,
      ...(openTime ? { openTime } : {}),
      ...(curingTime ? { curingTime } : {}),
      ...partNumber(thing),
      ...(when ? { when } : {}),
    };
  });
}
