/** What is done to controls, isolators and systems, to loads and locks. */
import type { Item, System } from './model.ts';
import type { Work } from './needs.ts';
import {
  already,
  assumeFree,
  assumeShut,
  heldStill,
  isLocked,
  isOpen,
  isThere,
  opened,
  reach,
  runDry,
  stateOf,
  systemState,
} from './needs.ts';
import { ASSUMED, START } from './state.ts';

// ---------------------------------------------------------------- controls and isolators

export function setPosition(w: Work, item: Item, flowing: boolean): void {
  const one = stateOf(w, item);
  if (one.flowing === flowing) {
    already(w, one.flowingBy, flowing === (one.normally ?? flowing));
    return;
  }
  if (one.locked) {
    w.report('wrong-verb');
    one.locked = false;
  }
  reach(w, item);
  if (flowing) for (const system of item.isolates) mayComeBack(w, system);
  Object.assign(one, { flowing, flowingBy: w.line });
  if (flowing) opened(w, item);
  afterSwitching(w, item, flowing);
}

/** What cutting off or letting in at this point does to the systems isolated there. */
export function afterSwitching(w: Work, item: Item, flowing: boolean): void {
  for (const system of item.isolates) {
    const now = systemState(w, system);
    if (flowing && !now.live) Object.assign(now, { live: true, liveBy: w.line, proved: false });
    const allOff = system.isolators.every((isolator) => isCutOff(w, isolator));
    if (!flowing && allOff && now.live) Object.assign(now, { live: false, liveBy: w.line });
  }
}

/** Off, closed, or (a plug, a lead) disconnected. */
function isCutOff(w: Work, isolator: Item): boolean {
  const one = stateOf(w, isolator);
  return isolator.kind === 'connection' ? one.joined !== 'connected' : !one.flowing;
}

function setIsolator(w: Work, isolator: Item, flowing: boolean): void {
  const one = stateOf(w, isolator);
  const live = isolator.isolates.map((system) => systemState(w, system).live);
  if (isolator.kind !== 'connection') Object.assign(one, { flowing, flowingBy: w.line });
  else Object.assign(one, { joined: flowing ? 'connected' : 'disconnected', joinedBy: w.line });
  afterSwitching(w, isolator, flowing);
  // What goes off or comes back with the system that was meant is no work of its own.
  isolator.isolates.forEach((system, index) => {
    const now = systemState(w, system);
    if (now.live !== live[index]) now.liveBy = ASSUMED;
  });
}

export function lockOut(w: Work, item: Item): void {
  const one = stateOf(w, item);
  const dead = [...item.isolates, ...item.within].some(
    (system) => system.power && !systemState(w, system).live,
  );
  if (one.locked) already(w, one.lockedBy, false);
  else {
    const cutsOff = item.kind === 'isolator' || item.isolates.length > 0;
    if (one.flowing && !dead && cutsOff) {
      w.report('isolated-out-of-order');
      for (const system of item.isolates)
        Object.assign(systemState(w, system), { live: false, liveBy: ASSUMED });
      Object.assign(one, { flowing: false, flowingBy: ASSUMED });
    }
    reach(w, item);
  }
  Object.assign(one, { locked: true, lockedBy: w.line });
}

export function unlock(w: Work, item: Item): void {
  const one = stateOf(w, item);
  if (!one.locked) already(w, one.lockedBy, true);
  else reach(w, item);
  Object.assign(one, { locked: false, lockedBy: w.line });
}

export function isolate(w: Work, system: System): void {
  const one = systemState(w, system);
  if (!one.live) {
    already(w, one.liveBy, false);
    return;
  }
  for (const isolator of system.isolators) {
    if (!isCutOff(w, isolator)) setIsolator(w, isolator, false);
  }
  Object.assign(one, { live: false, liveBy: w.line });
}

