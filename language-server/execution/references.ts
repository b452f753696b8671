/**
 * What a reference stands for where it is carried out: loop variables are filled in, a misspelt name is taken to mean the
 * thing with the nearest one. What is wrong with a name is said elsewhere (../model/procedure-names.ts).
 */
import type { Ref, Statement } from '../../grammar/syntax/tree.ts';
import { itemsOf } from '../model/items.ts';
import type { Model, Thing } from '../model/model.ts';
import { nearest, sameButForNumber } from '../model/names.ts';

/** Steps of a `for each` that are written out at the most. */
export const MOST_EACH = 500;

type Over = NonNullable<Extract<Statement, { kind: 'for each' }>['over']>;

export class References {
  private readonly model: Model;
  /** Values of loop variables. */
  private readonly values = new Map<string, string>();
  private readonly near = new Map<string, string | undefined>();

  constructor(model: Model) {
    this.model = model;
  }

  /** The value of a loop variable; any other name is itself. */
  bound(name: string): string {
    return this.values.get(name) ?? name;
  }

  /** `round` for each value of the variable; what it stood for before, it stands for afterwards. */
  forEach(variable: string, over: Over, round: (value: string) => void): void {
    const before = this.values.get(variable);
    for (const value of this.valuesOf(over)) {
      this.values.set(variable, value);
      round(value);
    }
    if (before === undefined) this.values.delete(variable);
    else this.values.set(variable, before);
  }

  /** The items, or undefined where it names nothing. */
  resolve(ref: Ref): { items: readonly number[] } | undefined {
    const name = this.bound(ref.name.text);
    const thing = this.model.byName.get(name) ?? this.meant(name);
    if (!thing) return undefined;
    if (ref.positions.length === 0) return itemsOf(thing, ref);
    const positions = ref.positions.map((position) => ({
      ...position,
      from: this.bound(position.from),
      ...(position.to === undefined ? {} : { to: this.bound(position.to) }),
    }));
    const { items, unknown } = itemsOf(thing, { ...ref, positions });
    // A position that the group does not have is one finding; the step is taken to mean the group.
    return { items: items.length === 0 && unknown ? itemsOf(thing, { ...ref, positions: [] }).items : items };
  }

  private valuesOf(over: Over): string[] {
    if (over.kind === 'numbers') {
      const count = Math.min(Math.max(over.to - over.from + 1, 0), MOST_EACH);
      return Array.from({ length: count }, (_, index) => String(over.from + index));
    }
    if (over.kind === 'names') return over.names.map((name) => name.text);
    const thing = this.model.byName.get(over.ref.name.text);
    return thing ? itemsOf(thing, over.ref).items.map((item) => thing.positions[item - thing.first]!) : [];
  }

  /** A misspelt name is one finding; the step is taken to mean the thing with the nearest name. */
  private meant(name: string): Thing | undefined {
    const { byName } = this.model;
    if (!this.near.has(name))
      this.near.set(name, nearest(name, byName.keys()) ?? sameButForNumber(name, byName.keys()));
    const near = this.near.get(name);
    return near === undefined ? undefined : byName.get(near);
  }
}
