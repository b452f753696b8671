/** Fasteners: out and in, loose and tight, stage by stage. */
import type { Action, Quantity } from '../../../grammar/syntax/tree.ts';
import type { Thing } from '../../model/model.ts';
import {
  bit,
  FINAL,
  FITTED,
  HAND,
  HAS_BEEN_OFF,
  LOOSE,
  MOST_STAGES,
  NO,
  not,
  OUT,
  PASS,
  STAGE,
  THROWN_AWAY,
  YES,
} from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import { apart, type Root, togetherOnMachine } from '../geometry.ts';
import type { Run } from '../run.ts';
import { already, letOut, openSystems, reach, storyOf, usable } from './common.ts';
import { goesIn, wipe } from './compounds.ts';
import { missing, partJoint, sealed } from './parts.ts';

export function takeOut(
  run: Run,
  items: readonly number[],
  within: CaseSet,
  how: { discard?: boolean; alreadyCounts?: boolean },
): void {
  for (const item of items) {
    const thing = run.thing(item);
    const exists = run.cases.and(within, thing.exists);
    const set =
      how.alreadyCounts === false
        ? run.where('place', item, not(OUT), exists)
        : already(run, item, run.entries('place', item, exists), bit(OUT), exists, false, storyOf(thing));
    if (how.discard) run.set('parted', item, THROWN_AWAY, exists);
    if (set === NONE) continue;
    reach(run, item, set, items);
    openSystems(run, item, set);
    partJoint(run, item, set);
    run.set('place', item, OUT, set);
    run.set('secured', item, YES, set);
    run.set('feel', item, NO, set);
    if (!how.discard) run.set('parted', item, HAS_BEEN_OFF, set);
    wipe(run, item, set);
    letOut(run, item, set);
  }
}

export function bringIn(
  run: Run,
  items: readonly number[],
  within: CaseSet,
  how: { fresh?: boolean; byHand?: boolean; alreadyCounts?: boolean },
): void {
  membersTogether(run, items, within, bit(OUT));
  for (const item of items) {
    const thing = run.thing(item);
    const exists = run.cases.and(within, thing.exists);
    const set =
      how.alreadyCounts === false
        ? run.where('place', item, bit(OUT), exists)
        : already(run, item, run.entries('place', item, exists), not(OUT), exists, true, storyOf(thing));
    if (set === NONE) continue;
    if (!how.fresh) usable(run, item, set, 'taken off');
    reach(run, item, set, items);
    sealed(run, item, set);
    if (how.fresh) {
      run.set('fresh', item, YES, set);
      run.set('parted', item, NO, set);
      run.set('yielded', item, NO, set);
    }
    run.set('lost', item, NO, set);
    run.set('secured', item, thing.needsSecuring ? YES : NO, set);
    goesIn(run, item, set);
    if (how.byHand) run.set('place', item, HAND, set);
    else makeFinal(run, item, set);
  }
}

/** Everything that they clamp is where it is clamped; asked of all positions before anything is assumed. */
function membersTogether(run: Run, items: readonly number[], within: CaseSet, mask: number): void {
  const lacking: (Root & { item: number })[] = [];
  let before: { members: readonly number[]; set: CaseSet } | undefined;
  for (const item of items) {
    const set = run.where('place', item, mask, run.cases.and(within, run.thing(item).exists));
    const members = run.model.members[item]!;
    // The bolts of a group mostly clamp the same: asked once.
    if (before && before.set === set && isSame(before.members, members)) continue;
    // Nearly always all of them are on the machine.
    if (togetherOnMachine(run, members, set, true)) {
      before = { members, set };
      continue;
    }
    for (const root of apart(run, members, set, { seated: true, ground: run.model.groundOf[item]! }))
      lacking.push({ item, ...root });
  }
  for (const { item, root, cases } of lacking) missing(run, 'tightened-unseated', item, root, cases, false);
  for (const { root, cases } of lacking) run.assume('place', root, FITTED, cases);
}

function isSame(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}

function makeFinal(run: Run, item: number, within: CaseSet): void {
  run.set('place', item, FINAL, within);
  if (!run.thing(item).toYield) return;
  run.require('retightened-yield', item, 'yielded', item, bit(NO), NO, within, 'tightened');
  run.set('yielded', item, YES, within);
}

export function loosen(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    let set = run.cases.and(run.within, thing.exists);
    const out = run.require('not-in-place', item, 'place', item, not(OUT), FINAL, set, storyOf(thing));
    set = already(
      run,
      item,
      run.entries('place', item, run.cases.minus(set, out)),
      bit(LOOSE),
      set,
      false,
      storyOf(thing),
    );
    if (set === NONE) continue;
    reach(run, item, set, items);
    openSystems(run, item, set);
    loosenTo(run, item, set);
    run.set('secured', item, YES, set);
    letOut(run, item, set);
  }
}

/** Where the plan says to loosen after the stage that was reached, loosening is that stage; else it is loose. */
function loosenTo(run: Run, item: number, within: CaseSet): void {
  const { stages } = run.thing(item);
  const reached = run.entries('place', item, within);
  run.set('place', item, LOOSE, within);
  stages.slice(0, MOST_STAGES).forEach((stage, index) => {
    if (stage.kind !== 'loosen' || index === 0) return;
    for (const entry of reached.filter((one) => one.value === STAGE + index))
      run.set('place', item, STAGE + index + 1, entry.cases);
  });
}

