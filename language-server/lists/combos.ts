/**
 * The combinations of variants and choices that readers can be in, counted one by one, and sets of them as sets of
 * numbers: which combinations a step is for, and how to say that in the fewest words. Only axes that the job asks
 * about are told apart; where there are still too many combinations, the last ones asked about are left out.
 */
import type { Choice, Condition } from '../../grammar/syntax/tree.ts';
import { type CaseSet, EVERY, NONE } from '../execution/cases.ts';
import type { Model } from '../model/model.ts';
import type { Axis, Say, Selection, When } from './types.ts';

/** More combinations than this are not told apart. */
const MOST = 4096;

/** A set of combinations: true for each that is in it. */
export type Combos = readonly boolean[];

export class Combinations {
  readonly axes: readonly Axis[];
  /** For each combination the index of the value on each axis. */
  readonly all: readonly (readonly number[])[];
  private readonly model: Model;
  private readonly say: Say;

  /** `asked`: names of the variants that the job asks about; `choices` are the technician's own. */
  constructor(model: Model, asked: readonly string[], choices: readonly Choice[], say: Say) {
    this.model = model;
    this.say = say;
    const axes: Axis[] = [];
    let count = 1;
    const add = (id: string, kind: Axis['kind'], values: readonly string[]) => {
      if (values.length < 2 || count * values.length > MOST || axes.some((one) => one.id === id)) return;
      count *= values.length;
      axes.push({
        id,
        kind,
        label: spoken(id),
        // `single-phase` is a word; it keeps its hyphen.
        values: values.map((value) => ({ id: value, label: value })),
      });
    };
    for (const [name, { values }] of model.variants) if (asked.includes(name)) add(name, 'variant', values);
    for (const { name, values } of choices) {
      if (name)
        add(
          name.text,
          'choice',
          values.map(({ text }) => text),
        );
    }
    this.axes = axes;
    this.all = this.product(axes).filter((combo) => this.built(combo));
  }

  get every(): Combos {
    return this.all.map(() => true);
  }

  /** The combinations that are built and lie in a set of the model. */
  of(set: CaseSet): Combos {
    if (set === EVERY) return this.every;
    const { cases } = this.model;
    return this.all.map((combo) => cases.and(this.setOf(combo), set) !== NONE);
  }

  /** The combinations in which the condition on axes holds; undefined where it asks about something else too. */
  where(condition: Condition | undefined): Combos | undefined {
    if (!condition) return undefined;
    if (condition.kind === 'and') {
      let result: Combos = this.every;
      for (const part of condition.parts) {
        const one = this.where(part);
        if (!one) return undefined;
        result = and(result, one);
      }
      return result;
    }
    if (condition.kind !== 'axis') return undefined;
    const index = this.axes.findIndex(({ id }) => id === condition.axis.text);
    if (index < 0) return undefined;
    const wanted = condition.values.map(({ text }) => text);
    const { values } = this.axes[index]!;
    return this.all.map((combo) => wanted.includes(values[combo[index]!]!.id) !== condition.negated);
  }

  /** The set in words and for programs; undefined where it is all of `within`. */
  when(set: Combos, within: Combos = this.every): When | undefined {
    if (within.every((inside, index) => !inside || set[index])) return undefined;
    const any = this.selections(set, within);
    return { sentence: any.map((one) => this.words(one)).join(this.say('when.or')), any };
  }

  /** All combinations as selections, where not every one is built. */
  selectionsOf(set: Combos): Selection[] {
    return set.every(Boolean) && this.all.length === this.product(this.axes).length
      ? []
      : this.selections(
          set,
          this.all.map(() => false),
        );
  }

  /** The set as products of values; what is outside `within` may be in or out. */
  private selections(set: Combos, within: Combos): Selection[] {
    const strict = within.every((inside) => !inside);
    const left = new Set<number>();
    set.forEach((isIn, index) => {
      if (isIn && (strict || within[index])) left.add(index);
    });
    const result: Selection[] = [];
    while (left.size > 0) {
      const first: number = [...left][0]!;
      const values = this.axes.map((_, axis) => new Set<number>([this.all[first]![axis]!]));
      // Widen the product axis by axis as long as nothing gets in that is not in the set.
      this.axes.forEach((axis, at) => {
        for (const value of axis.values.keys()) {
          if (values[at]!.has(value)) continue;
          const wider = values.map((some, index) => (index === at ? new Set([...some, value]) : some));
          const added = this.all.flatMap((combo, index) => (inside(combo, wider) ? [index] : []));
          const harmless = added.every((index) => set[index] || (!strict && !within[index]));
          if (harmless) values[at]!.add(value);
        }
      });
      const selection: Selection = {};
      this.axes.forEach((axis, at) => {
        const some = values[at]!;
        if (some.size < axis.values.length)
          selection[axis.id] = axis.values.flatMap(({ id }, value) => (some.has(value) ? [id] : []));
      });
      result.push(selection);
      for (const index of [...left]) if (inside(this.all[index]!, values)) left.delete(index);
    }
    return result;
  }

  private words(selection: Selection): string {
    const parts = Object.entries(selection).map(([id, ids]) => {
      const axis = this.axes.find((one) => one.id === id)!;
      const labels = axis.values.filter((value) => ids.includes(value.id)).map(({ label }) => label);
      const values = labels.join(this.say('when.or'));
      return this.say(axis.kind === 'choice' ? 'when.choice' : 'when.variant', { axis: axis.label, values });
    });
    return this.say('when.if', { parts: parts.join(this.say('when.and')) });
  }

  private product(axes: readonly Axis[]): number[][] {
    let result: number[][] = [[]];
    for (const { values } of axes)
      result = result.flatMap((combo) => values.map((_, value) => [...combo, value]));
    return result;
  }

  private built(combo: readonly number[]): boolean {
    return this.model.cases.and(this.setOf(combo), this.model.built) !== NONE;
  }

  private setOf(combo: readonly number[]): CaseSet {
    const { cases, variants } = this.model;
    let set: CaseSet = EVERY;
    this.axes.forEach(({ id, kind }, index) => {
      const variant = kind === 'variant' ? variants.get(id) : undefined;
      if (variant) set = cases.and(set, cases.oneOf(variant.axis, [combo[index]!]));
    });
    return set;
  }
}

export function and(a: Combos, b: Combos): Combos {
  return a.map((one, index) => one && b[index]!);
}

export function or(a: Combos, b: Combos): Combos {
  return a.map((one, index) => one || b[index]!);
}

export function minus(a: Combos, b: Combos): Combos {
  return a.map((one, index) => one && !b[index]!);
}

export function isNone(a: Combos): boolean {
  return !a.includes(true);
}

/** A name as words for a reader. */
export function spoken(name: string): string {
  return name.replaceAll('-', ' ');
}

function inside(combo: readonly number[], values: readonly ReadonlySet<number>[]): boolean {
  return combo.every((value, axis) => values[axis]!.has(value));
}
