/**
 * What the machine knows and the author need not type, shown between the words: the other system's unit, how
 * many there are of a group, how many things are off when a task ends.
 */

import { printReader, printReaderIn, unitNamed } from '../../grammar/quantity/index.ts';
import type { Action, Procedure, Quantity, Statement } from '../../grammar/syntax/tree.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import type { Model } from '../model/model.ts';
import { countAt, tasksIn } from './lenses.ts';
import type { View } from './view.ts';

export interface Inlay {
  offset: number;
  text: string;
  what: 'secondUnit' | 'count' | 'thingsOff';
}

export interface InlayChoice {
  secondUnit: boolean;
  count: boolean;
  thingsOff: boolean;
}

/** Hints between two offsets. */
export function inlays(view: View, path: string, from: number, to: number, choice: InlayChoice): Inlay[] {
  const file = view.file(path);
  if (!file) return [];
  const result: Inlay[] = [];
  const values = new Map() as Model['values'];
  if (choice.secondUnit) {
    visitQuantities(file.parsed.tree, (quantity) => {
      if (quantity.end < from || quantity.start > to) return;
      const text = secondOf(quantity, values);
      if (text) result.push({ offset: quantity.end, text, what: 'secondUnit' });
    });
  }
  for (const procedure of file.procedures) {
    if (procedure.end < from || procedure.start > to) continue;
    const found = view.machineOf(procedure, file);
    if (!found) continue;
    if (choice.count) {
      for (const action of actionsIn(procedure)) {
        if (action.end < from || action.start > to) continue;
        for (const ref of action.objects) {
          const thing = found.model.byName.get(ref.name.text);
          if (!thing?.count || thing.count < 2 || ref.positions.length > 0 || ref.count) continue;
          result.push({ offset: ref.end, text: `×${thing.count}`, what: 'count' });
        }
      }
    }
    if (choice.thingsOff) {
      for (const { body } of tasksIn(procedure)) {
        if (!body?.closed || body.end < from || body.end > to) continue;
        const count = countAt(view, procedure, path, found.model, body.end - 1);
        if (count > 0) result.push({ offset: body.end, text: `${count} off or open`, what: 'thingsOff' });
      }
    }
  }
  return result.sort((a, b) => a.offset - b.offset);
}

/** The quantity in its partner unit, where the author gave no second one. */
function secondOf(quantity: Quantity, values: Model['values']): string | undefined {
  if (quantity.second || quantity.named) return undefined;
  const read = readTyped(quantity, values);
  const unit = read?.unit.partner === undefined ? undefined : unitNamed(read.unit.partner);
  if (!read || !unit) return undefined;
  const printed = printReaderIn(read, unit);
  return printed.ok && printed.value !== printReader(read) ? printed.value : undefined;
}

function visitQuantities(value: unknown, see: (quantity: Quantity) => void): void {
  if (Array.isArray(value)) {
    for (const one of value) visitQuantities(one, see);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  if ('amounts' in value && 'form' in value) {
    see(value as Quantity);
    return;
  }
  for (const one of Object.values(value)) visitQuantities(one, see);
}

export function actionsIn(procedure: Procedure): Action[] {
  const actions: Action[] = [];
  const visit = (statements: readonly Statement[] | undefined): void => {
    for (const statement of statements ?? []) {
      if (statement.kind === 'action') {
        actions.push(statement);
        for (const { body } of statement.outcomes) visit(body?.statements);
      }
      if ('body' in statement) visit(statement.body?.statements);
      if ('otherwise' in statement) visit(statement.otherwise?.statements);
    }
  };
  visit(procedure.body?.statements);
  return actions;
}
