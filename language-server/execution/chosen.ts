/**
 * Parts that were chosen (`choose shims …`) and that no step puts in afterwards. In a repeat any step of it counts: what
 * a round chooses, the next one fits. See grammar/STATE.md, "Working, looking, time".
 */
import { bit, GONE, OFF, OUT } from './aspects.ts';
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
    const known = run.chosen.get(item);
    if (known) known.push(choice);
    else run.chosen.set(item, [choice]);
  }
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
      const asked = cases.and(open, chosen);
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
