/**
 * Takes one choice of variants through a procedure: side by side, one case for each answer to what is found,
 * measured or chosen, each with a state of its own. Cases that have become the same again go on as one.
 */
import { ending } from './ending.ts';
import type { Model, Variants } from './model.ts';
import { holdsFor } from './model.ts';
import { passOver, type Watch, type Work } from './needs.ts';
import { perform, things } from './perform.ts';
import type { Reading } from './reader.ts';
import { reversed } from './reverse.ts';
import type { Action, Block, Claim, Condition, Procedure, Statement } from './shape.ts';
import {
  claimedItems,
  conditionHolds,
  copyOf,
  isSo,
  makeSo,
  rememberAway,
  rememberOtherwise,
  START,
  type State,
  sameState,
  stateAtStart,
} from './state.ts';
import { askedOften, findTask, firstPositions, onlyLooks, questionsOf } from './statements.ts';
import type { Comparison, Trace } from './trace.ts';

/** More cases than this side by side are not run. */
const MOST_CASES = 2000;

/** One case on its way through the procedure. */
export interface Case {
  work: Work;
  /** Variants and choices. */
  axes: Record<string, string>;
  /** What was answered to questions that come up again. */
  answers: Map<string, boolean>;
  trail: string[];
  continues: boolean;
}

export type Report = (kind: string, line: number, cases: string) => void;

export class Execution {
  private readonly reading: Reading;
  private readonly procedure: Procedure;
  private readonly model: Model;
  private readonly variants: Variants;
  private readonly report: Report;
  private readonly askedOften: ReadonlySet<string>;
  private readonly positions: ReadonlyMap<string, boolean>;
  private depth = 0;
  private trace: Trace | undefined;
  private like: Comparison | undefined;
  private readonly watch: ((w: Work) => Watch) | undefined;

  /** With `watch`: looks at more than the states, in every case. */
  constructor(
    reading: Reading,
    procedure: Procedure,
    model: Model,
    variants: Variants,
    report: Report,
    watch?: (w: Work) => Watch,
  ) {
    this.watch = watch;
    this.reading = reading;
    this.procedure = procedure;
    this.model = model;
    this.variants = variants;
    this.report = report;
    this.askedOften = askedOften(procedure.body!);
    this.positions = firstPositions(model, procedure.body!);
  }

  run(): void {
    const state = stateAtStart(this.model, this.positions);
    const first = this.caseOf(
      { model: this.model, state, line: 0, report: () => {}, bound: new Map() },
      { ...this.variants },
      Object.entries(this.variants).map(([name, value]) => `${name} ${value}`),
    );
    for (const { claim, whole, line, before } of this.startClaims()) {
      makeSo(this.model, state, claim, START);
      if (whole) rememberAway(this.model, state, claim, line);
      if (before) rememberOtherwise(state, claim, line);
    }
    for (const { claim, before } of this.startClaims()) {
      first.work.line = claim.line;
      if (!before && closedWithout(this.model, state, claim)) first.work.report('start-without-seal');
    }
    if (this.watch) first.work.watch = this.watch(first.work);
    const body = this.procedure.body!;
    const cases = this.watch ? this.block(body, [first]) : this.plain(body, [first]);
    if (cases === 'as before') return;
    for (const one of this.resumed(cases)) {
      one.work.watch?.finish(one.work);
      if (!one.continues) ending(one.work, this.procedure.ends);
    }
  }

  /** Runs and keeps the cases as they were after each plain statement. */
  recorded(): Trace {
    this.trace = { positions: this.positions, after: new Map() };
    this.run();
    return this.trace;
  }

  /** Must be said before the run. */
  compareWith(comparison: Comparison): void {
    if (comparison.samePositions(this.positions)) this.like = comparison;
  }

  /** The statements that are always done: those of the body, and of tasks and steps in it. */
  private plain(block: Block, cases: Case[]): Case[] | 'as before' {
    let at = cases;
    for (const statement of block.statements) {
      if (statement.kind === 'task' || statement.kind === 'step' || statement.kind === 'hold') {
        const after = this.plain(statement.body, at);
        if (after === 'as before') return after;
        at = after;
        continue;
      }
      if (this.like?.skips(statement)) continue;
      at = this.statement(statement, this.resumed(at));
      this.trace?.after.set(
        statement.end,
        at.map((one) => this.fork(one)),
      );
      if (this.like?.isAsBefore(statement, at)) return 'as before';
    }
    return at;
  }

  /** The cases to go on with where statements were skipped. */
  private resumed(cases: Case[]): Case[] {
    return this.like?.resume()?.map((one) => this.fork(one)) ?? cases;
  }

