/**
 * What actions ask of the machine: where things are, what goes along, what covers, holds and joins, what is open.
 * A need that is not met is reported and then taken to be met (ASSUMED), so that one cause gives one finding.
 */
import type { Item, Model, System } from './model.ts';
import { isPointOf } from './model.ts';
import type { Action } from './shape.ts';
import type { Cause, ItemState, State, SystemState } from './state.ts';
import { ASSUMED, conditionHolds, START } from './state.ts';

/** See `watch.ts`. */
export interface Watch {
  copy(w: Work): Watch;
  key(): string;
  enter(other: boolean): void;
  leave(w: Work, other: boolean): void;
  before(w: Work, action: Action): void;
  after(w: Work, action: Action): void;
  finish(w: Work): void;
  readonly notices: {
    notice(hazards: readonly string[], signal: string, line: number): void;
    handOver(w: Work): void;
  };
}

export interface Work {
  model: Model;
  state: State;
  /** Of the action at work. */
  line: number;
  report: (kind: string, line?: number) => void;
  /** Loop variables. */
  bound: Map<string, string>;
  /** What is looked at beside the states, where that is asked for. */
  watch?: Watch;
}

export function stateOf(w: Work, item: Item): ItemState {
  return w.state.items[item.id]!;
}

export function systemState(w: Work, system: System): SystemState {
  return w.state.systems[system.id]!;
}

const PLACED = ['part', 'seal', 'control', 'isolator'];

export function isPlaced(item: Item): boolean {
  return PLACED.includes(item.kind);
}

/** Fitted, aside or on trial. */
export function isThere(w: Work, item: Item): boolean {
  const { place } = stateOf(w, item);
  return place === 'fitted' || place === 'aside' || place === 'trial';
}

/** Away only because an earlier finding took it to be: never the ground of another. */
export function isAssumedAway(w: Work, item: Item): boolean {
  return isPlaced(item) && !isThere(w, item) && stateOf(w, item).placeBy === ASSUMED;
}

/** The effect of an action is there already: reported by who made it so. */
export function already(w: Work, by: Cause, puttingBack: boolean): void {
  if (by === ASSUMED) return;
  w.report(by === START && puttingBack ? 'refitted-before-removed' : 'done-twice');
}

/** M(P) of one thing or of several that go together. */
export function carriedBy(w: Work, items: readonly Item[]): Set<Item> {
  const carried = new Set(items);
  for (const item of carried) {
    for (const sitter of item.sitters) {
      if (carried.has(sitter) || !isPlaced(sitter) || !isThere(w, sitter)) continue;
      if (stateOf(w, sitter).rides) continue;
      if (sitter.seats.every((seat) => carried.has(seat))) carried.add(sitter);
    }
  }
  return carried;
}

/** What a thing stands on in the end: 0 the ground, else the number of the thing that is off; below 0 a new one. */
export function assembly(w: Work, item: Item): number {
  let at = item;
  for (let steps = 0; steps < 100; steps++) {
    const one = stateOf(w, at);
    if (one.rides) return -one.rides.id;
    if (isPlaced(at) && !isThere(w, at)) return somethingRidesOn(w, at) ? -at.id : at.id;
    const seat = at.seats[0];
    if (!seat) return 0;
    at = seat;
  }
  throw new Error(`${item.name} sits on itself`);
}

function somethingRidesOn(w: Work, item: Item): boolean {
  return w.model.items.some((one) => stateOf(w, one).rides === item);
}

export function together(w: Work, items: readonly Item[], grounded: boolean): boolean {
  const at = new Set(items.map((item) => assembly(w, item)));
  const roots = [...at].flatMap((id) => w.model.items[id - 1] ?? []);
  if (roots.some((root) => isAssumedAway(w, root))) return true;
  if (grounded) at.add(0);
  if (at.size > 1) return false;
  // On a thing in the bin there is nothing to work on.
  return !items.some((item) => stateOf(w, item).place === 'discarded' && !somethingRidesOn(w, item));
}

/** It goes in (a fastener: or is worked on in its hole): what was chosen is used. */
export function wentIn(w: Work, item: Item): void {
  Object.assign(stateOf(w, item), { chosenBy: undefined, passedOver: false });
  w.state.putIn?.add(item);
  passOver(w.model, w.state, item);
}

/** What was chosen and is still to be put in when another one of its kind, or what covers it, is. */
export function passOver(model: Model, state: State, item: Item): void {
  for (const other of model.items) {
    const one = state.items[other.id]!;
    const over = isPlaced(item) && (other.under.includes(item) || item.seals.includes(other));
    if (one.chosenBy !== undefined && (over || other.declaration === item.declaration)) one.passedOver = true;
  }
}

/** True where the thing is where it can cover another. */
function coversNow(w: Work, item: Item): boolean {
  const one = stateOf(w, item);
  if (item.kind === 'fastener') return one.fastening !== 'out';
  if (item.kind === 'connection') return one.joined === 'connected';
  if (item.kind === 'tool') return one.inPlace;
  return one.place === 'fitted' || one.place === 'trial';
}

export function setAway(w: Work, item: Item): void {
  const one = stateOf(w, item);
  if (item.kind === 'fastener') Object.assign(one, { fastening: 'out', fasteningBy: ASSUMED });
  else if (item.kind === 'connection') Object.assign(one, { joined: 'disconnected', joinedBy: ASSUMED });
  else if (item.kind === 'tool') Object.assign(one, { inPlace: false, inPlaceBy: ASSUMED });
  else Object.assign(one, { place: 'off', placeBy: ASSUMED });
}

