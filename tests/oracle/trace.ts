/**
 * A shortcut for many texts that differ little from one right text. What stands before the edit need not be run
 * again: its cases are known. And where, after the edit, the cases are the same as they were at the same place of
 * the right text, nothing that follows can be wrong, because the right text was right.
 */
import type { Case } from './flow.ts';
import { sameCase } from './flow.ts';
import type { Statement } from './shape.ts';

export interface Trace {
  positions: ReadonlyMap<string, boolean>;
  /** The cases after each plain statement, by where the statement ends in the text. */
  after: Map<number, Case[]>;
}

export class Comparison {
  private readonly trace: Trace;
  /** Characters that are the same from the start, and from the end. */
  private readonly head: number;
  private readonly tail: number;
  private readonly length: number;
  private readonly shift: number;
  private last: number | undefined;
  private running = false;

  constructor(trace: Trace, right: string, edited: string) {
    this.trace = trace;
    this.length = edited.length;
    this.shift = right.length - edited.length;
    const most = Math.min(right.length, edited.length);
    let head = 0;
    while (head < most && right[head] === edited[head]) head++;
    let tail = 0;
    while (tail < most - head && right.at(-1 - tail) === edited.at(-1 - tail)) tail++;
    this.head = head;
    this.tail = tail;
  }

  /** Where controls stand at the start is read from the whole text; with an edit it may be another place. */
  samePositions(positions: ReadonlyMap<string, boolean>): boolean {
    const before = this.trace.positions;
    return positions.size === before.size && [...positions].every(([name, at]) => before.get(name) === at);
  }

  /** True where the statement stands before the edit, so that its outcome is known. */
  skips(statement: Statement): boolean {
    if (this.running || statement.end > this.head || !this.trace.after.has(statement.end)) return false;
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
    if (this.length - statement.end > this.tail) return false;
    const before = this.trace.after.get(statement.end + this.shift);
    return before?.length === cases.length && before.every((one, index) => sameCase(one, cases[index]!));
  }
}
