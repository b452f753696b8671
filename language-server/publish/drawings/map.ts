/**
 * The machine map: what sits on, covers, holds, seals and joins what. Boxes differ by what the thing is, lines by
 * what they mean, each with its word, so that it can be read in one colour.
 */
import type { Box } from './boxes.ts';
import type { EdgeKind, MapGraph } from './map-graph.ts';
import { EDGE_KINDS, sentencesOf } from './map-graph.ts';
import { layOutMap, type MapSize, NODE_LINE, type PlacedEdge, type PlacedNode } from './map-layout.ts';
import { ACCENT, type Drawing, element, escapeText, label, PAPER, SIZE, SMALL, short, svgOf } from './svg.ts';

export interface MapOptions {
  /** Below everything, where the drawing stands alone. */
  readonly foot?: string;
  /** Put before every id; must be unique on the page. */
  readonly prefix: string;
  /** For the title: `Tarnbrook T40 workshop compressor`. */
  readonly name: string;
  /** Names of things to be seen first. */
  readonly marked?: readonly string[];
  /** `narrow` for a column of text and a telephone. */
  readonly size?: MapSize;
}

/** As large as it needs to be: the page lets it scroll, or makes it smaller. */
export function machineMap(graph: MapGraph, options: MapOptions): Drawing {
  const { prefix, name, marked = [], size } = options;
  const laid = layOutMap(graph, size);
  const title = `How the things belong together: ${name}`;
  const sentences = sentencesOf(graph);
  const used = EDGE_KINDS.filter((kind) => graph.edges.some((edge) => edge.kind === kind));
  const svg = svgOf(
    {
      width: laid.width,
      height: laid.height,
      title,
      description: `${graph.nodes.length} things and ${graph.edges.length} lines; what sits on something stands left of it. ${sentences.join(' ')}`,
      prefix,
      kind: 'map',
      foot: options.foot,
    },
    element('defs', {}, ...used.map((kind) => arrow(prefix, kind))),
    ...laid.edges.map((edge) => lineOf(edge, prefix, laid)),
    ...laid.nodes.map((node, index) => boxOf(node, `${prefix}-n${index + 1}`, marked.includes(node.name))),
    ...laid.edges.map(wordOf),
  );
  return {
    svg,
    width: laid.width,
    height: laid.height,
    title,
    alternative: { kind: 'list', caption: title, sentences },
  };
}

const DASHES: Readonly<Record<EdgeKind, string | undefined>> = {
  'sits on': undefined,
  covers: '7 4',
  holds: '2 3',
  seals: '9 3 2 3',
  joins: '12 4',
  carries: '5 2',
  opens: '1 5',
  'is in': '1 3',
};

/** px between a line and the edge of the drawing. */
const EDGE = 2;

function idOf(prefix: string, kind: EdgeKind): string {
  return `${prefix}-to-${kind.replaceAll(' ', '-')}`;
}

/** Filled for what sits, an open point for what only touches. */
function arrow(prefix: string, kind: EdgeKind): string {
  const filled = kind === 'sits on' || kind === 'carries';
  return element(
    'marker',
    {
      id: idOf(prefix, kind),
      viewBox: '0 0 10 10',
      refX: 9,
      refY: 5,
      markerWidth: 8,
      markerHeight: 8,
      orient: 'auto-start-reverse',
    },
    element('path', {
      d: 'M1 1L9 5L1 9Z',
      fill: filled ? 'currentColor' : PAPER,
      stroke: 'currentColor',
      'stroke-width': 1.2,
    }),
  );
}

function lineOf({ from, to, kinds, points }: PlacedEdge, prefix: string, frame: Frame): string {
  const [kind] = kinds as [EdgeKind];
  return element('path', {
    d: smooth(points, frame),
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': kind === 'sits on' ? 1.75 : 1.25,
    'stroke-opacity': 0.8,
    'stroke-dasharray': DASHES[kind],
    'marker-end': `url(#${idOf(prefix, kind)})`,
    'data-from': from,
    'data-to': to,
    'data-kind': kinds.join(', '),
  });
}

interface Frame {
  readonly width: number;
  readonly height: number;
}

/**
 * A curve through all the points (Catmull-Rom, as Bézier pieces), so that the words stand on their lines. Its handles
 * are kept inside the frame, and with them the curve, which lies in their convex hull.
 */
function smooth(points: readonly { x: number; y: number }[], { width, height }: Frame): string {
  const [first] = points;
  if (!first) return '';
  const within = (value: number, end: number) => short(Math.max(EDGE, Math.min(end - EDGE, value)));
  const at = (x: number, y: number) => `${within(x, width)} ${within(y, height)}`;
  const pieces = points.slice(1).map((to, index) => {
    const from = points[index]!;
    const before = points[index - 1] ?? from;
    const after = points[index + 2] ?? to;
    const bend = 1 / 6;
    return `C${at(from.x + (to.x - before.x) * bend, from.y + (to.y - before.y) * bend)} ${at(
      to.x - (after.x - from.x) * bend,
      to.y - (after.y - from.y) * bend,
    )} ${at(to.x, to.y)}`;
  });
  return `M${at(first.x, first.y)}${pieces.join('')}`;
}

function wordOf({ word, labelBox, from, to }: PlacedEdge): string {
  return label(word, labelBox.x + labelBox.width / 2, labelBox.y + labelBox.height / 2 + SMALL * 0.35, {
    'text-anchor': 'middle',
    'font-size': SMALL,
    'stroke-width': 4,
    'data-from': from,
    'data-to': to,
  });
}

function boxOf({ name, title, type, lines, box }: PlacedNode, id: string, isMarked: boolean): string {
  const middle = box.x + box.width / 2;
  const top = box.y + (box.height - lines.length * NODE_LINE) / 2;
  return element(
    'g',
    { id, 'data-thing': name, 'data-type': type },
    element('title', {}, escapeText(`${title} (${type})`)),
    shapeOf(type, box, {
      fill: PAPER,
      stroke: isMarked ? ACCENT : 'currentColor',
      'stroke-width': isMarked ? 3.5 : 1.5,
    }),
    ...lines.map((line, index) =>
      element(
        'text',
        { x: middle, y: top + index * NODE_LINE + SIZE * 0.95, 'text-anchor': 'middle' },
        escapeText(line),
      ),
    ),
  );
}

/** Parts are boxes, fasteners six-sided, seals round, connections half round, the rest boxes with cut corners. */
function shapeOf(type: PlacedNode['type'], box: Box, look: Record<string, string | number>): string {
  const { x, y, width, height } = box;
  const rect = (radius: number) => element('rect', { x, y, width, height, rx: radius, ...look });
  const polygon = (points: readonly (readonly [number, number])[]) =>
    element('polygon', { points: points.map(([a, b]) => `${short(a)},${short(b)}`).join(' '), ...look });
  switch (type) {
    case 'part':
      return rect(0);
    case 'fastener':
      return polygon([
        [x, y + height / 2],
        [x + 8, y],
        [x + width - 8, y],
        [x + width, y + height / 2],
        [x + width - 8, y + height],
        [x + 8, y + height],
      ]);
    case 'seal':
      return rect(height / 2);
    case 'connection':
      return rect(7);
    default:
      return polygon([
        [x + 6, y],
        [x + width - 6, y],
        [x + width, y + 6],
        [x + width, y + height - 6],
        [x + width - 6, y + height],
        [x + 6, y + height],
        [x, y + height - 6],
        [x, y + 6],
      ]);
  }
}
