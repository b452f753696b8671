/**
 * The state of one machine in one case, as plain objects, each with the line that made it so. What holds at the
 * start, and what `starts with` and `ends with` say about it.
 */
import type { Item, Model, System } from './model.ts';
import { has, isPoint, itemsOf } from './model.ts';
import type { Claim, Condition } from './shape.ts';

/** The line of the action that made it so; START and ASSUMED are never the ground of a finding. */
export type Cause = number;
export const START: Cause = 0;
export const ASSUMED: Cause = -1;

export interface ItemState {
  /** Parts, seals, controls, isolators. */
  place: 'fitted' | 'aside' | 'trial' | 'off' | 'discarded';
  placeBy: Cause;
  /** The line that discarded what it sat on, and so it. */
  thrownBy: Cause;
  /** A new one, not taken off since. */
  fresh: boolean;
  /** Has been off (a fastener: out) in this job. */
  beenOff: boolean;
  marked: boolean;
  /** A seal whose joint was parted. */
  used: boolean;
  supportedBy: Cause | undefined;
  raisedBy: Cause | undefined;
  supportTools: Item[];
  /** Moved to the new one of this. */
  rides: Item | undefined;
  /** Put on a seat that was off at hand. */
  onLooseSeats: Item[];

  fastening: 'out' | 'hand' | 'loose' | 'stage' | 'final';
  fasteningBy: Cause;
  stage: number;
  /** Brought to its final state before (at the start: by whoever built it) and not out since. */
  wasFinal: boolean;
  felt: boolean;
  secured: boolean;
  securedBy: Cause;
  beenUndone: boolean;
  undoneBy: Cause;
  /** An old one thrown away: only a new one can go in. */
  scrapped: boolean;

  joined: 'connected' | 'disconnected' | 'capped';
  joinedBy: Cause;
  putAside: boolean;

  /** Controls and isolators: open or on. */
  flowing: boolean;
  flowingBy: Cause;
  normally: boolean | undefined;
  locked: boolean;
  lockedBy: Cause;

  clean: boolean;

  /** The line that chose it, until it goes in. */
  chosenBy: Cause | undefined;
  /** Since then another one of its kind went in, or what covers it went back. */
  passedOver: boolean;

  /** Tools and fixtures. */
  inPlace: boolean;
  inPlaceBy: Cause;
  on: Item[];
}

export interface SystemState {
  fill: 'full' | 'low' | 'drained';
  fillBy: Cause;
  bled: boolean;
  bledBy: Cause;
  pressurised: boolean;
  pressureBy: Cause;
  hot: boolean;
  live: boolean;
  liveBy: Cause;
  proved: boolean;
}

export interface State {
  /** By the number of the item, of the system. */
  items: ItemState[];
  systems: SystemState[];
  /** Locked by hand or with a tool that the machine does not declare. */
  handLocks: Map<Item, Cause>;
  bypasses: Map<Item, Cause>;
  /** What each tool in place as a bypass bypasses. */
  bypassTools: Map<Item, Item>;
  /** In a repeat: what went in since it began. */
  putIn?: Set<Item> | undefined;
  /** What the whole of something was found away at the start, and the line of the header that says so. */
  foundAway: Map<Item, number>;
  /** What else the procedure before this one left (open, locked, isolated …), and the line that says so. */
  foundOtherwise: { claim: Claim; line: number }[];
}

/** `positions` gives, for a control, what the first action on it in the text makes of it. */
export function stateAtStart(model: Model, positions: ReadonlyMap<string, boolean>): State {
  const state: State = {
    items: [],
    systems: [],
    handLocks: new Map(),
    bypasses: new Map(),
    bypassTools: new Map(),
    foundAway: new Map(),
    foundOtherwise: [],
  };
  for (const item of model.items) state.items[item.id] = itemAtStart(item, positions);
  for (const system of model.systems) {
    state.systems[system.id] = {
      fill: 'full',
      fillBy: START,
      bled: true,
      bledBy: START,
      pressurised: system.pressure,
      pressureBy: START,
      hot: system.heat,
      live: system.power,
      liveBy: START,
      proved: false,
    };
  }
  return state;
}

