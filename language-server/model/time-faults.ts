/**
 * The time that a procedure states against the waits that its steps prescribe. Fact `time-differs`: only where the
 * waits alone, in the quickest way through the branches, take longer. How long work takes is nobody's guess here.
 */
import type { Action, Block, Procedure, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { bandIn, readTyped, said } from './fastening-amounts.ts';
import type { Model } from './model.ts';

export function timeFaults(model: Model, procedure: Procedure, file: { readonly path: string }): Fact[] {
  const header = procedure.headers.find((one) => one.header === 'time');
  const typed = header?.header === 'time' ? header.quantity : undefined;
  const stated = readTyped(typed, model.values);
  if (!header || !typed || stated?.unit.kind !== 'time') return [];
  const waits = blockSeconds(model, procedure.body);
  const { high } = bandIn(stated, 's');
  if (waits <= high * (1 + 1e-9)) return [];
  return [
    {
      check: 'time-differs',
      at: { file: file.path, start: header.start, end: header.end },
      words: { stated: said(stated), waits: spoken(waits) },
    },
  ];
}

/** s: the least that is waited in the block. */
function blockSeconds(model: Model, block: Block | undefined): number {
  let sum = 0;
  for (const statement of block?.statements ?? []) {
    sum += seconds(model, statement);
    // What follows is not certain to be done.
    if (statement.kind === 'stop') break;
  }
  return sum;
}

function seconds(model: Model, statement: Statement): number {
  switch (statement.kind) {
    case 'action':
      return actionSeconds(model, statement);
    case 'task':
    case 'step':
    case 'hold':
    case 'repeat':
      return blockSeconds(model, statement.body);
    case 'when':
    case 'if':
      return Math.min(blockSeconds(model, statement.body), blockSeconds(model, statement.otherwise));
    default:
      return 0;
  }
}

function actionSeconds(model: Model, action: Action): number {
  let least = action.verb === 'wait' ? lowSeconds(model, action.quantity) : 0;
  for (const tail of action.tails)
    if (tail.tail === 'for') least = Math.max(least, lowSeconds(model, tail.quantity));
  if (action.outcomes.length === 0) return least;
  return least + Math.min(...action.outcomes.map(({ body }) => blockSeconds(model, body)));
}

function lowSeconds(model: Model, typed: Action['quantity']): number {
  const read = readTyped(typed, model.values);
  if (read?.unit.kind !== 'time') return 0;
  const { low } = bandIn(read, 's');
  return Number.isFinite(low) ? low : 0;
}

function spoken(value: number): string {
  const hours = Math.floor(value / 3600);
  const minutes = Math.round((value - hours * 3600) / 60);
  if (hours === 0) return `${minutes} min`;
  return minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`;
}
