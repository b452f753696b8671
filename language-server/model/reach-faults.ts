/**
 * Things of a machine that nobody can reach: under something that never comes off, or in each other's way so
 * that none of them can come off first. Asks the machine as declared; the order of steps is not its business.
 */
import { type CaseSet, NONE } from '../execution/cases.ts';
import { circles, rings } from './circles.ts';
import type { Fact } from './facts.ts';
import { GROUND, type Model, type Thing } from './model.ts';

export function reachFaults(model: Model): Fact[] {
  const buried = underFixed(model);
  const out = new Set(buried.flatMap(({ subject }) => subject?.items ?? []));
  const next = model.thingOf.map((_, item) =>
    out.has(item) ? [] : inTheWay(model, item).filter((other) => !out.has(other)),
  );
  // Things that only cover each other are the business of another check.
  const mixed = rings(model, next).filter((ring) =>
    ring.some((item, index) => !model.covers[item]!.includes(ring[(index + 1) % ring.length]!)),
  );
  return [...buried, ...circles(model, 'out-of-reach', mixed)];
}

/** What can come off and lies under a thing that cannot. */
function underFixed(model: Model): Fact[] {
  const facts: Fact[] = [];
  for (const thing of model.things) {
    if (thing.fixed) continue;
    const items: number[] = [];
    const covers = new Set<Thing>();
    let cases: CaseSet = NONE;
    for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
      for (const cover of model.covers[item]!) {
        const over = model.thingOf[cover]!;
        const both = model.cases.and(thing.exists, over.exists);
        // A seal is covered by what it seals, which may stay on for good.
        const seals = thing.type === 'seal' && model.sealedParts[item]!.includes(cover);
        if (!over.fixed || seals || both === NONE) continue;
        if (items[items.length - 1] !== item) items.push(item);
        covers.add(over);
        cases = model.cases.or(cases, both);
      }
    }
    if (items.length === 0) continue;
    facts.push({
      check: 'out-of-reach',
      at: thing.place,
      subject: { thing, items },
      others: [...covers].map((over) => ({ thing: over })),
      story: [...covers].map((over) => ({ at: over.place, what: 'declared' as const, thing: over })),
      cases,
      words: { why: 'fixed' },
    });
  }
  return facts;
}

/** What must be off, out or disconnected before the item can come off. */
function inTheWay(model: Model, item: number): number[] {
  const thing = model.thingOf[item]!;
  const sealed = thing.type === 'seal' ? model.sealedParts[item]! : [];
  const covers = model.covers[item]!.filter(
    (cover) => model.thingOf[cover]!.type !== 'tool' && !sealed.includes(cover),
  );
  if (thing.fixed || !MOVED.has(thing.type)) return covers;
  const holding = [
    ...model.fastenersOf[item]!.filter((fastener) => !model.thingOf[fastener]!.stays),
    // What hangs on a slack hose is moved aside, and the hose is reached then.
    ...model.connectionsOf[item]!.filter((connection) => !model.thingOf[connection]!.slack),
  ];
  if (holding.length === 0) return covers;
  const moving = movingWith(model, item);
  return [
    ...covers,
    ...holding.filter((one) =>
      model.members[one]!.some((member) => member === GROUND || !moving.has(member)),
    ),
  ];
}

const MOVED: ReadonlySet<string> = new Set(['part', 'seal', 'control', 'isolator']);

/** The item and everything that sits on it alone: fasteners inside it need not come out. */
function movingWith(model: Model, item: number): Set<number> {
  const moving = new Set([item]);
  for (const one of moving) {
    for (const rider of model.riders[one]!)
      if (model.seats[rider]!.every((seat) => moving.has(seat))) moving.add(rider);
  }
  return moving;
}
