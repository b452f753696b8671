/**
 * What lies on the bench: which things are off, aside or apart after each step, for all combinations of variants at
 * once, and how often each came off and went back. A count of hands, not of states: what the machine allows is the
 * checker's business.
 */
import { and, type Combos, isNone, minus, or } from '../../lists/combos.ts';
import type { Job } from '../../lists/job.ts';
import type { Thing } from '../../model/model.ts';
import type { Act } from '../sentences/act.ts';
import { tailOf } from '../sentences/act.ts';
import type { BenchEntry, TallyEntry, ThingChange } from './types.ts';

type Lies = 'off' | 'aside' | 'apart';
type Bench = ReadonlyMap<number, ReadonlyMap<Lies, Combos>>;

export interface Change {
  thing: Thing;
  items: readonly number[];
  change: ThingChange['change'];
}

interface Tally {
  thing: Thing;
  off: number;
  back: number;
  fresh: number;
  discarded: number;
  exact: boolean;
  where: Combos;
}

export class Ledger {
  private readonly job: Job;
  private bench: Bench = new Map();
  private readonly tallies = new Map<Thing, Tally>();
  private last: { bench: Bench; where: Combos; entries: BenchEntry[] } | undefined;

  constructor(job: Job) {
    this.job = job;
  }

  /** The bench now: to go back to, for the other ways of a branch. */
  get mark(): Bench {
    return this.bench;
  }

  backTo(mark: Bench): void {
    this.bench = mark;
  }

  /** What may lie there after any of the ways. */
  join(ends: readonly Bench[]): void {
    const [first, ...rest] = ends;
    if (!first) return;
    const all = new Map([...first].map(([item, states]) => [item, new Map(states)]));
    for (const end of rest)
      for (const [item, states] of end)
        for (const [state, set] of states) {
          const known = all.get(item) ?? new Map<Lies, Combos>();
          const before = known.get(state);
          known.set(state, before ? or(before, set) : set);
          all.set(item, known);
        }
    this.bench = all;
  }

  /** Books a step and says what moves in it. */
  book(act: Act, where: Combos, certain: boolean): ThingChange[] {
    const changes = changesOf(this.job, act);
    for (const { thing, items, change } of changes) {
      this.count(thing, items.length, change, where, certain);
      const to = LIES[change];
      const next = new Map(this.bench);
      for (const item of items) {
        const states = new Map<Lies, Combos>();
        for (const [state, set] of this.bench.get(item) ?? []) {
          const left = minus(set, where);
          if (!isNone(left)) states.set(state, left);
        }
        if (to) states.set(to, or(states.get(to) ?? where, where));
        if (states.size > 0) next.set(item, states);
        else next.delete(item);
      }
      this.bench = next;
    }
    return changes.map(({ thing, items, change }) => ({
      id: thing.name,
      name: thing.title,
      ...countOf(thing, items),
      positions:
        items.length < thing.positions.length
          ? items.map((item) => thing.positions[item - thing.first]!)
          : [],
      change,
    }));
  }

  /** What is off, aside or apart, as seen from these combinations. */
  entries(where: Combos): BenchEntry[] {
    // Most steps move nothing.
    const { last } = this;
    if (last && last.bench === this.bench && last.where === where) return last.entries;
    const entries = this.entriesOf(where);
    this.last = { bench: this.bench, where, entries };
    return entries;
  }

  private entriesOf(where: Combos): BenchEntry[] {
    const lines = new Map<string, { thing: Thing; items: number[]; state: Lies; set: Combos }>();
    for (const [item, states] of this.bench) {
      const thing = this.job.model.thingOf[item]!;
      for (const [state, whole] of states) {
        const set = and(whole, where);
        if (isNone(set)) continue;
        const key = `${thing.id} ${state} ${set.map(Number).join('')}`;
        const line = lines.get(key) ?? { thing, items: [], state, set };
        line.items.push(item);
        lines.set(key, line);
      }
    }
    return [...lines.values()].map(({ thing, items, state, set }) => {
      const when = this.job.combinations.when(set, where);
      return {
        id: thing.name,
        name: thing.title,
        ...countOf(thing, items),
        state,
        ...(when ? { when } : {}),
      };
    });
  }

