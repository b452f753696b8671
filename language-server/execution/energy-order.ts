/**
 * The order of making safe and giving back, where it can be told from the text alone.
 *
 * `relieved-before-lock`: stored energy or pressure is let out before the lock goes on, within one sequence of making
 * safe (29 CFR 1910.147(d): isolate (3), lock (4), then relieve (5)).
 * `not-kept-safe`: the lock comes off while something of the system is still open, and is closed only afterwards.
 * `lead-out-of-order`: another lead comes off before the one declared `first off`, or goes on after the one
 * declared `last on` (the frame-connected lead of a battery; US Army TM 9-6115-639-13).
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import { isServicePoint } from './actions/common.ts';
import { bit, CAPPED, CONNECTED, DISCONNECTED, FITTED, LOOSE, NO, OUT, YES } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import { systemEvents } from './declared-hazards.ts';
import type { Run } from './run.ts';
import type { Watcher } from './watch.ts';
import { doneIn, placeOf, type Step, storyOf, withoutRounds } from './watch-place.ts';

/** Steps that belong to making safe; any other ends the sequence. */
const MAKING_SAFE: ReadonlySet<string> = new Set([
  ...['isolate', 'switch off', 'switch on', 'open', 'close', 'relieve', 'drain', 'prove', 'let cool', 'wait'],
  ...['lock out', 'inspect', 'check', 'measure', 'record', 'sign', 'support', 'lock', 'choose'],
]);

const TAKES_OUT: ReadonlySet<string> = new Set(['remove', 'disconnect', 'loosen']);

interface Released {
  readonly step: Step;
  readonly system: number;
  readonly via: number;
  cases: CaseSet;
}

interface Unlocked {
  readonly step: Step;
  readonly lock: number;
  readonly system: number;
  readonly item: number;
  cases: CaseSet;
}

export class EnergyOrderWatch implements Watcher {
  private readonly run: Run;
  private released: Released[] = [];
  private unlocked: Unlocked[] = [];

  constructor(run: Run) {
    this.run = run;
  }

  memory(): { released: Released[]; unlocked: Unlocked[] } {
    return { released: this.released, unlocked: this.unlocked };
  }

  recall({ released, unlocked }: { released: Released[]; unlocked: Unlocked[] }): void {
    this.released = released;
    this.unlocked = unlocked;
  }

  enter(): void {
    this.released = [];
  }

  leave(): void {
    this.released = [];
  }

  before(action: Action, file: string, items: readonly number[]): void {
    const { run } = this;
    if (run.usedAt || run.round > 0) return;
    const step = { action, file };
    if (this.released.length > 0) this.forget(this.otherWork(action, items));
    for (const item of items) {
      const here = run.cases.and(run.within, run.thing(item).exists);
      if (here === NONE) continue;
      if (action.verb === 'lock out') this.locks(item, here);
      else if (action.verb === 'unlock') this.unlocks(step, item, here);
      else if (action.verb === 'disconnect' || action.verb === 'connect') this.lead(step, item, here);
      this.releases(step, item, here);
    }
  }

  after(): void {
    const { run } = this;
    const { cases } = run;
    for (const one of this.unlocked) {
      if (one.cases === NONE) continue;
      // Energy that came back onto what is open is told by the step that brought it.
      const dead = run.where('live', one.system, bit(YES), one.cases);
      const free = run.where('lock', one.lock, bit(NO), dead);
      const open = this.open(one.item, free);
      const closed = cases.minus(free, open);
      one.cases = open;
      if (closed !== NONE) this.notKept(one, closed);
    }
    if (this.unlocked.length === 0) return;
    if (this.unlocked.some((one) => one.cases === NONE))
      this.unlocked = this.unlocked.filter((one) => one.cases !== NONE);
  }

  /** The cases in which the step is other work than making safe. */
  private otherWork(action: Action, items: readonly number[]): CaseSet {
    const { model, cases } = this.run;
    if (MAKING_SAFE.has(action.verb)) return NONE;
    const other = doneIn(this.run, items);
    if (!TAKES_OUT.has(action.verb)) return other;
    // Taking out a plug that isolates or relieves is making safe, too.
    let all: CaseSet = other;
    for (const item of items) {
      let safe: CaseSet = cases.not(this.run.thing(item).exists);
      for (const system of [...model.isolates[item]!, ...model.relieves[item]!])
        safe = cases.or(safe, this.run.thing(system).exists);
      all = cases.and(all, safe);
    }
    return cases.minus(other, all);
  }

  private releases(step: Step, via: number, here: CaseSet): void {
    for (const [system, event] of systemEvents(this.run.model, via, step.action.verb)) {
      if (event !== 'relieving' || !this.run.thing(system).hasPressure) continue;
      const cases = this.run.where('pressure', system, bit(NO), here);
      if (cases !== NONE) this.released.push({ step, system, via, cases });
    }
  }

