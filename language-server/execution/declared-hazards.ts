/**
 * The hazards that a machine file declares, with what they hang on: a thing, a system, a fluid in a system. Made
 * once for an execution. Which action comes near which of them is in ../hazards/activities.ts.
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import {
  activitiesOf,
  begins,
  gerund,
  type Harm,
  isHarm,
  isNear,
  isNearSystem,
  LIVE_CAN_KILL,
  type SystemEvent,
} from '../hazards/index.ts';
import { bandIn, readTyped } from '../model/fastening-amounts.ts';
import { clauseOf } from '../model/fastening-declared.ts';
import type { Model, Thing } from '../model/model.ts';

export interface DeclaredHazard {
  readonly thing: Thing;
  /** `pressure`, `live` … */
  readonly hazard: string;
  /** The words after `when`; without them the kind of hazard says what counts. */
  readonly when: ReadonlySet<string> | undefined;
  /** How bad it is; absent where nobody says so. */
  readonly harm: Harm | undefined;
  /** The system whose energy it is; of a fluid, the system that holds it. */
  readonly system: number | undefined;
}

/** One hazard that an action meets. */
export interface Meeting {
  readonly declared: DeclaredHazard;
  /** What the action is about. */
  readonly via: number;
  readonly event: SystemEvent | undefined;
  /** The action only begins to make it safe. */
  readonly begins: boolean;
}

const gathered = new WeakMap<Model, DeclaredHazards>();

/** The hazards of a machine; gathered once for all its procedures, since they never change. */
export function declaredHazards(model: Model): DeclaredHazards {
  let hazards = gathered.get(model);
  if (!hazards) {
    hazards = new DeclaredHazards(model);
    gathered.set(model, hazards);
  }
  return hazards;
}

export class DeclaredHazards {
  readonly all: DeclaredHazard[] = [];
  private readonly byItem = new Map<number, DeclaredHazard[]>();
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
    for (const thing of model.things) {
      const { clauses } = thing.declaration;
      for (const clause of clauses) {
        if (clause.clause !== 'hazard') continue;
        const when = clause.when.length > 0 ? new Set(clause.when.map(({ text }) => text)) : undefined;
        const harm = clause.harm && isHarm(clause.harm.text) ? clause.harm.text : undefined;
        for (const { text: hazard } of clause.hazards) {
          const one = { thing, hazard, when, harm: harm ?? voltageHarm(model, thing, hazard) };
          if (thing.type === 'fluid') this.fluid(one);
          if (thing.type === 'system') this.add({ ...one, system: thing.first }, [thing.first]);
          else this.add({ ...one, system: undefined }, itemsOf(thing));
        }
      }
    }
  }

  /** A fluid is met wherever it is filled in. */
  private fluid(one: Omit<DeclaredHazard, 'system'>): void {
    for (const system of this.model.things) {
      const holds = clauseOf(system, 'holds');
      if (holds?.fluid?.name.text === one.thing.name)
        this.add({ ...one, system: system.first }, [system.first]);
    }
  }

  private add(declared: DeclaredHazard, items: readonly number[]): void {
    this.all.push(declared);
    for (const item of items) {
      const list = this.byItem.get(item);
      if (list) list.push(declared);
      else this.byItem.set(item, [declared]);
    }
  }

  of(item: number): readonly DeclaredHazard[] {
    return this.byItem.get(item) ?? [];
  }

  /** Every hazard that the action meets, each with the item through which it does. */
  meetings(action: Action, items: readonly number[]): Meeting[] {
    if (this.all.length === 0) return [];
    const found: Meeting[] = [];
    const doing = new Set([...activitiesOf(action.verb), gerund(action.verb)]);
    for (const item of items) {
      this.own(item, action.verb, doing, found);
      for (const [system, event] of systemEvents(this.model, item, action.verb))
        this.system(system, event, item, doing, found);
      // A kit is fitted piece by piece.
      if (this.model.thingOf[item]!.type === 'kit')
        for (const piece of this.model.contains[item]!) this.own(piece, action.verb, doing, found);
    }
    if (action.verb === 'run' && items.length === 0) this.running(found);
    this.used(action, found);
    return found;
  }

  private own(item: number, verb: string, doing: ReadonlySet<string>, found: Meeting[]): void {
    if (this.model.thingOf[item]!.type === 'system') return;
    for (const declared of this.of(item)) {
      const near = declared.when ? meet(declared.when, doing) : isNear(declared.hazard, verb);
      // Cooling is how a hot thing is made safe, whatever the `when` says.
      const cooling = declared.hazard === 'hot' && verb === 'let cool';
      if (near || cooling) found.push({ declared, via: item, event: undefined, begins: cooling });
    }
  }

  private system(
    system: number,
    event: SystemEvent,
    via: number,
    doing: ReadonlySet<string>,
    found: Meeting[],
  ): void {
    for (const declared of this.of(system)) {
      const { hazard, when } = declared;
      const near = when ? meet(when, doing) || when.has(event) : isNearSystem(hazard, event);
      if (near) found.push({ declared, via, event, begins: false });
      else if (begins(hazard, event)) found.push({ declared, via, event, begins: true });
    }
  }

  /** The whole machine is run. */
  private running(found: Meeting[]): void {
    for (const declared of this.all) {
      if (declared.when?.has('running') || declared.when?.has('starting'))
        found.push({ declared, via: declared.thing.first, event: undefined, begins: false });
    }
  }

  /** Fluids and consumables that the tails name. */
  private used(action: Action, found: Meeting[]): void {
    for (const tail of action.tails) {
      if (tail.tail !== 'with') continue;
      for (const { name } of tail.refs) {
        const thing = this.model.byName.get(name.text);
        if (thing?.type !== 'fluid' && thing?.type !== 'consumable') continue;
        for (const declared of this.of(thing.first)) {
          if (declared.when && !declared.when.has('using') && !declared.when.has('handling')) continue;
          found.push({ declared, via: thing.first, event: undefined, begins: false });
        }
      }
    }
  }
}

