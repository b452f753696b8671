/** A thing of a machine in a few lines: what it is, what it hangs together with, its torque in both systems. */
import { printBoth, printReader, type Quantity as Read, unitNamed } from '../../grammar/quantity/index.ts';
import type { Quantity, Stage } from '../../grammar/syntax/tree.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import { list, type Model, type Thing } from '../model/model.ts';

/** `bearing caps · part ×3` */
export function headline(thing: Thing): string {
  return `${thing.title} · ${thing.type}${thing.count && thing.count > 1 ? ` ×${thing.count}` : ''}`;
}

/** What a reader wants to know beside the headline, one fact a line. */
export function factsOf(thing: Thing, model: Model): string[] {
  const rows: string[] = [];
  const say = (words: string, lists: readonly (readonly number[])[]) => {
    const items = thing.positions.flatMap((_, index) => lists[thing.first + index] ?? []);
    const titles = [...new Set(items.map((item) => model.thingOf[item]!.title))];
    if (titles.length > 0) rows.push(`${words} ${list(titles)}`);
  };
  if (thing.fixed) rows.push('fixed: never comes off');
  say('on', model.seats);
  say('held by', model.heldBy);
  say('sealed by', model.seals);
  say('under', model.covers);
  say('opens', model.opens);
  say('carries', model.carries);
  if (thing.type === 'fastener') say('holds', model.members);
  if (thing.type === 'connection') say('joins', model.members);
  if (thing.type === 'system') {
    say('isolated at', model.isolators);
    say('relieved at', model.reliefPoints);
    say('drained at', model.drainPoints);
    say('filled at', model.fillPoints);
  }
  if (thing.type === 'kit') say('contains', model.contains);
  if (thing.type === 'tool') say('locks', model.locks);
  const mass = quantityOf(thing, 'mass');
  if (mass) rows.push(`mass ${both(mass, model)}`);
  const holds = thing.holds && both(thing.holds, model);
  if (holds) rows.push(`holds ${holds}`);
  const torque = torqueWords(thing, model);
  if (torque) rows.push(`tightened to ${torque}`);
  if (thing.toYield) rows.push('stretched when tightened: never tightened twice');
  if (thing.singleUse) rows.push('for one use only');
  if (thing.matched) rows.push('goes back where it was');
  for (const clause of thing.declaration.clauses) {
    if (clause.clause === 'goes' && clause.text) rows.push(`goes ${clause.text.value}`);
    if (clause.clause === 'hazard')
      rows.push(`hazard: ${list(clause.hazards.map(({ text }) => text.replaceAll('-', ' ')))}`);
  }
  return rows;
}

function quantityOf(thing: Thing, name: 'mass'): Quantity | undefined {
  const clause = thing.declaration.clauses.find((one) => one.clause === name);
  return clause && 'quantity' in clause ? clause.quantity : undefined;
}

/** `20 N·m (15 lbf·ft), then 90°`: the final torque, or the stages of the plan. */
export function torqueWords(thing: Thing, model: Model): string | undefined {
  if (thing.torque) return both(thing.torque, model);
  const words = thing.stages.flatMap((stage) => stageWords(stage, model) ?? []);
  return words.length > 0 ? words.join(', then ') : undefined;
}

/** A stage of a plan for a reader. */
export function stageWords(stage: Stage, model: Model): string | undefined {
  const quantity = 'quantity' in stage && stage.quantity ? both(stage.quantity, model) : undefined;
  switch (stage.kind) {
    case 'torque':
    case 'angle':
    case 'percent':
      return quantity;
    case 'by hand':
      return 'by hand';
    case 'loosen':
      return 'loosened';
    case 'back off':
      return `backed off${quantity ? ` ${quantity}` : ''}`;
    case 'wait':
      return `a wait${quantity ? ` of ${quantity}` : ''}`;
    case 'again':
      return `again${quantity ? ` ${quantity}` : ''}`;
    case 'until':
      return `until ${stage.text.value}`;
    default:
      return stage satisfies never;
  }
}

/** A quantity, or the value that is named in its place, in its own unit and in the other system's; undefined where it cannot be read. */
export function both(quantity: Quantity, model: Model): string | undefined {
  const read = readTyped(quantity, model.values);
  return read && bothOf(read);
}

export function bothOf(quantity: Read): string {
  const { partner } = quantity.unit;
  const other = partner === undefined ? undefined : unitNamed(partner);
  const printed = other && printBoth(quantity, other);
  return printed?.ok ? printed.value : printReader(quantity);
}
