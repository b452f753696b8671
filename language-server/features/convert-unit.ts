/** A quantity at a place written in the other system's unit, or with that unit added in brackets. */
import { printSource, roundedIn, unitNamed } from '../../grammar/quantity/index.ts';
import type { Quantity } from '../../grammar/syntax/tree.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import type { View } from './view.ts';
import type { Edit } from './write-out-edits.ts';

export interface Conversion {
  title: string;
  edit: Edit;
}

export function conversionsAt(view: View, path: string, offset: number): Conversion[] {
  const file = view.file(path);
  const quantity = file && quantityAt(file.parsed.tree, offset);
  if (!file || !quantity || quantity.named || quantity.second) return [];
  const read = readTyped(quantity, new Map());
  const unit = read?.unit.partner === undefined ? undefined : unitNamed(read.unit.partner);
  const other = read && unit ? roundedIn(read, unit) : undefined;
  if (!read || !other?.ok) return [];
  const text = printSource(other.value);
  const { start, end } = quantity;
  return [
    { title: `Write ${text} for ${printSource(read)}`, edit: { start, end, text } },
    { title: `Add ${text} in brackets`, edit: { start: end, end, text: ` (${text})` } },
  ];
}

function quantityAt(value: unknown, offset: number): Quantity | undefined {
  if (Array.isArray(value)) {
    for (const one of value) {
      const found = quantityAt(one, offset);
      if (found) return found;
    }
    return undefined;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  const node = value as { start?: number; end?: number };
  if (typeof node.start === 'number' && (node.start > offset || node.end! < offset)) return undefined;
  if ('amounts' in value && 'form' in value) return value as Quantity;
  return quantityAt(Object.values(value), offset);
}
