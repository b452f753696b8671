/**
 * What lies on the bench: which things are off, aside or apart after each step, for all combinations of variants at
 * once, and how often each came off and went back.
 */
import { and, type Combos, isNone, minus, or } from '../../lists/combos.ts';
import type { Job } from '../../lists/job.ts';
import type { Thing } from '../../model/model.ts';
import type { Act } from '../sentences/act.ts';
import { tailOf } from '../sentences/act.ts';
import { alike, type Counts, counted, joined, type Move } from './hand-count.ts';
import type { BenchEntry, TallyEntry, ThingChange } from './types.ts';

type Lies = 'off' | 'aside' | 'apart';
type Bench = ReadonlyMap<number, ReadonlyMap<Lies, Combos>>;

export interface Change {
  thing: Thing;
  items: readonly number[];
  change: ThingChange['change'];
}

/** How the bench stands and what was counted: to go back to, for the other ways of a branch. */
export interface Mark {
  bench: Bench;
  counts: Counts;
}

export class Ledger {
  private readonly job: Job;
  private bench: Bench = new Map();
  private counts: Counts = new Map();
  private last: { bench: Bench; where: Combos; entries: BenchEntry[] } | undefined;

  constructor(job: Job) {
    this.job = job;
  }

  get mark(): Mark {
    const { bench, counts } = this;
    return { bench, counts };
  }

  backTo({ bench, counts }: Mark): void {
    this.bench = bench;
    this.counts = counts;
  }

  /** What may lie there after any of the ways. */
  join(ends: readonly Mark[]): void {
    this.counts = joined(ends.map(({ counts }) => counts));
    const [first, ...rest] = ends.map(({ bench }) => bench);
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
  book(act: Act, where: Combos): ThingChange[] {
    const changes = changesOf(this.job, act);
    for (const { thing, items, change } of changes) {
      this.count(thing, items, change, where);
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
    return [...this.counts].flatMap(([thing, counts]) =>
      alike(counts).map(({ moved, where }) => {
        const when = this.job.combinations.when(where, this.job.within);
        return {
          id: thing.name,
          name: thing.title,
          ...countOf(thing, thing.positions),
          ...moved,
          ...(when ? { when } : {}),
        };
      }),
    );
  }

  private count(thing: Thing, items: readonly number[], change: ThingChange['change'], where: Combos): void {
    const move = MOVED[change];
    if (!move) return;
    const each = thing.positions.length > 1 ? 1 : (thing.count ?? 1);
    // What lies aside or hangs loose already is not taken off a second time.
    const lying = move === 'off' ? items.map((item) => this.bench.get(item)) : [];
    const lies = (at: number, combo: number) =>
      lying[at] !== undefined && [...lying[at].values()].some((set) => set[combo]);
    this.counts = counted(
      this.counts,
      thing,
      move,
      where,
      (combo) => items.filter((_, at) => !lies(at, combo)).length * each,
    );
  }
}

const MOVED: Readonly<Partial<Record<ThingChange['change'], Move>>> = {
  off: 'off',
  aside: 'off',
  apart: 'off',
  back: 'back',
  together: 'back',
  new: 'fresh',
  discarded: 'discarded',
};

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
