/**
 * Compounds and lubricants, and how long they have still to cure, in one case. The chapter on states, "Compounds and
 * lubricants".
 */
import { clauseOf, seconds } from './amounts.ts';
import type { Item, System } from './model.ts';
import type { Work } from './needs.ts';
import { isThere, stateOf } from './needs.ts';
import { things } from './perform.ts';
import type { Action } from './shape.ts';

const PUTS_IN = ['refit', 'fit', 'trial fit', 'bolt up'];
const FILLS = ['fill', 'top up', 'pressurise', 'inflate'];

export class Compounds {
  /** Numbers of the items that are bare now; the line at which one went in so. */
  private bare = new Map<number, number>();
  /** s, by the number of the system. */
  private curing = new Map<number, number>();
  private away: Set<number>;

  constructor(w: Work) {
    this.away = awayNow(w);
  }

  copy(w: Work): Compounds {
    const other = new Compounds(w);
    other.bare = new Map(this.bare);
    other.curing = new Map(this.curing);
    other.away = new Set(this.away);
    return other;
  }

  key(): string {
    return JSON.stringify([[...this.bare], [...this.curing]]);
  }

  before(w: Work, action: Action): void {
    if (FILLS.includes(action.verb)) {
      for (const { name } of action.objects) {
        const system = w.model.systemByName.get(name);
        if (system && (this.curing.get(system.id) ?? 0) > 0) {
          w.report('filled-before-cured');
          this.curing.delete(system.id);
        }
      }
    }
    this.otherFluid(w, action);
  }

  after(w: Work, action: Action): void {
    this.wait(action);
    const now = awayNow(w);
    const wasAway = this.away;
    for (const item of w.model.items) {
      if (now.has(item.id) && !wasAway.has(item.id)) this.comesOff(item);
    }
    if (action.verb === 'clean') for (const item of itemsIn(w, action)) this.makeBare(item);
    this.away = now;
    const wet = wetFrom(w, action);
    if (action.verb === 'coat' || action.verb === 'lubricate') {
      for (const item of itemsIn(w, action)) {
        const declared = declaredOn(item, action.verb === 'coat' ? ['coated with'] : ['lubricated with']);
        const any = declared.length > 0 ? declared : declaredOn(item);
        if (wet.length === 0 ? any.length > 0 : true) this.putOn(w, item, wet.length > 0 ? wet : any);
      }
    } else if (PUTS_IN.includes(action.verb)) {
      for (const item of itemsIn(w, action)) if (wet.length > 0) this.putOn(w, item, wet);
    }
    for (const item of w.model.items) {
      if (now.has(item.id) || !wasAway.has(item.id)) continue;
      this.goesIn(w, item, action);
    }
  }

  finish(w: Work): void {
    for (const [id, line] of this.bare) {
      const item = w.model.items[id - 1]!;
      if (line === 0 || item.kind === 'face' || this.away.has(id)) continue;
      w.report(missing(item), line);
    }
  }

  private makeBare(item: Item): void {
    if (declaredOn(item).length > 0) this.bare.set(item.id, 0);
  }

  private comesOff(item: Item): void {
    this.makeBare(item);
    for (const face of item.faces) this.makeBare(face);
    for (const seal of item.seals) this.makeBare(seal);
  }

  private putOn(w: Work, item: Item, with_: readonly string[]): void {
    // On a gasket it is on the face too, and the other way round.
    const both = [item, ...item.faces, ...(item.kind === 'face' ? item.under.filter(isSeal) : [])];
    for (const one of both) {
      if (declaredOn(one).some((name) => with_.includes(name))) this.bare.delete(one.id);
    }
    for (const name of with_) {
      const declaration = w.model.declared.get(name);
      const time = declaration && seconds(clauseOf(declaration, 'curing time')?.amount);
      if (!time) continue;
      for (const system of openedOver(item)) {
        this.curing.set(system.id, Math.max(time, this.curing.get(system.id) ?? 0));
      }
    }
  }

