/**
 * An execution that is kept while its procedure is edited. The procedure is laid out in a row of parts; for each part
 * is kept what it wrote, what it found and which earlier steps it looked up. After an edit only the parts that are
 * other than before are carried out, and those behind them until the state is as it was there; then on to the next part
 * that looks up a step that is another now. What is found is what an execution from scratch finds, or `update` says
 * that it cannot tell: where the headers are others, where cases or steps become many, where a fault is found in
 * two parts at once, where other things are looked for than before.
 */
import type { Procedure, Task } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import { changedTasks, hasSameHead, isSamePart, layoutOf, meets, type Part, tasksOf } from '../model/row.ts';
import type { House } from '../project/project.ts';
import { curingTimes } from './actions/curing.ts';
import type { Cases } from './cases.ts';
import { type Done, lastOf, type Stand } from './done-part.ts';
import { Edit } from './edit.ts';
import { finish, type MoreWatchers, type Started, start } from './execute.ts';
import { PartRunner } from './part-runner.ts';
import type { StepRef } from './steps.ts';
import { watchers } from './watchers.ts';

/** From the first step of a part to the first of the next. */
const GAP = 64;
/** From a part that was put in to the next one that was. */
const NARROW = 4;
/** Numbers of steps that a variable of the state has room for. */
const MOST_NUMBERS = 1 << 23;
/** Nodes of the diagram with which no thing is given up, in whatever order they come. */
const MOST_NODES = 1_900;
/** Different times to cure with which every one is told apart. */
const MOST_TIMES = 15;
/** Statements gone through that are within every limit. */
const MOST_FOLLOWED = 100_000;

interface End {
  readonly facts: readonly Fact[];
  readonly reads: ReadonlySet<number>;
}

export interface ExecutionOf {
  model: Model;
  procedure: Procedure;
  file: string;
  visible: readonly LoadedFile[];
  house: House;
  more: MoreWatchers;
}

export class KeptExecution {
  facts: readonly Fact[] = [];
  /** Statements gone through for all that is there. */
  followed = 0;
  /** It can be taken up again after an edit. */
  usable = true;
  private readonly started: Started;
  private readonly file: string;
  private readonly beginning: Stand;
  private readonly nodes: number;
  private readonly runner: PartRunner;
  private procedure: Procedure;
  private tasks: ReadonlyMap<string, Task>;
  private done: Done[] = [];
  /** The part of each. */
  private row: readonly Part[] = [];
  /** Those that looked up earlier steps. */
  private readonly looking = new Set<Done>();
  /** Parts whose effect is in the state. */
  private cursor = 0;
  private found: Fact[] | undefined;
  private end: End = { facts: [], reads: new Set() };

  /** Carries out the whole procedure. What it uses must stay the same for as long as it is kept. */
  constructor({ model, procedure, file, visible, house, more }: ExecutionOf) {
    this.procedure = procedure;
    this.file = file;
    const cases = model.cases.copy();
    this.nodes = cases.size;
    this.started = start(model, procedure, file, visible, undefined, false, more, cases);
    const { run } = this.started;
    this.runner = new PartRunner(this.started);
    run.watchers.push(...watchers(run, procedure, house));
    this.tasks = tasksOf(procedure);
    this.usable = run.watchers.every((watcher) => watcher.recall !== undefined);
    this.beginning = this.runner.stand();
    const row = layoutOf(procedure).parts;
    this.row = row;
    for (const [index, part] of row.entries())
      this.done.push(this.runner.carryOut(part, GAP * (index + 1), this.standBefore(index)));
    for (const one of this.done) this.note(one);
    this.cursor = row.length;
    this.finish();
    this.gather();
    if (!this.withinLimits()) this.usable = false;
  }

  /** Actions that the latest edit had carried out. */
  get executed(): number {
    return this.runner.executed;
  }

  get cases(): Cases {
    return this.started.run.cases;
  }

  /** Takes up the procedure as it is now; false where it has to be carried out from its beginning. */
  update(procedure: Procedure): boolean {
    if (!this.usable) return false;
    // Whatever goes wrong on the way, half an update is none.
    this.usable = false;
    if (!hasSameHead(this.procedure, procedure)) return false;
    this.runner.executed = 0;
    const row = layoutOf(procedure).parts;
    const tasks = tasksOf(procedure);
    const changed = changedTasks(this.tasks, tasks);
    this.procedure = procedure;
    this.tasks = tasks;
    this.started.flow.setTasks(tasks);
    if (!this.follow(row, changed) || !this.withinLimits()) return false;
    this.gather();
    this.usable = true;
    return true;
  }

  // ------------------------------------------------------------ after an edit

  private follow(row: readonly Part[], changedNames: ReadonlySet<string>): boolean {
    const { done } = this;
    const { row: old } = this;
    const isSame = (a: Part, b: Part) => a === b || isSamePart(a, b);
    let from = 0;
    const least = Math.min(row.length, old.length);
    while (from < least && isSame(row[from]!, old[from]!)) from++;
    let back = 0;
    while (back < least - from && isSame(row[row.length - 1 - back]!, old[old.length - 1 - back]!)) back++;
    if (changedNames.size > 0) {
      // What uses a task may stand before it.
      const first = done.findIndex(({ uses }) => meets(uses, changedNames));
      if (first >= 0 && first < from) from = first;
      back = Math.min(back, least - from);
    }
    const replaced = done.slice(from, done.length - back);
    const edit = new Edit(this.started, changedNames, replaced.at(-1)?.after ?? this.standBefore(from));
    if (row.length !== from + back || replaced.length > 0) this.moveTo(from);
    const fresh = this.carryOutFresh(row.slice(from, row.length - back), replaced, from, back);
    if (!fresh) return false;
    if (fresh.length === replaced.length)
      for (const [index, one] of fresh.entries()) done[from + index] = one;
    else this.done = [...done.slice(0, from), ...fresh, ...done.slice(done.length - back)];
    for (const one of replaced) this.forget(one);
    for (const one of fresh) this.note(one);
    this.row = row;
    if (!edit.replace(replaced, fresh, this.standBefore(from + fresh.length))) return false;
    if (!this.goOn(edit, from + fresh.length)) return false;
    if (edit.other || !edit.stands || !edit.differences.none || meets(this.end.reads, edit.changed)) {
      this.moveTo(this.done.length);
      this.finish();
    }
    return true;
  }

