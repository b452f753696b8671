/**
 * The state of the machine for all cases at once. A variable is one aspect of one item (an item is a thing
 * at one position). Nearly always a variable has one value in every case: then it is a byte in an array. Where
 * cases differ it is split into entries, each a value with the set of cases in which it is so. Entries with
 * equal values join again by themselves.
 *
 * Not here: what actions do (see actions/), what a value means to a reader.
 */
import type { CaseSet, Cases } from './cases.ts';
import { NONE } from './cases.ts';
import type { Recorder } from './recorder.ts';

/** A value and the cases in which it holds, and the step that made it so (-1: so from the start). */
export interface Entry {
  value: number;
  cases: CaseSet;
  since: number;
  /** Taken to be so after a finding: never the ground of another one. */
  assumed: boolean;
}

/** A variable as it was; a number holds its value, whether that was assumed, and the step. */
export type Saved = number | readonly Entry[];
/** No value is as large as this. */
const ASSUMED = 64;
const SINCE = 2 * ASSUMED;

/** The same value in the same cases, by the same steps. */
export function sameSaved(a: Saved, b: Saved): boolean {
  if (a === b) return true;
  if (typeof a === 'number' || typeof b === 'number' || a.length !== b.length) return false;
  return a.every((one, index) => {
    const other = b[index]!;
    return (
      one.value === other.value &&
      one.cases === other.cases &&
      one.since === other.since &&
      one.assumed === other.assumed
    );
  });
}

/** Entries of one variable that are told apart by the step that made them, */
const MOST_ENTRIES = 32;
/** and once the diagram of cases is as large as this. */
const FEWER_ENTRIES = 8;
const MANY_NODES = 30_000;

export class State {
  /** Variables that were written, for whoever wants to know. */
  changed: Set<number> | undefined;
  /** Where somebody wants to take back what is written. */
  recorder: Recorder | undefined;
  private readonly value: Uint8Array;
  /** The number of the step, and 1 more: 0 is from the start. */
  private readonly since: Int32Array;
  private readonly assumed: Uint8Array;
  private readonly split: Map<number, Entry[]>;
  private readonly cases: Cases;
  /** The cases in which the thing of a variable exists. */
  private readonly exists: (variable: number) => CaseSet;

  constructor(size: number, cases: Cases, exists: (variable: number) => CaseSet, from?: State) {
    this.cases = cases;
    this.exists = exists;
    this.value = from ? from.value.slice() : new Uint8Array(size);
    this.since = from ? from.since.slice() : new Int32Array(size);
    this.assumed = from ? from.assumed.slice() : new Uint8Array(size);
    this.split = new Map();
    if (from) for (const [variable, entries] of from.split) this.split.set(variable, entries);
  }

  copy(): State {
    return new State(this.value.length, this.cases, this.exists, this);
  }

  /** The variable is 0 in every case. */
  isZero(variable: number): boolean {
    return this.value[variable] === 0 && (this.split.size === 0 || !this.split.has(variable));
  }

  /** The cases among `within` in which the variable has a value of the mask (bit n for value n). */
  where(variable: number, mask: number, within: CaseSet): CaseSet {
    this.recorder?.read(variable);
    const entries = this.split.get(variable);
    if (!entries)
      return (mask >>> this.value[variable]!) & 1 ? this.cases.and(within, this.exists(variable)) : NONE;
    let result: CaseSet = NONE;
    for (const entry of entries) {
      if ((mask >>> entry.value) & 1) result = this.cases.or(result, this.cases.and(entry.cases, within));
    }
    return result;
  }

  /** The entries that matter within a set of cases, each cut down to it. */
  entries(variable: number, within: CaseSet): Entry[] {
    this.recorder?.read(variable);
    const entries = this.split.get(variable) ?? [this.whole(variable)];
    const result: Entry[] = [];
    for (const entry of entries) {
      const cases = this.cases.and(entry.cases, within);
      if (cases !== NONE) result.push(cases === entry.cases ? entry : { ...entry, cases });
    }
    return result;
  }

