/**
 * Statements: what is done, in which cases, in which order. Branches run under their own cases and join again
 * by themselves; a repeat runs until the state no longer changes; a used procedure runs in place.
 */
import type { Action, Block, Condition, Procedure, Statement, Task } from '../../grammar/syntax/tree.ts';
import { casesOf } from '../model/conditions.ts';
import type { Fact } from '../model/facts.ts';
import { mirror } from '../model/mirror.ts';
import type { LoadedFile } from '../model/names.ts';
import { findProcedure } from '../model/names.ts';
import { type Part, tasksOf } from '../model/row.ts';
import type { Place } from '../report/finding.ts';
import { perform } from './actions/perform.ts';
import { bit, FITTED, NO } from './aspects.ts';
import { type CaseSet, EVERY, NONE } from './cases.ts';
import { makeSo, startHolds } from './contract.ts';
import { Measured } from './measured.ts';
import { casePhrase } from './phrases.ts';
import { stateCases } from './questions.ts';
import { type Recorder, Tracked } from './recorder.ts';
import { MOST_EACH, References } from './references.ts';
import type { Run } from './run.ts';
import { SharedWork } from './shared-work.ts';
import type { State } from './state.ts';

/** Rounds of a repeat in which every case is told apart; after them only what may be is kept. */
const EXACT_ROUNDS = 3;
/** Rounds after which the state is taken to be all that was seen so far. */
const MOST_ROUNDS = 12;
/** Procedures within procedures. */
const MOST_USES = 50;
/** What makes two findings the same fault, wherever each was found. */
export function sameFault(fact: Fact): string {
  return `${fact.check} ${fact.subject?.thing.id} ${fact.words?.rule ?? ''}`;
}

/** Where the execution stands, beside the state of things. */
export interface Marks {
  within: CaseSet;
  working: CaseSet;
  stopped: CaseSet;
  unfinished: CaseSet;
  passedOver: number;
}

export class Flow {
  readonly run: Run;
  /** `continues` was met: what is left undone is held back, in these cases. */
  unfinished: CaseSet = NONE;
  /** Where to stop carrying out, for asking the state there; `reached` holds the cases that get there. */
  until: { file: string; offset: number } | undefined;
  reached: CaseSet | undefined;
  /** What another procedure finds when it is carried out on its own: that is no fault of who uses it. */
  alone: (procedure: Procedure, file: string) => ReadonlySet<string> = () => new Set();
  /** Work that others did on the same model before. */
  shared = new SharedWork();
  private readonly file: string;
  private readonly visible: readonly LoadedFile[];
  private tasks: ReadonlyMap<string, Task>;
  private readonly references: References;
  /** Axes of variants, choices and named outcomes, by name. */
  private readonly axes = new Tracked<string, { axis: number; values: readonly string[] }>();
  /** Where somebody wants to know: the axes that were asked for, in order. */
  asked: number[] | undefined;
  /** Tasks that were not entered, since nothing is left to do there. */
  private passedOver = 0;
  private readonly doing: string[] = [];
  private stopped: CaseSet = NONE;
  /** Which round of which loop: what is seen is asked anew in each. */
  private rounds = '';
  /** Which use of which task: what is measured is measured anew in each. */
  private uses = '';
  /** Axes met in the loops that are running. */
  private readonly met: number[][] = [];
  /** Statements gone through, in every round and use. */
  private followed = 0;
  private readonly measured: Measured;
  private all: Tracked<unknown, unknown>[] | undefined;

  constructor(run: Run, file: string, visible: readonly LoadedFile[], tasks: ReadonlyMap<string, Task>) {
    this.run = run;
    this.file = file;
    this.visible = visible;
    this.tasks = tasks;
    this.references = new References(run.model);
    this.measured = new Measured(run);
    for (const [name, variant] of run.model.variants) this.axes.set(name, variant);
  }

  /** The cases in which work was ended (`stop`): nothing has to be whole there. */
  get ended(): CaseSet {
    return this.stopped;
  }

  block(block: Block | undefined, file = this.file): void {
    if (!block) return;
    const { until } = this;
    const here = until !== undefined && file === until.file && this.doing.length === 0;
    for (const statement of block.statements) {
      if (!this.goesOn(statement, file)) return;
      if (here && statement.start >= until.offset) {
        this.reached = this.run.within;
        return;
      }
      this.statement(statement, file);
    }
    // The place is behind the last statement of this block: that is what it is like there.
    if (here && this.reached === undefined && block.start <= until.offset && until.offset < block.end) {
      this.reached = this.run.within;
    }
  }

