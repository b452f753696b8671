/**
 * A machine as a graph for readers: its things, and what sits on, covers, holds, seals, joins, carries and feeds
 * what. One edge for each pair and kind, however many positions there are.
 */
import { list, type Model, type Thing } from '../../model/model.ts';

/** Read `from` KIND `to`: the head sits on the cylinder. */
export type EdgeKind = 'sits on' | 'covers' | 'holds' | 'seals' | 'joins' | 'carries' | 'opens' | 'is in';

export interface MapNode {
  /** Name of the thing. */
  readonly name: string;
  readonly title: string;
  readonly type: Thing['type'];
  readonly count: number | undefined;
}

export interface MapEdge {
  readonly from: string;
  readonly to: string;
  readonly kind: EdgeKind;
}

export interface MapGraph {
  readonly nodes: readonly MapNode[];
  readonly edges: readonly MapEdge[];
}

export const EDGE_KINDS: readonly EdgeKind[] = [
  'sits on',
  'covers',
  'holds',
  'seals',
  'joins',
  'carries',
  'opens',
  'is in',
];

/** What a map shows when nobody asks for other kinds. */
export const USUAL_KINDS: readonly EdgeKind[] = ['sits on', 'covers', 'holds', 'seals', 'joins', 'carries'];

/** Things without any of these relations are left out: tools, fluids, values. */
export function mapGraph(model: Model, kinds: readonly EdgeKind[] = USUAL_KINDS): MapGraph {
  const edges = new Map<string, MapEdge>();
  const add = (from: number, to: number, kind: EdgeKind) => {
    const [a, b] = [model.thingOf[from], model.thingOf[to]];
    if (!a || !b || a === b || !kinds.includes(kind)) return;
    edges.set(`${kind} ${a.name} ${b.name}`, { from: a.name, to: b.name, kind });
  };
  for (let item = 0; item < model.items; item++) {
    const { type } = model.thingOf[item]!;
    for (const seat of model.seats[item]!) add(item, seat, 'sits on');
    // A part covers its own seals: `seals` tells that.
    for (const cover of model.covers[item]!)
      if (!model.seals[cover]!.includes(item)) add(cover, item, 'covers');
    for (const seal of model.seals[item]!) add(seal, item, 'seals');
    for (const carried of model.carries[item]!) add(item, carried, 'carries');
    for (const system of model.opens[item]!) add(item, system, 'opens');
    for (const member of model.members[item]!) add(item, member, type === 'connection' ? 'joins' : 'holds');
    for (const system of [...model.relieves[item]!, ...model.drains[item]!, ...model.isolates[item]!])
      add(item, system, 'is in');
  }
  const named = new Set([...edges.values()].flatMap(({ from, to }) => [from, to]));
  const nodes = model.things
    .filter(({ name }) => named.has(name))
    .map(({ name, title, type, count }) => ({ name, title, type, count }));
  return { nodes, edges: [...edges.values()] };
}

/** Only what is at most `steps` edges away from a thing; nothing where there is no such thing. */
export function around({ nodes, edges }: MapGraph, name: string, steps = 1): MapGraph {
  const near = new Set(nodes.some((node) => node.name === name) ? [name] : []);
  for (let step = 0; step < steps; step++) {
    const before = new Set(near);
    for (const { from, to } of edges) {
      if (before.has(from)) near.add(to);
      if (before.has(to)) near.add(from);
    }
  }
  return {
    nodes: nodes.filter((node) => near.has(node.name)),
    edges: edges.filter(({ from, to }) => near.has(from) && near.has(to)),
  };
}

/** The graph in sentences, thing by thing: `The head bolts hold the cylinder head and the cylinder.` */
export function sentencesOf({ nodes, edges }: MapGraph): string[] {
  const titles = new Map(nodes.map(({ name, title }) => [name, title]));
  return nodes.flatMap(({ name, title }) =>
    EDGE_KINDS.flatMap((kind) => {
      const to = edges.filter((edge) => edge.from === name && edge.kind === kind);
      if (to.length === 0) return [];
      return [`The ${title}: ${kind} ${list(to.map((edge) => titles.get(edge.to) ?? edge.to))}.`];
    }),
  );
}
