/** Which position of a control is its normal one: the one that `moved` counts from. */
import type { Run } from './run.ts';

export type Position = 'open' | 'closed' | 'on' | 'off';

/**
 * The normal position: declared; or, for a point at which a system is relieved, drained, filled or vented,
 * closed; or, for an isolator, the one that lets energy through; else the opposite of the first action on it.
 */
export function normalPosition(run: Run, item: number, first: Position): string {
  const thing = run.thing(item);
  const { model } = run;
  if (thing.normally) {
    // `normally on` and `open the breaker`: both pairs name the same two positions.
    if (first === 'open' || first === 'closed')
      return thing.normally === 'on' ? 'open' : thing.normally === 'off' ? 'closed' : thing.normally;
    return thing.normally === 'open' ? 'on' : thing.normally === 'closed' ? 'off' : thing.normally;
  }
  const flow = first === 'open' || first === 'closed';
  if (model.relieves[item]!.length + model.drains[item]!.length + model.servicePoints[item]!.length > 0)
    return flow ? 'closed' : 'off';
  if (thing.type === 'isolator' || model.isolates[item]!.length > 0) return flow ? 'open' : 'on';
  const known = run.positions.get(item);
  if (known) return known;
  const normal = OPPOSITE[first];
  run.positions.set(item, normal);
  return normal;
}

export const OPPOSITE: Readonly<Record<Position, Position>> = {
  open: 'closed',
  closed: 'open',
  on: 'off',
  off: 'on',
};
