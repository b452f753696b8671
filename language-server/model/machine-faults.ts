/** What is wrong with a machine as it is declared: things that sit on themselves, hold nothing, hide each other. */
import type { Fact } from './facts.ts';
import type { Model, Thing } from './model.ts';

export function machineFaults(model: Model): Fact[] {
  return [
    ...cycles(model, 'seat-cycle', model.seats),
    ...cycles(
      model,
      'cover-cycle',
      // A seal is covered by what it seals in the ordinary way; only what the author wrote with `under` counts.
      model.covers.map((covers, item) =>
        model.thingOf[item]!.type === 'seal'
          ? covers.filter((cover) => !model.sealedParts[item]!.includes(cover))
          : covers,
      ),
    ),
    ...idle(model),
  ];
}

/** Each thing on a cycle is reported once, on the thing of the cycle that is declared first. */
function cycles(model: Model, check: string, next: readonly (readonly number[])[]): Fact[] {
  const facts: Fact[] = [];
  const done = new Uint8Array(model.items);
  const path: number[] = [];
  const onPath = new Map<number, number>();
  const reported = new Set<Thing>();
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
      if (at !== undefined) {
        const ring = [...new Set(path.slice(at).map((item) => model.thingOf[item]!))].sort(
          (a, b) => a.id - b.id,
        );
        const first = ring[0]!;
        if (!reported.has(first)) {
          reported.add(first);
          facts.push({
            check,
            at: first.place,
            subject: { thing: first },
            others: ring.slice(1).map((thing) => ({ thing })),
            story: ring.slice(1).map((thing) => ({ at: thing.place, what: 'declared' as const, thing })),
          });
        }
      } else if (!done[other]) {
        path.push(other);
        onPath.set(other, path.length - 1);
        stack.push({ item: other, index: 0 });
      }
    }
  };
  for (let item = 0; item < model.items; item++) if (!done[item]) visit(item);
  return facts;
}

/** Fasteners that hold nothing, seals that seal nothing, connections that join nothing: no step can need them. */
function idle(model: Model): Fact[] {
  const facts: Fact[] = [];
  const drainsOrFills = (thing: Thing) =>
    [model.drains, model.relieves, model.servicePoints, model.isolates, model.opens, model.riders].some(
      (list) => list[thing.first]!.length > 0,
    );
  const brought = new Set<Thing>();
  for (const list of [model.comesWith, model.contains]) {
    for (const items of list) for (const item of items) brought.add(model.thingOf[item]!);
  }
  const coverItems = new Set(model.covers.flat());
  for (const thing of model.things) {
    // Shared files declare patterns that other declarations are `like`.
    if (thing.place.file !== model.things[0]?.place.file && !model.machine) continue;
    const uses =
      thing.stays ||
      model.seats[thing.first]!.length > 0 ||
      drainsOrFills(thing) ||
      brought.has(thing) ||
      coverItems.has(thing.first);
    if (
      uses ||
      !model.machine ||
      thing.place.start < model.machine.start ||
      thing.place.end > model.machine.end
    )
      continue;
    if (thing.type === 'fastener' && model.members[thing.first]!.length === 0) {
      facts.push({ check: 'holds-nothing', at: thing.place, subject: { thing }, words: { of: 'fastener' } });
    } else if (thing.type === 'connection' && model.members[thing.first]!.length === 0) {
      facts.push({
        check: 'holds-nothing',
        at: thing.place,
        subject: { thing },
        words: { of: 'connection' },
      });
    } else if (thing.type === 'seal' && model.sealedParts[thing.first]!.length === 0) {
      facts.push({ check: 'holds-nothing', at: thing.place, subject: { thing }, words: { of: 'seal' } });
    }
  }
  return facts;
}
