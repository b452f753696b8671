/**
 * Puts what is as before in the place of what was read anew, so that "the same" is "the same object". Places in
 * nodes are those of line-space.ts: they stay while their line does, and so does the node.
 */

/** `fresh` with every part that equals its counterpart in `old` replaced by that; `old` itself where all is equal. */
export function graft<Node>(old: Node | undefined, fresh: Node): Node {
  if (old === undefined || Object.is(old, fresh)) return fresh;
  if (Array.isArray(fresh)) return (Array.isArray(old) ? graftList(old, fresh) : fresh) as Node;
  if (typeof fresh !== 'object' || fresh === null || typeof old !== 'object' || old === null) return fresh;
  const before = old as Record<string, unknown>;
  const after = fresh as Record<string, unknown>;
  if (before.kind !== after.kind) return fresh;
  let same = true;
  let keys = 0;
  for (const key in after) {
    keys++;
    const value = graft(before[key], after[key]);
    after[key] = value;
    if (value !== before[key]) same = false;
  }
  if (same) for (const _ in before) keys--;
  return same && keys === 0 ? old : fresh;
}

/** Equal elements are found from the front and from the back; what is left between is matched in pairs. */
export function graftList<Node>(old: readonly Node[], fresh: Node[]): Node[] {
  let front = 0;
  const least = Math.min(old.length, fresh.length);
  while (front < least) {
    const kept = graft(old[front], fresh[front]!);
    fresh[front] = kept;
    if (kept !== old[front]) break;
    front++;
  }
  if (front === old.length && front === fresh.length) return old as Node[];
  let back = 0;
  while (back < least - front) {
    const [mine, theirs] = [fresh.length - 1 - back, old.length - 1 - back];
    if (mine <= front && theirs <= front) break;
    const kept = graft(old[theirs], fresh[mine]!);
    fresh[mine] = kept;
    if (kept !== old[theirs]) break;
    back++;
  }
  return fresh;
}
