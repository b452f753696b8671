/** The new parts that a job fits, with counts and numbers, for each variant where they differ; and the kits. */
import type { Ref } from '../../grammar/syntax/tree.ts';
import { itemsOf } from '../model/items.ts';
import type { Thing } from '../model/model.ts';
import { isPlural } from '../wording/nouns.ts';
import { type Combos, isNone, or } from './combos.ts';
import type { Done, Job } from './job.ts';
import { headerOf, partNumber, withUsed } from './lists.ts';
import type { KitEntry, PartEntry } from './types.ts';

/** So many of a group where nobody says how many there are. */
const UNKNOWN = Number.NaN;

interface Need {
  thing: Thing;
  /** How many in each combination, done for certain. */
  planned: number[];
  /** The same where something is found. */
  found: number[];
}

export function newPartsOf(job: Job, done: readonly Done[]): PartEntry[] {
  const needs = new Map<Thing, Need>();
  const add = (thing: Thing, count: number, where: Combos, ifFound: boolean) => {
    const zero = () => where.map(() => 0);
    const need = needs.get(thing) ?? { thing, planned: zero(), found: zero() };
    needs.set(thing, need);
    where.forEach((inside, index) => {
      if (!inside) return;
      if (ifFound) need.found[index] = Math.max(need.found[index]!, count);
      else need.planned[index]! += count;
    });
  };
  for (const { written, where, ifFound } of done) {
    const { action } = written;
    if (action.fresh === undefined) continue;
    for (const ref of action.objects) {
      const thing = job.model.byName.get(ref.name.text);
      if (!thing) continue;
      if (thing.type !== 'kit') add(thing, countOf(thing, ref), where, ifFound);
      else for (const part of contentsOf(job, thing)) add(part.thing, part.count, where, ifFound);
    }
  }
  // Issued with the job, and fitted by no step that says `new`.
  for (const procedure of withUsed(job)) {
    for (const ref of headerOf(procedure, 'supplies')?.refs ?? []) {
      const thing = job.model.byName.get(ref.name.text);
      if (!thing || needs.has(thing) || !PARTS.has(thing.type)) continue;
      const where = job.combinations.of(thing.exists).map((one, index) => one && job.within[index]!);
      add(thing, countOf(thing, ref), where, false);
    }
  }
  const kits = kitsOf(job, done);
  const all = [...needs.values()];
  return all.flatMap((need) => entries(job, need, kits, all));
}

const PARTS: ReadonlySet<string> = new Set(['part', 'fastener', 'seal', 'connection', 'control', 'isolator']);

function entries(job: Job, need: Need, kits: readonly KitEntry[], all: readonly Need[]): PartEntry[] {
  const { thing, planned, found } = need;
  const kit = kits.find(({ contains }) => contains.some(({ id }) => id === thing.name))?.id;
  const with_ = all.find(
    (other) =>
      other !== need &&
      job.model.comesWith[other.thing.first]?.some((item) => job.model.thingOf[item] === thing),
  );
  const item = thing.declaration.clauses.find((clause) => clause.clause === 'item');
  const base = {
    id: thing.name,
    name: thing.title,
    ...partNumber(thing),
    ...(item?.clause === 'item' && item.number !== undefined ? { item: item.number } : {}),
    ...(kit === undefined ? {} : { kit }),
    ...(with_ ? { comesWith: with_.thing.name } : {}),
  };
  const result: PartEntry[] = [];
  const each = (counts: readonly number[], ifFound: boolean) => {
    // Those with the same number make one line.
    const byCount = new Map<string, boolean[]>();
    counts.forEach((count, index) => {
      if (count === 0) return;
      const set = byCount.get(String(count)) ?? counts.map(() => false);
      set[index] = true;
      byCount.set(String(count), set);
    });
    for (const [text, set] of byCount) {
      const when = job.combinations.when(set, job.within);
      const count = Number(text);
      result.push({
        ...base,
        ...(Number.isNaN(count) ? {} : { count }),
        ifFound,
        ...(when ? { when } : {}),
      });
    }
  };
  each(planned, false);
  // What is fitted anyway needs no second line for the case that it is found bad.
  each(
    found.map((count, index) => (planned[index] ? 0 : count)),
    true,
  );
  return result;
}

/** How many are meant; not a number where the machine file does not say how many there are. */
export function countOf(thing: Thing, ref?: Ref): number {
  if (ref?.count !== undefined) return ref.count;
  if (ref && ref.positions.length > 0) return itemsOf(thing, ref).items.length;
  if (thing.positions.length > 1) return thing.positions.length;
  return thing.count ?? (isPlural(thing.title) ? UNKNOWN : 1);
}

function contentsOf(job: Job, kit: Thing): { thing: Thing; count: number }[] {
  const things = new Set((job.model.contains[kit.first] ?? []).map((item) => job.model.thingOf[item]!));
  return [...things].map((thing) => ({ thing, count: countOf(thing) }));
}

/** Kits that are issued with the job or fitted as such. */
export function kitsOf(job: Job, done: readonly Done[]): KitEntry[] {
  const counts = new Map<Thing, { count: number; where: Combos }>();
  for (const procedure of withUsed(job)) {
    for (const ref of headerOf(procedure, 'supplies')?.refs ?? []) {
      const thing = job.model.byName.get(ref.name.text);
      if (thing?.type === 'kit') counts.set(thing, { count: ref.count ?? 1, where: job.within });
    }
  }
  for (const { written, where } of done) {
    for (const { name } of written.action.objects) {
      const thing = job.model.byName.get(name.text);
      if (thing?.type !== 'kit') continue;
      const known = counts.get(thing);
      counts.set(thing, { count: known?.count ?? 1, where: known ? or(known.where, where) : where });
    }
  }
  return [...counts].map(([thing, { count, where }]) => {
    const when = isNone(where) ? undefined : job.combinations.when(where, job.within);
    return {
      id: thing.name,
      name: thing.title,
      count,
      ...partNumber(thing),
      contains: contentsOf(job, thing).map((part) => ({
        id: part.thing.name,
        name: part.thing.title,
        ...(Number.isNaN(part.count) ? {} : { count: part.count }),
      })),
      ...(when ? { when } : {}),
    };
  });
}
