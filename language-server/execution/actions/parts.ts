/** Parts, seals, controls and isolators coming off and going back; what they take along and leave behind. */
import {
  ASIDE,
  awayValue,
  bit,
  CLEAN,
  DIRTY,
  FITTED,
  GONE,
  HAS_BEEN_OFF,
  inPlace,
  isPlaced,
  LOOSE,
  NO,
  OFF,
  OUT,
  PLACED,
  THROWN_AWAY,
  TRIAL,
  YES,
} from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import { apart, crosses, type Moved, movedWith } from '../geometry.ts';
import type { Run } from '../run.ts';
import { already, letOut, notYet, openSystems, reach, storyOf } from './common.ts';
import { faceCloses, goesIn, wipe } from './compounds.ts';
import { bringIn, takeOut } from './fasteners.ts';

/** Takes the items off together. `unbolt` takes their fasteners out with them. */
export function takeOff(
  run: Run,
  items: readonly number[],
  how: { unbolt?: boolean; discard?: boolean },
): void {
  const { cases, model } = run;
  const doable = new Map<number, CaseSet>();
  for (const item of items) {
    const left = notYet(run, item, 'place', bit(OFF, GONE), false, storyOf(run.thing(item)));
    if (left !== NONE) doable.set(item, left);
    // Throwing away what is off already is no second removal.
    if (how.discard) run.set('place', item, GONE, run.where('place', item, bit(OFF)));
  }
  if (doable.size === 0) return;
  let any: CaseSet = NONE;
  for (const set of doable.values()) any = cases.or(any, set);
  const taken = [...doable.keys()];
  const { moved, straddling } = movedWith(run, taken, any);
  for (const [item, set] of doable) {
    reach(run, item, set, items);
    for (const [rider, apartIn] of straddling) {
      if (!model.seats[rider]!.some((seat) => seat === item || moved.has(seat))) continue;
      const thing = run.thing(rider);
      run.require(
        'covered',
        item,
        'place',
        rider,
        ~inPlace(thing),
        awayValue(thing),
        cases.and(set, apartIn),
        storyOf(thing),
      );
    }
  }
  holdBack(run, taken, moved, any, how.unbolt ?? false);
  for (const [item, set] of moved) {
    for (const carried of model.carries[item]!) {
      const stays = cases.minus(run.where('place', carried, PLACED, set), moved.get(carried) ?? NONE);
      run.require('not-supported', item, 'supported', carried, bit(YES), YES, stays, 'lowered');
    }
  }
  for (const [item, set] of doable) {
    const thing = run.thing(item);
    if (thing.matched && !thing.numbered) {
      const first = cases.and(
        run.where('parted', item, bit(NO), set),
        run.where('fresh', item, bit(NO), set),
      );
      run.require('not-marked', item, 'marked', item, bit(YES), YES, first, 'marked');
    }
    openSystems(run, item, set);
    partJoint(run, item, set);
  }
  for (const [item, set] of doable) {
    run.set('place', item, how.discard ? GONE : OFF, set);
    run.set('parted', item, HAS_BEEN_OFF, set);
    wipe(run, item, set);
    letOut(run, item, set);
  }
  if (how.discard) leaveBehind(run, taken, moved);
}

/** What still fastens or connects the moving things to the rest. */
function holdBack(run: Run, taken: readonly number[], moved: Moved, within: CaseSet, unbolt: boolean): void {
  const { model, cases } = run;
  const seen = new Set<number>();
  for (const item of moved.keys()) {
    for (const fastener of model.fastenersOf[item]!) {
      if (seen.has(fastener)) continue;
      seen.add(fastener);
      const thing = run.thing(fastener);
      if (thing.stays) continue;
      const set = crosses(run, fastener, moved, within);
      if (set === NONE) continue;
      const mask = thing.freesWhenLoose ? bit(OUT, LOOSE) : bit(OUT);
      const subject = taken.includes(item) ? item : taken[0]!;
      if (unbolt) takeOut(run, [fastener], set, { alreadyCounts: false });
      else run.require('still-held', subject, 'place', fastener, mask, OUT, set, storyOf(thing));
    }
    for (const connection of model.connectionsOf[item]!) {
      if (seen.has(connection)) continue;
      seen.add(connection);
      const thing = run.thing(connection);
      const set = crosses(run, connection, moved, within);
      if (set === NONE) continue;
      run.require(
        'still-connected',
        taken.includes(item) ? item : taken[0]!,
        'place',
        connection,
        ~inPlace(thing),
        awayValue(thing),
        cases.and(set, within),
        storyOf(thing),
      );
    }
  }
}

