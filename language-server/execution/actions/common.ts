/** What many actions ask: reachable, there, not done twice, opening a system. */
import type { Story } from '../../model/facts.ts';
import type { Thing } from '../../model/model.ts';
import {
  type Aspect,
  AWAY,
  awayValue,
  bit,
  CAPPED,
  CONNECTED,
  covering,
  DISCONNECTED,
  DRAINED,
  FITTED,
  FULL,
  GONE,
  HAND,
  isPlaced,
  LOOSE,
  LOW,
  NO,
  not,
  OFF,
  OUT,
  THROWN_AWAY,
  YES,
} from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import type { Run } from '../run.ts';
import type { Entry } from '../state.ts';

/** What a step did that left a thing with this value of `place`. */
export function storyOf(thing: Thing): (value: number) => Story {
  // Asked for at every question, and needed only where the answer is no: made once for each kind.
  return STORIES[thing.type] ?? ofPart;
}

const STORIES: Partial<Record<Thing['type'], (value: number) => Story>> = {
  fastener: (value) =>
    value === OUT
      ? 'taken off'
      : value === HAND
        ? 'fitted by hand'
        : value === LOOSE
          ? 'loosened'
          : 'tightened',
  connection: (value) =>
    value === CAPPED ? 'capped' : value === DISCONNECTED ? 'disconnected' : 'connected',
  tool: (value) => (value === AWAY ? 'taken off' : 'put in place'),
  face: () => 'cleaned',
};

function ofPart(value: number): Story {
  return (
    (['put back', 'moved aside', 'fitted on trial', 'taken off', 'discarded'] as const)[value] ?? 'taken off'
  );
}

/** Nothing that covers the item is in place; what is done in the same action does not count. */
export function reach(run: Run, item: number, within: CaseSet, except: readonly number[] = []): void {
  for (const cover of run.model.covers[item]!) {
    if (except.includes(cover)) continue;
    const thing = run.thing(cover);
    run.require('covered', item, 'place', cover, ~covering(thing), awayValue(thing), within, storyOf(thing));
  }
}

/**
 * Takes out of `within` the cases in which the effect is there already, and blames the step for them: as
 * done twice, or (where the thing is as it was at the start and the action puts back) as never undone.
 */
export function already(
  run: Run,
  subject: number,
  entries: readonly Entry[],
  mask: number,
  within: CaseSet,
  putsBack: boolean,
  what: Story | ((value: number) => Story),
): CaseSet {
  let left = within;
  for (const entry of entries) {
    if (!((mask >>> entry.value) & 1)) continue;
    left = run.cases.minus(left, entry.cases);
    if (entry.assumed) continue;
    const untouched = entry.since < 0;
    run.blame(untouched && putsBack ? 'refitted-before-removed' : 'done-twice', subject, {
      cases: entry.cases,
      ...doneBefore(entry.since, typeof what === 'string' ? what : what(entry.value)),
      storyOf: subject,
    });
  }
  return left;
}

/** What is so already: done by an earlier step, or, where none did it, so from the start. */
export function doneBefore(
  since: number,
  what: Story,
): { since: number; what: Story; words?: { already: Story } } {
  return { since, what, ...(since < 0 ? { words: { already: what } } : {}) };
}

/** The cases in which the item is there and not so yet; blames the step for those in which it is. */
export function notYet(
  run: Run,
  item: number,
  aspect: Aspect,
  mask: number,
  putsBack: boolean,
  what: Story | ((value: number) => Story),
): CaseSet {
  const exists = run.cases.and(run.within, run.thing(item).exists);
  return already(run, item, run.entries(aspect, item), mask, exists, putsBack, what);
}