  private goesIn(w: Work, item: Item, action: Action): void {
    if (action.verb === 'trial fit' || stateOf(w, item).place === 'trial') return;
    if (stateOf(w, item).fresh && !itemsIn(w, action).includes(item)) {
      this.bare.delete(item.id);
      return;
    }
    if (this.bare.has(item.id)) this.bare.set(item.id, w.line);
    for (const face of item.faces) {
      if (!this.bare.has(face.id) || item.kind === 'seal') continue;
      w.report(missing(face));
      this.bare.delete(face.id);
    }
  }

  private wait(action: Action): void {
    const text = action.texts.join(' ');
    const all =
      (action.verb === 'wait' && !action.time) ||
      ['let cool', 'send'].includes(action.verb) ||
      /\b(cure|cured|curing|set|sets|harden|hardened)\b/i.test(text);
    const passed = all && !action.time ? Number.POSITIVE_INFINITY : (seconds(action.time) ?? 0);
    for (const [id, left] of this.curing) {
      if (left - passed > 1e-9) this.curing.set(id, left - passed);
      else this.curing.delete(id);
    }
  }

  private otherFluid(w: Work, action: Action): void {
    const wet = wetFrom(w, action);
    if (wet.length === 0) return;
    if (action.verb === 'fill' || action.verb === 'top up') {
      for (const { name } of action.objects) {
        const holds = w.model.declared.get(name)?.clauses.find(({ clause }) => clause === 'holds')?.refs[0];
        const other = wet.filter((one) => w.model.declared.get(one)?.kind === 'fluid' && one !== holds?.name);
        if (holds && other.length > 0) w.report('fluid-differs');
      }
    }
    if (action.verb !== 'coat' && action.verb !== 'lubricate') return;
    for (const item of itemsIn(w, action)) {
      const declared = declaredOn(item, action.verb === 'coat' ? ['coated with'] : ['lubricated with']);
      if (declared.length > 0 && !wet.some((one) => declared.includes(one))) w.report('fluid-differs');
    }
  }
}

const isSeal = (item: Item) => item.kind === 'seal';

function missing(item: Item): string {
  return clauseOf(item.declaration, 'coated with') ? 'compound-missing' : 'lubricant-missing';
}

function declaredOn(item: Item, clauses: readonly string[] = ['coated with', 'lubricated with']): string[] {
  return item.declaration.clauses
    .filter(({ clause }) => clauses.includes(clause))
    .flatMap(({ refs }) => refs.map(({ name }) => name));
}

function itemsIn(w: Work, action: Action): Item[] {
  return action.objects.flatMap((ref) =>
    w.model.declared.has(ref.name) && w.model.byName.has(ref.name) ? things(w, ref) : [],
  );
}

/** Fluids and consumables that the step names. */
function wetFrom(w: Work, action: Action): string[] {
  const names = [
    ...action.with.map(({ name }) => name),
    ...action.amounts.flatMap(({ fluid }) => fluid ?? []),
  ];
  return names.filter((name) => ['fluid', 'consumable'].includes(w.model.declared.get(name)?.kind ?? ''));
}

/** The systems that the thing, what lies on it or what it seals, opens. */
function openedOver(item: Item): System[] {
  const over = [item, ...item.sitters, ...item.sealedHere, ...item.under];
  for (const one of [...over]) over.push(...one.sealedHere);
  return [...new Set(over.flatMap((one) => [...one.opens, ...one.drains]))];
}

function awayNow(w: Work): Set<number> {
  const away = new Set<number>();
  for (const item of w.model.items) {
    const one = stateOf(w, item);
    const isAway =
      item.kind === 'fastener'
        ? one.fastening === 'out'
        : item.kind === 'connection'
          ? one.joined !== 'connected'
          : ['part', 'seal', 'control', 'isolator'].includes(item.kind) && !isThere(w, item);
    if (isAway) away.add(item.id);
  }
  return away;
}
