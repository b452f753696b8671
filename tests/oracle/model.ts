/**
 * The machine in one case: every thing, position by position, with what it is related to, as plain lists.
 * Built from what the reader gives; knows nothing of steps.
 */
import type { Clause, Condition, Declaration, Machine, Ref, Stage } from './shape.ts';

export type Kind =
  | 'part'
  | 'seal'
  | 'fastener'
  | 'connection'
  | 'control'
  | 'isolator'
  | 'face'
  | 'tool'
  | 'kit';

export interface Item {
  id: number;
  kind: Kind;
  name: string;
  position: string;
  declaration: Declaration;
  /** What it sits on; empty: it stands on the ground. */
  seats: Item[];
  /** What sits on it. */
  sitters: Item[];
  /** What it says it is under. */
  under: Item[];
  /** Things sealed by it, where it is a seal. */
  sealedHere: Item[];
  seals: Item[];
  /** Faces under it or under one of its seals. */
  faces: Item[];
  opens: System[];
  within: System[];
  runs: System[];
  carries: Item[];
  /** Fasteners of which it is a member, connections of which it is an end. */
  fasteners: Item[];
  connections: Item[];
  /** Fasteners that it says it is held by. */
  heldBy: Item[];
  /** Members of a fastener, ends of a connection; `grounded`: the ground is one too. */
  members: Item[];
  grounded: boolean;
  /** What comes with a new one, and may stay with an old one that is discarded. */
  comesWith: Item[];
  contains: Item[];
  locks: Item[];
  /** Systems of which it is a point of that sort. */
  relieves: System[];
  drains: System[];
  otherPointOf: System[];
  isolates: System[];
  stages: Stage[];
  toYield: boolean;
  matched: boolean;
  singleUse: boolean;
  added: boolean;
  stay: boolean;
  freesWhenLoose: boolean;
  slack: boolean;
  secures: boolean;
}

export interface System {
  id: number;
  name: string;
  openers: Item[];
  relieving: Item[];
  draining: Item[];
  bleeding: Item[];
  fillOrVent: Item[];
  isolators: Item[];
  fluid: boolean;
  pressure: boolean;
  heat: boolean;
  power: boolean;
  needsBleeding: boolean;
  provable: boolean;
}

export type Variants = Readonly<Record<string, string>>;

export interface Model {
  items: Item[];
  systems: System[];
  byName: Map<string, Item[]>;
  systemByName: Map<string, System>;
  /** Names declared in some case; an action on one that does not exist in this case does nothing. */
  declared: Map<string, Declaration>;
  coupled: { items: Item[]; while?: Condition }[];
}

export function has(declaration: Declaration, clause: string): boolean {
  return declaration.clauses.some((one) => one.clause === clause);
}

function clauses(declaration: Declaration, ...names: string[]): Clause[] {
  return declaration.clauses.filter((one) => names.includes(one.clause));
}

export function holdsFor(condition: Condition, variants: Variants): boolean {
  switch (condition.kind) {
    case 'axis':
      return condition.values.includes(variants[condition.axis] ?? '') !== condition.negated;
    case 'and':
      return condition.parts.every((part) => holdsFor(part, variants));
    default:
      throw new Error(`only variants can decide here, not ${condition.kind}`);
  }
}

const ITEM_KINDS = [
  ...['part', 'seal', 'fastener', 'connection', 'control', 'isolator', 'face', 'tool', 'kit'],
];

export function modelOf(machine: Machine, variants: Variants): Model {
  const model: Model = {
    items: [],
    systems: [],
    byName: new Map(),
    systemByName: new Map(),
    declared: new Map(machine.declarations.map((declaration) => [declaration.name, declaration])),
    coupled: [],
  };
  const there = machine.declarations.filter((declaration) =>
    clauses(declaration, 'only').every((clause) => holdsFor(clause.condition!, variants)),
  );
  for (const declaration of there) {
    if (declaration.kind === 'system') addSystem(model, declaration);
    else if (ITEM_KINDS.includes(declaration.kind)) addItems(model, declaration);
  }
  for (const item of model.items) relate(model, item);
  for (const declaration of there) if (declaration.kind === 'system') relateSystem(model, declaration);
  for (const item of model.items) completeMembers(item);
  for (const item of model.items) relateBack(item);
  for (const { refs, while: condition } of machine.coupled) {
    const items = refs.flatMap((ref) => itemsOf(model, ref));
    model.coupled.push(condition ? { items, while: condition } : { items });
  }
  return model;
}

