/**
 * What one part of a procedure looks at and what it writes over, each with what was there before: enough to take the
 * part back, and to tell whether it would come out otherwise. A variable of the state is a number (see State), anything
 * else a key of a map. Values are never changed once written.
 */

/** A map that tells a recorder what is looked at, and what is about to be written over. */
export class Tracked<Key, Value> extends Map<Key, Value> {
  recorder: Recorder | undefined;

  override get(key: Key): Value | undefined {
    this.recorder?.readMap(this as Tracked<unknown, unknown>);
    return super.get(key);
  }

  override has(key: Key): boolean {
    this.recorder?.readMap(this as Tracked<unknown, unknown>);
    return super.has(key);
  }

  override keys(): MapIterator<Key> {
    this.recorder?.readMap(this as Tracked<unknown, unknown>);
    return super.keys();
  }

  override [Symbol.iterator](): MapIterator<[Key, Value]> {
    this.recorder?.readMap(this as Tracked<unknown, unknown>);
    return super[Symbol.iterator]();
  }

  override set(key: Key, value: Value): this {
    this.recorder?.cell(this as Tracked<unknown, unknown>, key, super.get(key));
    return super.set(key, value);
  }

  override delete(key: Key): boolean {
    this.recorder?.cell(this as Tracked<unknown, unknown>, key, super.get(key));
    return super.delete(key);
  }

  /** Puts back what was there, unseen. */
  restore(key: Key, value: Value | undefined): void {
    if (value === undefined) super.delete(key);
    else super.set(key, value);
  }
}

export interface Cell {
  readonly map: Tracked<unknown, unknown>;
  readonly key: unknown;
  /** undefined: not there. */
  readonly before: unknown;
}

export class Recorder {
  /** Variable -> what it was. */
  readonly variables = new Map<number, unknown>();
  readonly cells: Cell[] = [];
  /** Items of which anything was looked at or written. */
  readonly items: number[] = [];
  /** Maps in which anything was looked at. */
  readonly maps: Tracked<unknown, unknown>[] = [];
  private readonly seen = new Map<Tracked<unknown, unknown>, Set<unknown>>();
  /** By item, the part that met it last. */
  private readonly met: Uint32Array;
  private part = 0;

  constructor(items: number) {
    this.met = new Uint32Array(items);
  }

  /** A new part begins. */
  begin(): void {
    this.part++;
    this.variables.clear();
    this.seen.clear();
    this.cells.length = 0;
    this.items.length = 0;
    this.maps.length = 0;
  }

  read(variable: number): void {
    const { met, part } = this;
    const item = variable % met.length;
    if (met[item] === part) return;
    met[item] = part;
    this.items.push(item);
  }

  readMap(map: Tracked<unknown, unknown>): void {
    if (!this.maps.includes(map)) this.maps.push(map);
  }

  cell(map: Tracked<unknown, unknown>, key: unknown, before: unknown): void {
    let keys = this.seen.get(map);
    if (!keys) {
      keys = new Set();
      this.seen.set(map, keys);
    }
    if (keys.has(key)) return;
    keys.add(key);
    this.cells.push({ map, key, before });
  }
}
