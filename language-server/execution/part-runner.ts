/** Carries out the parts of a procedure one by one, and keeps of each what it did and what that rests on. */
import type { Fact } from '../model/facts.ts';
import { type Part, usesOf } from '../model/row.ts';
import type { Done, Stand } from './done-part.ts';
import type { Started } from './execute.ts';
import { Journal } from './journal.ts';
import { alike, copied } from './memory.ts';
import { Recorder } from './recorder.ts';
import type { StepRef } from './steps.ts';

const NONE_READ: ReadonlySet<number> = new Set();
const NO_NAMES: ReadonlySet<string> = new Set();
const NO_STEPS: readonly StepRef[] = [];
const NO_FACTS: readonly Fact[] = [];
const NO_AXES: readonly number[] = [];
const NO_ITEMS = new Int32Array(0);

export class PartRunner {
  /** Actions that were carried out. */
  executed = 0;
  private readonly started: Started;
  private readonly recorder: Recorder;
  /** Sets of maps that parts looked at: each once. */
  private readonly maps = new Map<string, Done['maps']>();

  constructor(started: Started) {
    this.started = started;
    this.recorder = new Recorder(started.run.model.items);
  }

  /** Does what is asked, and answers what it found and which earlier steps it looked up; the state is as before. */
  apart(
    before: Stand,
    found: readonly Fact[],
    work: () => void,
  ): { facts: Fact[]; reads: ReadonlySet<number> } {
    const { run, flow } = this.started;
    const reads = this.begin(Number.POSITIVE_INFINITY);
    for (const fact of found) run.facts.push(fact);
    work();
    this.stop();
    const facts = run.facts.splice(found.length);
    run.facts.length = 0;
    new Journal(this.recorder, run.state).undo(run.state);
    this.recall(before);
    flow.standAt(before.marks);
    return { facts, reads };
  }

  /** `first`: the number of its first step. `before`: where it stands. */
  carryOut(part: Part, first: number, before: Stand): Done {
    const { run, flow } = this.started;
    const { recorder } = this;
    const reads = this.begin(first);
    flow.asked = [];
    flow.standAt(before.marks);
    run.steps.last = first - 1;
    const executed = run.executed;
    flow.part(part);
    this.executed += run.executed - executed;
    this.stop();
    const { last } = run.steps;
    const steps: StepRef[] = [];
    for (let number = first; number <= last; number++) steps.push(run.steps.at(number)!);
    const one: Done = {
      first,
      last,
      steps: steps.length > 0 ? steps : NO_STEPS,
      journal: new Journal(recorder, run.state),
      facts: run.facts.length > 0 ? run.facts.splice(0) : NO_FACTS,
      reads: reads.size > 0 ? reads : NONE_READ,
      items: recorder.items.length > 0 ? Int32Array.from(recorder.items) : NO_ITEMS,
      maps: this.mapsOf(recorder),
      uses: part.kind === 'do' ? usesOf(part.statement) : NO_NAMES,
      asked: flow.asked.length > 0 ? flow.asked : NO_AXES,
      followed: flow.followedHere,
      after: this.stand(before),
    };
    flow.asked = undefined;
    return one;
  }

  private mapsOf({ maps }: Recorder): Done['maps'] {
    const all = this.started.flow.tracked;
    const key = maps.map((map) => all.indexOf(map)).join(' ');
    let known = this.maps.get(key);
    if (!known) {
      known = [...maps];
      this.maps.set(key, known);
    }
    return known;
  }

  /** Where it stands now; the same object where that is where it stood. */
  stand(before?: Stand): Stand {
    const { run, flow } = this.started;
    const { marks } = flow;
    const memories = run.watchers.map((watcher, index) => {
      const memory = watcher.memory?.();
      const known = before?.memories[index];
      return before && alike(known, memory) ? known : copied(memory);
    });
    if (!before) return { marks, memories };
    const sameMarks = alike(before.marks, marks);
    const sameMemories = memories.every((memory, index) => memory === before.memories[index]);
    if (sameMarks && sameMemories) return before;
    return {
      marks: sameMarks ? before.marks : marks,
      memories: sameMemories ? before.memories : memories,
    };
  }

  recall({ memories }: Stand): void {
    this.started.run.watchers.forEach((watcher, index) => {
      watcher.recall?.(copied(memories[index]));
    });
  }

  /** Records what is looked at and written from here on; answers the steps before `from` that are looked up. */
  private begin(from: number): ReadonlySet<number> {
    const { run, flow } = this.started;
    const numbers = new Set<number>();
    this.recorder.begin();
    flow.record(this.recorder);
    run.facts.length = 0;
    run.steps.readsOf = { from, numbers };
    return numbers;
  }

  private stop(): void {
    const { run, flow } = this.started;
    run.steps.readsOf = undefined;
    flow.record(undefined);
  }
}