  /** Counts the statement; false where nothing is carried out any more. */
  private goesOn(statement: Statement, file: string): boolean {
    const { run } = this;
    const at = run.usedAt ?? { file, start: statement.start, end: statement.end };
    run.loseTrack(at);
    this.shared.followed++;
    if (this.followed++ > this.shared.most) run.stopFollowing(at);
    return this.reached === undefined && run.within !== NONE && !run.lost;
  }

  /** Carries out one part of a procedure that is laid out in a row. */
  part({ kind, statement }: Part): void {
    const { watchers } = this.run;
    if (kind === 'leave') {
      if (this.passedOver > 0) this.passedOver--;
      else for (const watcher of watchers) watcher.leave?.();
      return;
    }
    if (!this.goesOn(statement, this.file)) {
      if (kind === 'enter') this.passedOver++;
    } else if (kind === 'enter') for (const watcher of watchers) watcher.enter?.();
    else if (kind === 'do') this.statement(statement, this.file);
  }

  /** Statements gone through since it was last put somewhere, those of procedures on their own among them. */
  get followedHere(): number {
    return this.shared.followed;
  }

  /** Where it stands between two parts of a row. */
  get marks(): Marks {
    const { stopped, unfinished, passedOver } = this;
    const { within, working } = this.run;
    return { within, working, stopped, unfinished, passedOver };
  }

  /** Goes back to where it stood; the state is put back by who kept it. */
  standAt({ within, working, stopped, unfinished, passedOver }: Marks): void {
    Object.assign(this, { stopped, unfinished, passedOver });
    Object.assign(this.run, { within, working });
    this.followed = 0;
    this.shared.followed = 0;
  }

  /** Tells the recorder what is written from here on. */
  record(recorder: Recorder | undefined): void {
    this.run.record(recorder);
    for (const map of this.tracked) map.recorder = recorder;
  }

  /** What is kept beside the state of things, and can be taken back. */
  get tracked(): Tracked<unknown, unknown>[] {
    this.all ??= [
      ...this.run.tracked,
      this.axes as unknown as Tracked<unknown, unknown>,
      this.measured.values as unknown as Tracked<unknown, unknown>,
    ];
    return this.all;
  }

  /** The named tasks of the procedure, as they are written now. */
  setTasks(tasks: ReadonlyMap<string, Task>): void {
    this.tasks = tasks;
  }

  private statement(statement: Statement, file: string): void {
    const { run } = this;
    const { cases } = run;
    switch (statement.kind) {
      case 'action':
        this.action(statement, file);
        return;
      case 'task':
        this.watched(() => this.block(statement.body, file));
        return;
      case 'step':
      case 'hold':
        this.block(statement.body, file);
        return;
      case 'when':
      case 'if': {
        const yes = statement.condition ? this.condition(statement.condition, file) : EVERY;
        if (statement.kind === 'when') this.mayBeDead(statement, yes, file);
        this.under(yes, () => this.block(statement.body, file));
        if (statement.otherwise) this.under(cases.not(yes), () => this.block(statement.otherwise, file));
        return;
      }
      case 'choice': {
        if (!statement.name || statement.values.length === 0) return;
        const name = statement.name.text;
        const values = statement.values.map((value) => value.text);
        const phrases = values.map((value) => `${name} is ${value}`);
        const axis = cases.axis(`choice ${file} ${name}`, phrases);
        this.asked?.push(axis);
        this.axes.set(name, { axis, values });
        return;
      }
      case 'repeat':
        this.repeat(statement, file);
        return;
      case 'for each':
        this.forEach(statement, file);
        return;
      case 'do':
        if (statement.ref) this.watched(() => this.use(statement, statement.ref!.text, file));
        return;
      case 'reverse':
        this.reverse(statement, file);
        return;
      case 'value':
        if (statement.name && statement.expression)
          this.measured.derive(statement.name.text, statement.expression);
        return;
      case 'stop':
        this.stopped = cases.or(this.stopped, run.within);
        run.working = cases.minus(run.working, run.within);
        run.within = NONE;
        return;
      case 'continues':
        this.unfinished = cases.or(this.unfinished, run.within);
        return;
      case 'notice':
        for (const watcher of run.watchers) watcher.notice?.(statement, file);
        return;
      case 'allow':
      case 'broken':
        return;
      default:
        statement satisfies never;
    }
  }

