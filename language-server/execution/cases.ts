/**
 * Sets of cases. A case is one value for every axis (a variant, something seen, an outcome, a choice); a set
 * of cases is a node of a multi-valued decision diagram with shared nodes, so that equal sets are equal
 * numbers and two hundred axes cost nothing where they do not meet. Invariants: children are never all equal,
 * axes grow downwards, nodes are never changed once made.
 *
 * Bryant, "Graph-based algorithms for Boolean function manipulation" (1986), with n children instead of two.
 */

/** A set of cases: a node number. `NONE` is the empty set, `EVERY` all cases. */
export type CaseSet = number;
export const NONE: CaseSet = 0;
export const EVERY: CaseSet = 1;

export interface Axis {
  /** What tells two axes apart, for example `variant supply`. */
  key: string;
  /** One phrase for each value, as a reader says it: `supply is single-phase`. */
  phrases: readonly string[];
}

/** One axis of a case with its value. */
export interface Named {
  axis: number;
  value: number;
}

/** Nodes looked at for the shortest case, before the shortest way through the diagram is good enough. */
const MOST_SEARCHED = 2_000;

/** A state of the diagram: how many nodes and axes it has. */
export interface CasesMark {
  readonly nodes: number;
  readonly axes: number;
}

export class Cases {
  readonly axes: Axis[] = [];
  /** True once an operation was refused because the diagram grew over its budget. */
  overflowed = false;
  private readonly axisOf: number[] = [Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER];
  private readonly childrenOf: CaseSet[][] = [[], []];
  private readonly unique = new Map<string, CaseSet>();
  private readonly byKey = new Map<string, number>();
  private readonly memo = new Map<number, CaseSet>();
  private readonly complements = new Map<CaseSet, CaseSet>();
  private readonly named = new Map<CaseSet, Named[]>();
  private readonly budget: number;

  constructor(budget = 200_000) {
    this.budget = budget;
  }

  /** How many nodes were made: the measure of work, for counters and budgets. */
  get size(): number {
    return this.axisOf.length;
  }

  /** How far the diagram has grown, to go back to with `rewind`. */
  get mark(): CasesMark {
    return { nodes: this.axisOf.length, axes: this.axes.length };
  }

  /** Forgets every axis and node made since the mark: sets from after it must not be used any more. */
  rewind({ nodes, axes }: CasesMark): void {
    for (let node = nodes; node < this.axisOf.length; node++)
      this.unique.delete(keyOf(this.axisOf[node]!, this.childrenOf[node]!));
    this.axisOf.length = nodes;
    this.childrenOf.length = nodes;
    for (const { key } of this.axes.splice(axes)) this.byKey.delete(key);
    this.memo.clear();
    this.complements.clear();
    this.named.clear();
    this.overflowed = false;
  }

  /** The axis with this key, made where it is not there yet. */
  axis(key: string, phrases: readonly string[]): number {
    const known = this.byKey.get(key);
    if (known !== undefined) return known;
    this.axes.push({ key, phrases });
    this.byKey.set(key, this.axes.length - 1);
    return this.axes.length - 1;
  }

  /** The cases in which `axis` has one of these values. */
  oneOf(axis: number, values: readonly number[]): CaseSet {
    const wanted = new Set(values);
    return this.node(
      axis,
      this.axes[axis]!.phrases.map((_, value) => (wanted.has(value) ? EVERY : NONE)),
    );
  }

  and(a: CaseSet, b: CaseSet): CaseSet {
    if (a === b || b === EVERY) return a;
    if (a === EVERY) return b;
    if (a === NONE || b === NONE) return NONE;
    return this.apply(a < b ? a : b, a < b ? b : a, true);
  }

  or(a: CaseSet, b: CaseSet): CaseSet {
    if (a === b || b === NONE) return a;
    if (a === NONE) return b;
    if (a === EVERY || b === EVERY) return EVERY;
    return this.apply(a < b ? a : b, a < b ? b : a, false);
  }

  not(a: CaseSet): CaseSet {
    if (a === NONE) return EVERY;
    if (a === EVERY) return NONE;
    const known = this.complements.get(a);
    if (known !== undefined) return known;
    const result = this.node(
      this.axisOf[a]!,
      this.childrenOf[a]!.map((child) => this.not(child)),
    );
    this.complements.set(a, result);
    this.complements.set(result, a);
    return result;
  }

  minus(a: CaseSet, b: CaseSet): CaseSet {
    if (a === NONE || b === EVERY || a === b) return NONE;
    if (b === NONE) return a;
    return this.and(a, this.not(b));
  }

  /** The set with one axis forgotten: all cases that agree with one of `a` on every other axis. */
  forget(a: CaseSet, axis: number, memo = new Map<CaseSet, CaseSet>()): CaseSet {
    if (a <= EVERY || this.axisOf[a]! > axis) return a;
    const known = memo.get(a);
    if (known !== undefined) return known;
    const children = this.childrenOf[a]!;
    const result =
      this.axisOf[a] === axis
        ? children.reduce((sum, child) => this.or(sum, child), NONE)
        : this.node(
            this.axisOf[a]!,
            children.map((child) => this.forget(child, axis, memo)),
          );
    memo.set(a, result);
    return result;
  }

