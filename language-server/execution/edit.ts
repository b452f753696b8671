/** An edit followed through a kept execution: where it is no longer what it was. */

import { meets } from '../model/row.ts';
import { Differences } from './differences.ts';
import type { Done, Stand } from './done-part.ts';
import type { Started } from './execute.ts';
import { alike } from './memory.ts';
import type { StepRef } from './steps.ts';

export class Edit {
  /** Numbers of steps that are no longer what they were. */
  readonly changed = new Set<number>();
  /** What the end is about may have changed: what was found, or what was done. */
  other = false;
  readonly differences: Differences;
  private readonly names: ReadonlySet<string>;
  private was: Stand;
  private is: Stand;

  constructor({ run }: Started, names: ReadonlySet<string>, was: Stand) {
    this.differences = new Differences(run.state, run.model.items, run.known as never);
    this.names = names;
    this.was = was;
    this.is = was;
  }

  /** The cases in which work goes on, and what everybody knows, are what they were at the same place. */
  get stands(): boolean {
    return this.is === this.was || alike(this.is, this.was);
  }

  /** Only who looks up a step that changed can come out otherwise. */
  get isNarrow(): boolean {
    return this.differences.none && this.names.size === 0;
  }

  /** The part may come out otherwise. */
  touches({ uses, reads, items, maps, journal }: Done): boolean {
    return (
      this.differences.touch(items, maps, journal) || meets(uses, this.names) || meets(reads, this.changed)
    );
  }

  /** Takes note that `now` was done in the place of `before`; false where other axes were asked for. */
  replace(before: readonly Done[], now: readonly Done[], is: Stand): boolean {
    this.is = is;
    const last = before.at(-1);
    if (last) this.was = last.after;
    this.differences.after(
      before.map(({ journal }) => journal),
      now.map(({ journal }) => journal),
    );
    this.steps(before, now);
    this.other ||= !alike(
      before.flatMap(({ facts }) => facts),
      now.flatMap(({ facts }) => facts),
    );
    return alike(
      before.flatMap(({ asked }) => asked),
      now.flatMap(({ asked }) => asked),
    );
  }

  private steps(before: readonly Done[], now: readonly Done[]): void {
    const fresh = new Map<number, StepRef>();
    for (const { first, steps } of now)
      for (const [index, step] of steps.entries()) fresh.set(first + index, step);
    let count = 0;
    for (const { first, steps } of before) {
      for (const [index, step] of steps.entries()) {
        const number = first + index;
        const other = fresh.get(number);
        count++;
        if (!other || !isSameStep(step, other)) this.changed.add(number);
        this.other ||= !other || !doesTheSame(step, other);
      }
    }
    this.other ||= count !== fresh.size;
  }
}

function isSameStep(a: StepRef, b: StepRef): boolean {
  return a.action === b.action && a.within === b.within && a.round === b.round && alike(a.shown, b.shown);
}

/** The same for whoever asks whether a step was needed. */
function doesTheSame(a: StepRef, b: StepRef): boolean {
  const says = ({ action }: StepRef) =>
    `${action.verb} ${action.fresh ?? ''} ${action.tails.some(({ tail }) => tail === 'and discard')}`;
  return (
    a.action === b.action || (says(a) === says(b) && a.within === b.within && alike(a.touched, b.touched))
  );
}
