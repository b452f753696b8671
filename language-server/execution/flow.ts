/**
 * Statements: what is done, in which cases, in which order. Branches run under their own cases and join again
 * by themselves; a repeat runs until the state no longer changes; a used procedure runs in place.
 */
import type { Action, Block, Condition, Ref, Statement, Task } from '../../grammar/syntax/tree.ts';
import { itemsOf } from '../model/build.ts';
import { casesOf } from '../model/conditions.ts';
import type { LoadedFile } from '../model/names.ts';
import { findProcedure } from '../model/names.ts';
import { perform } from './actions/perform.ts';
import { bit, FITTED } from './aspects.ts';
import { type CaseSet, EVERY, NONE } from './cases.ts';
import { mirror } from './mirror.ts';
import { stateCases } from './questions.ts';
import type { Run } from './run.ts';

/** Rounds of a repeat after which the state is taken to be all that was seen so far. */
const MOST_ROUNDS = 12;
/** Steps of a `for each` that are written out at the most. */
const MOST_EACH = 500;

export class Flow {
  readonly run: Run;
  /** `continues` was met: what is left undone is held back, in these cases. */
  unfinished: CaseSet = NONE;
  private readonly file: string;
  private readonly visible: readonly LoadedFile[];
  private readonly tasks: ReadonlyMap<string, Task>;
  /** Values of loop variables. */
  private readonly bound = new Map<string, string>();
  /** Axes of choices and of things seen, by their key in scope. */
  private readonly axes = new Map<string, { axis: number; values: readonly string[] }>();
  private readonly doing: string[] = [];
  /** The cases in which work was ended (`stop`): nothing has to be whole there. */
  get ended(): CaseSet {
    return this.stopped;
  }
  /** Cases in which work has ended (`stop`). */
  private stopped: CaseSet = NONE;
  private loops: number[][] = [];

  constructor(run: Run, file: string, visible: readonly LoadedFile[], tasks: ReadonlyMap<string, Task>) {
    this.run = run;
    this.file = file;
    this.visible = visible;
    this.tasks = tasks;
    for (const [name, variant] of run.model.variants) this.axes.set(name, variant);
  }

  /** Where to stop carrying out, for asking the state there; `reached` holds the cases that get there. */
  until: { file: string; offset: number } | undefined;
  reached: CaseSet | undefined;

  block(block: Block | undefined, file = this.file): void {
    if (!block) return;
    for (const statement of block.statements) {
      if (this.reached !== undefined || this.run.within === NONE) return;
      if (
        this.until &&
        file === this.until.file &&
        statement.start >= this.until.offset &&
        this.doing.length === 0
      ) {
        this.reached = this.run.within;
        return;
      }
      this.statement(statement, file);
    }
    const { until } = this;
    // The place is behind the last statement of this block: that is what it is like there.
    if (until && this.reached === undefined && file === until.file && this.doing.length === 0) {
      if (block.start <= until.offset && until.offset < block.end) this.reached = this.run.within;
    }
  }

