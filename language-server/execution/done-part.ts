/** A part of a procedure that was carried out: what it did, what it found, what that rests on, where it left off. */
import type { Fact } from '../model/facts.ts';
import type { Marks } from './flow.ts';
import type { Journal } from './journal.ts';
import type { Tracked } from './recorder.ts';
import type { StepRef } from './steps.ts';

/** Where an execution stands, but for the state of things. */
export interface Stand {
  readonly marks: Marks;
  /** Of each watcher. */
  readonly memories: readonly unknown[];
}

/** A part that was carried out. */
export interface Done {
  /** The number that its first step has, or would have, and that of its last. */
  readonly first: number;
  readonly last: number;
  readonly steps: readonly StepRef[];
  readonly journal: Journal;
  readonly facts: readonly Fact[];
  /** Earlier steps that it looked up. */
  readonly reads: ReadonlySet<number>;
  /** Items of which it looked at anything, or wrote anything. */
  readonly items: Int32Array;
  /** Maps in which it looked at anything. */
  readonly maps: readonly Tracked<unknown, unknown>[];
  readonly uses: ReadonlySet<string>;
  readonly asked: readonly number[];
  readonly followed: number;
  readonly after: Stand;
}

/** The highest number that is its own. */
export function lastOf({ first, last }: Done): number {
  return Math.max(first, last);
}
