/**
 * Which declared hazards an action comes near, in one case. Written from the chapter on states, "Notices"; which verbs an
 * activity after `when` covers is common practice, no source.
 */
import { clauseOf, volts } from './amounts.ts';
import type { Item, Model, System } from './model.ts';
import { isPointOf, itemsOf } from './model.ts';
import type { Work } from './needs.ts';
import { things } from './perform.ts';
import type { Action } from './shape.ts';

export interface Hazard {
  id: string;
  hazard: string;
  when: string[] | undefined;
  harm: string;
  /** Whose it is. */
  name: string;
  system: System | undefined;
}

export interface Meeting {
  of: Hazard;
  /** It only begins to make safe. */
  begins: boolean;
  /** It brings the energy back. */
  brings: boolean;
}

type Event =
  | 'open'
  | 'let out'
  | 'drain'
  | 'fill'
  | 'bleed'
  | 'put pressure on'
  | 'prove'
  | 'isolate'
  | 'cool';

export function hazardsOf(model: Model): Hazard[] {
  const found: Hazard[] = [];
  for (const [name, declaration] of model.declared) {
    const there = model.systemByName.get(name) ?? model.byName.get(name);
    for (const clause of declaration.clauses) {
      if (clause.clause !== 'hazard') continue;
      for (const hazard of clause.names) {
        const own = model.systemByName.get(name);
        const isHigh = hazard === 'live' && (volts(clauseOf(declaration, 'live')?.amount) ?? 0) >= 50;
        const harm = clause.harm ?? (isHigh ? 'can kill' : 'can hurt');
        const one = { hazard, when: clause.when, harm, name };
        if (there) found.push({ ...one, id: `${name} ${hazard}`, system: own });
        if (declaration.kind !== 'fluid' && declaration.kind !== 'consumable') continue;
        // As it is used, and wherever a system holds it.
        found.push({ ...one, id: `${name} ${hazard}`, system: undefined });
        for (const system of model.systems) {
          const holds = clauseOf(model.declared.get(system.name)!, 'holds');
          if (holds?.refs[0]?.name === name)
            found.push({ ...one, id: `${name} in ${system.name} ${hazard}`, system });
        }
      }
    }
  }
  return found;
}

const OFF = ['remove', 'unbolt'];
const ON = ['refit', 'fit', 'trial fit', 'bolt up'];
const ASIDE = ['move', 'move aside', 'move back'];
const HELD = ['raise', 'lower', 'support'];
const LIFTED = [...OFF, ...ON, ...ASIDE, ...HELD];
/** Nobody lays a hand on the thing. */
const HANDS_OFF = [
  ...[
    'inspect',
    'measure',
    'record',
    'choose',
    'check',
    'send',
    'wait',
    'sign',
    'let cool',
    'prove',
    'discard',
  ],
];
/** What the words after `when` cover, besides the verb that they are made of. */
const COVERED: Record<string, readonly string[]> = {
  removing: [...OFF, 'move aside'],
  opening: [...OFF, 'move aside', 'disconnect', 'open', 'relieve', 'drain'],
  fitting: [...ON, 'move back'],
  refitting: [...ON, 'move back'],
  lifting: [...OFF, ...ON, 'move', ...HELD],
  moving: ASIDE,
  starting: ['run'],
  handling: [...LIFTED, 'disconnect', 'connect', 'open', 'switch on', 'switch off', 'lock out'],
};

function isDone(verb: string, when: readonly string[]): boolean {
  const [first = ''] = verb.split(' ');
  const stems = [first, first.replace(/e$/, ''), first + first.at(-1)!].map((stem) => `${stem}ing`);
  return when.some((word) => stems.includes(word) || COVERED[word]?.includes(verb));
}

const EVENTS: Record<string, Event> = {
  relieve: 'let out',
  drain: 'drain',
  recover: 'drain',
  fill: 'fill',
  'top up': 'fill',
  bleed: 'bleed',
  pressurise: 'put pressure on',
  inflate: 'put pressure on',
  prove: 'prove',
  isolate: 'isolate',
  'let cool': 'cool',
};
const WORDS: Record<Event, string> = {
  open: 'opening',
  'let out': 'relieving',
  drain: 'draining',
  fill: 'filling',
  bleed: 'bleeding',
  'put pressure on': 'pressurising',
  prove: 'proving',
  isolate: 'isolating',
  cool: 'cooling',
};
const LETS_OUT: Event[] = ['open', 'let out', 'drain', 'bleed', 'put pressure on'];
const WETS: Event[] = ['open', 'let out', 'drain', 'fill', 'bleed'];
const NEAR: Record<string, Event[]> = {
  pressure: LETS_OUT,
  'stored-energy': LETS_OUT,
  live: ['open', 'prove'],
  hot: ['open', 'drain', 'bleed'],
  cold: WETS,
  fuel: WETS,
  chemical: WETS,
};

