/**
 * From declarations to a model: numbers the things and their items, resolves every name that a clause uses,
 * and wires up what sits on, covers, holds, seals, joins and opens what. What is wrong with the machine
 * itself becomes facts; a clause that cannot be understood is left out, never guessed.
 */
import type {
  Clause,
  ClauseName,
  DeclarationKind,
  Machine,
  Ref,
  Rule,
  Selector,
} from '../../grammar/syntax/tree.ts';
import { type CaseSet, Cases, EVERY, NONE } from '../execution/cases.ts';
import { casesOf, type Variants } from './conditions.ts';
import { type Draft, draft } from './draft.ts';
import type { Fact } from './facts.ts';
import { itemsOf, positionsOf } from './items.ts';
import { unknownPosition, wrongKind } from './kind-faults.ts';
import type { Coupling, Model, Thing } from './model.ts';
import { type LoadedFile, repeatedValues, unknownName } from './names.ts';
import { stateFaults } from './state-words.ts';

export function buildModel(
  machine: Machine | undefined,
  file: LoadedFile,
  visible: readonly LoadedFile[],
): { model: Model; facts: Fact[] } {
  const facts: Fact[] = [];
  return { model: new Builder(draft(machine, file, visible, facts), facts).build(machine), facts };
}

/** What the things named in a clause may be. */
export const MAY_NAME: Partial<Record<ClauseName, readonly DeclarationKind[]>> = {
  on: ['part', 'control', 'isolator', 'connection', 'fastener', 'seal'],
  under: ['part', 'seal', 'fastener', 'connection', 'control', 'isolator', 'tool'],
  'held by': ['fastener'],
  'sealed by': ['seal', 'consumable'],
  'joined by': ['connection'],
  opens: ['system'],
  carries: ['part'],
  'part of': ['part', 'kit'],
  'supplied with': ['part', 'seal', 'fastener', 'connection', 'consumable', 'control'],
  clamps: ['part', 'seal', 'control', 'isolator', 'connection', 'face'],
  joins: ['part', 'control', 'isolator', 'connection', 'fastener'],
  'lubricated with': ['consumable', 'fluid'],
  'coated with': ['consumable', 'fluid'],
  in: ['system'],
  'relieved at': ['control', 'isolator', 'connection', 'part', 'fastener'],
  'drained at': ['control', 'isolator', 'connection', 'part', 'fastener'],
  'filled at': ['control', 'isolator', 'connection', 'part', 'fastener'],
  'vented at': ['control', 'isolator', 'connection', 'part', 'fastener'],
  'bled at': ['control', 'isolator', 'connection', 'part', 'fastener'],
  'isolated at': ['isolator', 'control', 'connection'],
  'proved with': ['tool', 'part', 'control'],
  runs: ['system', 'part'],
  locks: ['part', 'control', 'isolator', 'fastener'],
  contains: ['part', 'seal', 'fastener', 'consumable', 'connection'],
};

class Builder {
  private readonly cases = new Cases();
  private readonly things: Thing[] = [];
  private readonly byName = new Map<string, Thing>();
  private readonly variants: Variants &
    Map<string, { axis: number; values: string[]; place: { file: string; start: number; end: number } }> =
    new Map();
  private readonly source: Draft;
  private readonly facts: Fact[];
  private items = 0;

  constructor(source: Draft, facts: Fact[]) {
    this.source = source;
    this.facts = facts;
  }

  build(machine: Machine | undefined): Model {
    for (const { item, file } of this.source.variants) {
      if (!item.name) continue;
      const values = item.values.map((value) => value.text);
      this.facts.push(...repeatedValues(file, item.values));
      const axis = this.cases.axis(
        `variant ${item.name.text}`,
        values.map((value) => `${item.name!.text} is ${value}`),
      );
      this.variants.set(item.name.text, {
        axis,
        values,
        place: { file, start: item.name.start, end: item.name.end },
      });
    }
    let built: CaseSet = EVERY;
    for (const { item, file } of this.source.nevers) {
      if (item.condition) built = this.cases.minus(built, this.cases1(item.condition, file));
    }
    for (const entry of this.source.declarations) this.declare(entry, built);
    const thingOf: Thing[] = [];
    for (const thing of this.things) for (let i = 0; i < thing.positions.length; i++) thingOf.push(thing);
    const wires = this.wire(thingOf);
    return {
      name: machine?.name?.text ?? '',
      title: machine?.title?.value ?? machine?.name?.text ?? '',
      machine,
      cases: this.cases,
      built,
      things: this.things,
      byName: this.byName,
      variants: this.variants,
      values: new Map(
        this.source.values.flatMap(({ item, file }) =>
          item.name
            ? [
                [
                  item.name.text,
                  {
                    expression: item.expression,
                    place: { file, start: item.name.start, end: item.name.end },
                    title: item.title?.value ?? item.name.text,
                  },
                ] as const,
              ]
            : [],
        ),
      ),
      tables: new Map(
        this.source.tables.flatMap(({ item }) => (item.name ? [[item.name.text, item] as const] : [])),
      ),
      rules: this.source.rules.map(({ item, file }) => {
        this.rule(item, file);
        return { rule: item, file };
      }),
      couplings: this.couplings(),
      items: this.items,
      thingOf,
      ...wires,
    };
  }

