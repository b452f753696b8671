/**
 * A map in parts: no line of the machine is lost, none is made up, and each part is as narrow as a telephone and no
 * higher than a sheet of paper (A4: 297 mm, 1,123 px at 96 to the inch).
 */
import { describe, expect, test } from 'vitest';
import { mapGraph } from '../../../../language-server/publish/drawings/map-graph.ts';
import { layOutMap } from '../../../../language-server/publish/drawings/map-layout.ts';
import { partsOf } from '../../../../language-server/publish/drawings/map-parts.ts';
import { machinesIn, TEXTS } from './demos.ts';

const WIDEST = 420;
const key = ({ from, kind, to }: { from: string; kind: string; to: string }) => `${from} ${kind} ${to}`;

describe.each(machinesIn(TEXTS).map(({ path, model }) => [path, model] as const))('%s', (_, model) => {
  const graph = mapGraph(model);
  const parts = partsOf(graph, (one) => layOutMap(one, 'narrow').width <= WIDEST);

  test('every line is in a part, and every part is of the machine', () => {
    const whole = new Set(graph.edges.map(key));
    const drawn = new Set(parts.flatMap((part) => part.graph.edges.map(key)));
    expect([...drawn].sort()).toEqual([...whole].sort());
    for (const { graph: part } of parts) {
      const names = new Set(part.nodes.map(({ name }) => name));
      for (const { from, to } of part.edges) expect([names.has(from), names.has(to)]).toEqual([true, true]);
    }
  });

  test('each fits a telephone and a sheet', () => {
    for (const { about, graph: part } of parts) {
      const { width, height } = layOutMap(part, 'narrow');
      expect(width, about.join()).toBeLessThanOrEqual(WIDEST);
      expect(height, about.join()).toBeLessThan(850);
    }
  });
});

test('a small machine is one drawing', () => {
  const node = (name: string) => ({ name, title: name, type: 'part' as const, count: undefined });
  const graph = { nodes: ['a', 'b'].map(node), edges: [{ from: 'a', to: 'b', kind: 'sits on' as const }] };
  expect(partsOf(graph, () => true)).toEqual([{ about: [], graph }]);
});