/** Nothing that covers it is in place. Things that go together with it do not count. */
export function reach(w: Work, item: Item, along?: ReadonlySet<Item>): void {
  let covered = false;
  for (const cover of item.under.concat(item.sealedHere)) {
    if (along?.has(cover) || !coversNow(w, cover)) continue;
    covered = true;
    setAway(w, cover);
  }
  if (covered) w.report('covered');
}

/** Fasteners or connections with one end in what goes and another on what it is taken from. */
export function crossing(w: Work, kind: 'fasteners' | 'connections', going: ReadonlySet<Item>): Item[] {
  const found = new Set<Item>();
  for (const item of going) {
    const from = assembly(w, item);
    for (const holder of item[kind]) {
      const across = (member: Item) => !going.has(member) && assembly(w, member) === from;
      if (holder.members.some(across) || (holder.grounded && from === 0)) found.add(holder);
    }
  }
  return [...found];
}

// ---------------------------------------------------------------- systems

/** True while the thing is off, undone or open, so that what it shuts is open. */
function isUndone(w: Work, item: Item): boolean {
  const one = stateOf(w, item);
  if (item.kind === 'fastener') return one.fastening === 'out' && countsAsUndone(item, one.fasteningBy);
  if (item.kind === 'connection') return one.joined === 'disconnected' && countsAsUndone(item, one.joinedBy);
  if (one.place === 'off' || one.place === 'discarded' || one.place === 'aside') {
    return countsAsUndone(item, one.placeBy);
  }
  return (item.kind === 'control' || item.kind === 'isolator') && one.flowing && item.isolates.length === 0;
}

/** A thing that the job adds opens nothing before it is there; what was only taken to be off is no ground. */
function countsAsUndone(item: Item, by: Cause): boolean {
  return by !== ASSUMED && !(item.added && by === START);
}

export function isOpen(w: Work, system: System, butFillPoints = false): boolean {
  const open = [...system.openers, ...system.draining, ...system.relieving, ...system.bleeding];
  return open.some((item) => isUndone(w, item) && !(butFillPoints && system.fillOrVent.includes(item)));
}

/** Takes it that everything of the system is shut. */
export function assumeShut(w: Work, system: System): void {
  for (const item of [...system.openers, ...system.draining, ...system.relieving, ...system.bleeding]) {
    if (!isUndone(w, item)) continue;
    const one = stateOf(w, item);
    if (item.kind === 'fastener') Object.assign(one, { fastening: 'final', fasteningBy: ASSUMED });
    else if (item.kind === 'connection') Object.assign(one, { joined: 'connected', joinedBy: ASSUMED });
    else if (one.place !== 'fitted') Object.assign(one, { place: 'fitted', placeBy: ASSUMED });
    else Object.assign(one, { flowing: false, flowingBy: ASSUMED });
  }
}

/** It has just come off, been disconnected or been opened: what that does to the systems. */
export function opened(w: Work, item: Item): void {
  for (const system of item.opens) if (!isPointOf(item, system)) breach(w, system);
  for (const system of item.relieves) {
    const one = systemState(w, system);
    if (one.pressurised) Object.assign(one, { pressurised: false, pressureBy: w.line });
  }
  for (const system of item.drains) {
    if (system.draining.every((point) => isUndone(w, point))) runDry(w, system);
  }
}

export function runDry(w: Work, system: System): void {
  const one = systemState(w, system);
  if (!system.fluid || one.fill === 'drained') return;
  Object.assign(one, { fill: 'drained', fillBy: w.line });
  unbleed(w, system);
}

function unbleed(w: Work, system: System): void {
  const one = systemState(w, system);
  if (system.needsBleeding && one.bled) Object.assign(one, { bled: false, bledBy: w.line });
}

function breach(w: Work, system: System): void {
  const one = systemState(w, system);
  const dead = (system.power && !one.live) || (system.pressure && !one.pressurised);
  if (one.live || one.pressurised || one.hot) {
    w.report('not-made-safe');
    if (one.live) one.liveBy = ASSUMED;
    Object.assign(one, { live: false, pressurised: false, hot: false, proved: true });
  } else if (dead && system.provable && !one.proved) {
    w.report('not-proved-safe');
    one.proved = true;
  }
  if (!system.fluid) return;
  if (one.fill === 'full') Object.assign(one, { fill: 'low', fillBy: w.line });
  unbleed(w, system);
}

// ---------------------------------------------------------------- locks

/** True where a lock holds this thing or what is coupled to it. */
export function isLocked(w: Work, item: Item): boolean {
  const bound = new Set([item]);
  for (let grown = true; grown; ) {
    const before = bound.size;
    for (const coupling of w.model.coupled) {
      if (!coupling.items.some((one) => bound.has(one))) continue;
      if (coupling.while && !conditionHolds(w.model, w.state, coupling.while)) continue;
      for (const one of coupling.items) if (isThere(w, one)) bound.add(one);
    }
    grown = bound.size > before;
  }
  return [...bound].some((one) => heldStill(w, one));
}

export function heldStill(w: Work, item: Item): boolean {
  if (w.state.handLocks.has(item)) return true;
  return w.model.items.some(
    (tool) => tool.kind === 'tool' && stateOf(w, tool).inPlace && stateOf(w, tool).on.includes(item),
  );
}

/** Takes it that nothing is locked. */
export function assumeFree(w: Work): void {
  w.state.handLocks.clear();
  for (const tool of w.model.items) {
    const one = stateOf(w, tool);
    if (tool.kind === 'tool' && one.inPlace && one.on.length > 0) {
      Object.assign(one, { inPlace: false, inPlaceBy: ASSUMED, on: [] });
    }
  }
}