/** The joint of the item is parted: its seals count as used, the faces there as dirty. */
export function partJoint(run: Run, item: number, within: CaseSet): void {
  const { model } = run;
  for (const seal of model.seals[item]!) {
    if (run.thing(seal).type !== 'seal') continue;
    run.set('parted', seal, HAS_BEEN_OFF, run.where('place', seal, bit(FITTED), within));
    for (const face of model.faces[seal]!) soil(run, face, within);
  }
  for (const face of model.faces[item]!) soil(run, face, within);
}

function soil(run: Run, face: number, within: CaseSet): void {
  run.set('place', face, DIRTY, within);
  wipe(run, face, within);
}

/** What rides on a thing that is thrown away is lost with it. */
function leaveBehind(run: Run, taken: readonly number[], moved: Moved): void {
  const { cases } = run;
  for (const [rider, set] of moved) {
    if (taken.includes(rider)) continue;
    lose(run, rider, cases.minus(set, run.where('rescued', rider, bit(YES), set)));
  }
}

function lose(run: Run, item: number, within: CaseSet): void {
  const thing = run.thing(item);
  const set = run.where('place', item, inPlace(thing), within);
  if (set === NONE) return;
  run.set('place', item, thing.type === 'fastener' ? OUT : GONE, set);
  run.set('lost', item, YES, set);
}

export interface PutBack {
  fresh?: boolean;
  trial?: boolean;
  boltUp?: boolean;
  moveBack?: boolean;
}

/** Puts the items back together. */
export function putBack(run: Run, items: readonly number[], how: PutBack): void {
  const { cases, model } = run;
  const doable = new Map<number, CaseSet>();
  for (const item of items) {
    const thing = run.thing(item);
    const exists = cases.and(run.within, thing.exists);
    const there = how.trial ? bit(FITTED, TRIAL) : how.moveBack ? bit(FITTED, TRIAL, OFF, GONE) : bit(FITTED);
    const left = already(run, item, run.entries('place', item), there, exists, true, storyOf(thing));
    if (left !== NONE) doable.set(item, left);
  }
  for (const [item, set] of doable) {
    // What comes with a new one is there before it goes on.
    if (how.fresh) bringAlong(run, item, set, new Set([item]));
    if (!how.moveBack) mayGoBack(run, item, set, how);
    onSeats(run, item, set, items);
    for (const cover of model.covers[item]!) {
      // A cover that was only tried on has to come off again first.
      if (run.thing(cover).type === 'part')
        run.require('trial-not-undone', cover, 'place', cover, ~bit(TRIAL), OFF, set, 'fitted on trial', {
          over: run.thing(item).title,
        });
    }
    reach(run, item, set, items);
    if (!how.trial) {
      sealed(run, item, set, items);
    }
  }
  for (const [item, set] of doable) {
    if (how.fresh) renew(run, item, set);
    run.set('place', item, how.trial ? TRIAL : FITTED, set);
    if (!how.trial) goesIn(run, item, set);
  }
  if (how.boltUp) {
    for (const item of items) {
      // Where it was only taken to be fitted, its fasteners still go in now.
      let set = doable.get(item) ?? NONE;
      for (const entry of run.entries('place', item)) if (entry.assumed) set = cases.or(set, entry.cases);
      const out = model.heldBy[item]!.filter(
        (fastener) => run.where('place', fastener, bit(OUT), set) !== NONE,
      );
      bringIn(run, out, set, { alreadyCounts: false });
    }
  }
}

