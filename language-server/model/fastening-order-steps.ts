/** The orders in which steps work on the fasteners of a group: `loosen head-bolts in reverse order`. */

import type { Action, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { orderInStepFault, workingPositions } from './fastening-orders.ts';
import { bodiesOf, visited } from './flow-walk.ts';
import { itemsOf } from './items.ts';
import { mirror } from './mirror.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

const ORDERED: ReadonlySet<string> = new Set(['tighten', 'loosen', 'fit', 'refit', 'remove', 'back off']);
const LOOSENING: ReadonlySet<string> = new Set(['loosen', 'remove', 'back off']);

export function orderFaults(model: Model, survey: Survey, file: string): Fact[] {
  const says = (action: Action) => action.tails.some((tail) => tail.tail === 'in order' && tail.order);
  const named = survey.distinct('orders', [], (one) => (one.kind === 'action' && says(one) ? [true] : []));
  // Where no step names an order, none is wrong.
  if (named.length === 0) return [];
  const steps = survey.each('order of work', [], (one): readonly Statement[] =>
    one.kind === 'reverse' || (one.kind === 'action' && ORDERED.has(one.verb)) ? [one] : [],
  );
  const facts: Fact[] = [];
  const tightened = new Set<Thing>();
  for (const action of steps.flatMap((one) =>
    one.kind === 'reverse' ? mirrored(model, survey, one) : [one],
  )) {
    if (action.kind === 'action') facts.push(...inAction(model, action, file, tightened));
  }
  return facts;
}

/** The actions of the way back. */
function mirrored(model: Model, { procedure }: Survey, reverse: Statement & { kind: 'reverse' }): Action[] {
  const task = visited(procedure.body).find(
    ({ statement }) => statement.kind === 'task' && statement.name?.text === reverse.task?.text,
  )?.statement;
  if (task?.kind !== 'task') return [];
  const all: Action[] = [];
  const walk = (statement: Statement): void => {
    if (statement.kind === 'action' && ORDERED.has(statement.verb)) all.push(statement);
    for (const body of bodiesOf(statement)) body.statements.forEach(walk);
  };
  mirror(task.body, reverse, model).statements.forEach(walk);
  return all;
}

function inAction(model: Model, action: Action, file: string, tightened: Set<Thing>): Fact[] {
  const loosening = LOOSENING.has(action.verb);
  const facts: Fact[] = [];
  for (const ref of action.objects) {
    const thing = model.byName.get(ref.name.text);
    if (thing?.type !== 'fastener') continue;
    for (const tail of action.tails) {
      if (tail.tail !== 'in order' || !tail.order) continue;
      const fault = orderInStepFault(model, {
        thing,
        working: workingPositions(thing, itemsOf(thing, ref).items),
        order: tail.order,
        at: { file, start: tail.order.start, end: tail.order.end },
        loosening,
        again: tightened.has(thing),
      });
      if (fault) facts.push(fault);
    }
    if (loosening) tightened.delete(thing);
    else if (action.verb === 'tighten') tightened.add(thing);
  }
  return facts;
}
