/** What must not be left at the end: each reported at the action that made it so. */
import type { Item } from './model.ts';
import type { Work } from './needs.ts';
import { isAssumedAway, isPlaced, stateOf, systemState } from './needs.ts';
import type { Claim } from './shape.ts';
import type { Cause, ItemState } from './state.ts';
import { ASSUMED, claimedItems, claimIsSo, isAway, START } from './state.ts';

export function ending(w: Work, claims: readonly Claim[]): void {
  const claimed = new Set<Item>();
  const claimedOff = new Set<Item>();
  const claimedSystems = new Set<string>();
  for (const claim of claims) {
    w.line = claim.line;
    if (!claimIsSo(w.model, w.state, claim)) w.report('contract-broken');
    const items = claimedItems(w.model, claim);
    for (const item of items) {
      claimed.add(item);
      if (claim.state === 'off' || claim.state === 'aside') claimedOff.add(item);
    }
    for (const ref of claim.refs) claimedSystems.add(ref.name);
    if (claim.scope === 'everything') for (const system of w.model.systems) claimedSystems.add(system.name);
  }
  const left = (kind: string, by: Cause) => {
    if (by !== ASSUMED && by !== START) w.report(kind, by);
  };
  for (const [item, line] of w.state.foundAway) {
    if (claimed.has(item) || !isAway(stateOf(w, item), item)) continue;
    const by = causeOf(stateOf(w, item), item);
    if (by === START) w.report(item.kind === 'connection' ? 'left-disconnected' : 'left-off', line);
  }
  for (const { claim, line } of w.state.foundOtherwise) {
    const kind = LEFT_AS_FOUND[claim.state];
    const items = [...claimedItems(w.model, claim)];
    const isClaimed =
      claim.refs.some(({ name }) => claimedSystems.has(name)) || items.some((item) => claimed.has(item));
    if (kind === undefined || isClaimed || !claimIsSo(w.model, w.state, claim)) continue;
    // A part that is off is among what was found away.
    if (claim.state === 'off' && items.some((item) => item.kind !== 'control' && item.kind !== 'isolator'))
      continue;
    const isNormal = (item: Item) => stateOf(w, item).flowing === stateOf(w, item).normally;
    if (kind === 'left-open' && items.every((item) => isNormal(item))) continue;
    w.report(kind, line);
  }
  const named = partsLeft(w, claimed, left);
  for (const item of [...named, ...claimedOff]) {
    for (const own of [...item.seals, ...item.fasteners, ...item.connections]) named.add(own);
  }
  for (const item of w.model.items) {
    if (claimed.has(item) || named.has(item)) continue;
    if (item.kind === 'fastener') fastenerLeft(w, item, left);
    else if (item.kind === 'connection') connectionLeft(w, item, left);
    else if (item.kind === 'seal') placeLeft(w, item, left);
  }
  for (const item of w.model.items) if (!claimed.has(item)) heldLeft(w, item, claimedSystems, left);
  for (const [item, by] of w.state.handLocks) if (!claimed.has(item)) left('left-locked', by);
  for (const [item, by] of w.state.bypasses) if (!claimed.has(item)) left('bypass-left', by);
  systemsLeft(w, claimedSystems, left);
  for (const item of w.model.items) {
    const { chosenBy, passedOver } = stateOf(w, item);
    const by = causeOf(stateOf(w, item), item);
    const missed = isAway(stateOf(w, item), item) && (by !== START || w.state.foundAway.has(item));
    if (chosenBy !== undefined && passedOver && !missed && !claimedOff.has(item))
      left('chosen-not-fitted', chosenBy);
  }
}

/** What is left undone where something ends as the procedure before this one left it. */
const LEFT_AS_FOUND: Readonly<Record<string, string>> = {
  aside: 'left-aside',
  loose: 'left-loose',
  'hand-tight': 'left-loose',
  open: 'left-open',
  closed: 'left-open',
  on: 'left-open',
  off: 'left-open',
  locked: 'left-locked',
  drained: 'left-drained',
  isolated: 'left-isolated',
  supported: 'left-supported',
  raised: 'left-supported',
};

function causeOf(one: ItemState, item: Item): Cause {
  if (item.kind === 'fastener') return one.fasteningBy;
  return item.kind === 'connection' ? one.joinedBy : one.placeBy;
}