/** It may be used again: not thrown away, not a one-time thing that has been off, not left on trial. */
function mayGoBack(run: Run, item: number, within: CaseSet, how: PutBack): void {
  const thing = run.thing(item);
  const { cases } = run;
  run.require('trial-not-undone', item, 'place', item, ~bit(TRIAL), OFF, within, 'fitted on trial');
  if (how.fresh) return;
  let blamed: CaseSet = NONE;
  for (const entry of run.entries('place', item, within)) {
    if (entry.value !== GONE) continue;
    blamed = cases.or(blamed, entry.cases);
    if (entry.assumed) continue;
    const lost = run.where('lost', item, bit(YES), entry.cases);
    if (lost !== NONE) run.blame('thrown-away-with', item, { cases: lost, at: entry.since });
    const thrown = cases.minus(entry.cases, lost);
    if (thrown !== NONE) {
      run.blame(thing.singleUse ? 'single-use-reused' : 'discarded-reused', item, {
        cases: thrown,
        since: entry.since,
        what: 'discarded',
      });
    }
  }
  run.set('lost', item, NO, blamed);
  // Once said, a new one is taken to be in: the joint that it seals is no second finding.
  run.assume('parted', item, NO, blamed);
  if (thing.singleUse && !how.trial) {
    run.require(
      'single-use-reused',
      item,
      'parted',
      item,
      bit(NO),
      NO,
      cases.minus(within, blamed),
      'taken off',
    );
  }
}

function onSeats(run: Run, item: number, within: CaseSet, together: readonly number[]): void {
  const { model } = run;
  const seats = model.seats[item]!.filter((seat) => !together.includes(seat));
  for (const seat of seats) {
    const thing = run.thing(seat);
    const wrong = thing.type === 'fastener' || thing.type === 'connection' ? awayValue(thing) : GONE;
    run.require('seat-missing', item, 'place', seat, ~bit(wrong), FITTED, within, storyOf(thing));
  }
  if (seats.length < 2) return;
  for (const { root, cases } of apart(run, seats, within)) missing(run, 'seat-missing', item, root, cases);
}

/** Blames a thing that is off for keeping others apart, and takes it to be there from now on. */
export function missing(
  run: Run,
  check: string,
  subject: number,
  root: number,
  within: CaseSet,
  assume = true,
): void {
  const thing = run.thing(root);
  for (const entry of run.entries('place', root, within)) {
    if (entry.assumed) continue;
    run.blame(check, subject, {
      other: root,
      cases: entry.cases,
      since: entry.since,
      what: storyOf(thing)(entry.value),
    });
  }
  if (assume) run.assume('place', root, FITTED, within);
}

/** Its seals are in and fresh where they must be; the faces there are clean. */
export function sealed(run: Run, item: number, within: CaseSet, together: readonly number[] = []): void {
  const { model, cases } = run;
  const clean = (face: number) => {
    run.require('face-not-cleaned', item, 'place', face, bit(CLEAN), CLEAN, within, 'disturbed');
    faceCloses(run, item, face, within);
  };
  for (const seal of model.seals[item]!) {
    const thing = run.thing(seal);
    if (thing.type !== 'seal') continue;
    for (const face of model.faces[seal]!) clean(face);
    if (together.includes(seal)) continue;
    const absent = run.require(
      'seal-missing',
      item,
      'place',
      seal,
      bit(FITTED),
      FITTED,
      within,
      storyOf(thing),
    );
    if (!thing.singleUse) continue;
    const used = run.where('parted', seal, ~bit(NO), within);
    if (used === NONE) continue;
    // A seal that is not there at all is one finding, not two.
    for (const entry of run.entries('parted', seal, cases.minus(used, absent))) {
      if (entry.assumed) continue;
      run.blame('single-use-reused', seal, {
        other: item,
        cases: entry.cases,
        since: entry.since,
        what: run.thing(item).type === 'connection' ? 'disconnected' : 'taken off',
        storyOf: item,
      });
    }
    run.assume('parted', seal, NO, used);
  }
  for (const face of model.faces[item]!) clean(face);
}

