/**
 * How often each thing came off and went back, for every combination of variants by itself. What depends on what is
 * found has a least and a most. A count of hands, not of states: what the machine allows is the checker's business.
 */
import type { Combos } from '../../lists/combos.ts';
import type { Thing } from '../../model/model.ts';
import type { HandCount } from './types.ts';

export const MOVES = ['off', 'back', 'fresh', 'discarded'] as const;
export type Move = (typeof MOVES)[number];

/** Of one thing in one combination. */
export type Moved = Readonly<Record<Move, HandCount>>;

/** By thing, in the order in which they were first touched; by number of the combination, where there is any. */
export type Counts = ReadonlyMap<Thing, readonly (Moved | undefined)[]>;

const ZERO: HandCount = { least: 0, most: 0 };
const UNMOVED: Moved = { off: ZERO, back: ZERO, fresh: ZERO, discarded: ZERO };

/** One move more, in each combination as often as `many` says of it. */
export function counted(
  counts: Counts,
  thing: Thing,
  move: Move,
  where: Combos,
  many: (combo: number) => number,
): Counts {
  const before = counts.get(thing) ?? [];
  const after = where.map((inside, combo) => {
    const old = before[combo];
    const more = inside ? many(combo) : 0;
    if (more === 0) return old;
    const { least, most } = (old ?? UNMOVED)[move];
    return { ...(old ?? UNMOVED), [move]: { least: least + more, most: most + more } };
  });
  return new Map([...counts, [thing, after]]);
}

/** After any of the ways: the least and the most of them. */
export function joined(ends: readonly Counts[]): Counts {
  const things = new Set(ends.flatMap((end) => [...end.keys()]));
  const join = (thing: Thing) => {
    const all = ends.map((end) => end.get(thing) ?? []);
    const length = Math.max(...all.map((one) => one.length));
    return Array.from({ length }, (_, combo) => {
      const ways = all.map((one) => one[combo] ?? UNMOVED);
      if (ways.every((one) => one === UNMOVED)) return undefined;
      const range = (move: Move): HandCount => ({
        least: Math.min(...ways.map((one) => one[move].least)),
        most: Math.max(...ways.map((one) => one[move].most)),
      });
      return {
        off: range('off'),
        back: range('back'),
        fresh: range('fresh'),
        discarded: range('discarded'),
      };
    });
  };
  return new Map([...things].map((thing) => [thing, join(thing)]));
}

/** The combinations that count alike, one set for each count. */
export function alike(moved: readonly (Moved | undefined)[]): { moved: Moved; where: Combos }[] {
  const groups = new Map<string, { moved: Moved; where: boolean[] }>();
  moved.forEach((one, combo) => {
    if (!one) return;
    const key = MOVES.map((move) => `${one[move].least} ${one[move].most}`).join();
    const group = groups.get(key) ?? { moved: one, where: moved.map(() => false) };
    group.where[combo] = true;
    groups.set(key, group);
  });
  return [...groups.values()];
}