function itemAtStart(item: Item, positions: ReadonlyMap<string, boolean>): ItemState {
  const normally = normalPosition(item, positions);
  return {
    place: item.added ? 'off' : 'fitted',
    placeBy: START,
    thrownBy: START,
    fresh: item.added,
    beenOff: false,
    marked: false,
    used: false,
    supportedBy: undefined,
    raisedBy: undefined,
    supportTools: [],
    rides: undefined,
    onLooseSeats: [],
    fastening: item.added ? 'out' : 'final',
    fasteningBy: START,
    stage: 0,
    wasFinal: !item.added,
    felt: false,
    secured: true,
    securedBy: START,
    beenUndone: false,
    undoneBy: START,
    scrapped: false,
    joined: item.added ? 'disconnected' : 'connected',
    joinedBy: START,
    putAside: false,
    flowing: normally ?? true,
    flowingBy: START,
    normally,
    locked: false,
    lockedBy: START,
    clean: false,
    chosenBy: undefined,
    passedOver: false,
    inPlace: false,
    inPlaceBy: START,
    on: [],
  };
}

/** True: open or on. Where nothing says it: the opposite of what the first action in the text makes. */
function normalPosition(item: Item, positions: ReadonlyMap<string, boolean>): boolean | undefined {
  if (item.kind !== 'control' && item.kind !== 'isolator') return undefined;
  const said = item.declaration.clauses.findLast((clause) => clause.clause === 'normally')?.names[0];
  if (said !== undefined) return said === 'open' || said === 'on';
  if (isPoint(item)) return false;
  const first = positions.get(item.name);
  return first === undefined ? undefined : !first;
}

/** Everything a claim speaks of, stripped or not: the items (not systems) with their positions. */
export function claimedItems(model: Model, claim: Claim): Set<Item> {
  const items = new Set<Item>();
  if (claim.scope === 'everything') {
    for (const item of model.items) {
      const physical = ['part', 'seal', 'fastener', 'connection', 'control', 'isolator'].includes(item.kind);
      if (physical && !has(item.declaration, 'fixed')) items.add(item);
    }
  } else {
    for (const ref of claim.refs) {
      if (model.declared.get(ref.name)?.kind === 'system') continue;
      for (const item of itemsOf(model, ref)) items.add(item);
    }
  }
  if (claim.scope === 'all of') {
    for (const item of items) {
      const more = [...item.sitters, ...item.seals, ...item.fasteners, ...item.connections];
      // Fasteners of the members are in it; what they hold beside them is not.
      if (item.kind !== 'fastener' && item.kind !== 'connection') for (const one of more) items.add(one);
    }
  }
  for (const ref of claim.except) for (const item of itemsOf(model, ref)) items.delete(item);
  return items;
}

function claimedSystems(model: Model, claim: Claim): System[] {
  if (claim.scope === 'everything') return claim.state === 'off' ? [] : model.systems;
  return claim.refs.flatMap((ref) => model.systemByName.get(ref.name) ?? []);
}

/** Remembers what a claim about the whole of something found away, for the end. */
export function rememberAway(model: Model, state: State, claim: Claim, line: number): void {
  for (const item of claimedItems(model, claim)) {
    if (!item.added && isAway(state.items[item.id]!, item)) state.foundAway.set(item, line);
  }
}

/** Remembers what else the procedure before this one left. */
export function rememberOtherwise(state: State, claim: Claim, line: number): void {
  for (const ref of claim.refs) state.foundOtherwise.push({ claim: { ...claim, refs: [ref] }, line });
}

export function isAway(one: ItemState, item: Item): boolean {
  if (item.kind === 'fastener') return one.fastening === 'out';
  if (item.kind === 'connection') return one.joined !== 'connected';
  return one.place === 'off' || one.place === 'discarded';
}

/** A state of its own, to go on from here another way. */
export function copyOf(state: State): State {
  return {
    items: state.items.map(copyOfItem),
    systems: state.systems.map((one) => ({ ...one })),
    handLocks: new Map(state.handLocks),
    bypasses: new Map(state.bypasses),
    bypassTools: new Map(state.bypassTools),
    putIn: state.putIn && new Set(state.putIn),
    foundAway: state.foundAway,
    foundOtherwise: state.foundOtherwise,
  };
}

/** Written out, because it is done very often. */
function copyOfItem(one: ItemState): ItemState {
  return {
    place: one.place,
    placeBy: one.placeBy,
    thrownBy: one.thrownBy,
    fresh: one.fresh,
    beenOff: one.beenOff,
    marked: one.marked,
    used: one.used,
    supportedBy: one.supportedBy,
    raisedBy: one.raisedBy,
    supportTools: one.supportTools,
    rides: one.rides,
    onLooseSeats: one.onLooseSeats,
    fastening: one.fastening,
    fasteningBy: one.fasteningBy,
    stage: one.stage,
    wasFinal: one.wasFinal,
    felt: one.felt,
    secured: one.secured,
    securedBy: one.securedBy,
    beenUndone: one.beenUndone,
    undoneBy: one.undoneBy,
    scrapped: one.scrapped,
    joined: one.joined,
    joinedBy: one.joinedBy,
    putAside: one.putAside,
    flowing: one.flowing,
    flowingBy: one.flowingBy,
    normally: one.normally,
    locked: one.locked,
    lockedBy: one.lockedBy,
    clean: one.clean,
    chosenBy: one.chosenBy,
    passedOver: one.passedOver,
    inPlace: one.inPlace,
    inPlaceBy: one.inPlaceBy,
    on: one.on,
  };
}

