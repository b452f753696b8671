/** What is done to fasteners and connections. */
import { sealedAndClean, undo } from './act-parts.ts';
import { afterSwitching, mayComeBack } from './act-systems.ts';
import type { Item } from './model.ts';
import type { Work } from './needs.ts';
import { already, isPlaced, opened, reach, stateOf, together, wentIn } from './needs.ts';
import { ASSUMED, START } from './state.ts';

export function takeOut(w: Work, fastener: Item, discard: boolean): void {
  const one = stateOf(w, fastener);
  if (one.fastening === 'out') already(w, one.fasteningBy, false);
  else {
    reach(w, fastener);
    undo(w, fastener, 'out');
    opened(w, fastener);
  }
  if (discard) one.scrapped = true;
}

export function loosen(w: Work, fastener: Item): void {
  const one = stateOf(w, fastener);
  if (one.fastening === 'out') {
    if (one.fasteningBy !== ASSUMED) w.report('not-in-place');
  } else if (one.fastening === 'loose') already(w, one.fasteningBy, false);
  else reach(w, fastener);
  // `plan { 15 N·m; 28 N·m; loosen; … }`: loosening after stage 2 is stage 3.
  const byPlan = one.fastening === 'stage' && fastener.stages[one.stage] === 'loosen' ? one.stage + 1 : 0;
  undo(w, fastener, 'loose');
  one.stage = byPlan;
}

/** Every member where it belongs: all of them together, none aside. */
function membersTogether(w: Work, fastener: Item): boolean {
  const members = fastener.members.filter((member) => !neverThere(w, member));
  if (members.some((member) => isPlaced(member) && stateOf(w, member).place === 'aside')) return false;
  return together(w, members, fastener.grounded);
}

/** What the job may add but has not: the joint is complete without it. */
function neverThere(w: Work, member: Item): boolean {
  const one = stateOf(w, member);
  return member.added && one.place === 'off' && one.placeBy === START;
}

function assumeTogether(w: Work, fastener: Item): void {
  for (const member of fastener.members) {
    const one = stateOf(w, member);
    if (isPlaced(member) && one.place !== 'fitted' && one.place !== 'trial') {
      Object.assign(one, { place: 'fitted', placeBy: ASSUMED });
    }
  }
}

/** refit, fit, fit new of a fastener. */
export function tryPutIn(w: Work, fastener: Item, how: { fresh: boolean; byHand: boolean }): void {
  const one = stateOf(w, fastener);
  if (one.fastening !== 'out') {
    already(w, one.fasteningBy, true);
    return;
  }
  if (!membersTogether(w, fastener)) {
    w.report('tightened-unseated');
    assumeTogether(w, fastener);
  }
  reach(w, fastener);
  if (!how.fresh && one.fasteningBy !== ASSUMED) {
    if (fastener.singleUse && one.beenOff && !one.fresh) w.report('single-use-reused');
    else if (one.scrapped) w.report(fastener.singleUse ? 'single-use-reused' : 'discarded-reused');
  }
  if (fastener.seals.length > 0) sealedAndClean(w, fastener, new Set());
  if (how.fresh) Object.assign(one, { fresh: true, wasFinal: false });
  one.scrapped = false;
  wentIn(w, fastener);
  Object.assign(one, { fastening: how.byHand ? 'hand' : 'final', fasteningBy: w.line, stage: 0 });
  if (!how.byHand) {
    one.wasFinal = true;
    one.stage = Math.max(fastener.stages.length, 1);
  }
  if (!fastener.secures) Object.assign(one, { secured: true, securedBy: ASSUMED });
}

