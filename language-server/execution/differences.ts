/** Where the state, as it is now, is other than it was at the same place before an edit: what it was there. */
import type { Journal } from './journal.ts';
import { alike } from './memory.ts';
import type { Tracked } from './recorder.ts';
import { type Saved, type State, sameSaved } from './state.ts';

export class Differences {
  private readonly variables = new Map<number, Saved>();
  private readonly cells = new Map<Tracked<unknown, unknown>, Map<unknown, unknown>>();
  private readonly state: State;
  /** Of this map only counts what is in it, not what it leads to. */
  private readonly present: Tracked<unknown, unknown>;

  /** By item, how many of its variables differ. */
  private readonly items: Uint8Array;

  constructor(state: State, items: number, present: Tracked<unknown, unknown>) {
    this.state = state;
    this.items = new Uint8Array(items);
    this.present = present;
  }

  /** A part that meets these items, looks into these maps and wrote this may come out otherwise. */
  touch(items: Int32Array, maps: readonly Tracked<unknown, unknown>[], { cells }: Journal): boolean {
    if (this.variables.size > 0)
      for (let index = 0; index < items.length; index++) if (this.items[items[index]!]! > 0) return true;
    if (this.cells.size === 0) return false;
    if (maps.some((map) => map !== this.present && this.cells.has(map))) return true;
    const known = this.cells.get(this.present);
    return known !== undefined && cells.some(({ map, key }) => map === this.present && known.has(key));
  }

  get none(): boolean {
    return this.variables.size === 0 && this.cells.size === 0;
  }

  /** The parts `before` were done then, `now` were done now in their place. */
  after(before: readonly Journal[], now: readonly Journal[]): void {
    const was = new Map<number, Saved>();
    for (const journal of before) journal.each((variable, _, after) => was.set(variable, after));
    const first = new Map<number, Saved>();
    for (const journal of now)
      journal.each((variable, earlier) => {
        if (!first.has(variable)) first.set(variable, earlier);
      });
    for (const [variable, earlier] of first)
      if (!was.has(variable)) was.set(variable, this.variables.get(variable) ?? earlier);
    for (const [variable, then] of was) {
      if (!sameSaved(then, this.state.saved(variable))) {
        if (!this.variables.has(variable)) this.count(variable, 1);
        this.variables.set(variable, then);
      } else if (this.variables.delete(variable)) this.count(variable, -1);
    }
    this.cellsAfter(before, now);
  }

  private count(variable: number, more: number): void {
    const item = variable % this.items.length;
    this.items[item] = this.items[item]! + more;
  }

  private cellsAfter(before: readonly Journal[], now: readonly Journal[]): void {
    const was = new Map<Tracked<unknown, unknown>, Map<unknown, unknown>>();
    const of = (map: Tracked<unknown, unknown>) => {
      let keys = was.get(map);
      if (!keys) {
        keys = new Map();
        was.set(map, keys);
      }
      return keys;
    };
    for (const { cells } of before) for (const { map, key, after } of cells) of(map).set(key, after);
    for (const { cells } of now) {
      for (const { map, key, before: earlier } of cells) {
        const keys = of(map);
        const known = this.cells.get(map);
        if (!keys.has(key)) keys.set(key, known?.has(key) ? known.get(key) : earlier);
      }
    }
    for (const [map, keys] of was) {
      const other = this.cells.get(map) ?? new Map<unknown, unknown>();
      for (const [key, then] of keys) {
        if (this.isSame(map, then, map.get(key))) other.delete(key);
        else other.set(key, then);
      }
      if (other.size > 0) this.cells.set(map, other);
      else this.cells.delete(map);
    }
  }

  private isSame(map: Tracked<unknown, unknown>, a: unknown, b: unknown): boolean {
    return map === this.present ? (a === undefined) === (b === undefined) : alike(a, b);
  }
}