export function positionsOf(declaration: Declaration): string[] {
  const named = clauses(declaration, 'positions').at(-1);
  if (named) return named.names;
  const counted = clauses(declaration, 'count').at(-1);
  if (!counted) return [''];
  return Array.from({ length: counted.count! }, (_, index) => String(index + 1));
}

function addSystem(model: Model, declaration: Declaration): void {
  const any = (...names: string[]) => names.some((name) => has(declaration, name));
  const fluid = any('holds', 'service fill', 'drained at', 'filled at', 'needs bleeding', 'bled at');
  const pressure = any('pressure', 'stored', 'relieved at');
  const heat = any('temperature');
  const system: System = {
    id: model.systems.length,
    name: declaration.name,
    openers: [],
    relieving: [],
    draining: [],
    bleeding: [],
    fillOrVent: [],
    isolators: [],
    fluid,
    pressure,
    heat,
    power: any('live', 'isolated at') || !(fluid || pressure || heat),
    needsBleeding: any('needs bleeding'),
    provable: any('proved with'),
  };
  model.systems.push(system);
  model.systemByName.set(system.name, system);
}

function addItems(model: Model, declaration: Declaration): void {
  const flag = (name: string) => has(declaration, name);
  const plan = clauses(declaration, 'plan').at(-1);
  const items = positionsOf(declaration).map(
    (position): Item => ({
      id: 0,
      kind: declaration.kind as Kind,
      name: declaration.name,
      position,
      declaration,
      ...emptyRelations(),
      stages: plan?.stages ?? [],
      toYield: plan?.toYield ?? false,
      matched: flag('matched') && !flag('numbered'),
      singleUse: flag('single-use'),
      added: flag('added'),
      stay: flag('stay'),
      freesWhenLoose: flag('frees when loose'),
      slack: flag('slack'),
      secures: flag('secured by'),
    }),
  );
  // Numbers from 1: 0 stands for the ground.
  for (const item of items) item.id = model.items.push(item);
  model.byName.set(declaration.name, items);
}

function emptyRelations() {
  return {
    seats: [] as Item[],
    sitters: [] as Item[],
    under: [] as Item[],
    sealedHere: [] as Item[],
    seals: [] as Item[],
    faces: [] as Item[],
    opens: [] as System[],
    within: [] as System[],
    runs: [] as System[],
    carries: [] as Item[],
    fasteners: [] as Item[],
    connections: [] as Item[],
    heldBy: [] as Item[],
    members: [] as Item[],
    grounded: false,
    comesWith: [] as Item[],
    contains: [] as Item[],
    locks: [] as Item[],
    relieves: [] as System[],
    drains: [] as System[],
    otherPointOf: [] as System[],
    isolates: [] as System[],
  };
}

/** All positions that a ref means; empty where the thing does not exist in this case. */
export function itemsOf(model: Model, ref: Ref): Item[] {
  const items = model.byName.get(ref.name);
  if (!items) {
    if (!model.declared.has(ref.name)) throw new Error(`nothing is called ${ref.name}`);
    return [];
  }
  if (ref.count !== undefined && ref.count !== items.length && items[0]!.position !== '') {
    throw new Error(`some of ${ref.name}: which ones is not said`);
  }
  if (ref.positions.length === 0) return items;
  return ref.positions.flatMap((position) => {
    const [from, to] = position.split('..');
    const found = to
      ? items.filter((item) => +item.position >= Number(from) && +item.position <= Number(to))
      : items.filter((item) => item.position === from);
    if (found.length === 0) throw new Error(`${ref.name} has no position ${position}`);
    return found;
  });
}

/**
 * As `itemsOf`, said by one position of a group: equal counts go place by place, a count that divides the other
 * is shared out evenly in order, anything else means all.
 */
function linked(model: Model, from: Item, ref: Ref): Item[] {
  const items = itemsOf(model, ref);
  if (ref.positions.length > 0 || from.position === '') return items;
  const places = positionsOf(from.declaration);
  const place = places.indexOf(from.position);
  if (items.length >= places.length && items.length % places.length === 0) {
    const each = items.length / places.length;
    return items.slice(place * each, (place + 1) * each);
  }
  if (items.length > 0 && places.length % items.length === 0) {
    return [items[Math.floor(place / (places.length / items.length))]!];
  }
  return items;
}