/** A new one: unused, with its members and what it is supplied with; what was left on the old one is lost. */
function renew(run: Run, item: number, within: CaseSet): void {
  const { model, cases } = run;
  for (const rider of model.riders[item]!) {
    const along = run.where('place', rider, inPlace(run.thing(rider)), within);
    const stays = cases.minus(along, run.where('rescued', rider, bit(YES), along));
    for (const seat of run.entries('place', item, stays)) {
      for (const entry of run.entries('place', rider, seat.cases)) {
        // Put on after the old one came off: it was put on the new one.
        if (entry.since < seat.since || entry.since < 0) lose(run, rider, entry.cases);
      }
    }
  }
  for (const rider of model.riders[item]!) run.set('rescued', rider, NO, within);
  run.set('fresh', item, YES, within);
  run.set('parted', item, NO, within);
  run.set('lost', item, NO, within);
  run.set('marked', item, NO, within);
  bringAlong(run, item, within, new Set([item]));
}

function bringAlong(run: Run, item: number, within: CaseSet, seen: Set<number>): void {
  for (const other of run.model.comesWith[item]!) {
    if (seen.has(other)) continue;
    seen.add(other);
    run.set('place', other, FITTED, within);
    run.set('fresh', other, YES, within);
    run.set('parted', other, NO, within);
    run.set('lost', other, NO, within);
    bringAlong(run, other, within, seen);
  }
}

export function moveAside(run: Run, items: readonly number[]): void {
  const { cases, model } = run;
  for (const item of items) {
    const thing = run.thing(item);
    if (thing.type === 'connection') continue;
    const exists = cases.and(run.within, thing.exists);
    const set = already(
      run,
      item,
      run.entries('place', item),
      bit(ASIDE, OFF, GONE),
      exists,
      false,
      storyOf(thing),
    );
    if (set === NONE) continue;
    const { moved } = movedWith(run, [item], set);
    reach(run, item, set, items);
    for (const along of moved.keys()) {
      for (const fastener of model.fastenersOf[along]!) {
        if (run.thing(fastener).stays) continue;
        const crossing = crosses(run, fastener, moved, set);
        run.require(
          'still-held',
          item,
          'place',
          fastener,
          bit(OUT, LOOSE, 2),
          OUT,
          crossing,
          storyOf(run.thing(fastener)),
        );
      }
      for (const connection of model.connectionsOf[along]!) {
        if (run.thing(connection).slack) continue;
        const crossing = crosses(run, connection, moved, set);
        run.require(
          'still-connected',
          item,
          'place',
          connection,
          ~inPlace(run.thing(connection)),
          1,
          crossing,
          storyOf(run.thing(connection)),
        );
      }
    }
    openSystems(run, item, set);
    partJoint(run, item, set);
    wipe(run, item, set);
    run.set('place', item, ASIDE, set);
    letOut(run, item, set);
  }
}

/** `discard X`: what is off already is thrown away. */
export function discard(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    if (!isPlaced(thing)) {
      const away = awayValue(thing);
      run.require('still-held', item, 'place', item, ~inPlace(thing), away, run.within, storyOf(thing));
      notYet(run, item, 'parted', bit(THROWN_AWAY), false, 'discarded');
      run.set('parted', item, THROWN_AWAY);
      continue;
    }
    const set = notYet(run, item, 'place', bit(GONE), false, 'discarded');
    run.require('still-held', item, 'place', item, ~inPlace(thing), OFF, set, storyOf(thing));
    const { moved } = movedWith(run, [item], set);
    run.set('place', item, GONE, set);
    leaveBehind(run, [item], moved);
  }
}

/** `move R to new P`: it rides on the new one from now on. */
export function moveToNew(run: Run, items: readonly number[]): void {
  for (const item of items) {
    const thing = run.thing(item);
    const gone = run.where('place', item, thing.type === 'part' || thing.type === 'seal' ? bit(GONE) : NONE);
    for (const entry of run.entries('place', item, gone)) {
      if (entry.assumed) continue;
      const lost = run.where('lost', item, bit(YES), entry.cases);
      if (lost !== NONE) run.blame('thrown-away-with', item, { cases: lost, at: entry.since });
      const thrown = run.cases.minus(entry.cases, lost);
      if (thrown !== NONE)
        run.blame('not-in-place', item, { cases: thrown, since: entry.since, what: 'discarded' });
    }
    run.set('lost', item, NO, gone);
    run.set('rescued', item, YES);
    run.set('place', item, FITTED);
  }
}