  set(variable: number, value: number, within: CaseSet, since: number, assumed = false): void {
    const exists = this.exists(variable);
    const cases = this.cases.and(within, exists);
    if (cases === NONE) return;
    this.changed?.add(variable);
    this.recorded(variable);
    if (cases === exists) {
      this.split.delete(variable);
      this.value[variable] = value;
      this.since[variable] = since + 1;
      this.assumed[variable] = assumed ? 1 : 0;
      return;
    }
    const before = this.split.get(variable) ?? [this.whole(variable)];
    const after: Entry[] = [];
    const crowded = before.length > this.most();
    for (const entry of before) {
      const left = this.cases.minus(entry.cases, cases);
      if (left === NONE) continue;
      const rest = left === entry.cases ? entry : { ...entry, cases: left };
      if (crowded) this.add(after, rest);
      else after.push(rest);
    }
    this.add(after, { value, cases, since, assumed });
    this.store(variable, after);
  }

  /** True where both states have the same values in the same cases (who made them so does not count). */
  equals(other: State): boolean {
    for (let variable = 0; variable < this.value.length; variable++) {
      const mine = this.split.get(variable);
      const theirs = other.split.get(variable);
      if (!mine && !theirs) {
        if (this.value[variable] !== other.value[variable]) return false;
        continue;
      }
      const a = this.byValue(mine ?? [this.whole(variable)]);
      const b = this.byValue(theirs ?? [other.whole(variable)]);
      if (a.size !== b.size) return false;
      for (const [value, cases] of a) if (b.get(value) !== cases) return false;
    }
    return true;
  }

  private byValue(entries: readonly Entry[]): Map<number, CaseSet> {
    const result = new Map<number, CaseSet>();
    for (const { value, cases } of entries)
      result.set(value, this.cases.or(result.get(value) ?? NONE, cases));
    return result;
  }

  /** How things stand now counts as the start: no step of this procedure made it so. What was assumed stays so. */
  settle(): void {
    this.since.fill(0);
    for (const [variable, entries] of [...this.split]) {
      const after: Entry[] = [];
      for (const entry of entries) this.add(after, { ...entry, since: -1 });
      this.store(variable, after);
    }
  }

  /** What was found on this axis no longer tells cases apart. */
  forget(axis: number): void {
    for (const [variable, entries] of [...this.split]) {
      const after: Entry[] = [];
      for (const entry of entries)
        this.add(after, {
          ...entry,
          cases: this.cases.forget(entry.cases, axis),
        });
      this.store(variable, after);
    }
  }

  private recorded(variable: number): void {
    const { recorder } = this;
    if (!recorder) return;
    recorder.read(variable);
    if (!recorder.variables.has(variable)) recorder.variables.set(variable, this.saved(variable));
  }

  /** All there is to a variable: one number where it is the same in every case. */
  saved(variable: number): Saved {
    return (
      this.split.get(variable) ??
      this.value[variable]! + this.assumed[variable]! * ASSUMED + this.since[variable]! * SINCE
    );
  }

  /** Puts back what was saved. */
  restore(variable: number, saved: Saved): void {
    if (typeof saved !== 'number') {
      this.split.set(variable, saved as Entry[]);
      return;
    }
    this.split.delete(variable);
    this.value[variable] = saved % ASSUMED;
    this.assumed[variable] = Math.floor(saved / ASSUMED) % 2;
    this.since[variable] = Math.floor(saved / SINCE);
  }

  private most(): number {
    return this.cases.size < MANY_NODES ? MOST_ENTRIES : FEWER_ENTRIES;
  }

  private whole(variable: number): Entry {
    return {
      value: this.value[variable]!,
      cases: this.exists(variable),
      since: this.since[variable]! - 1,
      assumed: this.assumed[variable] === 1,
    };
  }

  /**
   * Entries of the same value by the same step are one. By different steps they stay apart, so that a finding
   * is placed at the step of its own case, until there are too many: then only the value counts.
   */
  private add(entries: Entry[], entry: Entry): void {
    const crowded = entries.length >= this.most();
    const same = entries.findIndex(
      (other) =>
        other.value === entry.value &&
        other.assumed === entry.assumed &&
        (other.since === entry.since || (crowded && other.since < 0 === entry.since < 0)),
    );
    if (same < 0) entries.push(entry);
    else {
      const other = entries[same]!;
      entries[same] = {
        ...other,
        cases: this.cases.or(other.cases, entry.cases),
        since: Math.max(other.since, entry.since),
      };
    }
  }

  private store(variable: number, entries: Entry[]): void {
    this.recorded(variable);
    const only = entries[0];
    if (entries.length === 1 && only && only.cases === this.exists(variable)) {
      this.split.delete(variable);
      this.value[variable] = only.value;
      this.since[variable] = only.since + 1;
      this.assumed[variable] = only.assumed ? 1 : 0;
    } else this.split.set(variable, entries);
  }
}