/** Coming off or opening lets out what the systems hold, and touches what is under pressure, hot or live. */
export function openSystems(run: Run, item: number, within: CaseSet): void {
  const { model, cases } = run;
  for (const system of model.opens[item]!) {
    if (isServicePoint(run, item, system)) continue;
    const thing = run.thing(system);
    const here = cases.and(within, thing.exists);
    if (here === NONE) continue;
    let unsafe: CaseSet = NONE;
    const ask = (aspect: 'pressure' | 'heat' | 'live', state: string) => {
      const failing = run.where(aspect, system, bit(NO), here);
      if (failing === NONE) return;
      unsafe = cases.or(unsafe, failing);
      for (const entry of run.entries(aspect, system, failing)) {
        if (entry.assumed) continue;
        run.blame('not-made-safe', item, {
          other: system,
          cases: entry.cases,
          since: entry.since,
          what: aspect === 'pressure' ? 'pressurised' : aspect === 'heat' ? 'heated' : 'restored',
          words: { [state]: state },
        });
      }
      run.assume(aspect, system, YES, failing);
    };
    if (thing.hasPressure) ask('pressure', 'under pressure');
    if (thing.hasHeat) ask('heat', 'hot');
    if (thing.hasLive) ask('live', 'live');
    if (thing.provable && (thing.hasPressure || thing.hasLive)) {
      const safe = cases.minus(here, unsafe);
      run.require('not-proved-safe', item, 'proved', system, bit(YES), YES, safe, 'isolated');
      if (unsafe !== NONE) run.assume('proved', system, YES, unsafe);
    }
    if (thing.hasFluid) {
      const full = run.where('fluid', system, bit(FULL), here);
      const wet = thing.needsBleeding ? cases.or(full, run.where('fluid', system, bit(DRAINED), here)) : NONE;
      if (full !== NONE) run.set('fluid', system, LOW, full);
      if (wet !== NONE) run.set('bled', system, YES, wet);
    }
  }
}

/** Relieving, draining, filling, venting, bleeding or isolating is what such a point is for. */
export function isServicePoint(run: Run, item: number, system: number): boolean {
  const { relieves, drains, servicePoints } = run.model;
  return (
    relieves[item]!.includes(system) ||
    drains[item]!.includes(system) ||
    servicePoints[item]!.includes(system)
  );
}

/** A point was opened or taken out: what it relieves is relieved, what it drains runs out when all are open. */
export function letOut(run: Run, item: number, within: CaseSet): void {
  const { model, cases } = run;
  for (const system of model.relieves[item]!) run.set('pressure', system, YES, within);
  for (const system of model.drains[item]!) {
    let all = within;
    for (const point of model.drainPoints[system]!) all = cases.and(all, pointOpen(run, point, all));
    const wet = run.where('fluid', system, bit(FULL, LOW), all);
    if (wet === NONE) continue;
    run.set('fluid', system, DRAINED, wet);
    if (run.thing(system).needsBleeding) run.set('bled', system, YES, wet);
  }
}

/** The cases in which a drain, relief or bleed point is open or out. */
export function pointOpen(run: Run, point: number, within: CaseSet): CaseSet {
  const thing = run.thing(point);
  if (thing.type === 'control' || thing.type === 'isolator') {
    return run.cases.or(
      run.where('moved', point, bit(YES), within),
      run.where('place', point, ~bit(FITTED), within),
    );
  }
  return run.where('place', point, thing.type === 'fastener' ? bit(OUT, LOOSE) : ~bit(FITTED), within);
}

/** Asks that nothing of the system is open, but for the points named. */
export function closed(run: Run, check: string, system: number, within: CaseSet): void {
  const { model } = run;
  const ask = (item: number) => {
    const thing = run.thing(item);
    if (thing.type === 'control' || thing.type === 'isolator') {
      run.require(check, system, 'moved', item, bit(NO), NO, within, 'opened');
    }
    const whole =
      thing.type === 'connection'
        ? bit(CONNECTED, CAPPED)
        : thing.type === 'fastener'
          ? ~bit(OUT, LOOSE)
          : bit(FITTED);
    run.require(check, system, 'place', item, whole, FITTED, within, storyOf(thing));
  };
  for (const item of model.openedBy[system]!) if (!isServicePoint(run, item, system)) ask(item);
  for (const item of model.drainPoints[system]!) ask(item);
  for (const item of model.reliefPoints[system]!) ask(item);
  for (const item of model.bleedPoints[system]!) ask(item);
}

/**
 * A fastener or connection that was apart may be used again: not thrown away, by itself or with what it sat on, and not
 * for one use only.
 */
export function usable(run: Run, item: number, within: CaseSet, apart: Story): void {
  for (const entry of run.entries('lost', item, run.where('lost', item, bit(YES), within)))
    run.blame('thrown-away-with', item, { cases: entry.cases, at: entry.since });
  if (run.thing(item).singleUse)
    run.require('single-use-reused', item, 'parted', item, bit(NO), NO, within, apart);
  else run.require('discarded-reused', item, 'parted', item, not(THROWN_AWAY), NO, within, 'discarded');
}

/** The item may be worked on: it was not thrown away. */
export function atHand(run: Run, item: number, within: CaseSet): void {
  const thing = run.thing(item);
  if (isPlaced(thing)) run.require('not-in-place', item, 'place', item, ~bit(GONE), OFF, within, 'discarded');
}
