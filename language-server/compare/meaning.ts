/**
 * What a piece of source means, as a text that is equal for two pieces that mean the same: without places, layout and
 * comments, quantities by their exact size in the coherent unit (so that `0.5 in` is `12.7 mm`), things that stand in a
 * list without order sorted. Quoted texts are left out: they are words for the reader, compared on their own.
 */
import { convertNumber, exact, readQuantity, unitNamed } from '../../grammar/quantity/index.ts';
import { kindNamed } from '../../grammar/quantity/kinds.ts';
import type { Quantity as Read } from '../../grammar/quantity/quantity.ts';
import type { Quantity, Span, Text } from '../../grammar/syntax/tree.ts';

/** Keys that say where a piece stands or how it is laid out, never what it means. */
const PLACES: ReadonlySet<string> = new Set(['start', 'end', 'closed', 'second', 'holes']);
/** A node with one of these says with it what its `word` says. */
const TELLS_ITS_WORD = ['clause', 'tail', 'header', 'verb', 'signal', 'type'];
/** Lists of things in which the order is no part of the meaning. */
const SETS: ReadonlySet<string> = new Set(['hazards', 'when', 'with', 'to', 'except', 'claims']);

/** The meaning of a tree or a part of it; `source` is the text it stands in. */
export function meaningOf(node: unknown, source: string): string {
  if (node === undefined || node === null) return '';
  if (Array.isArray(node)) return `[${node.map((one) => meaningOf(one, source)).join(',')}]`;
  if (typeof node !== 'object') return String(node);
  if (isText(node)) return '';
  if (isQuantity(node)) return quantityMeaning(node, source);
  const parts = Object.entries(node).flatMap(([key, value]) => {
    if (key === 'word' && TELLS_ITS_WORD.some((other) => other in node)) return [];
    if (PLACES.has(key) || value === undefined || (Array.isArray(value) && value.length === 0)) return [];
    const said = SETS.has(key) && Array.isArray(value) ? setMeaning(value, source) : meaningOf(value, source);
    return said === '' ? [] : [`${key}=${said}`];
  });
  return parts.length === 0 ? '' : `(${parts.join(' ')})`;
}

/** The meaning of a list in which the order says nothing. */
export function setMeaning(nodes: readonly unknown[], source: string): string {
  return `{${nodes
    .map((one) => meaningOf(one, source))
    .sort()
    .join(',')}}`;
}

/** The quoted texts in a tree, in their order, without layout: what a reader reads. */
export function wordsOf(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  if (isText(node)) return [node.value.replace(/\s+/g, ' ').trim()];
  return Object.values(node).flatMap(wordsOf);
}

/** The source as typed, in one line. */
export function typed({ start, end }: Span, source: string): string {
  return source
    .slice(start, end)
    .replace(/\/\/[^\n]*/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * How far two quantities are apart, in percent of the first; undefined where they are not two plain values, or
 * tolerances about one, of the same kind.
 */
export function percentBetween(before: string, after: string): number | undefined {
  const [a, b] = [readQuantity(before), readQuantity(after)];
  if (!a.ok || !b.ok || a.value.unit.kind !== b.value.unit.kind) return undefined;
  const [from, to] = [coherent(a.value, a.value.nominal), coherent(b.value, b.value.nominal)];
  if (!from || !to || exact.isZero(from)) return undefined;
  const share = exact.divide(exact.subtract(to, from), exact.abs(from));
  return share && exact.toNumber(share) * 100;
}

function quantityMeaning(quantity: Quantity, source: string): string {
  if (quantity.named) return `value ${quantity.named.name.text}`;
  const end = quantity.second ? quantity.amounts.at(-1)?.end : quantity.end;
  const text = source.slice(quantity.start, end ?? quantity.end);
  const read = readQuantity(text);
  if (!read.ok) return text.replace(/\s+/g, ' ');
  const { form, unit, low, high, nominal } = read.value;
  const sizes = [low, nominal, high].map((size) => {
    const value = coherent(read.value, size);
    return value ? exact.toFraction(value) : '';
  });
  return `${form} ${unit.kind} ${unit.reference ?? ''} ${sizes.join(' ')}`;
}

/** A size in the coherent unit of its kind. */
function coherent(quantity: Read, size: Read['nominal']) {
  const base = kindNamed(quantity.unit.kind)?.base;
  const unit = base === undefined ? undefined : unitNamed(base);
  return size && (unit ? convertNumber(size, quantity.unit, unit) : size);
}

function isText(node: object): node is Text {
  return 'value' in node && 'holes' in node;
}

function isQuantity(node: object): node is Quantity {
  return 'form' in node && 'amounts' in node;
}
