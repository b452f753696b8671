/** What is done to parts, seals, controls and isolators as things that come off and go back. */
import { tryPutIn } from './act-fasteners.ts';
import type { Item } from './model.ts';
import type { Work } from './needs.ts';
import {
  already,
  assembly,
  carriedBy,
  crossing,
  isPlaced,
  isThere,
  opened,
  reach,
  stateOf,
  together,
  wentIn,
} from './needs.ts';
import { ASSUMED, START } from './state.ts';

// ---------------------------------------------------------------- taking off

/** remove, unbolt: of one thing, or of several that are done together. */
export function remove(w: Work, items: readonly Item[], how: { unbolt?: boolean; discard?: boolean }): void {
  const going = items.filter((item) => canGo(w, item));
  const along = carriedBy(w, going);
  const together = new Set(going);
  for (const item of going) {
    reach(w, item, together);
    straddlers(w, along);
    for (const fastener of crossing(w, 'fasteners', along)) release(w, fastener, how.unbolt ?? false);
    disconnectedOrHeld(w, along, false);
    for (const load of item.carries) needSupport(w, load, along);
    const one = stateOf(w, item);
    if (item.matched && !one.marked && !one.fresh && !one.beenOff) w.report('not-marked');
  }
  for (const item of going) {
    const one = stateOf(w, item);
    for (const seal of item.seals) if (isThere(w, seal)) stateOf(w, seal).used = true;
    for (const face of item.faces) stateOf(w, face).clean = false;
    if (one.place !== 'trial') one.beenOff = true;
    if (one.place !== 'trial') one.fresh = false;
    Object.assign(one, { place: 'off', placeBy: w.line, onLooseSeats: [] });
    opened(w, item);
  }
  if (how.discard) for (const item of going) throwAway(w, item);
}

function canGo(w: Work, item: Item): boolean {
  const { place, placeBy, thrownBy } = stateOf(w, item);
  if (place === 'discarded' && thrownBy !== START) w.report('not-in-place');
  else if (place === 'off' || place === 'discarded') already(w, placeBy, false);
  return place !== 'discarded' && place !== 'off';
}

/** What sits on it and on something that stays covers it. */
function straddlers(w: Work, along: ReadonlySet<Item>): void {
  let covered = false;
  for (const item of along) {
    for (const sitter of item.sitters) {
      if (along.has(sitter) || !isPlaced(sitter) || !isThere(w, sitter) || stateOf(w, sitter).rides) continue;
      covered = true;
      Object.assign(stateOf(w, sitter), { place: 'off', placeBy: ASSUMED });
    }
  }
  if (covered) w.report('covered');
}

function release(w: Work, fastener: Item, unbolt: boolean): void {
  const one = stateOf(w, fastener);
  if (one.fastening === 'out' || fastener.stay) return;
  if (unbolt) {
    reach(w, fastener);
    opened(w, fastener);
    undo(w, fastener, 'out');
    return;
  }
  if (fastener.freesWhenLoose && one.fastening === 'loose') return;
  w.report('still-held');
  Object.assign(one, { fastening: 'out', fasteningBy: ASSUMED, beenOff: true, wasFinal: false });
}

/** The fastener is out or loose from here on. */
export function undo(w: Work, fastener: Item, to: 'out' | 'loose'): void {
  const one = stateOf(w, fastener);
  Object.assign(one, { fastening: to, fasteningBy: w.line, secured: false, securedBy: w.line });
  Object.assign(one, { beenUndone: true, undoneBy: w.line, stage: 0, felt: false });
  if (to === 'loose') return;
  for (const seal of fastener.seals) if (isThere(w, seal)) stateOf(w, seal).used = true;
  Object.assign(one, { beenOff: true, wasFinal: false, fresh: false });
}

function disconnectedOrHeld(w: Work, along: ReadonlySet<Item>, slackIsEnough: boolean): void {
  for (const connection of crossing(w, 'connections', along)) {
    const one = stateOf(w, connection);
    if (one.joined !== 'connected' || (slackIsEnough && connection.slack)) continue;
    w.report('still-connected');
    Object.assign(one, { joined: 'disconnected', joinedBy: ASSUMED });
  }
}

function needSupport(w: Work, load: Item, along: ReadonlySet<Item>): void {
  const one = stateOf(w, load);
  if (along.has(load) || one.place !== 'fitted') return;
  if (one.supportedBy !== undefined || one.raisedBy !== undefined) return;
  w.report('not-supported');
  one.supportedBy = ASSUMED;
}