  private cases1(condition: Parameters<typeof casesOf>[0], file: string): CaseSet {
    return casesOf(condition, file, this.cases, this.variants, this.facts) ?? EVERY;
  }

  private declare({ item, file, clauses }: Draft['declarations'][number], built: CaseSet): void {
    if (!item.name) return;
    // The first clause of each kind; one pass, since a large machine has thousands of declarations.
    const byName: Partial<Record<ClauseName, Clause>> = {};
    for (const clause of clauses) byName[clause.clause] ??= clause;
    const has = (name: ClauseName) => byName[name] !== undefined;
    const find = <Name extends ClauseName>(name: Name) =>
      byName[name] as (Clause & { clause: Name }) | undefined;
    const positions = positionsOf(clauses);
    const plan = find('plan')?.plan;
    let exists = built;
    for (const clause of clauses) {
      if (clause.clause === 'only' && clause.condition)
        exists = this.cases.and(exists, this.cases1(clause.condition, file));
    }
    const only = ['holds', 'pressure', 'temperature', 'live', 'stored', 'isolated at'] as const;
    const thing: Thing = {
      id: this.things.length,
      name: item.name.text,
      type: item.type,
      title: item.title?.value ?? item.name.text.replaceAll('-', ' '),
      place: { file, start: item.name.start, end: item.name.end },
      declaration: { ...item, clauses },
      first: this.items,
      items: positions.map((_, index) => this.items + index),
      positions,
      count: find('count')?.count ?? (find('positions')?.names.length || undefined),
      exists,
      matched: has('matched'),
      numbered: has('numbered'),
      singleUse: has('single-use'),
      added: has('added'),
      fixed: has('fixed'),
      stays: has('stay'),
      freesWhenLoose: has('frees when loose'),
      slack: has('slack'),
      needsSecuring: has('secured by'),
      needsBleeding: has('needs bleeding'),
      coatedWith: find('coated with')?.refs.map(({ name }) => name.text) ?? [],
      lubricatedWith: find('lubricated with')?.refs.map(({ name }) => name.text) ?? [],
      toYield: plan?.toYield ?? false,
      stages: plan?.stages ?? [],
      torque: find('torque')?.quantity,
      holds: find('holds')?.quantity,
      hasPressure: has('pressure') || has('stored'),
      hasHeat: has('temperature'),
      hasLive: item.type === 'system' && (has('live') || has('isolated at') || !only.some(has)),
      hasFluid: has('holds'),
      provable: has('proved with'),
      normally: find('normally')?.state?.text,
    };
    this.items += positions.length;
    this.things.push(thing);
    this.byName.set(thing.name, thing);
  }

