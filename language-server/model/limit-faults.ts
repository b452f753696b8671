/**
 * Values above a limit that must not be exceeded: what a step is done to, against `not over` of the thing it is about
 * and of the step itself; and what a machine file declares, against its own `not over`. Fact `limit-exceeded`.
 * A value with a tolerance counts with its upper end, one without an upper end with its lower.
 */
import { checkSecond, findQuantities, type Quantity, relate } from '../../grammar/quantity/index.ts';
import type { Action, Span, Quantity as Typed } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { readTyped, said } from './fastening-amounts.ts';
import { clauseOf, placeIn } from './fastening-declared.ts';
import type { Model, Thing } from './model.ts';

interface Aimed {
  readonly quantity: Quantity;
  readonly at: Span;
}

export function limitFaults(model: Model, action: Action, file: string): Fact[] {
  const aims = aimsOf(model, action);
  if (aims.length === 0) return [];
  const limits: { limit: Quantity; thing?: Thing }[] = [];
  for (const tail of action.tails) {
    const limit = tail.tail === 'not over' ? readTyped(tail.quantity, model.values) : undefined;
    if (limit) limits.push({ limit });
  }
  for (const { name } of action.objects) {
    const thing = model.byName.get(name.text);
    const limit = thing && readTyped(clauseOf(thing, 'not over')?.quantity, model.values);
    if (thing && limit) limits.push({ limit, thing });
  }
  const facts: Fact[] = [];
  for (const { quantity, at } of aims) {
    const broken = limits.find(({ limit }) => isAbove(quantity, limit));
    if (!broken) continue;
    const { thing } = broken;
    facts.push({
      check: 'limit-exceeded',
      at: { file, start: at.start, end: at.end },
      ...(thing ? { subject: { thing } } : {}),
      words: { value: said(quantity), limit: said(broken.limit) },
      story: thing ? [{ at: clausePlace(thing), what: 'declared', thing }] : [],
    });
  }
  return facts;
}

/** `torque 90 N·m not over 80 N·m` */
export function declaredLimitFaults(model: Model): Fact[] {
  const facts: Fact[] = [];
  for (const thing of model.things) {
    const limit = readTyped(clauseOf(thing, 'not over')?.quantity, model.values);
    if (!limit) continue;
    for (const { typed, at } of declaredValues(thing)) {
      const quantity = readTyped(typed, model.values);
      if (!quantity || !isAbove(quantity, limit)) continue;
      facts.push({
        check: 'limit-exceeded',
        at: placeIn(thing, at),
        subject: { thing },
        words: { value: said(quantity), limit: said(limit), declared: 'yes' },
      });
    }
  }
  return facts;
}

function declaredValues(thing: Thing): { typed: Typed; at: Span }[] {
  const values: { typed: Typed; at: Span }[] = [];
  for (const clause of thing.declaration.clauses) {
    if (clause.clause === 'torque' || clause.clause === 'pressure' || clause.clause === 'temperature') {
      if (clause.quantity) values.push({ typed: clause.quantity, at: clause.quantity });
    } else if (clause.clause === 'plan') {
      for (const stage of clause.plan.stages)
        if (stage.kind === 'torque') values.push({ typed: stage.quantity, at: stage.quantity });
    }
  }
  return values;
}

/** The values that a step works to: `to 25 N·m`, `with 2 L`, and `to 2 bar` in its sentence. */
function aimsOf(model: Model, action: Action): Aimed[] {
  const aims: Aimed[] = [];
  const add = (typed: Typed | undefined) => {
    const quantity = typed && readTyped(typed, model.values);
    if (quantity) aims.push({ quantity, at: typed });
  };
  add(action.quantity);
  for (const tail of action.tails) {
    if (tail.tail === 'to' || tail.tail === 'with' || tail.tail === 'at') add(tail.quantity);
    // A declared value in the place of a quantity.
    if (tail.tail === 'to')
      for (const ref of tail.refs) add({ ...ref, form: 'plain', amounts: [], named: ref });
  }
  const { text } = action;
  if (text && /\d/.test(text.value)) {
    for (const { from, quantity } of findQuantities(text.value)) {
      if (/\bto $/.test(text.value.slice(0, from)) && !/\bnot\b|\bnever\b/i.test(text.value.slice(0, from)))
        aims.push({ quantity, at: text });
    }
  }
  return aims;
}

function isAbove(value: Quantity, limit: Quantity): boolean {
  if (value.unit.kind !== limit.unit.kind) return false;
  const most = limit.high ?? limit.nominal;
  const reached = value.high ?? value.low;
  if (!most || !reached) return false;
  const point = (quantity: Quantity, at: NonNullable<Quantity['high']>): Quantity => ({
    form: 'value',
    unit: quantity.unit,
    low: at,
    high: at,
    nominal: at,
    ...(quantity.step ? { step: quantity.step } : {}),
  });
  const [one, other] = [point(value, reached), point(limit, most)];
  const outcome = relate(one, other);
  if (!outcome.ok || outcome.value !== 'above') return false;
  // `15 psi` against `1.03 bar`: the same value in another unit, rounded.
  const same = one.unit === other.unit ? undefined : checkSecond(other, one);
  return !(same?.ok && same.value.verdict === 'agrees');
}

function clausePlace(thing: Thing): ReturnType<typeof placeIn> {
  const clause = clauseOf(thing, 'not over');
  return clause ? placeIn(thing, clause) : thing.place;
}
