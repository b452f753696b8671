/**
 * Finds the quantities in a sentence for readers.
 *
 * Not here: what a sentence may say (the wording checks).
 */

import { isDigit, isMinus, numberAt } from './characters.ts';
import type { Quantity } from './quantity.ts';
import { scanBody } from './scan.ts';

/** A quantity found in a longer text. Offsets are in that text. */
export interface FoundQuantity {
  readonly from: number;
  readonly to: number;
  readonly quantity: Quantity;
}

/**
 * Every quantity with a unit in a sentence, in order. Plain numbers, ambiguous units and half quantities
 * are passed over. In a sentence `in` before another word is the preposition unless a fraction or a
 * decimal stands before it.
 */
export function findQuantities(sentence: string): readonly FoundQuantity[] {
  const found: FoundQuantity[] = [];
  let at = 0;
  while (at < sentence.length) {
    if (!isDigit(sentence, at) || (at > 0 && joinsBefore(sentence, at))) {
      at += 1;
      continue;
    }
    const from = signBefore(sentence, at) ? at - 1 : at;
    const scan = scanBody(sentence, from);
    if (scan.outcome.ok && scan.to > from && !isPreposition(sentence, scan.to, scan.outcome.value)) {
      found.push({ from, to: scan.to, quantity: scan.outcome.value });
      at = scan.to;
    } else {
      at = numberAt(sentence, at)?.to ?? at + 1;
    }
  }
  return found;
}

function joinsBefore(text: string, at: number): boolean {
  return (
    /[\p{L}\d_#.,/]/u.test(text[at - 1]!) ||
    (text[at - 1] === '-' && at > 1 && /[\p{L}\d]/u.test(text[at - 2]!))
  );
}

function signBefore(text: string, at: number): boolean {
  return at > 0 && isMinus(text, at - 1) && (at === 1 || text[at - 2] === ' ');
}

function isPreposition(text: string, to: number, q: Quantity): boolean {
  if (q.unit.symbol !== 'in' || q.fraction === true || q.step?.d !== 1) return false;
  return text.slice(to - 3, to) === ' in' && /^\s+\p{L}/u.test(text.slice(to, to + 4));
}