  tally(): TallyEntry[] {
    return [...this.tallies.values()].map(({ thing, off, back, fresh, discarded, exact, where }) => {
      const when = this.job.combinations.when(where, this.job.within);
      return {
        id: thing.name,
        name: thing.title,
        ...countOf(thing, thing.positions),
        off,
        back,
        fresh,
        discarded,
        exact,
        ...(when ? { when } : {}),
      };
    });
  }

  private count(
    thing: Thing,
    count: number,
    change: ThingChange['change'],
    where: Combos,
    certain: boolean,
  ): void {
    if (change === 'tool-on' || change === 'tool-off' || change === 'away') return;
    const zero = {
      thing,
      off: 0,
      back: 0,
      fresh: 0,
      discarded: 0,
      exact: true,
      where: where.map(() => false),
    };
    const tally: Tally = this.tallies.get(thing) ?? zero;
    tally.where = or(tally.where, where);
    if (!certain) tally.exact = false;
    const many = thing.positions.length > 1 ? count : (thing.count ?? 1);
    if (change === 'off' || change === 'aside' || change === 'apart') tally.off += many;
    else if (change === 'back' || change === 'together') tally.back += many;
    else if (change === 'new') tally.fresh += many;
    else tally.discarded += many;
    this.tallies.set(thing, tally);
  }
}

const LIES: Readonly<Partial<Record<ThingChange['change'], Lies>>> = {
  off: 'off',
  aside: 'aside',
  apart: 'apart',
};

function countOf(thing: Thing, items: readonly unknown[]): { count?: number } {
  if (thing.positions.length > 1) return { count: items.length };
  return thing.count === undefined ? {} : { count: thing.count };
}

/** What changes place in a step, in the order of its sentence. */
function changesOf({ model }: Job, act: Act): Change[] {
  const { action } = act;
  const thrown = tailOf(action, 'and discard') !== undefined;
  const changes: Change[] = [];
  act.objects.forEach(({ thing, items }, index) => {
    if (!thing) return;
    const held = (act.held[index] ?? []).map((group): Change => {
      const own = items.flatMap((item) => model.heldBy[item] ?? []);
      const some = [...new Set(own)].filter((item) => model.thingOf[item] === group.thing);
      return { thing: group.thing, items: some, change: 'off' };
    });
    const one = (change: ThingChange['change']) => changes.push({ thing, items, change });
    switch (action.verb) {
      case 'remove':
        one(thing.type === 'tool' ? 'tool-off' : 'off');
        if (thrown) one('discarded');
        break;
      case 'unbolt':
        changes.push(...held);
        one('off');
        if (thrown) one('discarded');
        break;
      case 'discard':
        one('discarded');
        break;
      case 'fit':
      case 'refit':
        if (thing.type === 'tool') one('tool-on');
        else if (thing.type === 'kit') {
          const inside = items.flatMap((item) => model.contains[item] ?? []);
          for (const part of new Set(inside.map((item) => model.thingOf[item]!)))
            changes.push({
              thing: part,
              items: inside.filter((item) => model.thingOf[item] === part),
              change: 'new',
            });
        } else one(action.fresh === 'new' ? 'new' : 'back');
        break;
      case 'trial fit':
      case 'move back':
        one('back');
        break;
      case 'bolt up':
        one(action.fresh === 'new' ? 'new' : 'back');
        changes.push(...held.map((each): Change => ({ ...each, change: 'back' })));
        break;
      case 'move aside':
        one('aside');
        break;
      case 'disconnect':
        one('apart');
        break;
      case 'connect':
        one('together');
        break;
      case 'send':
        one('away');
        break;
      default:
    }
  });
  return changes;
}
