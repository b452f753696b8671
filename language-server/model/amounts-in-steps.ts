/**
 * Amounts that a step or its sentence fills in against what the system holds. Fact `quantity-differs`. Only more than
 * it holds is wrong for certain: less is right where only part was drained.
 */
import { type Quantity, relate } from '../../grammar/quantity/index.ts';
import type { Action, Span, Written } from '../../grammar/syntax/tree.ts';
import { amountsIn } from '../wording/amount-words.ts';
import { hasDigit } from '../wording/torque-words.ts';
import type { Fact } from './facts.ts';
import { readTyped, said } from './fastening-amounts.ts';
import { clauseOf, firstOf, placeIn } from './fastening-declared.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

export function amountFaults(
  model: Model,
  survey: Survey,
  file: { readonly path: string; readonly written: Written },
): Fact[] {
  if (!saysAmounts(model)) return [];
  return survey.each('amounts', [model], (statement) =>
    statement.kind === 'action' ? inAction(model, statement, file) : [],
  );
}

const saying = new WeakMap<Model, boolean>();

/** Whether the machine says of any system how much it holds; asked once of each machine. */
function saysAmounts(model: Model): boolean {
  let says = saying.get(model);
  if (says === undefined) {
    says = model.things.some(
      (thing) => thing.holds?.amounts.length || clauseOf(thing, 'service fill') !== undefined,
    );
    saying.set(model, says);
  }
  return says;
}

function inAction(model: Model, action: Action, file: { path: string; written: Written }): Fact[] {
  if (action.verb !== 'fill' && action.verb !== 'top up') return [];
  // Of several systems nobody can tell which one an amount is for.
  const [ref] = action.objects;
  const system = action.objects.length === 1 && ref ? model.byName.get(ref.name.text) : undefined;
  if (!system) return [];
  const facts: Fact[] = [];
  const compare = (amount: Quantity | undefined, span: Span) => {
    const most = amount && mostOf(model, system);
    if (!amount || !most) return;
    const relation = relate(amount, most.quantity);
    if (!relation.ok || relation.value !== 'above') return;
    facts.push({
      check: 'quantity-differs',
      at: { file: file.path, start: span.start, end: span.end },
      subject: { thing: system },
      words: { typed: said(amount), holds: said(most.quantity) },
      story: [{ at: placeIn(system, most.span), what: 'declared', thing: system }],
    });
  };
  if (action.quantity) compare(readTyped(action.quantity, model.values), firstOf(action.quantity));
  for (const tail of action.tails)
    if (tail.tail === 'with' && tail.quantity)
      compare(readTyped(tail.quantity, model.values), firstOf(tail.quantity));
  const { text } = action;
  if (text && hasDigit(text.value)) {
    const plain = file.written.slice(text.start + 1, text.end - 1) === text.value;
    for (const { quantity, from, to } of amountsIn(text.value))
      compare(quantity, plain ? { start: text.start + 1 + from, end: text.start + 1 + to } : text);
  }
  return facts;
}

/** The larger of what it holds and what a service takes, rounding allowed for. */
function mostOf(model: Model, system: Thing): { quantity: Quantity; span: Span } | undefined {
  let most: { quantity: Quantity; span: Span } | undefined;
  for (const typed of [system.holds, clauseOf(system, 'service fill')?.quantity]) {
    const quantity = readTyped(typed, model.values);
    if (!typed || !quantity) continue;
    const relation = most && relate(quantity, most.quantity);
    if (!relation || (relation.ok && relation.value === 'above')) most = { quantity, span: firstOf(typed) };
  }
  return most;
}
