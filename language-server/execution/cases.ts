/**
 * Sets of cases. A case is one value for every axis (a variant, something seen, an outcome, a choice); a set
 * of cases is a node of a multi-valued decision diagram with shared nodes, so that equal sets are equal
 * numbers and two hundred axes cost nothing where they do not meet. Invariants: children are never all equal,
 * axes grow upwards, nodes are never changed once made.
 *
 * Bryant, "Graph-based algorithms for Boolean function manipulation" (1986), with n children instead of two.
 */
import { CaseNodes, UNKNOWN } from './case-nodes.ts';

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

/** Cases that cannot be, which are shorter to name than those that are asked for. */
const MOST_OUTSIDE = 50;

/** Axes that one set may depend on: operations go as deep. */
const MOST_AXES = 2_000;

/** A state of the diagram: how many nodes and axes it has. */
export interface CasesMark {
  readonly nodes: number;
  readonly axes: number;
}

export class Cases {
  readonly axes: Axis[] = [];
  /** True once an operation was refused because the diagram grew over its budget. */
  overflowed = false;
  /** True once an axis was asked for with other phrases than those it has. */
  restated = false;
  private nodes = new CaseNodes();
  private readonly byKey = new Map<string, number>();
  /** Children of the nodes that are being made, one after the other. */
  private pending = new Int32Array(256);
  private pendingEnd = 0;
  private readonly named = new Map<CaseSet, Named[]>();
  private readonly budget: number;

  constructor(budget = 400_000) {
    this.budget = budget;
  }

  /** Another one with the same axes and nodes, that grows by itself. */
  copy(): Cases {
    const copy = new Cases(this.budget);
    copy.nodes = this.nodes.copy();
    copy.axes.push(...this.axes);
    for (const [key, axis] of this.byKey) copy.byKey.set(key, axis);
    return copy;
  }

  /** How many nodes were made: the measure of work, for counters and budgets. */
  get size(): number {
    return this.nodes.count;
  }

  /** How far the diagram has grown, to go back to with `rewind`. */
  get mark(): CasesMark {
    return { nodes: this.nodes.count, axes: this.axes.length };
  }

  /** Forgets every axis and node made since the mark: sets from after it must not be used any more. */
  rewind({ nodes, axes }: CasesMark): void {
    this.nodes.cut(nodes);
    for (const { key } of this.axes.splice(axes)) this.byKey.delete(key);
    this.named.clear();
    this.overflowed = false;
  }

  /** The axis with this key, made where it is not there yet. */
  axis(key: string, phrases: readonly string[]): number {
    const known = this.byKey.get(key);
    if (known !== undefined) {
      const had = this.axes[known]!.phrases;
      if (had.length !== phrases.length || had.some((phrase, index) => phrase !== phrases[index]))
        this.restated = true;
      return known;
    }
    this.axes.push({ key, phrases });
    this.byKey.set(key, this.axes.length - 1);
    return this.axes.length - 1;
  }

  /** The cases in which `axis` has one of these values. */
  oneOf(axis: number, values: readonly number[]): CaseSet {
    const width = this.axes[axis]!.phrases.length;
    const at = this.open(width);
    for (let value = 0; value < width; value++)
      this.pending[at + value] = values.includes(value) ? EVERY : NONE;
    return this.node(axis, at, width);
  }

  and(a: CaseSet, b: CaseSet): CaseSet {
    return this.apply(a, b, AND);
  }

  or(a: CaseSet, b: CaseSet): CaseSet {
    return this.apply(a, b, OR);
  }

  not(a: CaseSet): CaseSet {
    return this.apply(EVERY, a, MINUS);
  }

  minus(a: CaseSet, b: CaseSet): CaseSet {
    return this.apply(a, b, MINUS);
  }

  /** The set with one axis forgotten: all cases that agree with one of `a` on every other axis. */
  forget(a: CaseSet, axis: number, memo = new Map<CaseSet, CaseSet>()): CaseSet {
    const asked = this.nodes.axisOf(a);
    if (asked < axis) return a;
    const known = memo.get(a);
    if (known !== undefined) return known;
    const width = this.axes[asked]!.phrases.length;
    let result: CaseSet = NONE;
    if (asked === axis) {
      for (let value = 0; value < width; value++) result = this.or(result, this.nodes.child(a, value));
    } else {
      const at = this.open(width);
      for (let value = 0; value < width; value++)
        this.pending[at + value] = this.forget(this.nodes.child(a, value), axis, memo);
      result = this.node(asked, at, width);
    }
    memo.set(a, result);
    return result;
  }

  /** Whether the case (a value for each axis) is in the set. */
  holds(a: CaseSet, values: readonly number[]): boolean {
    let node = a;
    while (node > EVERY) node = this.nodes.child(node, values[this.nodes.axisOf(node)] ?? 0);
    return node === EVERY;
  }

