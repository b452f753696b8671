/**
 * What looks on while a procedure is carried out, and finds what is no state of the machine: notices that are missing,
 * weights too heavy to lift, energy that can come back. It reads the state before and after each action and never
 * changes it.
 */
import type { Action, Notice } from '../../grammar/syntax/tree.ts';
import type { CaseSet } from './cases.ts';

export interface Watcher {
  /**
   * What it knows so far, as plain data that goes on changing with it, and taking up again what was known. A watcher
   * without these has to see a procedure from its beginning.
   */
  memory?(): unknown;
  recall?(memory: unknown): void;
  notice?(notice: Notice, file: string): void;
  /** Work on a task, or on a procedure that this one uses, begins and ends. */
  enter?(): void;
  leave?(): void;
  /** `items` are those of the objects, in order. The action is not carried out yet. */
  before?(action: Action, file: string, items: readonly number[]): void;
  after?(action: Action, items: readonly number[]): void;
  /** The same for each group of objects that are done together, one group after the other. */
  beforeEach?(action: Action, file: string, items: readonly number[]): void;
  afterEach?(): void;
  /** Things stand as the procedure finds them; what an earlier one did is over. */
  begun?(): void;
  /** A procedure that is printed elsewhere was done. */
  printedElsewhere?(): void;
  /** Everything was carried out: the facts are due. `finished`: the cases in which the text is complete. */
  finish?(finished: CaseSet): void;
}