/** It goes in the bin, and with it what is still on it. */
export function throwAway(w: Work, item: Item): void {
  const along = carriedBy(w, [item]);
  Object.assign(stateOf(w, item), { place: 'discarded', placeBy: w.line });
  loseWith(w, item, along);
}

function loseWith(w: Work, item: Item, along: ReadonlySet<Item>): void {
  const comes = allThatComesWith(item);
  for (const lost of along) {
    if (lost === item || comes.has(lost)) continue;
    Object.assign(stateOf(w, lost), { place: 'discarded', placeBy: w.line, thrownBy: w.line });
  }
}

function allThatComesWith(item: Item): Set<Item> {
  const comes = new Set(item.comesWith);
  for (const one of comes) for (const more of one.comesWith) comes.add(more);
  return comes;
}

/** discard X, for what is off already. */
export function discard(w: Work, item: Item): void {
  const one = stateOf(w, item);
  if (item.kind === 'fastener') {
    if (one.scrapped) already(w, one.fasteningBy, false);
    else if (one.fastening !== 'out') w.report('still-held');
    one.scrapped = true;
  } else if (item.kind === 'connection') {
    if (one.scrapped) already(w, one.joinedBy, false);
    else if (one.joined === 'connected') w.report('still-held');
    one.scrapped = true;
  } else if (one.place === 'discarded') {
    if (one.thrownBy === START) already(w, one.placeBy, false);
  } else {
    if (one.place !== 'off') w.report('still-held');
    throwAway(w, item);
  }
}

export function moveAside(w: Work, items: readonly Item[]): void {
  const going = items.filter((item) => {
    const { place, placeBy } = stateOf(w, item);
    if (place === 'aside') already(w, placeBy, false);
    else if (place !== 'fitted' && placeBy !== ASSUMED) w.report('not-in-place');
    return place === 'fitted';
  });
  const along = carriedBy(w, going);
  for (const item of going) {
    reach(w, item, new Set(going));
    straddlers(w, along);
    for (const fastener of crossing(w, 'fasteners', along)) {
      const one = stateOf(w, fastener);
      if (fastener.stay || ['out', 'loose', 'hand'].includes(one.fastening)) continue;
      w.report('still-held');
      Object.assign(one, { fastening: 'loose', fasteningBy: ASSUMED });
    }
    disconnectedOrHeld(w, along, true);
    for (const seal of item.seals) if (isThere(w, seal)) stateOf(w, seal).used = true;
    Object.assign(stateOf(w, item), { place: 'aside', placeBy: w.line });
    opened(w, item);
  }
}

// ---------------------------------------------------------------- putting back

type Manner = 'fit' | 'new' | 'trial' | 'back';

/** refit, fit, fit new, trial fit, bolt up, move back: of one thing, or of several that are done together. */
export function putBack(w: Work, items: readonly Item[], manner: Manner): void {
  const coming = items.filter((item) => canCome(w, item, manner));
  if (manner === 'new') for (const item of coming) renew(w, item);
  const along = new Set(coming);
  for (const item of coming) {
    seated(w, item, along);
    reach(w, item, along);
    if (manner !== 'trial') sealedAndClean(w, item, along);
  }
  for (const item of coming) {
    const place = manner === 'trial' ? 'trial' : 'fitted';
    Object.assign(stateOf(w, item), { place, placeBy: w.line, rides: undefined });
    if (place === 'fitted') wentIn(w, item);
  }
}

/** Whether it may come: its own state. What is wrong with it is reported and taken to be right. */
function canCome(w: Work, item: Item, manner: Manner): boolean {
  const one = stateOf(w, item);
  if (one.placeBy === ASSUMED) {
    if (one.place === 'fitted') return false;
    return true;
  }
  if (manner === 'back') {
    if (one.place === 'fitted') already(w, one.placeBy, true);
    else if (one.place !== 'aside') w.report('not-in-place');
    return one.place === 'aside';
  }
  if (one.place === 'fitted') {
    already(w, one.placeBy, true);
    return false;
  }
  if (one.place === 'trial') {
    if (manner === 'trial') already(w, one.placeBy, true);
    else w.report('trial-not-undone');
    return manner !== 'trial';
  }
  if (manner === 'new') return true;
  if (one.place === 'discarded') {
    if (one.thrownBy !== START) w.report('thrown-away-with', one.thrownBy);
    else w.report(item.singleUse ? 'single-use-reused' : 'discarded-reused');
  } else if (one.place === 'off' && manner === 'fit' && item.singleUse && one.beenOff && !one.fresh) {
    w.report('single-use-reused');
  }
  return true;
}

