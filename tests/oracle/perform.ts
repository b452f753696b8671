/** Which verb does what to which kind of thing: from the text of an action to the state of the machine. */
import {
  backOff,
  bringConnectionBack,
  cap,
  connect,
  disconnect,
  loosen,
  putConnectionAside,
  secure,
  takeOut,
  tighten,
  tryPutIn,
} from './act-fasteners.ts';
import { boltUp, discard, moveAside, moveToNew, putBack, remove } from './act-parts.ts';
import * as systems from './act-systems.ts';
import type { Item, Model, System } from './model.ts';
import { itemsOf } from './model.ts';
import type { Work } from './needs.ts';
import { isAssumedAway, isPlaced, reach, stateOf, together } from './needs.ts';
import type { Action, Ref } from './shape.ts';

/** What a ref means, with loop variables put in. */
export function things(w: Work, ref: Ref): Item[] {
  return itemsOf(w.model, withBound(w, ref));
}

function withBound(w: Work, ref: Ref): Ref {
  if (w.bound.size === 0) return ref;
  const name = w.bound.get(ref.name) ?? ref.name;
  return { ...ref, name, positions: ref.positions.map((position) => w.bound.get(position) ?? position) };
}

/** Does one action (without what follows from its outcomes). */
export function perform(w: Work, action: Action): void {
  w.line = action.line;
  const refs = action.objects.map((ref) => withBound(w, ref));
  // `a, b and c`: a, then b and c together.
  const single = action.together ? refs.slice(0, -2) : refs;
  const groups = single.map((ref) => [ref]);
  if (action.together) groups.push(refs.slice(-2));
  if (action.verb === 'run') run(w, refs);
  else if (action.between.length > 0 && action.verb === 'measure') measured(w, action.between);
  else for (const group of groups) onGroup(w, action, group);
}

function run(w: Work, refs: readonly Ref[]): void {
  if (refs.length === 0) {
    systems.run(w, w.model.systems);
    return;
  }
  const run = new Set<System>();
  for (const ref of refs) {
    const system = w.model.systemByName.get(ref.name);
    if (system) run.add(system);
    else for (const item of things(w, ref)) for (const one of [...item.runs, ...item.within]) run.add(one);
  }
  systems.run(w, [...run]);
}

function measured(w: Work, between: readonly Ref[]): void {
  const items = between.flatMap((ref) => things(w, ref)).filter(isPlaced);
  if (!together(w, items, false)) w.report('not-in-place');
}

function onGroup(w: Work, action: Action, refs: readonly Ref[]): void {
  const named = refs.flatMap((ref) => w.model.systemByName.get(ref.name) ?? []);
  for (const system of named) onSystem(w, action, system);
  const items = refs
    .filter((ref) => w.model.declared.get(ref.name)?.kind !== 'system')
    .filter((ref) => isThing(w.model, ref))
    .flatMap((ref) => things(w, ref));
  if (items.length > 0) onItems(w, action, items);
}

function toolsOf(w: Work, action: Action): Item[] {
  return action.with.flatMap((ref) =>
    w.model.declared.get(ref.name)?.kind === 'tool' ? things(w, ref) : [],
  );
}

function onItems(w: Work, action: Action, items: readonly Item[]): void {
  const parts = items.filter(isPlaced);
  const fasteners = items.filter((item) => item.kind === 'fastener');
  const connections = items.filter((item) => item.kind === 'connection');
  const tools = items.filter((item) => item.kind === 'tool');
  const each = (list: readonly Item[], act: (item: Item) => void) => {
    for (const item of list) act(item);
  };
  const controls = items.filter((item) => item.kind === 'control' || item.kind === 'isolator');
  switch (action.verb) {
    case 'remove':
      each(fasteners, (item) => takeOut(w, item, action.discard));
      each(connections, (item) => disconnect(w, item, action.discard));
      if (parts.length > 0) remove(w, parts, { discard: action.discard });
      each(tools, (item) => systems.removeTool(w, item));
      return;
    case 'unbolt':
      remove(w, parts, { unbolt: true, discard: action.discard });
      return;
    case 'move aside':
      if (parts.length > 0) moveAside(w, parts);
      each(connections, (item) => putConnectionAside(w, item));
      return;
    case 'move back':
      if (parts.length > 0) putBack(w, parts, 'back');
      each(connections, (item) => bringConnectionBack(w, item));
      return;
    case 'move':
      if (action.toNew)
        for (const to of things(w, action.toNew)) each(parts, (item) => moveToNew(w, item, to));
      return;
    case 'refit':
    case 'fit':
      fitAny(w, action, items);
      return;
    case 'trial fit':
      putBack(w, parts, 'trial');
      return;
    case 'bolt up':
      boltUp(w, parts);
      return;
    case 'loosen':
      each(fasteners, (item) => loosen(w, item));
      return;
    case 'back off':
      each(fasteners, (item) => backOff(w, item));
      return;
    case 'tighten': {
      const how = { until: action.until, ...pick(action) };
      each(fasteners, (item) => tighten(w, item, how));
      return;
    }
    case 'secure':
      each(fasteners, (item) => secure(w, item));
      return;
    case 'connect':
      each(connections, (item) => connect(w, item));
      return;
    case 'disconnect':
      each(connections, (item) => disconnect(w, item));
      return;
    case 'cap':
      each(connections, (item) => cap(w, item));
      return;
    case 'open':
    case 'switch on':
      each(connections, (item) => disconnect(w, item));
      each(controls, (item) => systems.setPosition(w, item, true));
      return;
    case 'close':
    case 'switch off':
      each(connections, (item) => connect(w, item));
      each(controls, (item) => systems.setPosition(w, item, false));
      return;
    case 'lock out':
      each(controls, (item) => systems.lockOut(w, item));
      return;
    case 'unlock':
      each(controls, (item) => systems.unlock(w, item));
      each(tools, (item) => systems.removeTool(w, item));
      each(
        parts.filter((item) => !controls.includes(item)),
        (item) => systems.unlockPart(w, item),
      );
      return;
    case 'let cool':
      each(items, (item) => systems.letCool(w, [...item.opens, ...item.within]));
      return;
    case 'lock':
      each(parts, (item) => systems.lock(w, item, toolsOf(w, action)));
      return;
    case 'support':
    case 'raise':
      each(parts, (item) => systems.support(w, item, toolsOf(w, action), action.verb === 'raise'));
      return;
    case 'lower':
      each(parts, (item) => systems.lower(w, item));
      return;
    case 'bypass':
      each(items, (item) => systems.bypass(w, item, toolsOf(w, action)));
      return;
    case 'turn':
      each(parts, (item) => systems.turn(w, item));
      return;
    case 'mark':
    case 'clean':
    case 'coat':
    case 'lubricate':
      each(items, (item) => treat(w, action.verb, item));
      return;
    case 'align':
    case 'adjust':
      each(items, (item) => {
        mustBeThere(w, item);
        if (action.verb === 'adjust') reach(w, item);
      });
      return;
    case 'check':
      if (action.at || fasteners.length > 0) each(fasteners, (item) => mustBeThere(w, item));
      each(parts, (item) => mustNotBeGone(w, item));
      return;
    case 'inspect':
    case 'measure':
    case 'record':
    case 'choose':
    case 'send':
      each(items, (item) => {
        mustNotBeGone(w, item);
        if (action.verb === 'choose')
          Object.assign(stateOf(w, item), { chosenBy: w.line, passedOver: false });
      });
      return;
    case 'discard':
      each(items, (item) => discard(w, item));
      return;
    default:
      throw new Error(`line ${action.line}: ${action.verb} is not done to ${items[0]!.kind}`);
  }
}

