/** Tools, fixtures, supports, locks and bypasses: put in place, and what they hold; turning. */
import { AWAY, bit, FITTED, GONE, IN_PLACE, NO, OFF, PLACED, YES } from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import type { Run } from '../run.ts';
import { already, atHand, doneBefore, notYet } from './common.ts';
import { missing } from './parts.ts';

export function fitTool(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const set = notYet(run, item, 'place', bit(IN_PLACE), false, 'put in place');
    run.set('place', item, IN_PLACE, set);
  }
}

/** Taking a tool away frees what it locked, held up or bridged. */
export function removeTool(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const set = notYet(run, item, 'place', bit(AWAY), false, 'taken off');
    run.set('place', item, AWAY, set);
    const held = run.heldBy.get(item);
    if (!held) continue;
    for (const other of held) {
      carriersBack(run, other, run.where('supported', other, bit(YES), set));
      run.set('supported', other, NO, set);
      run.set('bypass', other, NO, set);
    }
  }
}

/** Remembers which tool holds what, so that taking the tool away lets go of it. */
function hold(run: Run, item: number, tools: readonly number[]): void {
  for (const tool of tools) {
    run.set('place', tool, IN_PLACE);
    const held = run.heldBy.get(tool);
    if (!held?.has(item)) run.heldBy.set(tool, new Set([...(held ?? []), item]));
  }
}

function letGo(run: Run, item: number): void {
  for (const [tool, held] of run.heldBy) {
    if (held.has(item)) run.set('place', tool, AWAY, run.where('place', tool, bit(IN_PLACE)));
  }
}

export function support(run: Run, items: readonly number[], tools: readonly number[]): void {
  for (const item of items) {
    atHand(run, item, run.within);
    run.set('supported', item, YES);
    hold(run, item, tools);
  }
}

export function lower(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const set = notYet(run, item, 'supported', bit(NO), false, 'lowered');
    if (set === NONE) continue;
    carriersBack(run, item, set);
    run.set('supported', item, NO, set);
    letGo(run, item);
  }
}

/** A fitted thing is let down onto what carries it: that has to be there. */
function carriersBack(run: Run, item: number, within: CaseSet): void {
  const fitted = run.where('place', item, PLACED, within);
  for (const carrier of run.model.carriedBy[item]!) {
    const off = run.where('place', carrier, bit(OFF, GONE), fitted);
    if (off !== NONE) missing(run, 'not-supported', item, carrier, off);
  }
}

export function lock(run: Run, items: readonly number[], tools: readonly number[]): void {
  for (const item of items) {
    atHand(run, item, run.within);
    if (tools.length === 0) {
      const set = already(run, item, run.entries('lock', item), bit(YES), run.within, false, 'locked');
      run.set('lock', item, YES, set);
      continue;
    }
    for (const tool of tools) {
      const set = already(
        run,
        tool,
        run.entries('place', tool),
        bit(IN_PLACE),
        run.within,
        false,
        'put in place',
      );
      run.set('place', tool, IN_PLACE, set);
      run.lockedWith(tool, item);
    }
  }
}

/** `unlock flywheel`: the lock or the tool that holds it goes. */
export function unlockPart(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const tools = run.lockingTools(item);
    if (tools.length === 0) {
      const set = already(run, item, run.entries('lock', item), bit(NO), run.within, true, 'unlocked');
      run.set('lock', item, NO, set);
      continue;
    }
    let free = run.where('lock', item, bit(NO));
    for (const tool of tools) free = run.cases.and(free, run.where('place', tool, bit(AWAY)));
    const ways = [run.entries('lock', item, free), ...tools.map((tool) => run.entries('place', tool, free))];
    let since = -1;
    for (const entry of ways.flat()) {
      // What was only taken to be so after another finding is no ground for this one.
      if (entry.assumed) free = run.cases.minus(free, entry.cases);
      since = Math.max(since, entry.since);
    }
    if (free !== NONE) run.blame('done-twice', item, { cases: free, ...doneBefore(since, 'unlocked') });
    for (const tool of tools) run.set('place', tool, AWAY, run.where('place', tool, bit(IN_PLACE)));
    run.set('lock', item, NO);
  }
}

export function bypass(run: Run, items: readonly number[], tools: readonly number[]): void {
  for (const item of items) {
    const set = already(run, item, run.entries('bypass', item), bit(YES), run.within, false, 'bypassed');
    run.set('bypass', item, YES, set);
    hold(run, item, tools);
  }
}

export function turn(run: Run, items: readonly number[]): void {
  for (const item of items) {
    run.require('not-in-place', item, 'place', item, ~bit(GONE), FITTED, run.within, 'discarded');
    for (const [other, within] of turnsWith(run, item)) {
      run.require('turned-while-locked', item, 'lock', other, bit(NO), NO, within, 'locked');
      for (const tool of run.lockingTools(other)) {
        run.require('turned-while-locked', item, 'place', tool, bit(AWAY), AWAY, within, 'put in place');
      }
    }
  }
}

/** Everything that turns with the item, with the cases in which the coupling acts. */
function turnsWith(run: Run, item: number): Map<number, number> {
  const { cases, model } = run;
  const result = new Map([[item, run.within]]);
  const work = [item];
  for (let index = 0; index < work.length; index++) {
    const now = work[index]!;
    for (const coupling of model.couplings) {
      if (!coupling.items.includes(now)) continue;
      let acts = result.get(now)!;
      if (coupling.while) {
        const thing = run.thing(coupling.while.item);
        const there = run.where(
          'place',
          coupling.while.item,
          thing.type === 'tool' ? bit(IN_PLACE) : thing.type === 'part' ? PLACED : bit(0),
          acts,
        );
        acts = coupling.while.fitted ? there : cases.minus(acts, there);
      }
      for (const other of coupling.items) {
        const before = result.get(other) ?? NONE;
        const after = cases.or(before, acts);
        if (after === before) continue;
        result.set(other, after);
        work.push(other);
      }
    }
  }
  return result;
}