  private statement(statement: Statement, file: string): void {
    const { run } = this;
    const { cases } = run;
    switch (statement.kind) {
      case 'action':
        this.action(statement, file);
        return;
      case 'task':
      case 'step':
      case 'hold':
        this.block(statement.body, file);
        return;
      case 'when':
      case 'if': {
        const yes = statement.condition ? this.condition(statement.condition, file) : EVERY;
        this.under(yes, () => this.block(statement.body, file));
        if (statement.otherwise) this.under(cases.not(yes), () => this.block(statement.otherwise, file));
        return;
      }
      case 'choice': {
        if (!statement.name) return;
        const name = statement.name.text;
        const values = statement.values.map((value) => value.text);
        if (values.length === 0) return;
        const axis = cases.axis(
          `choice ${file} ${name}`,
          values.map((value) => `${name} is ${value}`),
        );
        this.axes.set(name, { axis, values });
        return;
      }
      case 'repeat':
        this.repeat(statement, file);
        return;
      case 'for each': {
        const variable = statement.variable?.text;
        const over = statement.over;
        if (!variable || !over) return;
        let values: string[];
        if (over.kind === 'numbers') {
          const count = Math.min(Math.max(over.to - over.from + 1, 0), MOST_EACH);
          values = Array.from({ length: count }, (_, index) => String(over.from + index));
        } else if (over.kind === 'names') values = over.names.map((name) => name.text);
        else {
          const thing = run.model.byName.get(over.ref.name.text);
          values = thing
            ? itemsOf(thing, over.ref).items.map((item) => thing.positions[item - thing.first]!)
            : [];
        }
        const before = this.bound.get(variable);
        for (const value of values) {
          this.bound.set(variable, value);
          this.block(statement.body, file);
        }
        if (before === undefined) this.bound.delete(variable);
        else this.bound.set(variable, before);
        return;
      }
      case 'do':
        if (statement.ref) this.use(statement.ref.text, file);
        return;
      case 'stop':
        this.stopped = cases.or(this.stopped, run.within);
        run.within = NONE;
        return;
      case 'continues':
        this.unfinished = cases.or(this.unfinished, run.within);
        return;
      case 'reverse': {
        const task = statement.task && this.tasks.get(statement.task.text);
        if (!task) return;
        const { statements, lost } = mirror(task.body, statement, run.model);
        for (const { thing, action } of lost) {
          const items = thing.positions.map((_, index) => thing.first + index);
          const away = items.filter((item) => run.where('place', item, ~bit(FITTED)) !== NONE);
          if (away.length === 0) continue;
          run.facts.push({
            check: 'reverse-impossible',
            at: { file, start: statement.start, end: statement.end },
            subject: { thing, items: away },
            cases: run.within,
            story: [{ at: { file, start: action.start, end: action.end }, what: 'taken off', thing }],
            words: { task: statement.task!.text, why: thing.singleUse ? 'single-use' : 'discarded' },
          });
        }
        for (const one of statements) this.statement(one, file);
        return;
      }
      case 'notice':
      case 'allow':
      case 'value':
      case 'broken':
        return;
      default:
        statement satisfies never;
    }
  }

  private action(action: Action, file: string): void {
    const { run } = this;
    perform(run, action, file, (ref) => this.resolve(ref));
    if (action.outcomes.length === 0) return;
    const values = action.outcomes.map((outcome, index) => outcome.word?.text ?? String(index));
    const what = phraseOf(action);
    const axis = this.axis(
      `outcome ${file} ${action.start}`,
      action.outcomes.map((outcome) => `${what} is ${outcomePhrase(outcome, index0(action, outcome))}`),
    );
    const name = action.tails.find((tail) => tail.tail === 'as');
    if (name?.tail === 'as' && name.name) this.axes.set(name.name.text, { axis, values });
    action.outcomes.forEach((outcome, index) => {
      this.under(run.cases.oneOf(axis, [index]), () => this.block(outcome.body, file));
    });
  }

  private repeat(statement: Extract<Statement, { kind: 'repeat' }>, file: string): void {
    const { run } = this;
    const within = run.within;
    const most = Math.min(statement.atMost ?? MOST_ROUNDS, MOST_ROUNDS);
    let after = run.state;
    for (let round = 0; round < most; round++) {
      // What was found in this round is asked anew in the next: the axes met in it tell nothing afterwards.
      const met: number[] = [];
      this.loops.push(met);
      this.block(statement.body, file);
      this.loops.pop();
      const left = cases(run, within, met);
      for (const axis of met) run.state.forget(axis);
      run.within = left;
      if (round === 0) after = run.state.copy();
      else {
        const before = after.copy();
        after.join(run.state);
        if (after.equals(before)) break;
      }
      run.state = after.copy();
      if (run.within === NONE) break;
    }
    run.state = after;
    if (statement.otherwise && run.within !== NONE) {
      const axis = this.axis(`gave up ${file} ${statement.start}`, [
        'it holds in time',
        'it does not hold in time',
      ]);
      this.under(run.cases.oneOf(axis, [1]), () => this.block(statement.otherwise, file));
    }
  }

