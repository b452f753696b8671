/**
 * Parts that were chosen (`choose shims …`) and that no step puts in afterwards. In a repeat any step of it counts: what
 * a round chooses, the next one fits. See grammar/STATE.md, "Working, looking, time".
 */
import { ASIDE, bit, GONE, isPlaced, OFF, OUT, TRIAL } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import type { Run } from './run.ts';

export interface Choice {
  step: number;
  /** What is put in after this step is put in after the choice. */
  after: number;
  cases: CaseSet;
}

/** Takes note that the items are chosen in this step. */
export function choose(run: Run, items: readonly number[]): void {
  const { step, within: cases } = run;
  for (const item of items) {
    const choice = { step, after: run.repeating ?? step, cases };
    run.chosen.set(item, [...(run.chosen.get(item) ?? []), choice]);
  }
}

/**
 * The cases in which it should be in by now: another one of its kind was put in since, or what covers it went back. A
 * procedure that only measures and chooses leaves the rest to others.
 */
function passedOver(run: Run, item: number, after: number): CaseSet {
  const { cases, model } = run;
  const { first, positions, type } = run.thing(item);
  let set: CaseSet = NONE;
  const wentIn = (other: number, away: number) => {
    for (const entry of run.entries('place', other))
      if (!((away >>> entry.value) & 1) && entry.since > after) set = cases.or(set, entry.cases);
  };
  for (let other = first; other < first + positions.length; other++) wentIn(other, awayFrom(type));
  for (const other of model.covers[item]!)
    if (isPlaced(run.thing(other))) wentIn(other, awayFrom(run.thing(other).type));
  return set;
}

/** Values of `place` in which such a thing did not go in for good. */
function awayFrom(type: string): number {
  return type === 'fastener' ? bit(OUT) : bit(ASIDE, TRIAL, OFF, GONE);
}

/** Blames the steps that chose what is not put in by the end. `run.within`: the cases in which the text is finished. */
export function chosenAtTheEnd(
  run: Run,
  { mayBeAway, mustCome }: { mayBeAway: ReadonlySet<number>; mustCome: ReadonlySet<number> },
): void {
  const { cases } = run;
  for (const [item, choices] of run.chosen) {
    if (mayBeAway.has(item)) continue;
    const away = run.thing(item).type === 'fastener' ? bit(OUT) : bit(OFF, GONE);
    // A later choice of the same thing takes the place of an earlier one.
    let open = run.within;
    for (const { step, after, cases: chosen } of choices.toReversed()) {
      const asked = cases.and(cases.and(open, chosen), passedOver(run, item, after));
      open = cases.minus(open, chosen);
      let left: CaseSet = NONE;
      for (const entry of run.entries('place', item, asked)) {
        // What a step took off is told there, and what the header found off is told with that.
        const isAway = (away >>> entry.value) & 1;
        const told = isAway ? entry.since >= 0 || mustCome.has(item) : entry.since > after;
        if (!told && !entry.assumed) left = cases.or(left, entry.cases);
      }
      if (left !== NONE) run.blame('chosen-not-fitted', item, { cases: left, at: step });
    }
  }
}
