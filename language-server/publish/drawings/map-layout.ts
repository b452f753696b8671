/**
 * Where the boxes and lines of a machine map go. Layers and crossings are worked out by dagre; what sits on
 * something stands left of it, so that what comes off first is at the left and the ground at the right.
 */
import { Graph, layout } from '@dagrejs/dagre';
import { type Box, boxAround, type Spot } from './boxes.ts';
import { EDGE_KINDS, type EdgeKind, type MapEdge, type MapGraph, type MapNode } from './map-graph.ts';
import { SIZE, SMALL, textWidth, wrapped } from './svg.ts';

export interface PlacedNode extends MapNode {
  readonly lines: readonly string[];
  readonly box: Box;
}

/** All edges from one thing to another, as one line. */
export interface PlacedEdge {
  readonly from: string;
  readonly to: string;
  readonly kinds: readonly EdgeKind[];
  /** `sits on, covers` */
  readonly word: string;
  /** From the box of `from` to the box of `to`. */
  readonly points: readonly Spot[];
  /** Where the word for its kind stands. */
  readonly labelBox: Box;
}

export interface MapLayout {
  readonly nodes: readonly PlacedNode[];
  readonly edges: readonly PlacedEdge[];
  readonly width: number;
  readonly height: number;
}

/** Widest line of a box, px: on a sheet of its own, and in a column of text or on a telephone. */
const LABEL_WIDTH = { wide: 132, narrow: 84 } as const;
export type MapSize = keyof typeof LABEL_WIDTH;
export const NODE_LINE = 16;
const MARGIN = 8;
const MANY = 60;

export function layOutMap({ nodes, edges }: MapGraph, size: MapSize = 'wide'): MapLayout {
  const graph = new Graph({ directed: true, multigraph: false });
  graph.setGraph({
    rankdir: 'LR',
    // Nearly as good, and takes half the time where there is much.
    ranker: nodes.length > MANY ? 'tight-tree' : 'network-simplex',
    nodesep: size === 'wide' ? 14 : 10,
    edgesep: size === 'wide' ? 8 : 5,
    ranksep: size === 'wide' ? 22 : 12,
    marginx: MARGIN,
    marginy: MARGIN,
  });
  graph.setDefaultEdgeLabel(() => ({}));
  const texts = new Map(nodes.map((node) => [node.name, linesOf(node, LABEL_WIDTH[size])]));
  for (const { name, type } of nodes) {
    const lines = texts.get(name)!;
    const widest = Math.max(...lines.map((line) => textWidth(line, SIZE)));
    graph.setNode(name, {
      // Fasteners and seals have cut or round ends, which need room.
      width: Math.ceil(widest) + (type === 'fastener' ? 26 : 18),
      height: lines.length * NODE_LINE + 10,
    });
  }
  const lines = bundled(edges);
  for (const { from, to, kinds, word } of lines) {
    graph.setEdge(from, to, {
      width: Math.ceil(textWidth(word, SMALL)) + 4,
      height: 15,
      labelpos: 'c',
      // A chain of seats is what a reader follows: it is kept short and straight.
      weight: kinds.includes('sits on') ? 4 : 1,
    });
  }
  layout(graph);
  const { width = 0, height = 0 } = graph.graph() as { width?: number; height?: number };
  return {
    nodes: nodes.map((node) => {
      const at = graph.node(node.name) as Sized;
      return { ...node, lines: texts.get(node.name)!, box: boxAround(at, at.width, at.height) };
    }),
    edges: lines.map((line) => {
      const at = graph.edge(line.from, line.to) as Sized & { points: Spot[] };
      return { ...line, points: at.points, labelBox: boxAround(at, at.width, at.height) };
    }),
    width: Math.max(width, 2 * MARGIN),
    height: Math.max(height, 2 * MARGIN),
  };
}

function bundled(edges: readonly MapEdge[]): Omit<PlacedEdge, 'points' | 'labelBox'>[] {
  const pairs = new Map<string, { from: string; to: string; kinds: EdgeKind[] }>();
  for (const { from, to, kind } of edges) {
    const pair = pairs.get(`${from} ${to}`);
    if (pair) pair.kinds.push(kind);
    else pairs.set(`${from} ${to}`, { from, to, kinds: [kind] });
  }
  return [...pairs.values()].map(({ from, to, kinds }) => {
    const sorted = EDGE_KINDS.filter((kind) => kinds.includes(kind));
    return { from, to, kinds: sorted, word: sorted.join(', ') };
  });
}

interface Sized extends Spot {
  width: number;
  height: number;
}

function linesOf({ title, count }: MapNode, width: number): string[] {
  return wrapped(count !== undefined && count > 1 ? `${title} ×${count}` : title, width, SIZE, 4);
}