  private wire(thingOf: readonly Thing[]) {
    const lists = () => new Array<number[]>(this.items).fill(NO_ITEMS as number[]);
    const wires = {
      seats: lists(),
      riders: lists(),
      covers: lists(),
      fastenersOf: lists(),
      heldBy: lists(),
      members: lists(),
      groundOf: new Array<CaseSet>(this.items).fill(NONE),
      connectionsOf: lists(),
      seals: lists(),
      sealedParts: lists(),
      opens: lists(),
      carries: lists(),
      carriedBy: lists(),
      faces: lists(),
      comesWith: lists(),
      reliefPoints: lists(),
      drainPoints: lists(),
      fillPoints: lists(),
      bleedPoints: lists(),
      isolators: lists(),
      openedBy: lists(),
      relieves: lists(),
      drains: lists(),
      isolates: lists(),
      servicePoints: lists(),
      runs: lists(),
      locks: lists(),
      contains: lists(),
    };
    const withoutTarget: Thing[] = [];
    for (const thing of this.things) {
      const file = thing.place.file;
      let target = false;
      for (const clause of thing.declaration.clauses) {
        const each = (
          refs: readonly Ref[],
          use: (item: number, others: readonly number[]) => void,
          allowed = MAY_NAME[clause.clause],
        ) => {
          for (const ref of refs) this.pair(thing, ref, file, allowed, clause, use);
        };
        const link = (refs: readonly Ref[], there: number[][], back?: number[][]) =>
          each(refs, (item, others) => {
            for (const other of others) {
              push(there, item, other);
              if (back) push(back, other, item);
            }
          });
        if ('quantity' in clause && clause.quantity?.named) this.value(clause.quantity.named, file);
        switch (clause.clause) {
          case 'on':
            if (!thing.fixed) link(clause.refs, wires.seats, wires.riders);
            break;
          case 'under':
            each(clause.refs, (item, others) => {
              for (const other of others) {
                push(wires.covers, item, other);
                if (thing.type === 'face') push(wires.faces, other, item);
              }
            });
            break;
          case 'held by':
            each(clause.refs, (item, others) => {
              for (const other of others) {
                push(wires.heldBy, item, other);
                push(wires.members, other, item);
              }
            });
            break;
          case 'sealed by':
            each(clause.refs, (item, others) => {
              for (const other of others) {
                push(wires.seals, item, other);
                push(wires.sealedParts, other, item);
                push(wires.covers, other, item);
              }
            });
            break;
          case 'joined by':
            link(clause.refs, wires.connectionsOf);
            each(clause.refs, (item, others) => {
              for (const other of others) push(wires.members, other, item);
            });
            break;
          case 'clamps':
          case 'joins':
            each([...clause.refs, ...clause.to], (item, others) => {
              for (const other of others) push(wires.members, item, other);
            });
            if (clause.to.length > 0 || clause.refs.length > 1) target = true;
            break;
          case 'opens':
            link(clause.refs, wires.opens, wires.openedBy);
            break;
          case 'carries':
            link(clause.refs, wires.carries, wires.carriedBy);
            break;
          case 'part of':
            each(clause.refs, (item, others) => {
              for (const other of others) push(wires.comesWith, other, item);
            });
            break;
          case 'supplied with':
            link(clause.refs, wires.comesWith);
            break;
          case 'contains':
            link(clause.refs, wires.contains);
            break;
          case 'relieved at':
            link(clause.refs, wires.reliefPoints, wires.relieves);
            break;
          case 'drained at':
            link(clause.refs, wires.drainPoints, wires.drains);
            break;
          case 'filled at':
          case 'vented at':
            link(clause.refs, wires.fillPoints, wires.servicePoints);
            break;
          case 'bled at':
            link(clause.refs, wires.bleedPoints, wires.servicePoints);
            break;
          case 'isolated at':
            link(clause.refs, wires.isolators, wires.isolates);
            break;
          case 'runs':
          case 'in':
            if (thing.type !== 'isolator' || clause.clause === 'runs') link(clause.refs, wires.runs);
            break;
          case 'locks':
            link(clause.refs, wires.locks);
            break;
          case 'lubricated with':
          case 'coated with':
          case 'proved with':
            each(clause.refs, () => {});
            break;
          case 'holds':
            if (clause.fluid) each([clause.fluid], () => {}, ['fluid']);
            break;
          case 'plan':
            for (const stage of clause.plan.stages)
              if (stage.kind === 'until' && stage.turning) each([stage.turning], () => {}, ['part']);
            break;
          default:
            break;
        }
      }
      if (!target && (thing.type === 'fastener' || thing.type === 'connection')) withoutTarget.push(thing);
    }
    this.finishMembers(wires, withoutTarget, thingOf);
    return wires;
  }

