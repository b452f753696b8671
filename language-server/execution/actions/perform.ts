/**
 * From an action line to what it does: one entry for every verb of the word list. Names are resolved by the
 * caller; a reference that means nothing is left out here (the names are checked elsewhere).
 */
import type { Action, Ref, Tail } from '../../../grammar/syntax/tree.ts';
import { verbNamed } from '../../../grammar/tokens/verbs.ts';
import { itemsOf } from '../../model/items.ts';
import type { Thing } from '../../model/model.ts';
import { bit, CLEAN, FINAL, FITTED, GONE, isPlaced, not, OFF, OUT, YES } from '../aspects.ts';
import { choose } from '../chosen.ts';
import { apart } from '../geometry.ts';
import type { Run } from '../run.ts';
import { atHand, reach, storyOf } from './common.ts';
import { coat, wipe } from './compounds.ts';
import { timePasses } from './curing.ts';
import { aimOf, backOff, bringIn, loosen, secure, takeOut, tighten } from './fasteners.ts';
import { cap, connect, disconnect, lockOut, operate, unlock } from './joints.ts';
import { discard, missing, moveAside, moveToNew, putBack, takeOff } from './parts.ts';
import {
  bleed,
  drain,
  evacuate,
  fill,
  isolate,
  letCool,
  pressurise,
  prove,
  relieve,
  restore,
  runMachine,
  topUp,
} from './systems.ts';
import { bypass, fitTool, lock, lower, removeTool, support, turn, unlockPart } from './tools.ts';

/** Gives the reference with loop variables filled in, or undefined where it names nothing. */
export type Resolve = (ref: Ref) => { items: readonly number[] } | undefined;

export function perform(run: Run, action: Action, file: string, resolve: Resolve): void {
  run.begin(action, file);
  const groups = groupsOf(run, action, resolve);
  // Nearly every action is about one group: what it holds is not copied then.
  const items: readonly number[] = groups.length === 1 ? groups[0]! : groups.flat();
  run.touch(items, tailItems(action, resolve));
  for (const watcher of run.watchers) watcher.before?.(action, file, items);
  const verb = PERFORMERS[action.verb];
  for (const items of groups.length > 0 ? groups : [NOTHING]) {
    for (const watcher of run.watchers) watcher.beforeEach?.(action, file, items);
    verb?.(run, items, action, resolve);
    for (const watcher of run.watchers) watcher.afterEach?.();
  }
  timePasses(run, action);
  run.flush();
  for (const watcher of run.watchers) watcher.after?.(action, items);
}

const NOTHING: readonly number[] = [];

/** What the tails name: tools, what is held, what a measurement is taken between. */
function tailItems(action: Action, resolve: Resolve): readonly number[] {
  if (action.tails.length === 0) return NOTHING;
  return action.tails.flatMap((tail) =>
    'refs' in tail ? tail.refs.flatMap((ref) => resolve(ref)?.items ?? []) : [],
  );
}

/** Objects in order; those joined by `and` at the end are one group, done together. */
function groupsOf(run: Run, action: Action, resolve: Resolve): (readonly number[])[] {
  // A thing of a kind that the verb cannot act on is a finding about names, not about the machine.
  const on: readonly string[] | undefined = action.fresh === 'kit' ? undefined : verbNamed(action.verb)?.on;
  const except = action.tails.some(({ tail }) => tail === 'except')
    ? action.tails.flatMap((tail) =>
        tail.tail === 'except' ? tail.refs.flatMap((ref) => resolve(ref)?.items ?? []) : [],
      )
    : NOTHING;
  const groups: (readonly number[])[] = [];
  for (const ref of action.objects) {
    let items = resolve(ref)?.items ?? NOTHING;
    // All items of one reference are of one thing.
    if (items.length === 0 || (on !== undefined && !on.includes(run.thing(items[0]!).type))) continue;
    if (except.length > 0) items = items.filter((item) => !except.includes(item));
    if (items.length > 0) groups.push(items);
  }
  if (action.together && groups.length > 1) {
    const last = groups.pop()!;
    groups[groups.length - 1] = [...groups[groups.length - 1]!, ...last];
  }
  return groups;
}

type Performer = (run: Run, items: readonly number[], action: Action, resolve: Resolve) => void;

const OPERATE: Readonly<Record<string, 'open' | 'closed' | 'on' | 'off'>> = {
  open: 'open',
  close: 'closed',
  'switch on': 'on',
  'switch off': 'off',
};