export function restore(w: Work, system: System): void {
  const one = systemState(w, system);
  if (one.live) {
    already(w, one.liveBy, true);
    return;
  }
  mayComeBack(w, system);
  for (const isolator of system.isolators) {
    if (isCutOff(w, isolator)) setIsolator(w, isolator, true);
  }
  Object.assign(one, { live: true, liveBy: w.line, proved: false });
}

/** Nothing of it open, none of its isolators locked. */
export function mayComeBack(w: Work, system: System): void {
  const locked = system.isolators.filter((isolator) => stateOf(w, isolator).locked);
  if (locked.length === 0 && !isOpen(w, system)) return;
  w.report('restored-out-of-order');
  for (const isolator of locked) Object.assign(stateOf(w, isolator), { locked: false, lockedBy: ASSUMED });
  assumeShut(w, system);
}

// ---------------------------------------------------------------- energy and fluids

export function relieve(w: Work, system: System): void {
  systemState(w, system).pressurised = false;
}

export function prove(w: Work, system: System): void {
  const one = systemState(w, system);
  if (one.live || one.pressurised) {
    w.report('not-made-safe');
    if (one.live) one.liveBy = ASSUMED;
    Object.assign(one, { live: false, pressurised: false });
  }
  one.proved = true;
}

export function letCool(w: Work, systems: readonly System[]): void {
  for (const system of systems) systemState(w, system).hot = false;
}

export function drain(w: Work, system: System): void {
  const one = systemState(w, system);
  if (one.fill === 'drained') already(w, one.fillBy, false);
  else runDry(w, system);
}

export function fill(w: Work, system: System): void {
  const one = systemState(w, system);
  if (one.fill === 'full') already(w, one.fillBy, true);
  else if (isOpen(w, system, true)) {
    w.report('restored-out-of-order');
    assumeShut(w, system);
  }
  Object.assign(one, { fill: 'full', fillBy: w.line });
}

export function topUp(w: Work, system: System): void {
  Object.assign(systemState(w, system), { fill: 'full', fillBy: w.line });
}

export function bleed(w: Work, system: System): void {
  const one = systemState(w, system);
  Object.assign(one, { bled: true, bledBy: w.line });
  if (one.fill === 'low') Object.assign(one, { fill: 'full', fillBy: w.line });
}

export function evacuate(w: Work, system: System): void {
  const one = systemState(w, system);
  if (!system.fluid || one.fill === 'drained') return;
  w.report('opened-full');
  Object.assign(one, { fill: 'drained', fillBy: ASSUMED });
}

export function pressurise(w: Work, system: System): void {
  if (isOpen(w, system)) {
    w.report('restored-out-of-order');
    assumeShut(w, system);
  }
  Object.assign(systemState(w, system), { pressurised: system.pressure, pressureBy: w.line, proved: false });
}

export function run(w: Work, systems: readonly System[]): void {
  for (const system of systems) {
    const one = systemState(w, system);
    const locked = system.isolators.some((isolator) => stateOf(w, isolator).locked);
    const dry = system.fluid && one.fill === 'drained';
    const dead = system.power && !one.live;
    if (locked || dry || dead || isOpen(w, system)) {
      w.report('restored-out-of-order');
      assumeShut(w, system);
      for (const isolator of system.isolators) {
        const point = stateOf(w, isolator);
        if (point.locked) Object.assign(point, { locked: false, lockedBy: ASSUMED });
        if (!point.flowing) Object.assign(point, { flowing: true, flowingBy: ASSUMED });
        if (point.joined !== 'connected') Object.assign(point, { joined: 'connected', joinedBy: ASSUMED });
      }
      if (dry) Object.assign(one, { fill: 'full', fillBy: ASSUMED });
      if (dead) Object.assign(one, { live: true, liveBy: ASSUMED });
    }
    Object.assign(one, { pressurised: system.pressure, hot: system.heat, proved: false });
  }
  const coupled = w.model.coupled.flatMap((coupling) => coupling.items);
  if (!coupled.some((item) => isThere(w, item) && heldStill(w, item))) return;
  w.report('turned-while-locked');
  assumeFree(w);
}