  /** Work that is entered by itself: a task, or another procedure. */
  private watched(work: () => void): void {
    const { watchers } = this.run;
    for (const watcher of watchers) watcher.enter?.();
    work();
    for (const watcher of watchers) watcher.leave?.();
  }

  private action(action: Action, file: string): void {
    const { run } = this;
    const bound = (name: string) => this.references.bound(name);
    perform(run, action, file, (ref) => this.references.resolve(ref));
    this.measured.note(action, file, bound);
    if (action.outcomes.length === 0) return;
    const values = action.outcomes.map((outcome, index) => outcome.word?.text ?? String(index));
    const phrases = action.outcomes.map((outcome, index) => casePhrase(action, outcome, index, bound));
    const axis = this.axis(`outcome ${file} ${action.start} ${this.rounds} ${this.uses}`, phrases);
    const name = action.tails.find((tail) => tail.tail === 'as');
    if (name?.tail === 'as' && name.name) this.axes.set(name.name.text, { axis, values });
    action.outcomes.forEach((outcome, index) => {
      this.under(run.cases.oneOf(axis, [index]), () => this.block(outcome.body, file));
    });
  }

  /**
   * The body at least once. Each further round is carried out in the cases in which it is needed, with its own
   * findings, until a round changes nothing that may be so afterwards.
   */
  private repeat(statement: Extract<Statement, { kind: 'repeat' }>, file: string): void {
    const { run } = this;
    const { cases } = run;
    const rounds = this.rounds;
    const most = Math.min(statement.atMost ?? MOST_ROUNDS, MOST_ROUNDS);
    const met: number[] = [];
    this.met.push(met);
    const factsBefore = run.facts.length;
    const outermost = run.repeating === undefined;
    run.repeating ??= run.step;
    const body = (round: number) => {
      this.rounds = `${rounds}/${statement.start}.${round}`;
      this.block(statement.body, file);
      this.rounds = rounds;
    };
    body(1);
    const after = run.within;
    let left = after;
    for (let round = 2; round <= most && left !== NONE && this.reached === undefined; round++) {
      const before = run.state.copy();
      const again = this.axis(`repeat ${file} ${statement.start} ${rounds} ${round}`, [
        'no further round is needed',
        'a further round is needed',
      ]);
      run.within = cases.and(left, cases.oneOf(again, [1]));
      left = run.within;
      run.round++;
      body(round);
      run.round--;
      left = cases.and(left, run.within);
      run.within = cases.minus(after, this.stopped);
      if (this.same(before, run.state, met)) break;
      if (round > EXACT_ROUNDS) {
        for (const axis of met) run.state.forget(axis);
        left = run.within;
      }
    }
    this.met.pop();
    if (outermost) run.repeating = undefined;
    // What was found in a round is no longer told apart by what was seen in it, but for the last.
    for (let index = factsBefore; index < run.facts.length; index++) {
      const fact = run.facts[index]!;
      if (fact.cases === undefined || fact.check !== 'loop-not-restored') continue;
      for (const axis of met) fact.cases = cases.forget(fact.cases, axis);
    }
    const outer = this.met[this.met.length - 1];
    if (outer) outer.push(...met);
    if (statement.otherwise && run.within !== NONE) {
      const axis = this.axis(`gave up ${file} ${statement.start} ${rounds}`, [
        'it comes right in time',
        'it does not come right in time',
      ]);
      this.under(cases.oneOf(axis, [1]), () => this.block(statement.otherwise, file));
    }
  }

  /** Whether two states allow the same, once what was seen in the loop no longer counts. */
  private same(before: State, after: State, met: readonly number[]): boolean {
    const a = before.copy();
    const b = after.copy();
    for (const axis of met) {
      a.forget(axis);
      b.forget(axis);
    }
    return a.equals(b);
  }

  private forEach(statement: Extract<Statement, { kind: 'for each' }>, file: string): void {
    const variable = statement.variable?.text;
    const { over } = statement;
    if (!variable || !over) return;
    if (over.kind === 'numbers' && over.to - over.from >= MOST_EACH)
      this.notFollowed({ file, start: statement.start, end: statement.end }, 'rounds', MOST_EACH);
    const rounds = this.rounds;
    this.references.forEach(variable, over, (value) => {
      this.rounds = `${rounds}/${statement.start}:${value}`;
      this.block(statement.body, file);
    });
    this.rounds = rounds;
  }