const PERFORMERS: Readonly<Record<string, Performer>> = {
  remove: (run, items, action) => {
    const away = discards(action);
    const { fasteners, connections, tools, parts } = byType(run, items);
    takeOut(run, fasteners, run.within, { discard: away });
    disconnect(run, connections, { discard: away });
    removeTool(run, tools);
    takeOff(run, parts, { discard: away });
  },
  unbolt: (run, items, action) => takeOff(run, items, { unbolt: true, discard: discards(action) }),
  refit: (run, items, action) => goBack(run, items, action),
  fit: (run, items, action) => goBack(run, items, action),
  'trial fit': (run, items) => putBack(run, items, { trial: true }),
  'bolt up': (run, items) => putBack(run, items, { boltUp: true }),
  'move aside': (run, items) => moveAside(run, items),
  'move back': (run, items) => putBack(run, byType(run, items).parts, { moveBack: true }),
  move: (run, items, action) => {
    if (action.tails.some((tail) => tail.tail === 'to' && tail.fresh)) moveToNew(run, items);
    else working(run, items);
  },
  discard: (run, items) => discard(run, items),
  loosen: (run, items) => loosen(run, items),
  tighten: (run, items, action) => tighten(run, at(run, items, action), aimOf(action)),
  'back off': (run, items) => backOff(run, items),
  secure: (run, items) => secure(run, items),
  connect: (run, items) => connect(run, items),
  disconnect: (run, items, action) => disconnect(run, items, { discard: discards(action) }),
  cap: (run, items) => cap(run, items),
  open: (run, items, action) => openOrClose(run, items, action),
  close: (run, items, action) => openOrClose(run, items, action),
  'switch on': (run, items, action) => openOrClose(run, items, action),
  'switch off': (run, items, action) => openOrClose(run, items, action),
  'lock out': (run, items) => lockOut(run, items),
  unlock: (run, items) => {
    const { parts, tools } = byType(run, items);
    const controls = parts.filter((item) => run.thing(item).type !== 'part');
    unlock(run, controls);
    unlockPart(
      run,
      parts.filter((item) => !controls.includes(item)),
    );
    removeTool(run, tools);
  },
  lock: (run, items, action, resolve) => lock(run, items, toolsOf(run, action, resolve)),
  support: (run, items, action, resolve) => support(run, items, toolsOf(run, action, resolve)),
  raise: (run, items, action, resolve) => support(run, items, toolsOf(run, action, resolve)),
  lower: (run, items) => lower(run, items),
  bypass: (run, items, action, resolve) => bypass(run, items, toolsOf(run, action, resolve)),
  turn: (run, items) => turn(run, items),
  isolate: (run, items) => isolate(run, items),
  restore: (run, items) => restore(run, items),
  relieve: (run, items) => relieve(run, items),
  'let cool': (run, items) => letCool(run, items),
  prove: (run, items) => prove(run, items),
  drain: (run, items) => drain(run, items),
  recover: (run, items) => {
    drain(run, items);
    relieve(run, items);
  },
  fill: (run, items) => fill(run, items),
  'top up': (run, items) => topUp(run, items),
  bleed: (run, items) => bleed(run, items),
  evacuate: (run, items) => evacuate(run, items),
  pressurise: (run, items) => pressurise(run, items),
  inflate: (run, items) => pressurise(run, items),
  run: (run, items) => runMachine(run, items),
  mark: (run, items) => {
    working(run, items);
    for (const item of items) run.set('marked', item, YES);
  },
  clean: (run, items) => {
    working(run, items);
    for (const item of items) {
      if (run.thing(item).type === 'face') run.set('place', item, CLEAN);
      wipe(run, item);
    }
  },
  coat: (run, items, action) => coating(run, items, action),
  lubricate: (run, items, action) => coating(run, items, action),
  adjust: (run, items) => inPlace(run, items, { seated: true, reaching: true }),
  align: (run, items) => inPlace(run, items, { seated: true }),
  inspect: (run, items) => looking(run, items),
  record: (run, items) => looking(run, items),
  send: (run, items) => looking(run, items),
  choose: (run, items) => {
    looking(run, items);
    choose(run, items);
  },
  check: (run, items) => {
    inPlace(run, items, {});
    // A checked fastener has been worked on: it may be tightened again.
    for (const item of items)
      if (run.thing(item).type === 'fastener')
        run.set('place', item, FINAL, run.where('place', item, bit(FINAL)));
  },
  measure: (run, items, action, resolve) => {
    looking(run, items);
    const between = action.tails.flatMap((tail) => (tail.tail === 'between' ? tail.refs : []));
    const more = between.flatMap((ref) => resolve(ref)?.items ?? []);
    const ends = action.tails.some((tail) => tail.tail === 'between') ? [...items, ...more] : more;
    for (const { root, cases } of apart(run, ends, run.within))
      missing(run, 'not-in-place', ends.includes(root) ? root : ends[0]!, root, cases);
  },
};

