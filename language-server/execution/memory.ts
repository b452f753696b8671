/**
 * What somebody remembers, as plain data: copied, so that it can be taken up again later, and compared. Nodes of the
 * tree, things of the machine and declared hazards are themselves and never copied.
 */

function isItself(value: object): boolean {
  return (
    ('kind' in value && 'start' in value) || 'declaration' in value || ('hazard' in value && 'when' in value)
  );
}

/** A copy in which what was one object is one object. */
export function copied<Value>(value: Value, made = new Map<object, unknown>()): Value {
  if (typeof value !== 'object' || value === null || isItself(value)) return value;
  const known = made.get(value);
  if (known) return known as Value;
  if (Array.isArray(value)) {
    const list: unknown[] = [];
    made.set(value, list);
    for (const one of value) list.push(copied(one, made));
    return list as Value;
  }
  const copy: Record<string, unknown> = {};
  made.set(value, copy);
  for (const key in value) copy[key] = copied((value as Record<string, unknown>)[key], made);
  return copy as Value;
}

/** The same, part by part. */
export function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (isItself(a) || isItself(b)) return false;
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((one, index) => alike(one, b[index]));
  }
  if (a instanceof Set) {
    return b instanceof Set && a.size === b.size && [...a].every((one) => b.has(one));
  }
  const [one, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  let keys = 0;
  for (const key in one) {
    keys++;
    if (!alike(one[key], other[key])) return false;
  }
  for (const _ in other) keys--;
  return keys === 0;
}