/** Equal but for the lines that made it so (never made, assumed and made by some action are told apart). */
export function sameState(a: State, b: State): boolean {
  return (
    differingItem(a, b) === undefined &&
    a.systems.every((one, id) => sameSystem(one, b.systems[id]!)) &&
    sameKeys(a.handLocks, b.handLocks) &&
    sameKeys(a.bypasses, b.bypasses) &&
    sameKeys(a.bypassTools, b.bypassTools) &&
    a.putIn?.size === b.putIn?.size &&
    [...(a.putIn ?? [])].every((item) => b.putIn?.has(item))
  );
}

/** The number of an item that is not as in the other; the hint is looked at first. */
export function differingItem(a: State, b: State, hint?: number): number | undefined {
  const differs = (id: number) => !sameItem(a.items[id]!, b.items[id]!);
  if (hint !== undefined && differs(hint)) return hint;
  for (let id = 1; id < a.items.length; id++) if (differs(id)) return id;
  return undefined;
}

/** Written out, because it is done very often. */
function sameItem(a: ItemState, b: ItemState): boolean {
  return (
    a.place === b.place &&
    a.fresh === b.fresh &&
    a.beenOff === b.beenOff &&
    a.marked === b.marked &&
    a.used === b.used &&
    a.rides === b.rides &&
    a.fastening === b.fastening &&
    a.stage === b.stage &&
    a.wasFinal === b.wasFinal &&
    a.felt === b.felt &&
    a.secured === b.secured &&
    a.beenUndone === b.beenUndone &&
    a.scrapped === b.scrapped &&
    a.joined === b.joined &&
    a.putAside === b.putAside &&
    a.flowing === b.flowing &&
    a.normally === b.normally &&
    a.locked === b.locked &&
    a.clean === b.clean &&
    (a.chosenBy === undefined) === (b.chosenBy === undefined) &&
    a.passedOver === b.passedOver &&
    a.inPlace === b.inPlace &&
    sameCause(a.placeBy, b.placeBy) &&
    sameCause(a.thrownBy, b.thrownBy) &&
    sameCause(a.supportedBy, b.supportedBy) &&
    sameCause(a.raisedBy, b.raisedBy) &&
    sameCause(a.fasteningBy, b.fasteningBy) &&
    sameCause(a.securedBy, b.securedBy) &&
    sameCause(a.undoneBy, b.undoneBy) &&
    sameCause(a.joinedBy, b.joinedBy) &&
    sameCause(a.flowingBy, b.flowingBy) &&
    sameCause(a.lockedBy, b.lockedBy) &&
    sameCause(a.inPlaceBy, b.inPlaceBy) &&
    sameList(a.supportTools, b.supportTools) &&
    sameList(a.onLooseSeats, b.onLooseSeats) &&
    sameList(a.on, b.on)
  );
}

function sameSystem(a: SystemState, b: SystemState): boolean {
  return (
    a.fill === b.fill &&
    a.bled === b.bled &&
    a.pressurised === b.pressurised &&
    a.hot === b.hot &&
    a.live === b.live &&
    a.proved === b.proved &&
    sameCause(a.fillBy, b.fillBy) &&
    sameCause(a.bledBy, b.bledBy) &&
    sameCause(a.pressureBy, b.pressureBy) &&
    sameCause(a.liveBy, b.liveBy)
  );
}

/** By an action, whichever; or both by none. */
function sameCause(a: Cause | undefined, b: Cause | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && a > 0 && b > 0);
}

function sameList(a: readonly Item[], b: readonly Item[]): boolean {
  return a === b || (a.length === b.length && a.every((one) => b.includes(one)));
}

function sameKeys<T>(a: ReadonlyMap<T, unknown>, b: ReadonlyMap<T, unknown>): boolean {
  return a.size === b.size && [...a.keys()].every((key) => b.has(key));
}