  private caseOf(work: Work, axes: Record<string, string>, trail: string[]): Case {
    const one: Case = { work, axes, answers: new Map(), trail, continues: false };
    work.report = (kind, line) => this.report(kind, line ?? work.line, one.trail.join('; '));
    return one;
  }

  private fork(from: Case, label?: string): Case {
    const work = { ...from.work, state: copyOf(from.work.state), bound: new Map(from.work.bound) };
    const one = this.caseOf(
      work,
      { ...from.axes },
      label === undefined ? from.trail : [...from.trail, label],
    );
    if (from.work.watch) work.watch = from.work.watch.copy(work);
    one.answers = new Map(from.answers);
    one.continues = from.continues;
    return one;
  }

  private startClaims() {
    const { starts, startsWhere } = this.procedure;
    const own = starts.map((claim) => ({
      claim,
      whole: claim.scope !== 'things',
      line: claim.line,
      before: false,
    }));
    if (startsWhere === undefined) return own;
    const before = this.reading.procedures.get(startsWhere.name);
    if (!before) throw new Error(`no procedure ${startsWhere.name}`);
    return [
      ...before.ends.map((claim) => ({ claim, whole: true, line: startsWhere.line, before: true })),
      ...own,
    ];
  }

  private block(block: Block, cases: Case[]): Case[] {
    let at = cases;
    for (const statement of block.statements) {
      if (at.length === 0) return at;
      at = this.statement(statement, at);
    }
    return at;
  }

  private statement(statement: Statement, cases: Case[]): Case[] {
    switch (statement.kind) {
      case 'action':
        for (const { work } of cases) {
          work.watch?.before(work, statement);
          perform(work, statement);
          work.watch?.after(work, statement);
        }
        return statement.outcomes.length > 0 ? this.outcomes(statement, cases) : cases;
      case 'task':
        return this.within(false, cases, (inside) => this.block(statement.body, inside));
      case 'step':
      case 'hold':
        return this.block(statement.body, cases);
      case 'when':
      case 'if':
        return merged(cases.flatMap((one) => this.decided(statement, one)));
      case 'choice':
        return cases.flatMap((one) =>
          statement.values.map((value) => {
            const forked = this.fork(one, `${statement.name} ${value}`);
            forked.axes[statement.name] = value;
            return forked;
          }),
        );
      case 'repeat': {
        const inner = cases.some((one) => one.work.state.putIn);
        if (!inner) for (const one of cases) one.work.state.putIn = new Set();
        const after = this.block(statement.body, cases);
        if (!inner) for (const one of after) usedInAnyRound(this.model, one.work.state);
        const { otherwise, line } = statement;
        if (!otherwise) return after;
        const givenUp = after.map((one) => this.fork(one, `line ${line}: given up`));
        return merged([...after, ...this.block(otherwise, givenUp)]);
      }
      case 'for each':
        return this.forEach(statement, cases);
      case 'reverse': {
        const task = findTask(this.procedure.body!, statement.task);
        if (!task) throw new Error(`no task ${statement.task}`);
        return this.block(reversed(task, statement.except, statement.line), cases);
      }
      case 'do':
        return this.doNamed(statement.name, statement.line, cases);
      case 'stop':
        return [];
      case 'notice':
        for (const { work } of cases)
          work.watch?.notices.notice(statement.hazards, statement.signal, statement.line);
        return cases;
      case 'continues':
        for (const one of cases) one.continues = true;
        return cases;
    }
  }

  /** A task, or (`other`) another procedure: what was said in it does not count after it. */
  private within(other: boolean, cases: Case[], act: (cases: Case[]) => Case[]): Case[] {
    for (const { work } of cases) work.watch?.enter(other);
    const after = act(cases);
    for (const { work } of after) work.watch?.leave(work, other);
    return after;
  }

  private outcomes(action: Action, cases: Case[]): Case[] {
    let after = cases;
    const eventful = action.outcomes.filter((outcome) => !onlyLooks(outcome));
    // What is only looked at in an outcome changes nothing: all such outcomes go on as one case.
    for (const outcome of action.outcomes) if (onlyLooks(outcome)) after = this.block(outcome, after);
    const forked = eventful.flatMap((outcome) => {
      const label = `line ${action.line}: outcome ${action.outcomes.indexOf(outcome) + 1}`;
      return this.block(
        outcome,
        after.map((one) => this.fork(one, label)),
      );
    });
    return merged(eventful.length === action.outcomes.length ? forked : [...after, ...forked]);
  }

