/** What is wrong with a machine as it is declared: things that sit on themselves, hold nothing, hide each other. */
import { circles, rings } from './circles.ts';
import { countFaults } from './count-faults.ts';
import type { Fact } from './facts.ts';
import type { Model, Thing } from './model.ts';
import { reachFaults } from './reach-faults.ts';

export function machineFaults(model: Model): Fact[] {
  return [
    ...circles(model, 'seat-cycle', rings(model, model.seats)),
    ...circles(
      model,
      'cover-cycle',
      // A seal is covered by what it seals in the ordinary way; only what the author wrote with `under` counts.
      rings(
        model,
        model.covers.map((covers, item) =>
          model.thingOf[item]!.type === 'seal'
            ? covers.filter((cover) => !model.sealedParts[item]!.includes(cover))
            : covers,
        ),
      ),
    ),
    ...reachFaults(model),
    ...countFaults(model),
    ...idle(model),
  ];
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
