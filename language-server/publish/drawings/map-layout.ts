/**
 * Where the boxes and lines of a machine map go. Layers and crossings are worked out by dagre; what sits on
 * something stands above it, with the ground at the bottom.
 */
import { Graph, layout } from '@dagrejs/dagre';
import { type Box, boxAround, type Spot } from './boxes.ts';
import type { MapEdge, MapGraph, MapNode } from './map-graph.ts';
import { SIZE, SMALL, textWidth, wrapped } from './svg.ts';

export interface PlacedNode extends MapNode {
  readonly lines: readonly string[];
  readonly box: Box;
}

export interface PlacedEdge extends MapEdge {
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

const LABEL_WIDTH = 132;
export const NODE_LINE = 16;
const MARGIN = 8;

export function layOutMap({ nodes, edges }: MapGraph): MapLayout {
  const graph = new Graph({ directed: true, multigraph: true });
  graph.setGraph({
    rankdir: 'TB',
    nodesep: 14,
    edgesep: 8,
    ranksep: 22,
    marginx: MARGIN,
    marginy: MARGIN,
  });
  graph.setDefaultEdgeLabel(() => ({}));
  const texts = new Map(nodes.map((node) => [node.name, linesOf(node)]));
  for (const { name, type } of nodes) {
    const lines = texts.get(name)!;
    const widest = Math.max(...lines.map((line) => textWidth(line, SIZE)));
    graph.setNode(name, {
      // Fasteners and seals have cut or round ends, which need room.
      width: Math.ceil(widest) + (type === 'fastener' ? 26 : 18),
      height: lines.length * NODE_LINE + 10,
    });
  }
  for (const edge of edges) {
    graph.setEdge(
      edge.from,
      edge.to,
      {
        width: Math.ceil(textWidth(edge.kind, SMALL)) + 4,
        height: 15,
        labelpos: 'c',
        // A chain of seats is what a reader follows: it is kept short and straight.
        weight: edge.kind === 'sits on' ? 4 : 1,
      },
      edge.kind,
    );
  }
  layout(graph);
  const { width = 0, height = 0 } = graph.graph() as { width?: number; height?: number };
  return {
    nodes: nodes.map((node) => {
      const at = graph.node(node.name) as Sized;
      return { ...node, lines: texts.get(node.name)!, box: boxAround(at, at.width, at.height) };
    }),
    edges: edges.map((edge) => {
      const at = graph.edge(edge.from, edge.to, edge.kind) as Sized & { points: Spot[] };
      return { ...edge, points: at.points, labelBox: boxAround(at, at.width, at.height) };
    }),
    width: Math.max(width, 2 * MARGIN),
    height: Math.max(height, 2 * MARGIN),
  };
}

interface Sized extends Spot {
  width: number;
  height: number;
}

function linesOf({ title, count }: MapNode): string[] {
  return wrapped(count !== undefined && count > 1 ? `${title} ×${count}` : title, LABEL_WIDTH, SIZE, 3);
}
