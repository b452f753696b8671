/**
 * Taken off and put back though nothing done in between needed it off: a hint for a step that only costs time.
 * Careful: it counts as needed as soon as anything near it was touched while it was off, so that a step with a
 * reason is never called needless.
 */
import type { Run } from './run.ts';
import type { StepRef } from './steps.ts';

const AWAY: ReadonlySet<string> = new Set(['remove', 'unbolt']);
const BACK: ReadonlySet<string> = new Set(['refit', 'fit', 'bolt up']);
/** Work on the machine as a whole may need anything off. */
const ANYTHING: ReadonlySet<string> = new Set([
  'run',
  'wait',
  'sign',
  'record',
  'choose',
  'send',
  'evacuate',
  'drain',
  'recover',
  'bleed',
  'align',
  'adjust',
]);

/** `steps`: all that were carried out, in order, with their numbers. */
export function neverNeeded(
  run: Run,
  steps: readonly (readonly [number, StepRef])[] = [...run.steps.entries()],
): void {
  const off = new Map<number, number>();
  const dug = new Set<number>();
  let selecting = false;
  // Where something else is wrong with it, that is the finding.
  const found = new Set(run.facts.map((fact) => fact.subject?.thing));
  for (let index = 0; index < steps.length; index++) {
    const number = steps[index]![0];
    const { action, touched, within } = steps[index]![1];
    if (action.verb === 'choose' || action.verb === 'trial fit') selecting = true;
    if (AWAY.has(action.verb)) {
      const thrown = action.tails.some((tail) => tail.tail === 'and discard');
      for (const item of touched) {
        // Dug out from under something else, it is part of a larger strip.
        const covered = run.model.covers[item]!.some((cover) => dug.has(cover));
        if (!thrown && !covered && run.thing(item).type === 'part' && !letsOut(run, item))
          off.set(item, index);
        dug.add(item);
      }
    } else if (BACK.has(action.verb)) {
      for (const item of touched) {
        const since = off.get(item);
        off.delete(item);
        if (since === undefined || selecting || action.fresh || steps[since]![1].within !== within) continue;
        if (!found.has(run.thing(item)) && !needed(run, item, steps, since, index)) {
          run.blame('never-needed', item, {
            cases: within,
            at: steps[since]![0],
            since: number,
            what: 'put back',
          });
        }
      }
    }
  }
  run.flush();
}

/** Taking it out is work by itself: it relieves, drains or cuts off something. */
function letsOut(run: Run, item: number): boolean {
  const { relieves, drains, isolates } = run.model;
  return [relieves, drains, isolates].some((list) => list[item]!.length > 0);
}

function needed(
  run: Run,
  item: number,
  steps: readonly (readonly [number, StepRef])[],
  from: number,
  to: number,
): boolean {
  for (let index = from + 1; index < to; index++) {
    const { action, touched } = steps[index]![1];
    if (ANYTHING.has(action.verb)) return true;
    const moving = AWAY.has(action.verb) || BACK.has(action.verb);
    for (const one of touched) if (one === item || isNear(run, item, one, moving)) return true;
  }
  return false;
}

/** Whether work on `one` can be the reason why `item` is off. Its own fasteners coming and going are not. */
function isNear(run: Run, item: number, one: number, moving: boolean): boolean {
  const { model } = run;
  const own = model.fastenersOf[item]!.includes(one) || model.connectionsOf[item]!.includes(one);
  if (own) return !moving;
  const seats = model.seats[item]!;
  return (
    model.covers[one]!.includes(item) ||
    seats.includes(one) ||
    model.riders[item]!.includes(one) ||
    model.seals[item]!.includes(one) ||
    model.faces[item]!.includes(one) ||
    model.seals[item]!.some((seal) => model.faces[seal]!.includes(one)) ||
    model.opens[item]!.includes(one) ||
    model.carries[item]!.includes(one) ||
    model.relieves[item]!.includes(one) ||
    model.drains[item]!.includes(one) ||
    model.servicePoints[item]!.includes(one) ||
    seats.some((seat) => model.seats[one]!.includes(seat) || model.members[one]!.includes(seat))
  );
}
