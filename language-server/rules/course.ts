/**
 * One sentence of a rule, about one thing, while a procedure is carried out: a small automaton whose states are sets of
 * cases. The patterns are those of Dwyer, Avrunin and Corbett, "Patterns in property specifications for finite-state
 * verification" (1999; from memory): absence, existence, universality, precedence and response, here over a finite
 * sequence of steps, each with a state before and after it. What each sentence means is said in LANGUAGE.md.
 */
import { type CaseSet, EVERY, NONE } from '../execution/cases.ts';
import type { Run } from '../execution/run.ts';
import { type Answer, ask } from './ask.ts';
import type { Demand, EventDemand, Instance, StateDemand } from './compile.ts';
import { amountOf, type Doing } from './doings.ts';
import { Progress } from './progress.ts';

/** A step, or how the procedure begins or ends. */
export type Where = Doing | 'start' | 'end';

/** Says that the sentence is broken there, in these cases; `since` are steps that set it off. */
export type Tell = (instance: Instance, where: Where, cases: CaseSet, since: readonly Doing[]) => void;

export abstract class Course {
  readonly instance: Instance;
  protected readonly run: Run;
  protected readonly tell: Tell;
  /** The cases in which the sentence was set off so far, by the step that did it last. */
  protected marks: { doing: Doing | undefined; cases: CaseSet }[] = [];
  private readonly progress: { item: number | undefined; counted: Progress }[];
  private stateWas: CaseSet = NONE;
  private triggered: Progress | undefined;
  private readonly forbidden = new Map<number | undefined, Progress>();

  constructor(run: Run, instance: Instance, tell: Tell) {
    this.run = run;
    this.instance = instance;
    this.tell = tell;
    const { demand, require, trigger } = instance;
    if (trigger?.kind === 'event' && !trigger.quantity && trigger.target > 1)
      this.triggered = new Progress(run.cases, trigger.target);
    const counts = demand.kind === 'event' && require;
    const items = !counts ? [] : demand.items.length > 0 ? demand.items : [undefined];
    this.progress = items.map((item) => ({
      item,
      counted: new Progress(run.cases, (demand as EventDemand).target),
    }));
  }

  /** A step is about to be done. */
  abstract before(doing: Doing): void;
  /** A step was done, or (without one) how things stand at the start. */
  abstract after(doing: Doing | undefined): void;
  /** The procedure is over in these cases. */
  abstract finish(finished: CaseSet): void;

  /** What an earlier procedure set off is not this one's. */
  forget(): void {
    this.marks = [];
  }

  /** Something was done that is printed elsewhere: nobody can tell whether it was what is asked for. */
  elsewhere(): void {
    for (const { counted } of this.progress) counted.give(this.run.within);
  }

  // ------------------------------------------------------------ what sets it off

  /** The cases in which the step is what the sentence begins with. */
  protected triggeredBy(doing: Doing): CaseSet {
    const { trigger } = this.instance;
    if (trigger?.kind !== 'event') return NONE;
    const amount = amountOf(this.run.model, doing, trigger, trigger.items[0]);
    if (amount === 0) return NONE;
    const { cases, within } = this.run;
    const item = trigger.items[0];
    const there = item === undefined ? within : cases.and(within, this.run.thing(item).exists);
    if (!this.triggered) return trigger.quantity && amount < trigger.target ? NONE : there;
    this.triggered.add(amount, there);
    return cases.and(this.triggered.reached, there);
  }

  /** The cases in which the state that the sentence begins with has just come about. */
  protected comesTrue(): CaseSet {
    const { trigger } = this.instance;
    if (trigger?.kind !== 'state') return NONE;
    const { cases, within } = this.run;
    const { yes } = ask(this.run, trigger, 'any', within);
    const fresh = cases.minus(yes, this.stateWas);
    this.stateWas = cases.or(cases.minus(this.stateWas, within), yes);
    return fresh;
  }

  /** The cases in which the state that the sentence begins with is so; every case where there is none. */
  protected holds(): Answer {
    const { trigger } = this.instance;
    const { within } = this.run;
    return trigger?.kind === 'state' ? ask(this.run, trigger, 'any', within) : { yes: within, no: NONE };
  }

  protected mark(doing: Doing | undefined, set: CaseSet): void {
    if (set === NONE) return;
    const { cases } = this.run;
    this.marks = this.marks
      .map((one) => ({ ...one, cases: cases.minus(one.cases, set) }))
      .filter((one) => one.cases !== NONE && one.doing !== doing)
      .concat({ doing, cases: set });
  }

  protected get marked(): CaseSet {
    return this.marks.reduce<CaseSet>((set, one) => this.run.cases.or(set, one.cases), NONE);
  }

  /** The steps that set it off in some of these cases. */
  protected since(set: CaseSet): Doing[] {
    return this.marks.flatMap(({ doing, cases }) =>
      doing && this.run.cases.and(cases, set) !== NONE ? [doing] : [],
    );
  }

  // ------------------------------------------------------------ what it asks

  /** The cases, of these, in which the step is one of those that are never done, or never so many times. */
  protected isForbidden(doing: Doing, within: CaseSet): CaseSet {
    const { demand, require } = this.instance;
    if (demand.kind !== 'event' || require || within === NONE) return NONE;
    const { run } = this;
    let set: CaseSet = NONE;
    for (const item of demand.items.length > 0 ? demand.items : [undefined]) {
      const amount = amountOf(run.model, doing, demand, item);
      if (amount === 0 || (demand.quantity && amount < demand.target)) continue;
      const there = item === undefined ? within : run.cases.and(within, run.thing(item).exists);
      set = run.cases.or(set, demand.quantity ? there : this.reaching(item, amount, there));
    }
    return set;
  }

  /** The cases in which it has been done so many times with this one. */
  private reaching(item: number | undefined, amount: number, within: CaseSet): CaseSet {
    const { target } = this.instance.demand as EventDemand;
    if (target <= 1) return within;
    let counted = this.forbidden.get(item);
    if (!counted) {
      counted = new Progress(this.run.cases, target);
      this.forbidden.set(item, counted);
    }
    counted.add(amount, within);
    return this.run.cases.and(counted.reached, within);
  }

  /** The step is counted for what is required, in these cases. */
  protected count(doing: Doing, within: CaseSet): void {
    const { demand } = this.instance;
    if (demand.kind !== 'event') return;
    for (const { item, counted } of this.progress) {
      const amount = amountOf(this.run.model, doing, demand, item);
      if (amount > 0) counted.add(amount, within);
    }
  }

  protected restart(within: CaseSet): void {
    for (const { counted } of this.progress) counted.reset(within);
  }

  /** The cases in which what is required was done often enough, to each thing that the case has. */
  protected get satisfied(): CaseSet {
    const { cases } = this.run;
    let set: CaseSet = EVERY;
    for (const { item, counted } of this.progress) {
      const absent = item === undefined ? NONE : cases.not(this.run.thing(item).exists);
      set = cases.and(set, cases.or(counted.reached, absent));
    }
    return set;
  }

  /** The cases in which the state that is asked for is not so, or one that must never be is so. */
  protected isWrong(within: CaseSet): CaseSet {
    const { demand, require } = this.instance;
    if (demand.kind !== 'state' || within === NONE) return NONE;
    return require ? ask(this.run, demand, 'all', within).no : ask(this.run, demand, 'any', within).yes;
  }
}

export function isState(demand: Demand): demand is StateDemand {
  return demand.kind === 'state';
}
