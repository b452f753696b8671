/**
 * The nodes of a decision diagram, each made once, in flat arrays: which axis a node asks, and the node that
 * each value leads to. Beside them what was worked out for pairs of nodes, as long as it is not overwritten.
 * What the nodes mean, and every operation on them, is in cases.ts.
 *
 * Brace, Rudell, Bryant, "Efficient implementation of a BDD package" (1990): a hash table of unique nodes, a
 * cache of results in which a new one takes the place of an old one.
 */

const FIRST_NODES = 64;
const MOST_REMEMBERED = 1 << 18;
/** Answered where nothing is remembered. */
export const UNKNOWN = -1;

export class CaseNodes {
  /** How many nodes there are. Nodes 0 and 1 ask nothing. */
  count = 2;
  private axes = new Int32Array(FIRST_NODES);
  /** Longest way down to a node that asks nothing. */
  private heights = new Int32Array(FIRST_NODES);
  /** Where the children of a node begin. */
  private begins = new Int32Array(FIRST_NODES);
  private children = new Int32Array(FIRST_NODES * 2);
  /** Hash table of nodes; 0 is a free place. */
  private unique = new Int32Array(FIRST_NODES * 2);
  /** Results, three numbers each: a node, the other node with the operation, the result. */
  private results = new Int32Array(FIRST_NODES * 3);

  constructor() {
    this.axes[0] = NO_AXIS;
    this.axes[1] = NO_AXIS;
  }

  copy(): CaseNodes {
    const copy = new CaseNodes();
    copy.count = this.count;
    for (const name of ['axes', 'heights', 'begins', 'children', 'unique', 'results'] as const)
      copy[name] = this[name].slice();
    return copy;
  }

  axisOf(node: number): number {
    return this.axes[node]!;
  }

  heightOf(node: number): number {
    return this.heights[node]!;
  }

  /** The node that a value leads to. */
  child(node: number, value: number): number {
    return this.children[this.begins[node]! + value]!;
  }

  childrenOf(node: number): Int32Array {
    return this.children.subarray(this.begins[node]!, this.begins[node + 1]!);
  }

  /** The node with this axis and these children; UNKNOWN where it was not made yet. */
  find(axis: number, from: Int32Array, at: number, width: number): number {
    const mask = this.unique.length - 1;
    for (let place = hashOf(axis, from, at, width) & mask; ; place = (place + 1) & mask) {
      const node = this.unique[place]!;
      if (node === 0) return UNKNOWN;
      if (this.axes[node] === axis && this.same(node, from, at, width)) return node;
    }
  }

  /** Makes a node that `find` does not find. */
  make(axis: number, from: Int32Array, at: number, width: number): number {
    const node = this.count++;
    const begin = this.begins[node]!;
    if (node >= this.axes.length - 1) this.grow();
    if (begin + width > this.children.length) this.children = longer(this.children);
    let height = 0;
    for (let value = 0; value < width; value++) {
      const child = from[at + value]!;
      this.children[begin + value] = child;
      height = Math.max(height, this.heights[child]!);
    }
    this.axes[node] = axis;
    this.heights[node] = height + 1;
    this.begins[node + 1] = begin + width;
    this.enter(node);
    return node;
  }

  /** Forgets the nodes from `count` on, and every result. */
  cut(count: number): void {
    this.count = count;
    this.unique.fill(0);
    for (let node = 2; node < count; node++) this.enter(node);
    this.results.fill(0);
  }

  remembered(a: number, b: number, operation: number): number {
    const place = this.placeOf(a, b, operation);
    return this.results[place] === a && this.results[place + 1] === b * 4 + operation
      ? this.results[place + 2]!
      : UNKNOWN;
  }

  remember(a: number, b: number, operation: number, result: number): void {
    const place = this.placeOf(a, b, operation);
    this.results[place] = a;
    this.results[place + 1] = b * 4 + operation;
    this.results[place + 2] = result;
  }

  private placeOf(a: number, b: number, operation: number): number {
    const hash = Math.imul(Math.imul(a, 0x9e3779b1) ^ (b * 4 + operation), 0x85ebca6b);
    return ((hash >>> 7) & (this.results.length / 3 - 1)) * 3;
  }

  private same(node: number, from: Int32Array, at: number, width: number): boolean {
    const begin = this.begins[node]!;
    for (let value = 0; value < width; value++)
      if (this.children[begin + value] !== from[at + value]) return false;
    return true;
  }

  private enter(node: number): void {
    const begin = this.begins[node]!;
    const mask = this.unique.length - 1;
    let place = hashOf(this.axes[node]!, this.children, begin, this.begins[node + 1]! - begin) & mask;
    while (this.unique[place] !== 0) place = (place + 1) & mask;
    this.unique[place] = node;
  }

  private grow(): void {
    this.axes = longer(this.axes);
    this.heights = longer(this.heights);
    this.begins = longer(this.begins);
    this.unique = new Int32Array(this.axes.length * 2);
    for (let node = 2; node < this.count - 1; node++) this.enter(node);
    if (this.results.length / 3 < MOST_REMEMBERED) this.results = new Int32Array(this.axes.length * 3);
  }
}

/** No axis. */
const NO_AXIS = -1;

function longer(array: Int32Array): Int32Array<ArrayBuffer> {
  const result = new Int32Array(array.length * 2);
  result.set(array);
  return result;
}

function hashOf(axis: number, from: Int32Array, at: number, width: number): number {
  let hash = axis + 1;
  for (let value = 0; value < width; value++) {
    hash = Math.imul(hash ^ from[at + value]!, 0x9e3779b1);
    hash ^= hash >>> 15;
  }
  return hash;
}
