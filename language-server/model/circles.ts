/** Circles among the items of a machine: things that sit on each other, cover each other, hold each other up. */
import { NONE } from '../execution/cases.ts';
import type { Fact } from './facts.ts';
import type { Model, Thing } from './model.ts';

/** One fact for each circle, on the thing of it that is declared first. */
export function circles(model: Model, check: string, found: readonly (readonly number[])[]): Fact[] {
  const facts: Fact[] = [];
  const reported = new Set<Thing>();
  for (const ring of found) {
    const things = [...new Set(ring.map((item) => model.thingOf[item]!))].sort((a, b) => a.id - b.id);
    const [first, ...others] = things;
    const cases = things.reduce((set, thing) => model.cases.and(set, thing.exists), model.built);
    if (!first || reported.has(first) || cases === NONE) continue;
    reported.add(first);
    facts.push({
      check,
      at: first.place,
      subject: { thing: first },
      others: others.map((thing) => ({ thing })),
      story: others.map((thing) => ({ at: thing.place, what: 'declared' as const, thing })),
      cases,
    });
  }
  return facts;
}

/** Circles of items, each as the items on it in order; of circles that share a way only the first met. */
export function rings(model: Model, next: readonly (readonly number[])[]): number[][] {
  const found: number[][] = [];
  const done = new Uint8Array(model.items);
  const path: number[] = [];
  const onPath = new Map<number, number>();
  const visit = (start: number) => {
    const stack: { item: number; index: number }[] = [{ item: start, index: 0 }];
    path.push(start);
    onPath.set(start, 0);
    while (stack.length > 0) {
      const top = stack[stack.length - 1]!;
      const other = next[top.item]![top.index++];
      if (other === undefined) {
        done[top.item] = 1;
        onPath.delete(top.item);
        path.pop();
        stack.pop();
        continue;
      }
      const at = onPath.get(other);
      if (at !== undefined) found.push(path.slice(at));
      else if (!done[other]) {
        path.push(other);
        onPath.set(other, path.length - 1);
        stack.push({ item: other, index: 0 });
      }
    }
  };
  for (let item = 0; item < model.items; item++) if (!done[item]) visit(item);
  return found;
}
