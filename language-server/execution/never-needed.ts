/**
 * Taken off and put back though nothing done in between needed it off: a hint for a step that only costs time.
 * Careful: it counts as needed as soon as anything near it was touched while it was off, so that a step with a
 * reason is never called needless.
 */
import type { Run } from './run.ts';

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

export function neverNeeded(run: Run): void {
  const off = new Map<number, number>();
  // Where something else is wrong with it, that is the finding.
  const found = new Set(run.facts.map((fact) => fact.subject?.thing));
  run.steps.forEach(({ action, touched }, index) => {
    if (AWAY.has(action.verb)) {
      if (action.tails.some((tail) => tail.tail === 'and discard')) return;
      for (const item of touched) if (run.thing(item).type === 'part') off.set(item, index);
    } else if (BACK.has(action.verb)) {
      for (const item of touched) {
        const since = off.get(item);
        off.delete(item);
        if (since === undefined || action.fresh || run.steps[since]!.within !== run.steps[index]!.within)
          continue;
        if (!found.has(run.thing(item)) && !needed(run, item, since, index)) {
          run.blame('never-needed', item, {
            cases: run.steps[since]!.within,
            at: since,
            since: index,
            what: 'put back',
          });
        }
      }
    }
  });
  run.flush();
}

function needed(run: Run, item: number, from: number, to: number): boolean {
  const { model } = run;
  // Dug out from under something else, it is part of a larger strip; after a choice, of a selection.
  if (
    model.covers[item]!.some((cover) =>
      run.steps.some((step) => AWAY.has(step.action.verb) && step.touched.includes(cover)),
    )
  )
    return true;
  if (
    run.steps.slice(0, to).some((step) => step.action.verb === 'choose' || step.action.verb === 'trial fit')
  )
    return true;
  const near = new Set<number>([
    item,
    ...model.seats[item]!,
    ...model.seals[item]!,
    ...model.faces[item]!,
    ...model.opens[item]!,
    ...model.riders[item]!,
    ...model.carries[item]!,
    ...model.relieves[item]!,
    ...model.drains[item]!,
    ...model.servicePoints[item]!,
  ]);
  for (const seal of model.seals[item]!) for (const face of model.faces[seal]!) near.add(face);
  // Whatever it covers, and whatever sits or is fastened or joined where it was.
  model.covers.forEach((covers, other) => {
    if (covers.includes(item)) near.add(other);
  });
  for (const seat of model.seats[item]!) {
    for (const other of [...model.riders[seat]!, ...model.fastenersOf[seat]!, ...model.connectionsOf[seat]!])
      near.add(other);
  }
  const own = new Set([...model.fastenersOf[item]!, ...model.connectionsOf[item]!]);
  for (let index = from + 1; index < to; index++) {
    const { action, touched } = run.steps[index]!;
    if (ANYTHING.has(action.verb)) return true;
    for (const one of touched) {
      if (one === item) return true;
      if (near.has(one) && !(own.has(one) && (AWAY.has(action.verb) || BACK.has(action.verb)))) return true;
    }
  }
  return false;
}
