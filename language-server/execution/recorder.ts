/**
 * What was written while one part of a procedure was carried out, each with what was there before: enough to take the
 * part back. A variable of the state is a number (see State), anything else a key of a map. Values are never changed
 * once written.
 */

/** A map that tells a recorder what is about to be written over. */
export class Tracked<Key, Value> extends Map<Key, Value> {
  recorder: Recorder | undefined;

  override set(key: Key, value: Value): this {
    this.recorder?.cell(this as Tracked<unknown, unknown>, key);
    return super.set(key, value);
  }

  override delete(key: Key): boolean {
    this.recorder?.cell(this as Tracked<unknown, unknown>, key);
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
  private readonly seen = new Map<Tracked<unknown, unknown>, Set<unknown>>();

  cell(map: Tracked<unknown, unknown>, key: unknown): void {
    let keys = this.seen.get(map);
    if (!keys) {
      keys = new Set();
      this.seen.set(map, keys);
    }
    if (keys.has(key)) return;
    keys.add(key);
    this.cells.push({ map, key, before: map.get(key) });
  }
}
