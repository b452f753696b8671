/**
 * Amounts of a fluid that a sentence tells to fill in: volumes and masses, apart from those of cans, pans and steps on
 * the way. English words only. Common practice, no source.
 */
import { type FoundQuantity, findQuantities } from '../../grammar/quantity/index.ts';
import { hasDigit } from './torque-words.ts';

/** The volumes and masses of a sentence that are what goes in, in order. Offsets are in the sentence. */
export function amountsIn(sentence: string): FoundQuantity[] {
  if (!hasDigit(sentence)) return [];
  let from = 0;
  return findQuantities(sentence).filter((one) => {
    const before = sentence.slice(from, one.from);
    from = one.to;
    const { kind } = one.quantity.unit;
    if (kind !== 'volume' && kind !== 'mass') return false;
    return !OF_SOMETHING_ELSE.test(before) && !CONTAINER.test(sentence.slice(one.to, one.to + 24));
  });
}

const CONTAINER =
  /^[\s-]*(?:or (?:more|larger)\s)?(can|pan|tray|bucket|jug|drum|bottle|tin|barrel|container|canister|cylinder|tank|bag|cartridge)\b/i;

const OF_SOMETHING_ELSE =
  /\b(can|pan|tray|bucket|jug|drum|bottle|tin|barrel|container|canister|at least|more than|over|not|never|of|every|each|per|about|old|catch\w*|collect\w*|drain\w*|weigh\w*|mass|hold\w*)\b/i;