  /** Whether the case (a value for each axis) is in the set. */
  holds(a: CaseSet, values: readonly number[]): boolean {
    let node = a;
    while (node > EVERY) node = this.childrenOf[node]![values[this.axisOf[node]!] ?? 0]!;
    return node === EVERY;
  }

  /**
   * A case of `a` that names as few axes as can be: pairs of axis and value, in the order of the axes. Whatever
   * the axes that are not named, it lies in `a` (a shortest prime implicant: the shortest way through the
   * diagram may ask an axis that does not matter). Makes no nodes. Where the search would be long, the shortest
   * way through the diagram is taken.
   */
  smallest(a: CaseSet): readonly Named[] {
    const known = this.named.get(a);
    if (known) return known;
    let shortest = this.shortestWay(a);
    const search = { left: MOST_SEARCHED };
    for (let length = 1; length < shortest.length && search.left > 0; length++)
      shortest = this.within([a], length, search) ?? shortest;
    this.named.set(a, shortest);
    return shortest;
  }

  private shortestWay(a: CaseSet): Named[] {
    const lengths = new Map<CaseSet, number>();
    const way: Named[] = [];
    let node = a;
    while (node > EVERY) {
      const children = this.childrenOf[node]!;
      let best = 0;
      for (let value = 1; value < children.length; value++) {
        if (this.length(children[value]!, lengths) < this.length(children[best]!, lengths)) best = value;
      }
      way.push({ axis: this.axisOf[node]!, value: best });
      node = children[best]!;
    }
    return way;
  }

  /** A case that names at most `length` axes and lies in all of these sets; EVERY is none of them. */
  private within(sets: readonly CaseSet[], length: number, search: { left: number }): Named[] | undefined {
    if (sets.length === 0) return [];
    search.left -= sets.length;
    // A set that is not EVERY leaves out some case, which nothing but a name can keep away.
    if (length === 0 || search.left < 0) return undefined;
    const axis = Math.min(...sets.map((set) => this.axisOf[set]!));
    for (let value = 0; value < this.axes[axis]!.phrases.length; value++) {
      const left = this.after(sets, axis, value);
      const rest = left && this.within(left, length - 1, search);
      if (rest) return [{ axis, value }, ...rest];
    }
    // Not named: it must lie in the set whatever the value.
    const left = this.after(sets, axis);
    return left && this.within(left, length, search);
  }

  /** What is left to lie in once the axis has this value, or any; undefined where no case can. */
  private after(sets: readonly CaseSet[], axis: number, value?: number): CaseSet[] | undefined {
    const left = new Set<CaseSet>();
    for (const set of sets) {
      if (this.axisOf[set] !== axis) left.add(set);
      else if (value !== undefined) left.add(this.childrenOf[set]![value]!);
      else for (const child of this.childrenOf[set]!) left.add(child);
      if (left.has(NONE)) return undefined;
    }
    left.delete(EVERY);
    return [...left];
  }

  /** Steps on the shortest way from a node to EVERY. */
  private length(a: CaseSet, memo: Map<CaseSet, number>): number {
    if (a === EVERY) return 0;
    if (a === NONE) return Number.POSITIVE_INFINITY;
    const known = memo.get(a);
    if (known !== undefined) return known;
    const result = 1 + Math.min(...this.childrenOf[a]!.map((child) => this.length(child, memo)));
    memo.set(a, result);
    return result;
  }

  private apply(a: CaseSet, b: CaseSet, both: boolean): CaseSet {
    // Node numbers stay far below 2^25, so that a pair and the operation fit into one exact number.
    const key = (a * 33_554_432 + b) * 2 + (both ? 1 : 0);
    const known = this.memo.get(key);
    if (known !== undefined) return known;
    const axisA = this.axisOf[a]!;
    const axisB = this.axisOf[b]!;
    const axis = Math.min(axisA, axisB);
    const width = this.axes[axis]!.phrases.length;
    const children: CaseSet[] = [];
    for (let value = 0; value < width; value++) {
      const left = axisA === axis ? this.childrenOf[a]![value]! : a;
      const right = axisB === axis ? this.childrenOf[b]![value]! : b;
      children.push(both ? this.and(left, right) : this.or(left, right));
    }
    const result = this.node(axis, children);
    this.memo.set(key, result);
    return result;
  }

  private node(axis: number, children: CaseSet[]): CaseSet {
    const first = children[0]!;
    if (children.every((child) => child === first)) return first;
    const key = keyOf(axis, children);
    const known = this.unique.get(key);
    if (known !== undefined) return known;
    if (this.axisOf.length >= this.budget) {
      // Over budget the larger set is taken, so that no fault is missed silently; the caller says "undecided".
      this.overflowed = true;
      return EVERY;
    }
    this.axisOf.push(axis);
    this.childrenOf.push(children);
    const made = this.axisOf.length - 1;
    this.unique.set(key, made);
    return made;
  }
}

/** What makes a node: the axis it asks and where each value leads. */
function keyOf(axis: number, children: readonly CaseSet[]): string {
  return `${axis}:${children.join(',')}`;
}