// ---------------------------------------------------------------- loads, locks, tools

export function support(w: Work, item: Item, tools: readonly Item[], raised: boolean): void {
  const one = stateOf(w, item);
  if (one.place === 'discarded') w.report('not-in-place');
  if (raised) one.raisedBy = w.line;
  else one.supportedBy = w.line;
  for (const tool of tools) {
    Object.assign(stateOf(w, tool), { inPlace: true, inPlaceBy: w.line });
    one.supportTools = [...one.supportTools, tool];
  }
}

export function lower(w: Work, item: Item): void {
  const one = stateOf(w, item);
  const held = one.supportedBy !== undefined || one.raisedBy !== undefined;
  if (!held) w.report('done-twice');
  else if (isThere(w, item)) {
    const carriers = w.model.items.filter((other) => other.carries.includes(item));
    const missing = carriers.some(
      (other) => stateOf(w, other).place !== 'fitted' && stateOf(w, other).placeBy > START,
    );
    if (missing) w.report('not-supported');
  }
  for (const tool of one.supportTools) Object.assign(stateOf(w, tool), { inPlace: false, inPlaceBy: w.line });
  Object.assign(one, { supportedBy: undefined, raisedBy: undefined, supportTools: [] });
}

export function lock(w: Work, item: Item, tools: readonly Item[]): void {
  if (stateOf(w, item).place === 'discarded') w.report('not-in-place');
  if (tools.length === 0) {
    const before = w.state.handLocks.get(item);
    if (before !== undefined) already(w, before, false);
    w.state.handLocks.set(item, w.line);
  }
  for (const tool of tools) fitTool(w, tool, [item]);
}

export function unlockPart(w: Work, item: Item): void {
  const tools = w.model.items.filter(
    (tool) => stateOf(w, tool).inPlace && stateOf(w, tool).on.includes(item),
  );
  const assumed = w.model.items.some(
    (tool) => tool.locks.includes(item) && stateOf(w, tool).inPlaceBy === ASSUMED,
  );
  if (tools.length === 0 && !w.state.handLocks.has(item) && !assumed) w.report('done-twice');
  w.state.handLocks.delete(item);
  for (const tool of tools) Object.assign(stateOf(w, tool), { inPlace: false, inPlaceBy: w.line, on: [] });
}

export function fitTool(w: Work, tool: Item, on: readonly Item[]): void {
  const one = stateOf(w, tool);
  if (one.inPlace) already(w, one.inPlaceBy, true);
  Object.assign(one, { inPlace: true, inPlaceBy: w.line, on: [...on] });
}

export function removeTool(w: Work, tool: Item): void {
  const one = stateOf(w, tool);
  if (!one.inPlace && one.inPlaceBy !== ASSUMED) w.report('done-twice');
  for (const item of w.model.items) {
    if (one.inPlace && stateOf(w, item).supportTools.includes(tool)) lower(w, item);
  }
  const bypassed = w.state.bypassTools.get(tool);
  if (bypassed) w.state.bypasses.delete(bypassed);
  w.state.bypassTools.delete(tool);
  Object.assign(one, { inPlace: false, inPlaceBy: w.line, on: [] });
}

export function bypass(w: Work, item: Item, tools: readonly Item[]): void {
  if (w.state.bypasses.has(item)) w.report('done-twice');
  w.state.bypasses.set(item, w.line);
  for (const tool of tools) {
    fitTool(w, tool, []);
    w.state.bypassTools.set(tool, item);
  }
}

export function turn(w: Work, item: Item): void {
  if (stateOf(w, item).place === 'discarded') w.report('not-in-place');
  if (!isLocked(w, item)) return;
  w.report('turned-while-locked');
  assumeFree(w);
}
