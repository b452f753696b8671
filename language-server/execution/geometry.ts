/**
 * What moves with what, and what holds it to the rest: the questions of grammar/STATE.md under "Seats,
 * assemblies and what crosses", answered for all cases at once. Reads the state, never changes it.
 */
import { GROUND } from '../model/model.ts';
import { bit, FITTED, GONE, inPlace, isPlaced, not, PLACED, TRIAL } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import type { Run } from './run.ts';

/** Item -> the cases in which it moves along. */
export type Moved = Map<number, CaseSet>;

/**
 * Everything that comes along when the items are taken off, and what sits on them and on something else too
 * (it must come off first).
 */
export function movedWith(
  run: Run,
  items: readonly number[],
  within: CaseSet,
): { moved: Moved; straddling: Moved } {
  const { cases, model } = run;
  const moved: Moved = new Map(items.map((item) => [item, within]));
  const straddling: Moved = new Map();
  const work = items.slice();
  for (let index = 0; index < work.length; index++) {
    const item = work[index]!;
    for (const rider of model.riders[item]!) {
      const there = cases.and(run.where('place', rider, inPlace(run.thing(rider)), within), moved.get(item)!);
      if (there === NONE) continue;
      let along = there;
      for (const seat of model.seats[rider]!) {
        const free = run.where('place', seat, ~inPlace(run.thing(seat)), there);
        along = cases.and(along, cases.or(moved.get(seat) ?? NONE, free));
      }
      const apart = cases.minus(there, along);
      if (apart !== NONE) straddling.set(rider, apart);
      else straddling.delete(rider);
      const known = moved.get(rider);
      if (along === NONE || known === along) continue;
      moved.set(rider, known === undefined ? along : cases.or(known, along));
      work.push(rider);
    }
  }
  for (const item of straddling.keys()) {
    const left = cases.minus(straddling.get(item)!, moved.get(item) ?? NONE);
    if (left === NONE) straddling.delete(item);
    else straddling.set(item, left);
  }
  return { moved, straddling };
}

/** The cases in which a fastener or connection joins what moves to what does not. */
export function crosses(run: Run, joint: number, moved: Moved, within: CaseSet): CaseSet {
  const { cases, model } = run;
  const there = run.where('place', joint, inPlace(run.thing(joint)), within);
  if (there === NONE) return NONE;
  let inside: CaseSet = NONE;
  let outside: CaseSet = cases.and(there, model.groundOf[joint]!);
  for (const member of model.members[joint]!) {
    const moves = cases.and(moved.get(member) ?? NONE, there);
    inside = cases.or(inside, moves);
    const thing = run.thing(member);
    const isThere =
      thing.type === 'part' ? run.where('place', member, not(GONE), there) : cases.and(there, thing.exists);
    outside = cases.or(outside, cases.minus(isThere, moves));
  }
  return cases.and(inside, outside);
}

/** Things that sit one on the other. */
const MOST_SEATS = 1_000;

export interface Root {
  /** The thing that is off and carries the item, or GROUND. */
  root: number;
  cases: CaseSet;
}

/**
 * Where the chain of seats under an item ends, in which cases. With `seated`, a thing that is moved aside does
 * not count as being on its seat: nothing can be bolted through it.
 */
export function roots(run: Run, item: number, within: CaseSet, seated = false, depth = 0): Root[] {
  if (within === NONE) return [];
  // Only seats in a circle are this deep; that is a finding about the machine.
  if (depth > MOST_SEATS) return [{ root: GROUND, cases: within }];
  const { cases, model } = run;
  const thing = run.thing(item);
  // A thing that this variant does not have is nowhere, and in nobody's way.
  const existing = cases.and(within, thing.exists);
  if (existing === NONE) return [];
  const result: Root[] = [];
  if (!isPlaced(thing)) return [{ root: GROUND, cases: existing }];
  const off = run.where('place', item, seated ? ~bit(FITTED, TRIAL) : ~PLACED, existing);
  if (off !== NONE) result.push({ root: item, cases: off });
  let rest = cases.minus(existing, off);
  for (const seat of model.seats[item]!) {
    if (rest === NONE) break;
    const here = cases.and(rest, run.thing(seat).exists);
    result.push(...roots(run, seat, here, seated, depth + 1));
    rest = cases.minus(rest, here);
  }
  if (rest !== NONE) result.push({ root: GROUND, cases: rest });
  return result;
}

/** Whether `roots` would give nothing but the ground. */
function grounded(run: Run, item: number, within: CaseSet, seated = false, depth = 0): boolean {
  if (within === NONE || depth > MOST_SEATS) return true;
  const { cases, model } = run;
  const thing = run.thing(item);
  let rest = cases.and(within, thing.exists);
  if (rest === NONE || !isPlaced(thing)) return true;
  if (run.where('place', item, seated ? ~bit(FITTED, TRIAL) : ~PLACED, rest) !== NONE) return false;
  for (const seat of model.seats[item]!) {
    if (rest === NONE) break;
    const here = cases.and(rest, run.thing(seat).exists);
    if (!grounded(run, seat, here, seated, depth + 1)) return false;
    rest = cases.minus(rest, here);
  }
  return true;
}

/** None of them is apart from the others, since all are on the machine: the usual answer, found soon. */
export function togetherOnMachine(
  run: Run,
  items: readonly number[],
  within: CaseSet,
  seated?: boolean,
): boolean {
  for (const item of items) if (!grounded(run, item, within, seated)) return false;
  return true;
}

/**
 * The things that keep these items from being in one assembly: each with the cases in which it is off while
 * the others are elsewhere. Empty where they are together. `ground`: the cases in which the ground is meant too.
 */
export function apart(
  run: Run,
  items: readonly number[],
  within: CaseSet,
  how: { seated?: boolean; ground?: CaseSet } = {},
): Root[] {
  if (togetherOnMachine(run, items, within, how.seated)) return [];
  const { cases } = run;
  const all = items.map((item) => roots(run, item, within, how.seated));
  const ground = cases.and(within, how.ground ?? NONE);
  if (ground !== NONE) all.push([{ root: GROUND, cases: ground }]);
  const first = all[0]?.[0]?.root;
  if (all.every((list) => list.every(({ root }) => root === first))) return [];
  // The assembly that is meant: on the machine where one of them is, else where the last one is.
  let onMachine: CaseSet = NONE;
  for (const list of all) {
    for (const { root, cases: set } of list) if (root === GROUND) onMachine = cases.or(onMachine, set);
  }
  const meant: Root[] = [{ root: GROUND, cases: onMachine }];
  let bench = cases.minus(within, onMachine);
  for (const list of [...all].reverse()) {
    for (const { root, cases: set } of list) {
      const here = cases.and(set, bench);
      if (here === NONE) continue;
      meant.push({ root, cases: here });
      bench = cases.minus(bench, here);
    }
  }
  const result = new Map<number, CaseSet>();
  for (const list of all) {
    for (const { root, cases: set } of list) {
      for (const target of meant) {
        if (root === target.root || root === GROUND) continue;
        const elsewhere = cases.and(set, target.cases);
        if (elsewhere !== NONE) result.set(root, cases.or(result.get(root) ?? NONE, elsewhere));
      }
    }
  }
  return [...result].map(([root, set]) => ({ root, cases: set }));
}
