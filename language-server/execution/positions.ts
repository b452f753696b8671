/** Which position of a control is its normal one: the one that `moved` counts from. */
import type { Run } from './run.ts';

export type Position = 'open' | 'closed' | 'on' | 'off';

/**
 * The normal position: declared; or, for a point at which a system is relieved, drained, filled or vented,
 * closed; or, for an isolator, the one that lets energy through; else the opposite of the first action on it.
 * In the words of `first`: `normally on` and `open the breaker` name the same two positions.
 */
export function normalPosition(run: Run, item: number, first: Position): string {
  const thing = run.thing(item);
  const { model } = run;
  let normal = thing.normally;
  if (normal === undefined) {
    if (model.relieves[item]!.length + model.drains[item]!.length + model.servicePoints[item]!.length > 0)
      normal = 'closed';
    else if (thing.type === 'isolator' || model.isolates[item]!.length > 0) normal = 'open';
    else {
      normal = run.positions.get(item) ?? OPPOSITE[first];
      if (!run.positions.has(item)) run.positions.set(item, normal);
    }
  }
  const said = first === 'open' || first === 'closed' ? AS_FLOW : AS_SWITCH;
  return said[normal] ?? normal;
}

const AS_FLOW: Readonly<Record<string, Position>> = { on: 'open', off: 'closed' };
const AS_SWITCH: Readonly<Record<string, Position>> = { open: 'on', closed: 'off' };

export const OPPOSITE: Readonly<Record<Position, Position>> = {
  open: 'closed',
  closed: 'open',
  on: 'off',
  off: 'on',
};