/** What a `tighten` line asks for. */
export type Aim =
  | { kind: 'final'; feel: boolean; quantity?: Quantity }
  | { kind: 'stage'; stage: number }
  | { kind: 'pass'; complete: boolean };

export function aimOf(action: Action): Aim {
  for (const tail of action.tails) {
    if (tail.tail === 'stage') return { kind: 'stage', stage: whole(tail.quantity) ?? 1 };
    if (tail.tail === 'pass') return { kind: 'pass', complete: (whole(tail.quantity) ?? 0) >= 100 };
    if (tail.tail === 'to' && tail.quantity?.amounts[0]?.unit?.text === '%') {
      return { kind: 'pass', complete: (whole(tail.quantity) ?? 0) >= 100 };
    }
  }
  const value = action.tails.find((tail) => tail.tail === 'to' || tail.tail === 'at');
  const quantity = value && 'quantity' in value ? value.quantity : undefined;
  return {
    kind: 'final',
    feel: action.tails.some((tail) => tail.tail === 'until'),
    ...(quantity ? { quantity } : {}),
  };
}

/** `tighten bolts to 16 N·m` where 16 N·m is one stage of the plan, written the same way: that stage is meant. */
function stageMeant(thing: Thing, quantity: Quantity | undefined): number | undefined {
  const written = (one: Quantity | undefined) => {
    const amount = one?.form === 'plain' ? one.amounts[0] : undefined;
    return amount && `${amount.number} ${amount.unit?.text ?? ''}`;
  };
  const wanted = written(quantity);
  if (wanted === undefined) return undefined;
  const same = thing.stages.flatMap((stage, index) =>
    'quantity' in stage && written(stage.quantity) === wanted ? [index + 1] : [],
  );
  // The last torque of the plan is the one people name for the whole of it.
  const last = thing.stages.findLastIndex((stage) => stage.kind === 'torque') + 1;
  return same.length === 1 && same[0] !== last ? same[0] : undefined;
}

export function whole(quantity: Quantity | undefined): number | undefined {
  const typed = quantity?.amounts[0]?.number;
  const value = typed === undefined ? Number.NaN : Number(typed);
  return Number.isFinite(value) ? value : undefined;
}

export function tighten(run: Run, items: readonly number[], aim: Aim): void {
  membersTogether(run, items, run.within, not(FINAL));
  for (const item of items) {
    const thing = run.thing(item);
    const { cases } = run;
    let set = cases.and(run.within, thing.exists);
    run.require('tightened-unseated', item, 'place', item, not(OUT), HAND, set, storyOf(thing));
    for (const entry of run.entries('place', item, set)) {
      if (entry.value !== FINAL || entry.since >= 0) continue;
      set = cases.minus(set, entry.cases);
      if (!entry.assumed) run.blame('refitted-before-removed', item, { cases: entry.cases });
    }
    if (set === NONE) continue;
    reach(run, item, set, items);
    const meant = aim.kind === 'final' ? stageMeant(thing, aim.quantity) : undefined;
    if (meant !== undefined) toStage(run, item, meant, set);
    else if (aim.kind === 'final') {
      if (aim.feel) run.set('feel', item, YES, set);
      makeFinal(run, item, set);
    } else if (aim.kind === 'pass') {
      const below = aim.complete ? set : run.where('place', item, not(FINAL), set);
      if (aim.complete) makeFinal(run, item, set);
      else run.set('place', item, PASS, below);
    } else toStage(run, item, aim.stage, set);
  }
}

function toStage(run: Run, item: number, stage: number, within: CaseSet): void {
  const thing = run.thing(item);
  const last = Math.min(thing.stages.length, MOST_STAGES);
  // Without a plan nothing is known of its stages.
  if (last === 0) {
    run.set('place', item, PASS, within);
    return;
  }
  if (stage > last) {
    const words = { stage: String(stage), stages: String(last) };
    run.blame('stage-skipped', item, { cases: within, words });
    run.set('place', item, FINAL, within);
    return;
  }
  for (const entry of run.entries('place', item, within)) {
    const at = entry.value === FINAL ? last : entry.value > STAGE ? entry.value - STAGE : 0;
    if (entry.assumed || at === stage - 1) continue;
    const check = at === stage ? 'stage-repeated' : at > stage ? 'stage-out-of-order' : 'stage-skipped';
    run.blame(check, item, {
      cases: entry.cases,
      since: entry.since,
      what: 'tightened',
      words: { stage: String(stage), at: String(at), stages: String(last) },
    });
  }
  if (stage === last) makeFinal(run, item, within);
  else run.set('place', item, STAGE + stage, within);
}

export function backOff(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    const set = run.cases.and(run.within, thing.exists);
    run.require('not-in-place', item, 'place', item, not(OUT), FINAL, set, storyOf(thing));
    reach(run, item, set, items);
    if (thing.stages.some((stage) => stage.kind === 'back off')) {
      run.set('place', item, FINAL, set);
      continue;
    }
    const felt = run.where('feel', item, bit(YES), set);
    run.set('place', item, FINAL, felt);
    run.set('place', item, LOOSE, run.cases.minus(set, felt));
  }
}

export function secure(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    run.require('not-in-place', item, 'place', item, not(OUT), FINAL, run.within, storyOf(thing));
    reach(run, item, run.within, items);
    const exists = run.cases.and(run.within, thing.exists);
    // A fastener that declares no securing may be secured at any time.
    if (thing.needsSecuring)
      already(run, item, run.entries('secured', item), bit(NO), exists, true, 'tightened');
    run.set('secured', item, NO);
  }
}
