/** Connections, controls and isolators: joined and parted, open and closed, locked out. */
import type { Story } from '../../model/facts.ts';
import { bit, CAPPED, CONNECTED, DISCONNECTED, HAS_BEEN_OFF, NO, THROWN_AWAY, YES } from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import { apart } from '../geometry.ts';
import { normalPosition } from '../positions.ts';
import type { Run } from '../run.ts';
import { letOut, notYet, openSystems, reach, storyOf, usable } from './common.ts';
import { goesIn, wipe } from './compounds.ts';
import { missing, partJoint, sealed } from './parts.ts';
import { assumeLive, energise } from './systems.ts';

export function disconnect(run: Run, items: readonly number[], how: { discard?: boolean } = {}): void {
  for (const item of items) {
    const thing = run.thing(item);
    const set = notYet(run, item, 'place', bit(DISCONNECTED, CAPPED), false, storyOf(thing));
    if (how.discard) run.set('parted', item, THROWN_AWAY);
    if (set === NONE) continue;
    reach(run, item, set, items);
    openSystems(run, item, set);
    partJoint(run, item, set);
    run.set('place', item, DISCONNECTED, set);
    if (!how.discard) run.set('parted', item, HAS_BEEN_OFF, set);
    wipe(run, item, set);
    for (const system of run.model.isolates[item]!) {
      const all = cutOff(run, system, item, set);
      run.set('live', system, YES, all);
      run.set('proved', system, NO, all);
    }
    letOut(run, item, set);
  }
}

/** The cases in which every other point at which the system is isolated is off or apart. */
function cutOff(run: Run, system: number, item: number, within: CaseSet): CaseSet {
  let all = within;
  for (const other of run.model.isolators[system]!) {
    if (other === item) continue;
    const connection = run.thing(other).type === 'connection';
    all = run.cases.and(
      all,
      connection ? run.where('place', other, ~bit(CONNECTED), all) : run.where('moved', other, bit(YES), all),
    );
  }
  return all;
}

export function connect(run: Run, items: readonly number[], how: { fresh?: boolean } = {}): void {
  for (const item of items) {
    const thing = run.thing(item);
    const set = notYet(run, item, 'place', bit(CONNECTED), true, storyOf(thing));
    if (set === NONE) continue;
    if (!how.fresh) usable(run, item, set, 'disconnected');
    for (const { root, cases } of apart(run, run.model.members[item]!, set, {
      ground: run.model.groundOf[item]!,
    }))
      missing(run, 'seat-missing', item, root, cases);
    reach(run, item, set, items);
    sealed(run, item, set);
    if (how.fresh) {
      run.set('fresh', item, YES, set);
      run.set('parted', item, NO, set);
    }
    for (const system of run.model.isolates[item]!) {
      energise(run, system, run.where('live', system, bit(YES), set), [item]);
    }
    run.set('place', item, CONNECTED, set);
    goesIn(run, item, set);
  }
}

export function cap(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    const set = notYet(run, item, 'place', bit(CAPPED), false, storyOf(thing));
    run.require('wrong-verb', item, 'place', item, ~bit(CONNECTED), DISCONNECTED, set, storyOf(thing), {
      verb: 'cap',
      needs: 'disconnected',
    });
    run.set('place', item, CAPPED, set);
  }
}

/** `open`, `close`, `switch on`, `switch off` of a control or isolator. */
export function operate(run: Run, items: readonly number[], to: 'open' | 'closed' | 'on' | 'off'): void {
  const { model } = run;
  for (const item of items) {
    const normal = normalPosition(run, item, to);
    const value = normal === to ? NO : YES;
    const set = notYet(run, item, 'moved', bit(value), value === NO, positionStory(to));
    if (set === NONE) continue;
    run.require('wrong-verb', item, 'lock', item, bit(NO), NO, set, 'locked', {
      verb: to === 'open' || to === 'closed' ? to : `switch ${to}`,
      needs: 'unlocked',
    });
    reach(run, item, set, items);
    const lets = to === 'open' || to === 'on';
    if (lets && value === YES) openSystems(run, item, set);
    for (const system of model.isolates[item]!) {
      if (value === NO) {
        energise(run, system, run.where('live', system, bit(YES), set), [item]);
        continue;
      }
      const all = cutOff(run, system, item, set);
      run.set('live', system, YES, all);
      run.set('proved', system, NO, all);
    }
    run.set('moved', item, value, set);
    if (value === YES) letOut(run, item, set);
  }
}

function positionStory(to: 'open' | 'closed' | 'on' | 'off'): Story {
  const stories = { open: 'opened', closed: 'closed', on: 'switched on', off: 'switched off' } as const;
  return stories[to];
}

export function lockOut(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    const set = notYet(run, item, 'lock', bit(YES), false, 'locked');
    if (set === NONE) continue;
    reach(run, item, set, items);
    let closedIn: CaseSet = run.where('moved', item, bit(YES), set);
    for (const system of run.model.isolates[item]!)
      closedIn = run.cases.or(closedIn, run.where('live', system, bit(YES), set));
    const open = run.cases.minus(set, closedIn);
    // A control that isolates nothing may be locked where it stands.
    if (open !== NONE && (thing.type === 'isolator' || run.model.isolates[item]!.length > 0)) {
      const sure = run.entries('moved', item, open).filter((entry) => !entry.assumed);
      for (const entry of sure)
        run.blame('isolated-out-of-order', item, {
          cases: entry.cases,
          since: entry.since,
          what: 'restored',
        });
      run.assume('moved', item, YES, open);
      for (const system of run.model.isolates[item]!) assumeLive(run, system, YES, open);
    }
    run.set('lock', item, YES, set);
  }
}

export function unlock(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const set = notYet(run, item, 'lock', bit(NO), true, 'unlocked');
    if (set === NONE) continue;
    reach(run, item, set, items);
    run.set('lock', item, NO, set);
  }
}