  /** How many cases are in the set, over every axis there is; a float, so not exact above 2^53. */
  count(a: CaseSet): number {
    const widths = this.axes.map(({ phrases }) => phrases.length);
    const memo = new Map<CaseSet, number>();
    // Cases of a node over the first `axes` axes; a node asks a later axis than its children do.
    const from = (node: CaseSet, axes: number): number => {
      if (node === NONE) return 0;
      const asked = node === EVERY ? -1 : this.nodes.axisOf(node);
      let between = 1;
      for (let free = asked + 1; free < axes; free++) between *= widths[free]!;
      if (node === EVERY) return between;
      let sum = memo.get(node);
      if (sum === undefined) {
        sum = 0;
        for (let value = 0; value < widths[asked]!; value++)
          sum += from(this.nodes.child(node, value), asked);
        memo.set(node, sum);
      }
      return between * sum;
    };
    return from(a, widths.length);
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
    shortest.sort((one, other) => one.axis - other.axis);
    this.named.set(a, shortest);
    return shortest;
  }

  /** As `smallest`, where no case outside `all` can be: what tells those apart need not be named. */
  smallestWithin(a: CaseSet, all: CaseSet): readonly Named[] {
    let left = this.or(a, this.not(all));
    for (let tried = 0; tried < MOST_OUTSIDE; tried++) {
      const way = this.smallest(left);
      const named = way.reduce<CaseSet>(
        (set, { axis, value }) => this.and(set, this.oneOf(axis, [value])),
        EVERY,
      );
      if (this.and(named, a) !== NONE) return way;
      // It names only cases that cannot be.
      left = this.minus(left, named);
    }
    return this.smallest(a);
  }

  private shortestWay(a: CaseSet): Named[] {
    const lengths = new Map<CaseSet, number>();
    const way: Named[] = [];
    let node = a;
    while (node > EVERY) {
      const children = this.nodes.childrenOf(node);
      let best = 0;
      for (let value = 1; value < children.length; value++) {
        if (this.length(children[value]!, lengths) < this.length(children[best]!, lengths)) best = value;
      }
      way.push({ axis: this.nodes.axisOf(node), value: best });
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
    const axis = Math.max(...sets.map((set) => this.nodes.axisOf(set)));
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
      if (this.nodes.axisOf(set) !== axis) left.add(set);
      else if (value !== undefined) left.add(this.nodes.child(set, value));
      else for (const child of this.nodes.childrenOf(set)) left.add(child);
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
    let shortest = Number.POSITIVE_INFINITY;
    for (const child of this.nodes.childrenOf(a)) shortest = Math.min(shortest, this.length(child, memo));
    memo.set(a, shortest + 1);
    return shortest + 1;
  }

  private apply(a: CaseSet, b: CaseSet, operation: Operation): CaseSet {
    if (operation === MINUS) {
      if (a === NONE || b === EVERY || a === b) return NONE;
      if (b === NONE) return a;
    } else {
      if (a === b) return a;
      // Both operations are symmetrical: each pair is worked out once.
      if (a > b) return this.apply(b, a, operation);
      if (a === NONE) return operation === AND ? NONE : b;
      if (a === EVERY) return operation === AND ? b : EVERY;
    }
    const { nodes } = this;
    const known = nodes.remembered(a, b, operation);
    if (known !== UNKNOWN) return known;
    const axisA = nodes.axisOf(a);
    const axisB = nodes.axisOf(b);
    const axis = Math.max(axisA, axisB);
    const width = this.axes[axis]!.phrases.length;
    const at = this.open(width);
    for (let value = 0; value < width; value++) {
      const left = axisA === axis ? nodes.child(a, value) : a;
      const right = axisB === axis ? nodes.child(b, value) : b;
      const child = this.apply(left, right, operation);
      this.pending[at + value] = child;
    }
    const result = this.node(axis, at, width);
    nodes.remember(a, b, operation, result);
    return result;
  }

  /** Room for the children of a node that is being made. */
  private open(width: number): number {
    const at = this.pendingEnd;
    this.pendingEnd += width;
    if (this.pendingEnd > this.pending.length) {
      const longer = new Int32Array(this.pendingEnd * 2);
      longer.set(this.pending);
      this.pending = longer;
    }
    return at;
  }

  /** The node with the children that are pending from `at` on. */
  private node(axis: number, at: number, width: number): CaseSet {
    this.pendingEnd = at;
    const { pending, nodes } = this;
    const first = pending[at]!;
    let height = 0;
    let same = true;
    for (let value = 0; value < width; value++) {
      const child = pending[at + value]!;
      if (child !== first) same = false;
      height = Math.max(height, nodes.heightOf(child));
    }
    if (same) return first;
    const known = nodes.find(axis, pending, at, width);
    if (known !== UNKNOWN) return known;
    if (nodes.count >= this.budget || height >= MOST_AXES) {
      // Over budget the larger set is taken, so that no fault is missed silently; the caller says "undecided".
      this.overflowed = true;
      return EVERY;
    }
    return nodes.make(axis, pending, at, width);
  }
}

const AND = 0;
const OR = 1;
const MINUS = 2;
type Operation = typeof AND | typeof OR | typeof MINUS;