function itemsOf(thing: Thing): number[] {
  return thing.positions.map((_, index) => thing.first + index);
}

function meet(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  for (const one of a) if (b.has(one)) return true;
  return false;
}

/** A live system of so many volts can kill, whether or not its declaration says so. */
function voltageHarm(model: Model, thing: Thing, hazard: string): Harm | undefined {
  if (hazard !== 'live' || thing.type !== 'system') return undefined;
  const read = readTyped(clauseOf(thing, 'live')?.quantity, model.values);
  if (read?.unit.kind !== 'voltage') return undefined;
  const { low, high } = bandIn(read, 'V');
  return (Number.isFinite(high) ? high : low) >= LIVE_CAN_KILL ? 'can kill' : undefined;
}

const TAKES_APART: ReadonlySet<string> = new Set([
  'remove',
  'unbolt',
  'move aside',
  'disconnect',
  'open',
  'switch on',
]);
const CUTS_OFF: ReadonlySet<string> = new Set(['switch off', 'disconnect', 'remove', 'open', 'close']);

const EVENTS: Readonly<Record<string, SystemEvent>> = {
  relieve: 'relieving',
  drain: 'draining',
  recover: 'draining',
  fill: 'filling',
  'top up': 'filling',
  bleed: 'bleeding',
  pressurise: 'pressurising',
  inflate: 'pressurising',
  prove: 'proving',
  isolate: 'isolating',
  'let cool': 'cooling',
};

const NO_EVENTS: readonly (readonly [number, SystemEvent])[] = [];

/** What an action on an item does to systems. Looking and measuring do nothing. */
export function systemEvents(
  model: Model,
  item: number,
  verb: string,
): readonly (readonly [number, SystemEvent])[] {
  const thing = model.thingOf[item]!;
  if (thing.type === 'system') {
    const event = EVENTS[verb];
    return [[item, event ?? 'other']];
  }
  // Looking, cleaning, putting back: most of what is done.
  if (verb !== 'let cool' && verb !== 'loosen' && !TAKES_APART.has(verb) && !CUTS_OFF.has(verb))
    return NO_EVENTS;
  const events: [number, SystemEvent][] = [];
  if (verb === 'let cool')
    return [...model.opens[item]!, ...model.runs[item]!].map((system) => [system, 'cooling']);
  const fasteners = verb === 'unbolt' ? model.heldBy[item]! : [];
  const apart = TAKES_APART.has(verb) ? [item, ...fasteners] : verb === 'loosen' ? [item] : [];
  for (const one of apart) {
    for (const system of model.relieves[one]!) events.push([system, 'relieving']);
    for (const system of model.drains[one]!) events.push([system, 'draining']);
    for (const system of model.servicePoints[one]!)
      events.push([system, model.bleedPoints[system]!.includes(one) ? 'bleeding' : 'opening']);
    if (verb === 'loosen') continue;
    for (const system of model.opens[one]!)
      if (!events.some(([known]) => known === system)) events.push([system, 'opening']);
  }
  if (CUTS_OFF.has(verb)) for (const system of model.isolates[item]!) events.push([system, 'isolating']);
  return events;
}