function relate(model: Model, item: Item): void {
  const { declaration } = item;
  const things = (...names: string[]) =>
    clauses(declaration, ...names).flatMap((clause) =>
      clause.refs.filter(isThing).flatMap((ref) => linked(model, item, ref)),
    );
  const isThing = (ref: Ref) => !isSystem(ref);
  const isSystem = (ref: Ref) => model.declared.get(ref.name)?.kind === 'system';
  const systems = (name: string) =>
    clauses(declaration, name).flatMap((clause) =>
      clause.refs.filter(isSystem).flatMap((ref) => model.systemByName.get(ref.name) ?? []),
    );
  if (!has(declaration, 'fixed')) item.seats = things('on');
  item.under = things('under');
  item.seals = things('sealed by');
  item.opens = systems('opens');
  item.within = systems('in');
  item.runs = systems('runs');
  item.carries = things('carries');
  item.contains = item.kind === 'kit' ? things('contains', 'supplied with') : [];
  item.locks = things('locks');
  for (const system of item.opens) system.openers.push(item);
  for (const seat of item.seats) seat.sitters.push(item);
  for (const seal of item.seals) seal.sealedHere.push(item);
  for (const whole of things('part of')) whole.comesWith.push(item);
  if (item.kind !== 'kit') for (const supplied of things('supplied with')) item.comesWith.push(supplied);
  item.heldBy = things('held by');
  for (const fastener of item.heldBy) addMember(fastener, item);
  for (const connection of things('joined by')) addMember(connection, item);
  if (item.kind === 'fastener' || item.kind === 'connection') {
    for (const clause of clauses(declaration, 'clamps', 'joins')) {
      for (const ref of [...clause.refs, ...clause.to]) {
        for (const member of linked(model, item, ref)) addMember(item, member);
      }
    }
  }
}

function addMember(holder: Item, member: Item): void {
  if (!holder.members.includes(member)) holder.members.push(member);
}

/** What a fastener holds onto where that is not said: the seats. What a connection leads to: the ground. */
function completeMembers(item: Item): void {
  const { declaration } = item;
  if (item.kind === 'fastener') {
    const clamps = clauses(declaration, 'clamps');
    const named = clamps.reduce((sum, clause) => sum + clause.refs.length, 0);
    if (named < 2 && clamps.every((clause) => clause.to.length === 0)) {
      for (const member of [...item.members]) {
        for (const seat of member.seats) addMember(item, seat);
        if (member.seats.length === 0) item.grounded = true;
      }
    }
  }
  if (item.kind === 'connection') {
    const said = clauses(declaration, 'joins').flatMap((clause) => [...clause.refs, ...clause.to]).length;
    if (Math.max(said, item.members.length) < 2) item.grounded = true;
  }
}

function relateBack(item: Item): void {
  for (const member of item.members) {
    if (item.kind === 'fastener') member.fasteners.push(item);
    if (item.kind === 'connection') member.connections.push(item);
  }
  if (item.kind !== 'face') return;
  for (const over of item.under) {
    for (const thing of [over, ...over.sealedHere]) if (!thing.faces.includes(item)) thing.faces.push(item);
  }
}

function relateSystem(model: Model, declaration: Declaration): void {
  const system = model.systemByName.get(declaration.name)!;
  const points = (name: string) =>
    clauses(declaration, name).flatMap((clause) => clause.refs.flatMap((ref) => itemsOf(model, ref)));
  system.relieving = points('relieved at');
  system.draining = points('drained at');
  system.bleeding = points('bled at');
  system.fillOrVent = [...points('filled at'), ...points('vented at')];
  system.isolators = points('isolated at');
  for (const point of system.relieving) point.relieves.push(system);
  for (const point of system.draining) point.drains.push(system);
  for (const point of [...system.bleeding, ...system.fillOrVent]) point.otherPointOf.push(system);
  for (const point of system.isolators) point.isolates.push(system);
}

export function isPointOf(item: Item, system: System): boolean {
  return [item.relieves, item.drains, item.otherPointOf, item.isolates].some((list) => list.includes(system));
}

export function isPoint(item: Item): boolean {
  return item.relieves.length + item.drains.length + item.otherPointOf.length > 0;
}