  /** Where nothing is named after `to`, what the members sit on is held together with them. */
  private finishMembers(
    wires: {
      members: number[][];
      seats: number[][];
      fastenersOf: number[][];
      connectionsOf: number[][];
      groundOf: CaseSet[];
    },
    withoutTarget: readonly Thing[],
    thingOf: readonly Thing[],
  ): void {
    const { cases } = this;
    const exists = (item: number) => thingOf[item]!.exists;
    for (const thing of withoutTarget) {
      for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
        const members = wires.members[item]!;
        // What has no seat in a variant stands on the ground there; what joins one thing only, joins it to the ground.
        let ground: CaseSet = NONE;
        const all = new Set(members);
        for (const member of members) {
          const seats =
            thing.type === 'connection'
              ? members.filter((one) => one !== member)
              : (wires.seats[member] ?? []);
          const elsewhere = seats.reduce<CaseSet>((set, seat) => cases.or(set, exists(seat)), NONE);
          ground = cases.or(ground, cases.minus(exists(member), elsewhere));
          for (const seat of seats) all.add(seat);
        }
        wires.groundOf[item] = ground;
        if (all.size > members.length) wires.members[item] = [...all];
      }
    }
    for (const thing of this.things) {
      if (thing.type !== 'fastener' && thing.type !== 'connection') continue;
      const back = thing.type === 'fastener' ? wires.fastenersOf : wires.connectionsOf;
      for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
        for (const member of wires.members[item]!) push(back, member, item);
      }
    }
  }

  /** Calls `use` with each item of the thing and the items of the other that go with it. */
  private pair(
    thing: Thing,
    ref: Ref,
    file: string,
    allowed: readonly DeclarationKind[] | undefined,
    clause: Clause,
    use: (item: number, others: readonly number[]) => void,
  ): void {
    const other = this.byName.get(ref.name.text);
    if (!other) {
      if (clause.clause === 'secured by' || clause.clause === 'with') return;
      const what = allowed?.length === 1 ? allowed[0]! : 'thing';
      this.facts.push(unknownName(file, ref.name, what, this.candidates(allowed)));
      return;
    }
    if (allowed && !allowed.includes(other.type)) {
      this.facts.push(wrongKind(file, ref, other, allowed, `\`${clause.clause}\``));
      return;
    }
    const named = itemsOf(other, ref);
    if (named.unknown) {
      this.facts.push(unknownPosition(file, named.unknown, other));
    }
    const mine = thing.positions.length;
    const theirs = named.items.length;
    for (let i = 0; i < mine; i++) {
      let others = named.items;
      if (mine > 1 && theirs >= mine && theirs % mine === 0 && theirs > 1) {
        const share = theirs / mine;
        others = named.items.slice(i * share, (i + 1) * share);
      } else if (mine > theirs && theirs > 1 && mine % theirs === 0) {
        others = [named.items[Math.floor(i / (mine / theirs))]!];
      }
      use(thing.first + i, others);
    }
  }

  /** Names that could have been meant: of the right kind first. */
  private candidates(allowed: readonly DeclarationKind[] | undefined): string[] {
    const fitting = allowed ? this.things.filter((thing) => allowed.includes(thing.type)) : this.things;
    return [...fitting, ...this.things].map((thing) => thing.name);
  }

  /** A declared value in the place of a quantity. */
  private value(ref: Ref, file: string): void {
    if (this.source.values.some(({ item }) => item.name?.text === ref.name.text)) return;
    const known = this.source.values.flatMap(({ item }) => item.name?.text ?? []);
    this.facts.push(unknownName(file, ref.name, 'value', known));
  }

  /** The names in a house rule; what `any` and `that` mean is the business of those who carry it out. */
  private rule(rule: Rule, file: string): void {
    for (const pattern of rule.bodies.flatMap((body) => [body.trigger, body.demanded])) {
      const things: Thing[] = [];
      for (const selector of pattern?.selectors ?? []) {
        const ref = named(selector);
        const thing = ref && this.byName.get(ref.name.text);
        if (thing && selector.kind === 'named') things.push(thing);
        if (ref && !thing) this.facts.push(unknownName(file, ref.name, 'thing', this.candidates(undefined)));
      }
      if (pattern?.kind === 'state') this.facts.push(...stateFaults(file, pattern.state, things));
      if (pattern?.kind === 'event' && pattern.quantity?.named) this.value(pattern.quantity.named, file);
    }
  }

  private couplings(): Coupling[] {
    const result: Coupling[] = [];
    for (const { item, file } of this.source.couplings) {
      const coupling: Coupling = { items: [] };
      for (const ref of item.refs) {
        const thing = this.byName.get(ref.name.text);
        if (thing) coupling.items.push(...itemsOf(thing, ref).items);
        else this.facts.push(unknownName(file, ref.name, 'thing', this.byName.keys()));
      }
      if (item.while?.kind === 'state') {
        const thing = this.byName.get(item.while.ref.name.text);
        if (thing)
          coupling.while = {
            item: thing.first,
            fitted: !item.while.negated && item.while.state.text !== 'off',
          };
        else this.facts.push(unknownName(file, item.while.ref.name, 'thing', this.byName.keys()));
        this.facts.push(...stateFaults(file, item.while.state, thing ? [thing] : []));
      }
      result.push(coupling);
    }
    return result;
  }
}

/** The thing that a selector names, also at the end of `any … of …`. */
function named(selector: Selector): Ref | undefined {
  if (selector.kind === 'named') return selector.ref;
  return selector.kind === 'any' && selector.of ? named(selector.of) : undefined;
}

/** Shared by all items that have nothing of a kind; `push` replaces it before it writes. */
const NO_ITEMS: readonly number[] = [];

function push(lists: number[][], item: number, other: number): void {
  const list = lists[item]!;
  if (list === NO_ITEMS) lists[item] = [other];
  // Long lists are a base with much on it; the same pair twice in a row is all that can repeat there.
  else if (list.length > 16 ? list[list.length - 1] !== other : !list.includes(other)) list.push(other);
}
