/**
 * What looks on while a procedure is carried out, and finds what is no state of the machine: notices that are missing,
 * weights too heavy to lift, energy that can come back. It reads the state before and after each action and never
 * changes it.
 */
import type { Action, Notice } from '../../grammar/syntax/tree.ts';

export interface Watcher {
  notice?(notice: Notice, file: string): void;
  /** Work on a task, or on a procedure that this one uses, begins and ends. */
  enter?(): void;
  leave?(): void;
  /** `items` are those of the objects, in order. The action is not carried out yet. */
  before?(action: Action, file: string, items: readonly number[]): void;
  after?(action: Action, items: readonly number[]): void;
  /** Everything was carried out: the facts are due. */
  finish?(): void;
}