  private use(name: string, file: string): void {
    if (this.doing.includes(name) || this.doing.length > 50) return;
    this.doing.push(name);
    const task = this.tasks.get(name);
    if (task) this.block(task.body, file);
    else {
      const found = findProcedure(this.visible, name);
      if (found?.procedure.body) this.block(found.procedure.body, found.file.path);
    }
    this.doing.pop();
  }

  /** Runs with only those cases, then goes on with all that have not stopped. */
  private under(set: CaseSet, body: () => void): void {
    const { run } = this;
    const all = run.within;
    const stoppedBefore = this.stopped;
    run.within = run.cases.and(all, set);
    if (run.within !== NONE) body();
    run.within = this.stopped === stoppedBefore ? all : run.cases.minus(all, this.stopped);
  }

  condition(condition: Condition, file: string): CaseSet {
    const { run } = this;
    switch (condition.kind) {
      case 'and':
        return condition.parts.reduce<CaseSet>(
          (set, part) => run.cases.and(set, this.condition(part, file)),
          EVERY,
        );
      case 'axis':
        return casesOf(condition, file, run.cases, this.axes, []) ?? EVERY;
      case 'seen': {
        const axis = this.axis(`seen ${file} ${condition.text.value}`, [
          `“${condition.text.value}”`,
          `not “${condition.text.value}”`,
        ]);
        return run.cases.oneOf(axis, [0]);
      }
      case 'state': {
        const found = this.resolve(condition.ref);
        const thing = run.model.byName.get(condition.ref.name.text);
        if (!found || !thing) return EVERY;
        const set = stateCases(run, thing, found.items, condition.state.text, run.within);
        return condition.negated ? run.cases.not(set) : set;
      }
    }
  }

  /** The axis, noted as met in the repeats that are running, so that it is asked anew in the next round. */
  private axis(key: string, phrases: readonly string[]): number {
    const axis = this.run.cases.axis(key, phrases);
    const inner = this.loops[this.loops.length - 1];
    if (inner && !inner.includes(axis)) inner.push(axis);
    return axis;
  }

  resolve(ref: Ref): { items: number[] } | undefined {
    const name = this.bound.get(ref.name.text) ?? ref.name.text;
    const thing = this.run.model.byName.get(name);
    if (!thing) return undefined;
    if (ref.positions.length === 0) return itemsOf(thing, ref);
    const positions = ref.positions.map((position) => ({
      ...position,
      from: this.bound.get(position.from) ?? position.from,
      ...(position.to === undefined ? {} : { to: this.bound.get(position.to) ?? position.to }),
    }));
    return itemsOf(thing, { ...ref, positions });
  }
}

function cases(run: Run, within: CaseSet, met: readonly number[]): CaseSet {
  let left = run.within;
  for (const axis of met) left = run.cases.forget(left, axis);
  return run.cases.and(left, within);
}

function index0(action: Action, outcome: Action['outcomes'][number]): number {
  return action.outcomes.indexOf(outcome);
}

/** What is measured, inspected or checked, in words. */
export function phraseOf(action: Action): string {
  const objects = action.objects.map((ref) => ref.name.text.replaceAll('-', ' ')).join(' and ');
  const of = action.tails
    .flatMap((tail) => (tail.tail === 'of' || tail.tail === 'between' ? tail.refs : []))
    .map((ref) => ref.name.text.replaceAll('-', ' '))
    .join(' and ');
  const topic = action.topic?.text.replaceAll('-', ' ');
  if (topic) return objects || of ? `the ${topic} of the ${objects || of}` : `the ${topic}`;
  return objects ? `the ${objects}` : `the ${action.verb}`;
}

export function outcomePhrase(outcome: Action['outcomes'][number], index: number): string {
  if (outcome.word) return outcome.word.text.replaceAll('-', ' ');
  const { interval } = outcome;
  if (!interval) return `outcome ${index + 1}`;
  const amounts = interval.quantity?.amounts ?? [];
  const unit = amounts[amounts.length - 1]?.unit?.text ?? '';
  const numbers = amounts.map((amount) => amount.number).join(' to ');
  const value = `${numbers} ${unit}`.trim();
  return interval.bound === 'between' || interval.bound === 'exactly' ? value : `${interval.bound} ${value}`;
}
