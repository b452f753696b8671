/**
 * A shortcut for many texts that differ little from one right text. What stands before the edit need not be run
 * again: its cases are known. And where, after the edit, the cases are the same as they were at the same place of
 * the right text, nothing that follows can be wrong, because the right text was right.
 */
import type { Case } from './flow.ts';
import { sameCase } from './flow.ts';
import type { Statement } from './shape.ts';
import { differingItem } from './state.ts';

export interface Trace {
  positions: ReadonlyMap<string, boolean>;
  /** The cases after each plain statement, by where the statement ends in the text. */
  after: Map<number, Case[]>;
}

/** Where a text differs from the right one. */
export interface Edit {
  /** Characters that are the same from the start, and from the end. */
  head: number;
  tail: number;
  /** Of the edited text. */
  length: number;
  /** How much longer the right one is. */
  shift: number;
}

export function editBetween(right: string, edited: string): Edit {
  const most = Math.min(right.length, edited.length);
  const shift = right.length - edited.length;
  let head = 0;
  while (head < most && right.charCodeAt(head) === edited.charCodeAt(head)) head++;
  let tail = 0;
  const same = (back: number) =>
    right.charCodeAt(right.length - 1 - back) === edited.charCodeAt(edited.length - 1 - back);
  while (tail < most - head && same(tail)) tail++;
  return { head, tail, length: edited.length, shift };
}

export class Comparison {
  private readonly trace: Trace;
  private readonly edit: Edit;
  private last: number | undefined;
  private running = false;
  /** The item that differed when last looked: it is the likeliest to differ still. */
  private different: number | undefined;

  constructor(trace: Trace, edit: Edit) {
    this.trace = trace;
    this.edit = edit;
  }

  /** Where controls stand at the start is read from the whole text; with an edit it may be another place. */
  samePositions(positions: ReadonlyMap<string, boolean>): boolean {
    const before = this.trace.positions;
    return positions.size === before.size && [...positions].every(([name, at]) => before.get(name) === at);
  }

  /** True where the statement stands before the edit, so that its outcome is known. */
  skips(statement: Statement): boolean {
    if (this.running || statement.end > this.edit.head || !this.trace.after.has(statement.end)) return false;
    this.last = statement.end;
    return true;
  }

  /** The cases after what was skipped; once, when the first statement is run that was not. */
  resume(): readonly Case[] | undefined {
    if (this.running) return undefined;
    this.running = true;
    return this.last === undefined ? undefined : this.trace.after.get(this.last);
  }

  /** True where the rest of the text and the cases are as they were in the right text. */
  isAsBefore(statement: Statement, cases: readonly Case[]): boolean {
    if (this.edit.length - statement.end > this.edit.tail) return false;
    const before = this.trace.after.get(statement.end + this.edit.shift);
    if (before?.length !== cases.length) return false;
    if (before.length > 0) {
      this.different = differingItem(before[0]!.work.state, cases[0]!.work.state, this.different);
      if (this.different !== undefined) return false;
    }
    return before.every((one, index) => sameCase(one, cases[index]!));
  }
}