  private locks(lock: number, here: CaseSet): void {
    const { run } = this;
    if (run.model.isolates[lock]!.length === 0 && run.thing(lock).type !== 'isolator') return;
    const fresh = run.where('lock', lock, bit(NO), here);
    for (const { step, system, via, cases } of this.released) {
      const set = run.cases.and(cases, fresh);
      if (set === NONE) continue;
      const fact: Fact = {
        check: 'relieved-before-lock',
        at: placeOf(step, run.thing(via)),
        subject: { thing: run.thing(system) },
        others: [{ thing: run.thing(lock), items: [lock] }],
        cases: withoutRounds(run, set),
      };
      run.fact(fact);
    }
    // One finding for one release, however many locks follow.
    this.forget(fresh);
  }

  private forget(within: CaseSet): void {
    if (this.released.length === 0) return;
    for (const one of this.released) one.cases = this.run.cases.minus(one.cases, within);
    this.released = this.released.filter(({ cases }) => cases !== NONE);
  }

  private unlocks(step: Step, lock: number, here: CaseSet): void {
    const { run } = this;
    const { model } = run;
    const free = run.where('lock', lock, bit(YES), here);
    for (const system of model.isolates[lock]!) {
      const dead = run.where('live', system, bit(YES), free);
      if (dead === NONE) continue;
      for (const item of model.openedBy[system]!) {
        if (isServicePoint(run, item, system)) continue;
        const cases = this.open(item, dead);
        if (cases !== NONE) this.unlocked.push({ step, lock, system, item, cases });
      }
    }
  }

  /** The cases in which something that opens a system is off, out, apart or open. */
  private open(item: number, within: CaseSet): CaseSet {
    const { run } = this;
    const thing = run.thing(item);
    switch (thing.type) {
      case 'connection':
        return run.where('place', item, ~bit(CONNECTED, CAPPED), within);
      case 'fastener':
        return run.where('place', item, bit(OUT, LOOSE), within);
      case 'control':
      case 'isolator':
        return run.cases.or(
          run.where('moved', item, bit(YES), within),
          run.where('place', item, ~bit(FITTED), within),
        );
      default:
        return run.where('place', item, ~bit(FITTED), within);
    }
  }

  private notKept({ step, lock, system, item }: Unlocked, cases: CaseSet): void {
    const { run } = this;
    run.fact({
      check: 'not-kept-safe',
      at: placeOf(step, run.thing(lock)),
      subject: { thing: run.thing(lock), items: [lock] },
      others: [{ thing: run.thing(item), items: [item] }],
      story: this.closing(item),
      cases: withoutRounds(run, cases),
      words: { system: run.thing(system).title },
    });
  }

  /** The present step closed it. */
  private closing(item: number): NonNullable<Fact['story']> {
    const step = this.run.steps.present;
    if (!step) return [];
    const thing = this.run.thing(item);
    return [{ at: placeOf(step, thing), what: storyOf(step.action.verb), thing }];
  }

  private lead(step: Step, item: number, here: CaseSet): void {
    const { run } = this;
    if (run.thing(item).type !== 'connection') return;
    const off = step.action.verb === 'disconnect';
    const flag = off ? 'first off' : 'last on';
    const isFlagged = (one: number) => has(run, one, flag);
    if (off === isFlagged(item)) return;
    for (const other of this.leadsWith(item)) {
      if (off !== isFlagged(other)) continue;
      const there = run.cases.and(here, run.thing(other).exists);
      const moving = run.where('place', item, off ? bit(CONNECTED) : bit(DISCONNECTED, CAPPED), there);
      const wrong = run.where('place', other, off ? bit(CONNECTED) : bit(DISCONNECTED), moving);
      if (
        wrong === NONE ||
        step.action.objects.some(({ name }) => isBefore(run, name.text, other, step, item))
      )
        continue;
      run.fact({
        check: 'lead-out-of-order',
        at: placeOf(step, run.thing(item)),
        subject: { thing: run.thing(item), items: [item] },
        others: [{ thing: run.thing(other), items: [other] }],
        cases: withoutRounds(run, wrong),
        words: { flag },
      });
    }
  }

  /** Other leads of the same battery: connections that join the same thing that is no frame. */
  private leadsWith(item: number): number[] {
    const { model } = this.run;
    const result = new Set<number>();
    for (const member of model.members[item]!) {
      if (model.thingOf[member]!.fixed) continue;
      for (const other of model.connectionsOf[member]!) if (other !== item) result.add(other);
    }
    return [...result];
  }
}

function has(run: Run, item: number, flag: 'first off' | 'last on'): boolean {
  return run.thing(item).declaration.clauses.some((clause) => clause.clause === flag);
}

/** The same step takes the other one first: `disconnect earth-lead, live-lead`. */
function isBefore(run: Run, name: string, other: number, { action }: Step, item: number): boolean {
  if (run.thing(other).name !== name) return false;
  const order = action.objects.map((ref) => ref.name.text);
  return order.indexOf(name) < order.indexOf(run.thing(item).name);
}