/** Makes a claim so. What must be so with it (fasteners out where a part is off) becomes so too. */
export function makeSo(model: Model, state: State, claim: Claim, by: Cause): void {
  const items = claimedItems(model, claim);
  for (const item of items) {
    const control = item.kind === 'control' || item.kind === 'isolator';
    // `everything off` takes a valve off; `valve off` shuts it.
    if (control && claim.scope !== 'things' && claim.state === 'off') {
      state.items[item.id]!.place = 'off';
      state.items[item.id]!.placeBy = by;
    } else setWord(state.items[item.id]!, item, claim.state, by);
    if (item.kind === 'tool' || (claim.state !== 'off' && claim.state !== 'aside')) continue;
    if (claim.scope === 'things' && ['part', 'seal', 'control', 'isolator'].includes(item.kind)) {
      takeApart(state, item, claim.state, by);
    }
  }
  for (const system of claimedSystems(model, claim)) setSystemWord(state, system, claim.state, by);
}

/** With P off, what held and joined it is undone; whether its seals are there is not known. */
function takeApart(state: State, item: Item, word: string, by: Cause): void {
  for (const fastener of item.fasteners) {
    const one = state.items[fastener.id]!;
    if (fastener.stay) continue;
    one.fastening = word === 'aside' ? 'loose' : 'out';
    one.fasteningBy = by;
    one.wasFinal = false;
  }
  if (word === 'aside') return;
  for (const connection of item.connections) {
    const one = state.items[connection.id]!;
    one.joined = 'disconnected';
    one.joinedBy = by;
  }
  for (const seal of item.seals) {
    const one = state.items[seal.id]!;
    one.place = 'off';
    one.placeBy = ASSUMED;
  }
}

function setWord(one: ItemState, item: Item, word: string, by: Cause): void {
  const fastener = item.kind === 'fastener';
  const connection = item.kind === 'connection';
  const control = item.kind === 'control' || item.kind === 'isolator';
  const place = (to: ItemState['place']) => {
    one.place = to;
    one.placeBy = by;
  };
  const fastening = (to: ItemState['fastening']) => {
    one.fastening = to;
    one.fasteningBy = by;
    one.wasFinal = to === 'final';
  };
  const joined = (to: ItemState['joined']) => {
    one.joined = to;
    one.joinedBy = by;
  };
  const flowing = (to: boolean) => {
    one.flowing = to;
    one.flowingBy = by;
    if (item.declaration.clauses.every((clause) => clause.clause !== 'normally') && !isPoint(item)) {
      one.normally = item.isolates.length > 0 ? true : undefined;
    }
  };
  if (word === 'off' && fastener) fastening('out');
  else if (word === 'off' && connection) joined('disconnected');
  else if (word === 'off' && item.kind === 'tool') one.inPlace = false;
  else if (word === 'off' && control) flowing(false);
  else if (word === 'off') place('off');
  else if (word === 'fitted' && fastener) fastening('final');
  else if (word === 'fitted' && item.kind === 'tool') {
    one.inPlace = true;
    one.inPlaceBy = by;
    one.on = item.locks;
  } else if (word === 'fitted') place('fitted');
  else if (word === 'aside' && connection) one.putAside = true;
  else if (word === 'aside') place('aside');
  else if (word === 'loose') fastening('loose');
  else if (word === 'tight') fastening('final');
  else if (word === 'hand-tight') fastening('hand');
  else if (connection && (word === 'disconnected' || word === 'open')) joined('disconnected');
  else if (connection && (word === 'connected' || word === 'closed')) joined('connected');
  else if (word === 'capped') joined('capped');
  else if (word === 'open' || word === 'on') flowing(true);
  else if (word === 'closed') flowing(false);
  else if (word === 'locked' || word === 'unlocked') {
    one.locked = word === 'locked';
    one.lockedBy = by;
    if (control && one.locked) flowing(false);
  } else if (word === 'clean' || word === 'dirty') one.clean = word === 'clean';
  else if (word === 'supported') one.supportedBy = by;
  else if (word === 'raised') one.raisedBy = by;
  else if (word === 'marked') one.marked = true;
  else if (word === 'new') one.fresh = true;
  else throw new Error(`${item.name} cannot be ${word}`);
}