  /** A limit was reached: that is said where it was. */
  private notFollowed(at: Place, limit: 'rounds' | 'uses', most: number): void {
    this.run.fact({ check: 'undecided', at, words: { limit, most: String(most) } });
  }

  private reverse(statement: Extract<Statement, { kind: 'reverse' }>, file: string): void {
    const { run } = this;
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
    for (const { thing } of lost) {
      for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
        // Once said, a new one is taken to be in: the rest of the job is judged on its own.
        const away = run.where('place', item, ~bit(FITTED));
        run.assume('place', item, FITTED, away);
        run.assume('parted', item, NO, away);
      }
    }
    for (const one of statements) this.statement(one, file);
  }

  /** A task of this procedure, or another procedure, carried out in place. */
  private use(statement: Extract<Statement, { kind: 'do' }>, name: string, file: string): void {
    const { run } = this;
    const at = { file, start: statement.start, end: statement.end };
    // A use that leads back to itself is a finding about names; here it is not followed.
    if (this.doing.includes(name)) return;
    if (this.doing.length >= MOST_USES) {
      this.notFollowed(run.usedAt ?? at, 'uses', MOST_USES);
      return;
    }
    const uses = this.uses;
    this.uses = `${uses}/${statement.start}`;
    this.doing.push(name);
    const task = this.tasks.get(name);
    if (task) this.block(task.body, file);
    else {
      const found = findProcedure(this.visible, name);
      if (found) {
        const tasks = this.tasks;
        this.tasks = tasksOf(found.procedure);
        startHolds(run, found.procedure, at, name);
        if (found.procedure.body) this.inPlace(found.procedure, found.file.path, at, name);
        else {
          run.begin(
            {
              kind: 'action',
              verb: 'do',
              word: { text: 'do', start: at.start, end: at.end },
              objects: [],
              together: false,
              tails: [],
              outcomes: [],
              start: at.start,
              end: at.end,
            },
            file,
          );
          makeSo(run, found.procedure);
          for (const watcher of run.watchers) watcher.printedElsewhere?.();
        }
        this.tasks = tasks;
      }
    }
    this.doing.pop();
    this.uses = uses;
  }

  private inPlace(procedure: Procedure, file: string, at: Place, name: string): void {
    const { run } = this;
    const outermost = run.usedAt === undefined;
    if (outermost) run.usedAt = at;
    const before = run.facts.length;
    this.block(procedure.body, file);
    if (!outermost) return;
    run.usedAt = undefined;
    const found = run.facts.splice(before);
    if (found.length === 0) return;
    const alone = this.alone(procedure, file);
    for (const fact of found) {
      if (alone.has(sameFault(fact))) continue;
      run.facts.push({
        ...fact,
        check: 'contract-broken',
        inner: fact.inner ?? fact.check,
        words: { ...fact.words, side: 'does', procedure: name },
      });
    }
  }

  /** A block for a variant that cannot be: nobody will ever do it. */
  private mayBeDead(statement: Extract<Statement, { kind: 'when' }>, yes: CaseSet, file: string): void {
    const { run } = this;
    if (!statement.condition || run.cases.and(run.within, yes) !== NONE) return;
    run.fact({
      check: 'variant-dead',
      at: { file, start: statement.condition.start, end: statement.condition.end },
    });
  }

  /** Runs with only those cases, then goes on with all that have not stopped. */
  private under(set: CaseSet, body: () => void): void {
    const { run } = this;
    const all = run.within;
    const stoppedBefore = this.stopped;
    run.within = run.cases.and(all, set);
    if (run.within !== NONE) body();
    if (run.lost) return;
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
        const text = condition.text.value;
        const axis = this.axis(`seen ${file} ${text} ${this.rounds}`, [`“${text}”`, `not “${text}”`]);
        return run.cases.oneOf(axis, [0]);
      }
      case 'state': {
        const found = this.references.resolve(condition.ref);
        const thing = run.model.byName.get(condition.ref.name.text);
        if (!found || !thing) return EVERY;
        const set = stateCases(run, thing, found.items, condition.state.text, run.within);
        return condition.negated ? run.cases.not(set) : set;
      }
    }
  }

  /** The axis, noted as met in the repeats that are running. */
  private axis(key: string, phrases: readonly string[]): number {
    const axis = this.run.cases.axis(key, phrases);
    this.asked?.push(axis);
    const inner = this.met[this.met.length - 1];
    if (inner && !inner.includes(axis)) inner.push(axis);
    return axis;
  }
}