type Left = (kind: string, by: Cause) => void;

/** Parts, controls and isolators; gives those it reported. */
function partsLeft(w: Work, claimed: ReadonlySet<Item>, left: Left): Set<Item> {
  const named = new Set<Item>();
  const onLooseSeat = new Set<Item>();
  for (const item of w.model.items) {
    if (!isPlaced(item) || claimed.has(item)) continue;
    const one = stateOf(w, item);
    if (one.place !== 'fitted') continue;
    for (const seat of one.onLooseSeats) {
      if (stateOf(w, seat).place !== 'off' || claimed.has(seat) || isAssumedAway(w, seat)) continue;
      left('seat-missing', one.placeBy);
      onLooseSeat.add(seat);
    }
  }
  for (const item of w.model.items) {
    if (!isPlaced(item) || item.kind === 'seal' || claimed.has(item)) continue;
    if (stateOf(w, item).place === 'fitted') continue;
    named.add(item);
    if (!onLooseSeat.has(item)) placeLeft(w, item, left);
  }
  // What was there but is not now is named; what never was (added, off from the start) is not.
  for (const item of named) if (stateOf(w, item).placeBy === START) named.delete(item);
  return named;
}

function placeLeft(w: Work, item: Item, left: Left): void {
  const one = stateOf(w, item);
  if (one.place === 'discarded' && one.thrownBy !== START) left('thrown-away-with', one.thrownBy);
  else if (one.place === 'off' || one.place === 'discarded') left('left-off', one.placeBy);
  else if (one.place === 'aside') left('left-aside', one.placeBy);
  else if (one.place === 'trial') left('trial-not-undone', one.placeBy);
}

function fastenerLeft(w: Work, item: Item, left: Left): void {
  const one = stateOf(w, item);
  if (one.fastening === 'out') left('left-off', one.fasteningBy);
  else if (one.fastening !== 'final') left('left-loose', one.fasteningBy);
  else if (item.secures && one.beenUndone && !one.secured) left('not-secured', one.undoneBy);
}

function connectionLeft(w: Work, item: Item, left: Left): void {
  const one = stateOf(w, item);
  // A plug pulled to isolate a system is part of its being isolated.
  const systemSaysIt = item.isolates.some((system) => !systemState(w, system).live);
  if (one.joined !== 'connected' && !systemSaysIt) left('left-disconnected', one.joinedBy);
  else if (one.putAside) left('left-aside', one.joinedBy);
}

function heldLeft(w: Work, item: Item, claimedSystems: ReadonlySet<string>, left: Left): void {
  const one = stateOf(w, item);
  const systemSaysIt = item.isolates.some(
    (system) => claimedSystems.has(system.name) || (!systemState(w, system).live && system.power),
  );
  const control = item.kind === 'control' || item.kind === 'isolator';
  if (control && one.normally !== undefined && one.flowing !== one.normally && !systemSaysIt) {
    left('left-open', one.flowingBy);
  }
  if (one.locked) left('left-locked', one.lockedBy);
  if (one.raisedBy !== undefined) left('left-supported', one.raisedBy);
  else if (one.supportedBy !== undefined) left('left-supported', one.supportedBy);
  if (item.kind !== 'tool' || !one.inPlace || w.state.bypassTools.has(item)) return;
  const supports = w.model.items.some((other) => stateOf(w, other).supportTools.includes(item));
  if (!supports) left('fixture-left-on', one.inPlaceBy);
}

function systemsLeft(w: Work, claimed: ReadonlySet<string>, left: Left): void {
  for (const system of w.model.systems) {
    if (claimed.has(system.name)) continue;
    const one = systemState(w, system);
    if (system.fluid && one.fill === 'low') left('opened-full', one.fillBy);
    else if (system.fluid && one.fill === 'drained') left('left-drained', one.fillBy);
    else if (!one.bled) left('not-bled', one.bledBy);
    // A switch that also isolates what may end isolated keeps this one off with it.
    const sharesSwitch = system.isolators.some((point) =>
      point.isolates.some(({ name }) => claimed.has(name)),
    );
    if (system.power && !one.live && !sharesSwitch) left('left-isolated', one.liveBy);
  }
}