function fitAny(w: Work, action: Action, items: readonly Item[]): void {
  const fresh = action.fresh !== undefined;
  const kits = items.filter((item) => item.kind === 'kit');
  const all = [...items.filter((item) => item.kind !== 'kit'), ...kits.flatMap((kit) => kit.contains)];
  const parts = all.filter(isPlaced);
  if (action.together) putBack(w, parts, fresh ? 'new' : 'fit');
  for (const item of all) {
    if (item.kind === 'fastener') tryPutIn(w, item, { fresh, byHand: action.byHand });
    else if (item.kind === 'connection') connect(w, item, fresh);
    else if (item.kind === 'tool') systems.fitTool(w, item, item.locks);
    else if (!action.together) putBack(w, [item], fresh ? 'new' : 'fit');
  }
}

function treat(w: Work, verb: string, item: Item): void {
  const one = stateOf(w, item);
  mustNotBeGone(w, item);
  reach(w, item);
  if (verb === 'clean') one.clean = true;
  if (verb === 'mark') one.marked = true;
}

function mustBeThere(w: Work, item: Item): void {
  const one = stateOf(w, item);
  const off =
    item.kind === 'fastener' ? one.fastening === 'out' : one.place === 'off' || one.place === 'discarded';
  if (off && !isAssumedAway(w, item)) w.report('not-in-place');
}

function mustNotBeGone(w: Work, item: Item): void {
  if (stateOf(w, item).place === 'discarded') w.report('not-in-place');
}

function onSystem(w: Work, action: Action, system: System): void {
  switch (action.verb) {
    case 'isolate':
      systems.isolate(w, system);
      return;
    case 'restore':
      systems.restore(w, system);
      return;
    case 'relieve':
      systems.relieve(w, system);
      return;
    case 'prove':
      systems.prove(w, system);
      return;
    case 'let cool':
      systems.letCool(w, [system]);
      return;
    case 'drain':
    case 'recover':
      systems.drain(w, system);
      return;
    case 'fill':
      systems.fill(w, system);
      return;
    case 'top up':
      systems.topUp(w, system);
      return;
    case 'bleed':
      systems.bleed(w, system);
      return;
    case 'evacuate':
      systems.evacuate(w, system);
      return;
    case 'pressurise':
    case 'inflate':
      systems.pressurise(w, system);
      return;
    case 'inspect':
    case 'measure':
    case 'record':
    case 'check':
    case 'adjust':
      return;
    default:
      throw new Error(`line ${action.line}: ${action.verb} is not done to a system`);
  }
}
function pick(action: Action): { stage?: number; pass?: number } {
  const how: { stage?: number; pass?: number } = {};
  if (action.stage !== undefined) how.stage = action.stage;
  if (action.pass !== undefined) how.pass = action.pass;
  return how;
}

const THINGS = ['part', 'seal', 'fastener', 'connection', 'control', 'isolator', 'face', 'tool', 'kit'];

/** Values, fluids and names of readings are no things. */
function isThing(model: Model, ref: Ref): boolean {
  const declaration = model.declared.get(ref.name);
  if (!declaration) throw new Error(`nothing is called ${ref.name}`);
  return THINGS.includes(declaration.kind);
}