function setSystemWord(state: State, system: System, word: string, by: Cause): void {
  const one = state.systems[system.id]!;
  const live = (to: boolean) => {
    one.live = to;
    one.liveBy = by;
    for (const isolator of system.isolators)
      setWord(state.items[isolator.id]!, isolator, to ? 'on' : 'off', by);
  };
  if (word === 'full' || word === 'drained') {
    one.fill = word;
    one.fillBy = by;
    if (word === 'drained' && system.needsBleeding) {
      one.bled = false;
      one.bledBy = by;
    }
  } else if (word === 'pressurised' || word === 'relieved') one.pressurised = word === 'pressurised';
  else if (word === 'hot' || word === 'cool') one.hot = word === 'hot';
  else if (word === 'live' || word === 'isolated') live(word === 'live');
  else if (word === 'safe') {
    if (system.power) live(false);
    one.pressurised = false;
    one.hot = false;
    one.proved = true;
  } else if (word === 'bled') one.bled = true;
  else if (word === 'locked') {
    live(false);
    for (const isolator of system.isolators) setWord(state.items[isolator.id]!, isolator, 'locked', by);
  } else throw new Error(`a system cannot be ${word}`);
}

export function claimIsSo(model: Model, state: State, claim: Claim): boolean {
  const items = [...claimedItems(model, claim)];
  // `all of` and `everything` speak of fasteners and seals along with the parts; the parts decide.
  const deciding = claim.scope === 'things' ? items : items.filter((item) => item.kind === 'part');
  return (
    deciding.every((item) => isSo(state, item, claim.state)) &&
    claimedSystems(model, claim).every((system) => systemIsSo(state, system, claim.state))
  );
}

export function conditionHolds(model: Model, state: State, condition: Condition): boolean {
  if (condition.kind === 'and') return condition.parts.every((part) => conditionHolds(model, state, part));
  if (condition.kind !== 'state') throw new Error('not a condition about a state');
  const system = model.systemByName.get(condition.ref.name);
  const items = system ? [] : itemsOf(model, condition.ref);
  // What does not exist in this case is in no state.
  const so = system
    ? systemIsSo(state, system, condition.state)
    : items.length > 0 && items.every((item) => isSo(state, item, condition.state));
  return so !== condition.negated;
}

export function isSo(state: State, item: Item, word: string): boolean {
  const one = state.items[item.id]!;
  const fastener = item.kind === 'fastener';
  const connection = item.kind === 'connection';
  const control = item.kind === 'control' || item.kind === 'isolator';
  switch (word) {
    case 'off':
      if (fastener) return one.fastening === 'out';
      if (connection) return one.joined !== 'connected';
      if (item.kind === 'tool') return !one.inPlace;
      if (control && one.place === 'fitted') return !one.flowing;
      return one.place === 'off' || one.place === 'discarded';
    case 'fitted':
      if (fastener) return one.fastening !== 'out';
      if (item.kind === 'tool') return one.inPlace;
      if (connection) return one.joined === 'connected';
      return one.place === 'fitted' || one.place === 'trial';
    case 'aside':
      return connection ? one.putAside : one.place === 'aside';
    case 'loose':
      return one.fastening === 'loose';
    case 'tight':
      return one.fastening === 'final';
    case 'hand-tight':
      return one.fastening === 'hand';
    case 'connected':
      return one.joined === 'connected';
    case 'disconnected':
      return one.joined !== 'connected';
    case 'capped':
      return one.joined === 'capped';
    case 'open':
      return connection ? one.joined !== 'connected' : one.flowing;
    case 'closed':
      return connection ? one.joined === 'connected' : !one.flowing;
    case 'on':
      return one.flowing;
    case 'locked':
    case 'unlocked':
      return (one.locked || state.handLocks.has(item)) === (word === 'locked');
    case 'clean':
    case 'dirty':
      return one.clean === (word === 'clean');
    case 'supported':
      return one.supportedBy !== undefined || one.raisedBy !== undefined;
    case 'raised':
      return one.raisedBy !== undefined;
    case 'marked':
      return one.marked;
    case 'new':
      return one.fresh;
    default:
      throw new Error(`${item.name} is never ${word}`);
  }
}

function systemIsSo(state: State, system: System, word: string): boolean {
  const one = state.systems[system.id]!;
  switch (word) {
    case 'full':
      return one.fill === 'full';
    case 'drained':
      return one.fill === 'drained';
    case 'pressurised':
    case 'relieved':
      return one.pressurised === (word === 'pressurised');
    case 'hot':
    case 'cool':
      return one.hot === (word === 'hot');
    case 'live':
    case 'isolated':
      return one.live === (word === 'live');
    case 'safe':
      return !one.live && !one.pressurised;
    case 'bled':
      return one.bled;
    case 'locked':
      return system.isolators.every((isolator) => state.items[isolator.id]!.locked);
    default:
      throw new Error(`${system.name} is never ${word}`);
  }
}