  private carryOutFresh(
    parts: readonly Part[],
    replaced: readonly Done[],
    from: number,
    back: number,
  ): Done[] | undefined {
    const numbers = new Map(replaced.map(({ first }, index) => [this.row[from + index]!.statement, first]));
    const limit = back > 0 ? this.done[this.done.length - back]!.first : Number.POSITIVE_INFINITY;
    // One for one: an action in which something is typed.
    const paired = parts.length === replaced.length;
    const known = (index: number) => (paired ? replaced[index]!.first : numbers.get(parts[index]!.statement));
    let edge = from > 0 ? lastOf(this.done[from - 1]!) : 0;
    let before = this.standBefore(from);
    const fresh: Done[] = [];
    for (const [index, part] of parts.entries()) {
      let first = known(index);
      if (first === undefined || first <= edge) {
        let next = limit;
        for (let later = index + 1; later < parts.length && next === limit; later++) {
          const number = known(later);
          if (number !== undefined && number > edge) next = number;
        }
        first = edge + Math.max(1, Math.min(next === limit && back === 0 ? GAP : NARROW, (next - edge) >> 1));
      }
      const one = this.runner.carryOut(part, first, before);
      this.cursor++;
      fresh.push(one);
      before = one.after;
      edge = lastOf(one);
    }
    const used = new Set(fresh.flatMap((one) => one.steps.map((_, step) => one.first + step)));
    for (const { first, last } of replaced)
      for (let number = first; number <= last; number++)
        if (!used.has(number)) this.started.run.steps.forget(number);
    return edge < limit ? fresh : undefined;
  }

  /** The parts behind the edited ones: carried out again where they can come out otherwise. */
  private goOn(edit: Edit, from: number): boolean {
    const { done } = this;
    for (let index = from; index < done.length; index++) {
      if (edit.stands) {
        index = this.next(edit, index);
        if (index === done.length) return true;
        this.moveTo(index);
      }
      const before = done[index]!;
      const again = this.runner.carryOut(this.row[index]!, before.first, this.standBefore(index));
      this.cursor = index + 1;
      const next = done[index + 1];
      if (next && lastOf(again) >= next.first) return false;
      for (let number = again.last + 1; number <= before.last; number++)
        this.started.run.steps.forget(number);
      this.done[index] = again;
      this.forget(before);
      this.note(again);
      if (!edit.replace([before], [again], again.after)) return false;
    }
    return true;
  }

  /** The next part that may come out otherwise. */
  private next(edit: Edit, from: number): number {
    const { done } = this;
    if (edit.isNarrow && ![...this.looking].some((one) => meets(one.reads, edit.changed))) return done.length;
    let index = from;
    while (index < done.length && !edit.touches(done[index]!)) index++;
    return index;
  }

  private note(one: Done): void {
    if (one.reads.size > 0) this.looking.add(one);
    if (one.facts.length > 0) this.found = undefined;
    this.followed += one.followed;
  }

  private forget(one: Done): void {
    this.looking.delete(one);
    this.followed -= one.followed;
    if (one.facts.length > 0) this.found = undefined;
  }

  private withinLimits(): boolean {
    const { run } = this.started;
    return (
      !run.lost &&
      run.undecided.size === 0 &&
      !run.entangled &&
      !run.cases.restated &&
      run.cases.size - this.nodes < MOST_NODES &&
      this.followed < MOST_FOLLOWED &&
      curingTimes(run) < MOST_TIMES &&
      (this.done.at(-1)?.last ?? 0) < MOST_NUMBERS
    );
  }

  // ------------------------------------------------------------ places in the row

  private standBefore(index: number): Stand {
    return index > 0 ? this.done[index - 1]!.after : this.beginning;
  }

  /** Brings the state to where so many parts are carried out. */
  private moveTo(index: number): void {
    const { run, flow } = this.started;
    if (index === this.cursor) return;
    while (this.cursor > index) this.done[--this.cursor]!.journal.undo(run.state);
    while (this.cursor < index) this.done[this.cursor++]!.journal.redo(run.state);
    this.runner.recall(this.standBefore(index));
    flow.standAt(this.standBefore(index).marks);
  }

  // ------------------------------------------------------------ the end

  /** What the end shows. */
  private finish(): void {
    const { run } = this.started;
    run.steps.last = this.done.findLast(({ steps }) => steps.length > 0)?.last ?? -1;
    const steps: (readonly [number, StepRef])[] = [];
    for (const one of this.done)
      for (const [index, step] of one.steps.entries()) steps.push([one.first + index, step]);
    this.end = this.runner.apart(this.standBefore(this.done.length), this.foundInSteps(), () =>
      finish(this.started, this.procedure, this.file, steps),
    );
  }

  private gather(): void {
    this.facts = [...this.foundInSteps(), ...this.end.facts];
  }

  /** What the parts found, in their order. */
  private foundInSteps(): readonly Fact[] {
    if (!this.found) {
      this.found = [];
      for (const { facts } of this.done) if (facts.length > 0) this.found.push(...facts);
    }
    return this.found;
  }
}