export function tighten(
  w: Work,
  fastener: Item,
  how: { stage?: number; pass?: number; until: boolean },
): void {
  const one = stateOf(w, fastener);
  if (one.fastening === 'out') {
    if (one.fasteningBy !== ASSUMED) w.report('tightened-unseated');
    one.fastening = 'hand';
  } else if (!membersTogether(w, fastener)) {
    w.report('tightened-unseated');
    assumeTogether(w, fastener);
  } else if (one.fastening === 'final' && one.fasteningBy === START) w.report('refitted-before-removed');
  else if (how.stage !== undefined) stageRight(w, fastener, how.stage);
  else if (fastener.toYield && one.wasFinal) w.report('retightened-yield');
  reach(w, fastener);
  wentIn(w, fastener);
  if (how.until) one.felt = true;
  const last = fastener.stages.length;
  if (how.stage !== undefined && how.stage !== last) {
    Object.assign(one, { fastening: 'stage', fasteningBy: w.line, stage: how.stage });
    return;
  }
  if (how.pass !== undefined && !(how.pass >= 100)) {
    if (one.fastening !== 'final') Object.assign(one, { fastening: 'stage', fasteningBy: w.line });
    return;
  }
  Object.assign(one, { fastening: 'final', fasteningBy: w.line, wasFinal: true, stage: Math.max(last, 1) });
}

function stageRight(w: Work, fastener: Item, stage: number): void {
  const one = stateOf(w, fastener);
  const again = stage === 1 && (one.fastening === 'loose' || one.fastening === 'hand');
  if (again) {
    if (fastener.toYield && one.wasFinal) w.report('retightened-yield');
  } else if (stage === one.stage) w.report('stage-repeated');
  else if (stage < one.stage) w.report('stage-out-of-order');
  else if (stage > one.stage + 1) w.report('stage-skipped');
}

export function backOff(w: Work, fastener: Item): void {
  const one = stateOf(w, fastener);
  if (one.fastening === 'out' && one.fasteningBy !== ASSUMED) w.report('not-in-place');
  reach(w, fastener);
  if (fastener.stages.includes('back off') || one.felt) {
    Object.assign(one, { fastening: 'final', fasteningBy: w.line });
  } else undo(w, fastener, 'loose');
}

export function secure(w: Work, fastener: Item): void {
  const one = stateOf(w, fastener);
  if (one.fastening === 'out' && one.fasteningBy !== ASSUMED) w.report('not-in-place');
  else if (one.secured) already(w, one.securedBy, true);
  reach(w, fastener);
  Object.assign(one, { secured: true, securedBy: w.line });
}

// ---------------------------------------------------------------- connections

export function disconnect(w: Work, connection: Item, discard = false): void {
  const one = stateOf(w, connection);
  if (one.joined !== 'connected') already(w, one.joinedBy, false);
  else {
    reach(w, connection);
    for (const seal of connection.seals) stateOf(w, seal).used = true;
    Object.assign(one, { joined: 'disconnected', joinedBy: w.line });
    opened(w, connection);
    afterSwitching(w, connection, false);
  }
  if (discard) one.scrapped = true;
}

export function connect(w: Work, connection: Item, fresh = false): void {
  const one = stateOf(w, connection);
  if (one.joined === 'connected') {
    already(w, one.joinedBy, true);
    return;
  }
  if (one.scrapped && !fresh) w.report('discarded-reused');
  else if (connection.singleUse && !fresh && one.joinedBy !== START && one.joinedBy !== ASSUMED) {
    w.report('single-use-reused');
  }
  const ends = connection.members.filter((member) => isPlaced(member));
  if (!together(w, ends, connection.grounded)) {
    w.report('seat-missing');
    assumeTogether(w, connection);
  }
  reach(w, connection);
  sealedAndClean(w, connection, new Set());
  for (const system of connection.isolates) mayComeBack(w, system);
  Object.assign(one, { joined: 'connected', joinedBy: w.line, putAside: false, scrapped: false });
  afterSwitching(w, connection, true);
}

export function cap(w: Work, connection: Item): void {
  const one = stateOf(w, connection);
  if (one.joined === 'capped') already(w, one.joinedBy, true);
  else if (one.joined === 'connected') w.report('still-connected');
  reach(w, connection);
  Object.assign(one, { joined: 'capped', joinedBy: w.line });
}

export function putConnectionAside(w: Work, connection: Item): void {
  const one = stateOf(w, connection);
  if (one.putAside) w.report('done-twice');
  else if (one.joined === 'connected') {
    w.report('still-connected');
    Object.assign(one, { joined: 'disconnected', joinedBy: ASSUMED });
  }
  reach(w, connection);
  one.putAside = true;
}

export function bringConnectionBack(w: Work, connection: Item): void {
  const one = stateOf(w, connection);
  if (!one.putAside) w.report('refitted-before-removed');
  one.putAside = false;
}
