/**
 * Numbers of one declaration that do not add up: the count against the names of the positions, the layout and
 * the share of each part. What is not counted is unknown and compared with nothing. Orders: fastening-orders.ts.
 */
import type { Span } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import type { Model, Thing } from './model.ts';
import { repeatedValues } from './names.ts';

export function countFaults(model: Model): Fact[] {
  return [...model.things.flatMap((thing) => ownCounts(model, thing)), ...shares(model)];
}

function ownCounts(model: Model, thing: Thing): Fact[] {
  const facts: Fact[] = [];
  const declared = thing.declaration.clauses.find((clause) => clause.clause === 'count');
  const count = declared?.count;
  const compare = (span: Span, where: string, number: number) => {
    if (count === undefined || number === 0 || number === count) return;
    facts.push(differs(model, thing, span, { where, number: String(number), count: String(count) }));
  };
  for (const clause of thing.declaration.clauses) {
    if (clause.clause === 'positions') {
      facts.push(...repeatedValues(thing.place.file, clause.names, 'position'));
      compare(clause, 'the list of positions', clause.names.length);
    } else if (clause.clause === 'layout' && clause.layout?.kind === 'rows') {
      const held = clause.layout.rows * clause.layout.of;
      // A number that is not one yet is told by the text itself.
      if (Number.isFinite(held)) compare(clause.layout, 'the layout', held);
    } else if (clause.clause === 'layout' && clause.layout?.kind === 'places') {
      compare(clause.layout, 'the layout', clause.layout.places.length);
    }
  }
  return facts;
}

/** `held by cap-bolts 2 each` of a counted part, where no other part is held by the same group. */
function shares(model: Model): Fact[] {
  const facts: Fact[] = [];
  for (const thing of model.things) {
    if (thing.count === undefined) continue;
    for (const clause of thing.declaration.clauses) {
      if (clause.clause !== 'held by' || clause.each === undefined) continue;
      for (const ref of clause.refs) {
        const group = model.byName.get(ref.name.text);
        if (group?.count === undefined || group.type !== 'fastener' || ref.positions.length > 0) continue;
        if (heldParts(model, group) > 1 || clause.each * thing.count === group.count) continue;
        const words = {
          each: String(clause.each),
          number: String(clause.each * thing.count),
          count: String(group.count),
        };
        facts.push({ ...differs(model, group, clause, words), others: [{ thing }] });
      }
    }
  }
  return facts;
}

function heldParts(model: Model, group: Thing): number {
  const parts = new Set<Thing>();
  for (const thing of model.things) {
    for (const clause of thing.declaration.clauses)
      if (clause.clause === 'held by' && clause.refs.some((ref) => ref.name.text === group.name))
        parts.add(thing);
  }
  return parts.size;
}

function differs(model: Model, thing: Thing, span: Span, words: Record<string, string>): Fact {
  return {
    check: 'count-differs',
    at: { file: thing.place.file, start: span.start, end: span.end },
    subject: { thing },
    words,
    story: [{ at: thing.place, what: 'declared', thing }],
    cases: model.cases.and(model.built, thing.exists),
  };
}
