/**
 * Machine maps against the independent reader of tests/oracle (written from the language reference alone): every
 * relation that it finds is drawn once, and nothing else. And nothing stands on anything else.
 */
import { describe, expect, test } from 'vitest';
import { overlap } from '../../../../language-server/publish/drawings/boxes.ts';
import { machineMap } from '../../../../language-server/publish/drawings/map.ts';
import { around, mapGraph } from '../../../../language-server/publish/drawings/map-graph.ts';
import { layOutMap } from '../../../../language-server/publish/drawings/map-layout.ts';
import { holdsFor, type Model, modelOf } from '../../../oracle/model.ts';
import { readAll, wholeMachine } from '../../../oracle/reader.ts';
import { elementsOf, machinesIn, readSvg, TEXTS } from './demos.ts';

/** `kind from to` of every relation in any variant. */
function relationsOf(path: string, name: string): string[] {
  const machine = wholeMachine(readAll(TEXTS, path), name);
  let all: Record<string, string>[] = [{}];
  for (const axis of machine.variants)
    all = all.flatMap((one) => axis.values.map((value) => ({ ...one, [axis.name]: value })));
  const found = new Set<string>();
  for (const variants of all) {
    if (machine.nevers.some((never) => holdsFor(never, variants))) continue;
    relationsIn(modelOf(machine, variants), found);
  }
  return [...found].sort();
}

function relationsIn(model: Model, found: Set<string>): void {
  for (const item of model.items) {
    const add = (kind: string, from: { name: string }, to: { name: string }) => {
      if (from.name !== to.name) found.add(`${kind}: ${from.name} -> ${to.name}`);
    };
    for (const seat of item.seats) add('sits on', item, seat);
    for (const cover of item.under) if (!cover.seals.includes(item)) add('covers', cover, item);
    for (const seal of item.seals) add('seals', seal, item);
    for (const carried of item.carries) add('carries', item, carried);
    for (const member of item.members) add(item.kind === 'connection' ? 'joins' : 'holds', item, member);
  }
}

describe.each(machinesIn(TEXTS).map((demo) => [demo.path, demo.model] as const))('%s', (path, model) => {
  const graph = mapGraph(model);
  const laid = layOutMap(graph);

  test('every relation of the machine is drawn once', async () => {
    const { svg } = machineMap(graph, { prefix: 'm', name: model.title });
    const elements = elementsOf(await readSvg(svg));
    const drawn = elements
      .filter((one) => one.$?.['data-kind'] !== undefined)
      .flatMap(({ $ }) =>
        $!['data-kind']!.split(', ').map((kind) => `${kind}: ${$!['data-from']} -> ${$!['data-to']}`),
      );
    expect(drawn.sort()).toEqual(relationsOf(path, model.name));
    const boxes = elements.flatMap((one) => one.$?.['data-thing'] ?? []);
    expect(boxes.sort()).toEqual(graph.nodes.map(({ name }) => name).sort());
    const ids = elements.flatMap((one) => one.$?.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('no box or word stands on another, none is cut off', () => {
    const boxes = [
      ...laid.nodes.map(({ name, box }) => ({ what: name, box })),
      ...laid.edges.map(({ word, from, to, labelBox }) => ({ what: `${from} ${word} ${to}`, box: labelBox })),
    ];
    const over = boxes.flatMap(({ what, box }, index) =>
      boxes
        .slice(index + 1)
        .filter((other) => overlap(box, other.box) > 0.01)
        .map((other) => `${what} / ${other.what}`),
    );
    expect(over).toEqual([]);
    for (const { box } of boxes) {
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.y).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(laid.width + 0.01);
      expect(box.y + box.height).toBeLessThanOrEqual(laid.height + 0.01);
    }
  });

  test('what sits on something stands left of it, as long as that goes round in no circle', () => {
    const boxOf = new Map(laid.nodes.map(({ name, box }) => [name, box]));
    const sitting = laid.edges.filter(({ kinds }) => kinds.includes('sits on'));
    const left = sitting.filter(({ from, to }) => boxOf.get(from)!.x < boxOf.get(to)!.x);
    expect(left.length / sitting.length).toBeGreaterThan(0.9);
  });

  test('the neighbourhood of a thing is itself and what it has a line with', () => {
    for (const { name } of graph.nodes.slice(0, 10)) {
      const near = new Set(
        graph.edges
          .filter(({ from, to }) => from === name || to === name)
          .flatMap(({ from, to }) => [from, to]),
      );
      expect(
        around(graph, name)
          .nodes.map((node) => node.name)
          .sort(),
      ).toEqual([...near].sort());
    }
    expect(around(graph, 'no-such-thing').nodes).toEqual([]);
  });
});
