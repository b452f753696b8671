/** The safeguard of the formatter: whether two texts have the same tokens, and two trees the same meaning. */
import type { Token } from '../syntax/tree.ts';

interface Scanned {
  text: string;
  tokens: readonly Token[];
}

/** The number of the first token that differs, or -1. */
export function firstDifference(one: Scanned, other: Scanned): number {
  const count = Math.min(one.tokens.length, other.tokens.length);
  for (let i = 0; i < count; i += 1) {
    const a = one.tokens[i]!;
    const b = other.tokens[i]!;
    const length = a.end - a.start;
    if (a.type !== b.type || b.end - b.start !== length) return i;
    if (!equalStretch(one.text, a.start, other.text, b.start, length)) return i;
  }
  return one.tokens.length === other.tokens.length ? -1 : count;
}

/** Two trees are the same but for the places of their nodes. */
export function sameTree(one: unknown, other: unknown): boolean {
  if (Array.isArray(one)) {
    return (
      Array.isArray(other) && one.length === other.length && one.every((each, i) => sameTree(each, other[i]))
    );
  }
  if (typeof one !== 'object' || one === null || typeof other !== 'object' || other === null)
    return Object.is(one, other);
  const left = one as Record<string, unknown>;
  const right = other as Record<string, unknown>;
  const keys = Object.keys(left);
  if (keys.length !== Object.keys(right).length) return false;
  return keys.every(
    (key) => key === 'start' || key === 'end' || (key in right && sameTree(left[key], right[key])),
  );
}

function equalStretch(
  one: string,
  oneStart: number,
  other: string,
  otherStart: number,
  length: number,
): boolean {
  for (let i = 0; i < length; i += 1) {
    if (one.charCodeAt(oneStart + i) !== other.charCodeAt(otherStart + i)) return false;
  }
  return true;
}
