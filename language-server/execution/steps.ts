/**
 * The steps that were carried out, each with a number that grows from one to the next. Numbers may have gaps: a
 * procedure that is being edited keeps those of the steps that are not touched (see kept-execution.ts).
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Place } from '../report/finding.ts';
import type { CaseSet } from './cases.ts';

export interface StepRef {
  action: Action;
  file: string;
  within: CaseSet;
  /** Where to show it, where it belongs to a procedure that this one uses. */
  shown: Place | undefined;
  /** Every item that the step names. */
  touched: readonly number[];
  /** More than 0 in the further rounds of a repeat. */
  round: number;
}

export class Steps {
  /** The number of the present step; -1 before the first. */
  last = -1;
  /** Where somebody asks for it: the numbers of steps before the present part that are looked up. */
  readsOf: { from: number; numbers: Set<number> } | undefined;
  private readonly byNumber = new Map<number, StepRef>();

  add(step: StepRef): void {
    this.last++;
    this.byNumber.set(this.last, step);
  }

  at(number: number): StepRef | undefined {
    const reads = this.readsOf;
    if (reads && number < reads.from) reads.numbers.add(number);
    return this.byNumber.get(number);
  }

  get present(): StepRef | undefined {
    return this.byNumber.get(this.last);
  }

  /** Takes the present step back: the one with the number before it is the present one again. */
  takeBack(): void {
    this.byNumber.delete(this.last);
    this.last--;
  }

  clear(): void {
    this.byNumber.clear();
    this.last = -1;
  }

  forget(number: number): void {
    this.byNumber.delete(number);
  }

  /** In the order of their numbers, where none was put in between. */
  entries(): IterableIterator<[number, StepRef]> {
    return this.byNumber.entries();
  }

  values(): IterableIterator<StepRef> {
    return this.byNumber.values();
  }
}