  private decided(statement: Statement & { kind: 'when' | 'if' }, one: Case): Case[] {
    const nothing: Block = { statements: [] };
    const bodies = [statement.body, statement.otherwise ?? nothing] as const;
    const open = questionsOf(statement.condition)
      .map((text) => this.inRound(text, one))
      .filter((text) => !one.answers.has(text));
    if (open.length === 0) {
      return this.block(this.holds(statement.condition, one, new Map()) ? bodies[0] : bodies[1], [one]);
    }
    if (bodies.every(onlyLooks)) return this.block(bodies[1], this.block(bodies[0], [one]));
    let answers: Map<string, boolean>[] = [new Map()];
    for (const text of open) {
      answers = answers.flatMap((before) => [
        new Map(before).set(text, true),
        new Map(before).set(text, false),
      ]);
    }
    return answers.flatMap((given) => {
      const label = [...given].map(([text, answer]) => `${text}: ${answer ? 'yes' : 'no'}`).join('; ');
      const forked = this.fork(one, label);
      for (const [text, answer] of given) {
        if (this.askedOften.has(text) || this.askedOften.has('')) forked.answers.set(text, answer);
      }
      return this.block(this.holds(statement.condition, forked, given) ? bodies[0] : bodies[1], [forked]);
    });
  }

  private holds(condition: Condition, one: Case, given: ReadonlyMap<string, boolean>): boolean {
    switch (condition.kind) {
      case 'and':
        return condition.parts.every((part) => this.holds(part, one, given));
      case 'axis':
        return holdsFor(condition, one.axes);
      case 'state':
        return conditionHolds(this.model, one.work.state, condition);
      case 'seen': {
        const text = this.inRound(condition.text, one);
        return given.get(text) ?? one.answers.get(text)!;
      }
    }
  }

  /** In a loop over things the same words are about another thing each time. */
  private inRound(text: string, one: Case): string {
    return text + [...one.work.bound].map(([name, value]) => ` (${name} ${value})`).join('');
  }

  private forEach(statement: Statement & { kind: 'for each' }, cases: Case[]): Case[] {
    const { of, variable, body } = statement;
    const values = of ? things(cases[0]!.work, of).map((item) => item.position) : statement.values;
    let at = cases;
    for (const value of values) {
      for (const one of at) one.work.bound.set(variable, value);
      at = this.block(body, at);
    }
    for (const one of at) one.work.bound.delete(variable);
    return at;
  }

  private doNamed(name: string, line: number, cases: Case[]): Case[] {
    if (++this.depth > 10) throw new Error(`${name} does itself`);
    const other = this.reading.procedures.get(name);
    const own = findTask(this.procedure.body!, name);
    const body = own ?? other?.body;
    if (!body && !other) throw new Error(`no task or procedure ${name}`);
    const after = body ? this.within(!own, cases, (inside) => this.block(body, inside)) : cases;
    if (!body) {
      for (const claim of other!.ends)
        for (const one of after) makeSo(this.model, one.work.state, claim, line);
      for (const { work } of after) work.watch?.notices.handOver(work);
    }
    this.depth--;
    return after;
  }
}

/** A joint said to be closed at the start, with its seal said to be out. */
function closedWithout(model: Model, state: State, claim: Claim): boolean {
  if (claim.scope !== 'things' || claim.state !== 'off') return false;
  return [...claimedItems(model, claim)].some((seal) => {
    const sealed = model.items.filter((item) => item.seals.includes(seal));
    return seal.kind === 'seal' && sealed.length > 0 && sealed.every((item) => isSo(state, item, 'fitted'));
  });
}

/** What one round of a repeat chooses, another round of it may put in. */
function usedInAnyRound(model: Model, state: State): void {
  for (const item of state.putIn ?? [])
    Object.assign(state.items[item.id]!, { chosenBy: undefined, passedOver: false });
  for (const item of state.putIn ?? []) passOver(model, state, item);
  state.putIn = undefined;
}

/** Cases that differ in nothing that can matter any more go on as one. */
function merged(cases: Case[]): Case[] {
  const kept: Case[] = [];
  for (const one of cases) if (!kept.some((other) => sameCase(one, other))) kept.push(one);
  if (kept.length > MOST_CASES) throw new Error('too many cases to run one by one');
  return kept;
}

export function sameCase(a: Case, b: Case): boolean {
  const asked = (one: Case) => JSON.stringify([one.axes, [...one.answers], one.work.watch?.key()]);
  return a.continues === b.continues && asked(a) === asked(b) && sameState(a.work.state, b.work.state);
}
