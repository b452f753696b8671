/**
 * A machine map in parts that fit a page: around each thing what sits on it, covers, holds and seals it, and as much
 * of what belongs to these as there is room for; what would be a drawing of two or three boxes is gathered. Every line
 * of the whole map is in at least one part.
 */
import type { MapEdge, MapGraph } from './map-graph.ts';

export interface MapPart {
  /** Titles of the things that it is about; none where the whole map fits. */
  readonly about: readonly string[];
  /** Where one thing has too much around it for one part: which of them this is, from 1. */
  readonly piece?: number;
  readonly graph: MapGraph;
}

/** More things than this in one part are hard to follow. */
const MOST_THINGS = 9;
/** As high as a sheet of paper bears. */
const MOST_LINES = 14;
/** Parts as small as this are gathered. */
const SMALL = 3;

/** `fits`: whether a graph, laid out, is small enough. What is alone around one thing is drawn even where it is not. */
export function partsOf(graph: MapGraph, fits: (graph: MapGraph) => boolean): MapPart[] {
  if (graph.nodes.length <= MOST_THINGS && fits(graph)) return [{ about: [], graph }];
  const parts = around(graph, fits);
  const isSmall = (part: MapPart) => part.graph.nodes.length <= SMALL;
  return [...parts.filter((part) => !isSmall(part)), ...gathered(graph, parts.filter(isSmall), fits)];
}

function around(graph: MapGraph, fits: (graph: MapGraph) => boolean): MapPart[] {
  const into = new Map<string, MapEdge[]>();
  for (const edge of graph.edges) {
    const known = into.get(edge.to);
    if (known) known.push(edge);
    else into.set(edge.to, [edge]);
  }
  const left = new Set(graph.edges);
  const open = (name: string) => (into.get(name) ?? []).some((edge) => left.has(edge));
  const small = (one: MapGraph) => one.nodes.length <= MOST_THINGS && fits(one);
  const parts: MapPart[] = [];
  for (const { name, title } of graph.nodes) {
    if (!open(name)) continue;
    const pieces = slices(into.get(name)!);
    pieces.forEach((edges, index) => {
      const part = pieces.length > 1 ? only(graph, edges) : widened(only(graph, edges));
      for (const edge of part.edges) left.delete(edge);
      parts.push({ about: [title], ...(pieces.length > 1 ? { piece: index + 1 } : {}), graph: part });
    });
    /** With the lines among its things, and with what is around these, as long as there is room. */
    function widened(star: MapGraph): MapGraph {
      const all = among(graph, new Set(star.nodes.map((node) => node.name)));
      let part = small(all) ? all : star;
      const asked = new Set([name]);
      for (;;) {
        const next = part.nodes.find((node) => !asked.has(node.name))?.name;
        if (next === undefined) return part;
        asked.add(next);
        if (!open(next)) continue;
        const names = [...part.nodes.map((node) => node.name), ...into.get(next)!.map(({ from }) => from)];
        const wider = among(graph, new Set(names));
        if (small(wider)) part = wider;
      }
    }
  }
  return parts;
}

/** In pieces of about the same length. */
function slices(edges: readonly MapEdge[]): MapEdge[][] {
  const count = Math.ceil(edges.length / MOST_LINES);
  const each = Math.ceil(edges.length / count);
  return Array.from({ length: count }, (_, at) => edges.slice(at * each, (at + 1) * each));
}

function gathered(graph: MapGraph, small: readonly MapPart[], fits: (graph: MapGraph) => boolean): MapPart[] {
  const result: MapPart[] = [];
  for (const part of small) {
    const last = result.at(-1);
    const edges = [...new Set([...(last?.graph.edges ?? []), ...part.graph.edges])];
    const both = only(graph, edges);
    if (last && both.nodes.length <= MOST_THINGS && fits(both))
      result[result.length - 1] = { about: [...last.about, ...part.about], graph: both };
    else result.push(part);
  }
  return result;
}

/** The things at these edges, and these edges alone. */
function only(graph: MapGraph, edges: readonly MapEdge[]): MapGraph {
  const names = new Set(edges.flatMap(({ from, to }) => [from, to]));
  return { nodes: graph.nodes.filter(({ name }) => names.has(name)), edges };
}

/** These things, and every edge between them. */
function among(graph: MapGraph, names: ReadonlySet<string>): MapGraph {
  return {
    nodes: graph.nodes.filter(({ name }) => names.has(name)),
    edges: graph.edges.filter(({ from, to }) => names.has(from) && names.has(to)),
  };
}