export function meetings(w: Work, action: Action, hazards: readonly Hazard[]): Meeting[] {
  const found: Meeting[] = [];
  const { verb } = action;
  const names = new Set(action.objects.map(({ name }) => w.bound.get(name) ?? name));
  const events: [System, Event][] = [];
  const items: Item[] = [];
  for (const ref of action.objects) {
    const system = w.model.systemByName.get(w.bound.get(ref.name) ?? ref.name);
    if (!system) items.push(...things(w, ref));
    else if (EVENTS[verb]) events.push([system, EVENTS[verb]]);
  }
  for (const item of [...items]) for (const piece of item.contains) names.add(piece.name);
  for (const item of items) events.push(...eventsAt(item, verb));
  for (const of of hazards) {
    const meet = (near: boolean, begins: boolean, brings = false) => {
      if (near || begins) found.push({ of, begins: !near, brings });
    };
    if (of.system) {
      for (const [system, event] of events) {
        if (system !== of.system) continue;
        const near = of.when
          ? of.when.includes(WORDS[event]) || isDone(verb, of.when)
          : (NEAR[of.hazard] ?? ['open']).includes(event);
        const begins = of.hazard === 'live' ? event === 'isolate' : of.hazard === 'hot' && event === 'cool';
        meet(near, begins, event === 'fill' || event === 'put pressure on');
      }
    } else if (names.has(of.name)) {
      const byHand = LIFTED.includes(verb) || !['lifting', 'falling'].includes(of.hazard);
      const near = of.when ? isDone(verb, of.when) : !HANDS_OFF.includes(verb) && byHand;
      meet(near, of.hazard === 'hot' && verb === 'let cool');
    } else if (action.with.some(({ name }) => name === of.name) && isUsedUp(w, of.name)) {
      meet(!of.when || of.when.includes('using') || of.when.includes('handling'), false);
    }
    // The whole machine.
    if (verb === 'run' && names.size === 0 && of.when && isDone('run', of.when)) meet(true, false);
  }
  return found;
}

function isUsedUp(w: Work, name: string): boolean {
  return ['fluid', 'consumable'].includes(w.model.declared.get(name)?.kind ?? '');
}

/** What is done to systems at one of their openings. */
function eventsAt(item: Item, verb: string): [System, Event][] {
  const found: [System, Event][] = [];
  if (verb === 'let cool') return [...item.opens, ...item.runs].map((system) => [system, 'cool']);
  const apart = ['remove', 'unbolt', 'move aside', 'disconnect', 'open', 'switch on'].includes(verb);
  const pieces = verb === 'unbolt' ? [item, ...item.heldBy] : [item];
  if (apart || verb === 'loosen') {
    for (const piece of pieces) {
      for (const system of piece.relieves) found.push([system, 'let out']);
      for (const system of piece.drains) found.push([system, 'drain']);
      for (const system of piece.otherPointOf)
        found.push([system, system.bleeding.includes(piece) ? 'bleed' : 'open']);
      if (apart)
        for (const system of piece.opens) if (!isPointOf(piece, system)) found.push([system, 'open']);
    }
  }
  if (['switch off', 'disconnect', 'remove', 'open', 'close'].includes(verb))
    for (const system of item.isolates) found.push([system, 'isolate']);
  return found;
}

/** What cools with these: what sits on them, and what opens the systems that are meant. */
export function coolsWith(w: Work, action: Action): Set<string> {
  const names = new Set<string>();
  const add = (item: Item) => {
    if (names.has(item.name)) return;
    names.add(item.name);
    for (const sitter of item.sitters) add(sitter);
  };
  for (const ref of action.objects) {
    const system = w.model.systemByName.get(ref.name);
    if (system) for (const item of system.openers) add(item);
    else for (const item of itemsOf(w.model, ref)) add(item);
  }
  return names;
}