function goBack(run: Run, items: readonly number[], action: Action): void {
  const fresh = action.fresh !== undefined;
  const all =
    action.fresh === 'kit'
      ? items.flatMap((item) => (run.thing(item).type === 'kit' ? run.model.contains[item]! : [item]))
      : items;
  const { fasteners, connections, tools, parts } = byType(run, all);
  swapped(run, parts, action);
  putBack(run, parts, { fresh });
  connect(run, connections, { fresh });
  fitTool(run, tools);
  const byHand = action.tails.some((tail) => tail.tail === 'by hand');
  bringIn(run, at(run, fasteners, action), run.within, { fresh, byHand });
}

/** `refit piston #1 at #2`: a matched thing goes back where it was. */
function swapped(run: Run, items: readonly number[], action: Action): void {
  if (action.fresh) return;
  const tail = atTail(action);
  if (!tail) return;
  for (const item of items) {
    const thing = run.thing(item);
    if (!thing.matched) continue;
    const ref = { name: action.word, positions: tail.positions, start: tail.start, end: tail.end };
    const targets = itemsOf(thing, ref).items;
    if (targets.length > 0 && !targets.includes(item)) {
      run.blame('swapped', item, {
        cases: run.cases.and(run.within, thing.exists),
        words: { to: tail.positions[0]!.from },
      });
    }
  }
}

function openOrClose(run: Run, items: readonly number[], action: Action): void {
  const to = OPERATE[action.verb]!;
  const { connections, parts } = byType(run, items);
  if (to === 'open' || to === 'off') disconnect(run, connections);
  else connect(run, connections);
  operate(run, parts, to);
}

/** Work on a thing that is at hand and that nothing hides. */
function working(run: Run, items: readonly number[]): void {
  for (const item of items) {
    atHand(run, item, run.within);
    reach(run, item, run.within, items);
  }
}

function coating(run: Run, items: readonly number[], action: Action): void {
  working(run, items);
  coat(run, items, action);
}

function looking(run: Run, items: readonly number[]): void {
  for (const item of items) atHand(run, item, run.within);
}

/** Work that asks that the thing is on its seat, or in its hole. */
function inPlace(run: Run, items: readonly number[], how: { seated?: boolean; reaching?: boolean }): void {
  for (const item of items) {
    const thing = run.thing(item);
    if (thing.type === 'fastener')
      run.require('not-in-place', item, 'place', item, not(OUT), FINAL, run.within, storyOf(thing));
    else if (how.seated && isPlaced(thing)) {
      run.require('not-in-place', item, 'place', item, not(OFF, GONE), FITTED, run.within, storyOf(thing));
    } else atHand(run, item, run.within);
    if (how.reaching) reach(run, item, run.within, items);
  }
}

/** `at #2` */
function atTail(action: Action): Extract<Tail, { tail: 'at' }> | undefined {
  return action.tails.find(
    (one): one is Extract<Tail, { tail: 'at' }> => one.tail === 'at' && one.positions.length > 0,
  );
}

/** `tighten head-bolts at #3`: only these positions. */
function at(run: Run, items: readonly number[], action: Action): readonly number[] {
  const tail = atTail(action);
  if (!tail || items.length === 0) return items;
  const thing = run.thing(items[0]!);
  const wanted = itemsOf(thing, {
    name: action.word,
    positions: tail.positions,
    start: tail.start,
    end: tail.end,
  }).items;
  return items.filter((item) => run.thing(item) !== thing || wanted.includes(item));
}

function discards(action: Action): boolean {
  return action.tails.some((tail) => tail.tail === 'and discard');
}

function toolsOf(run: Run, action: Action, resolve: Resolve): number[] {
  return action.tails
    .flatMap((tail) => (tail.tail === 'with' ? tail.refs : []))
    .flatMap((ref) => resolve(ref)?.items ?? [])
    .filter((item) => run.thing(item).type === 'tool');
}

interface ByType {
  readonly fasteners: readonly number[];
  readonly connections: readonly number[];
  readonly tools: readonly number[];
  readonly parts: readonly number[];
}

function kindOf(thing: Thing): keyof ByType | undefined {
  if (thing.type === 'fastener') return 'fasteners';
  if (thing.type === 'connection') return 'connections';
  if (thing.type === 'tool') return 'tools';
  return isPlaced(thing) ? 'parts' : undefined;
}

const NO_TYPE: ByType = { fasteners: [], connections: [], tools: [], parts: [] };

function byType(run: Run, items: readonly number[]): ByType {
  if (items.length === 0) return NO_TYPE;
  const first = kindOf(run.thing(items[0]!));
  // Nearly always they are of one thing.
  if (items.length === 1 || items.every((item) => kindOf(run.thing(item)) === first))
    return first ? { ...NO_TYPE, [first]: items } : NO_TYPE;
  const of = (kind: keyof ByType) => items.filter((item) => kindOf(run.thing(item)) === kind);
  return {
    fasteners: of('fasteners'),
    connections: of('connections'),
    tools: of('tools'),
    parts: of('parts'),
  };
}