/** The new one is in the hand, with what comes with it; the old one is gone with what was left on it. */
function renew(w: Work, item: Item): void {
  const along = carriedBy(w, [item]);
  // What sits on a thing that is off or in the bin sits there still.
  loseWith(w, item, along);
  const comes = allThatComesWith(item);
  for (const one of [item, ...comes]) {
    const now = stateOf(w, one);
    Object.assign(now, { fresh: true, used: false, beenOff: false, thrownBy: START, scrapped: false });
    if (one === item) continue;
    wentIn(w, one);
    if (isPlaced(one)) Object.assign(now, { place: 'fitted', placeBy: w.line, rides: undefined });
    else if (one.kind === 'fastener') renewFastener(w, one, new Set([item, ...comes, ...along]));
  }
  for (const rider of w.model.items) {
    if (stateOf(w, rider).rides === item) Object.assign(stateOf(w, rider), { rides: undefined });
  }
}

/** Studs and inner fasteners come in place; what holds the new part to the rest comes in the bag. */
function renewFastener(w: Work, fastener: Item, along: ReadonlySet<Item>): void {
  const one = stateOf(w, fastener);
  const inner = fastener.members.every((member) => along.has(member)) && !fastener.grounded;
  if (fastener.stay || inner) {
    Object.assign(one, { fastening: 'final', fasteningBy: w.line, wasFinal: true, secured: true });
    Object.assign(one, { beenUndone: false });
  }
}

function seated(w: Work, item: Item, along: ReadonlySet<Item>): void {
  const one = stateOf(w, item);
  one.onLooseSeats = [];
  let missing = false;
  for (const seat of item.seats) {
    const under = stateOf(w, seat);
    if (along.has(seat)) continue;
    if (under.place === 'discarded' && assembly(w, seat) >= 0) {
      missing = true;
      Object.assign(under, { place: 'fitted', placeBy: ASSUMED });
    } else if (under.place === 'off') one.onLooseSeats = [...one.onLooseSeats, seat];
  }
  const others = item.seats.filter((seat) => !along.has(seat));
  if (!missing && others.length > 1 && !together(w, others, false)) {
    missing = true;
    for (const seat of others) {
      if (stateOf(w, seat).place === 'off')
        Object.assign(stateOf(w, seat), { place: 'fitted', placeBy: ASSUMED });
    }
  }
  if (missing) w.report('seat-missing');
}

export function sealedAndClean(w: Work, item: Item, along: ReadonlySet<Item>): void {
  for (const seal of item.seals) {
    if (along.has(seal)) continue;
    const one = stateOf(w, seal);
    if (one.place === 'trial') w.report('trial-not-undone');
    else if (one.place !== 'fitted') {
      if (one.placeBy !== ASSUMED) w.report('seal-missing');
    } else if (one.used && seal.singleUse) w.report('single-use-reused');
    if (one.place !== 'fitted') Object.assign(one, { place: 'fitted', placeBy: ASSUMED });
    one.used = false;
  }
  const dirty = item.faces.filter((face) => !stateOf(w, face).clean);
  if (dirty.length > 0) w.report('face-not-cleaned');
  for (const face of dirty) stateOf(w, face).clean = true;
}

/** bolt up P: P back, then the fasteners it is held by that are out go in and are tight. */
export function boltUp(w: Work, items: readonly Item[]): void {
  putBack(w, items, 'fit');
  for (const item of items) {
    for (const fastener of item.heldBy) {
      if (stateOf(w, fastener).fastening === 'out') tryPutIn(w, fastener, { fresh: false, byHand: false });
    }
  }
}

/** move R to new P */
export function moveToNew(w: Work, item: Item, to: Item): void {
  const one = stateOf(w, item);
  if (one.place === 'discarded') w.report('not-in-place');
  const sits = item.seats.includes(to) || carriedBy(w, [to]).has(item);
  if (isThere(w, item) && !sits) w.report('not-in-place');
  Object.assign(one, { place: 'fitted', placeBy: w.line, thrownBy: START, rides: to });
}
