/**
 * Whether states that a rule names hold, for all cases at once, and only as far as it is sure: what was merely assumed
 * after another finding, and the position of a control that nobody has moved yet, is neither so nor not so.
 */
import { type CaseSet, NONE } from '../execution/cases.ts';
import { meaning } from '../execution/questions.ts';
import type { Run } from '../execution/run.ts';
import type { StateDemand } from './compile.ts';

export interface Answer {
  /** Cases in which it is certainly so. */
  readonly yes: CaseSet;
  /** Cases in which it is certainly not so. */
  readonly no: CaseSet;
}

/** Of each thing (`all`), or of at least one of them (`any`). A thing that a case does not have counts for nothing. */
export function ask(run: Run, demand: StateDemand, of: 'all' | 'any', within: CaseSet): Answer {
  const { cases } = run;
  let every = within;
  let some: CaseSet = NONE;
  for (const item of demand.items) {
    const one = askOne(run, demand, item, within);
    const { exists } = run.thing(item);
    if (of === 'all') {
      every = cases.and(every, cases.or(one.yes, cases.minus(within, exists)));
      some = cases.or(some, one.no);
    } else {
      every = cases.and(every, cases.or(one.no, cases.minus(within, exists)));
      some = cases.or(some, one.yes);
    }
  }
  return of === 'all' ? { yes: every, no: some } : { yes: some, no: every };
}

function askOne(run: Run, { state, negated }: StateDemand, item: number, within: CaseSet): Answer {
  const thing = run.thing(item);
  if (isUnknown(run, item, state)) return { yes: NONE, no: NONE };
  const means = meaning(run, thing, item, state);
  if (!means) return { yes: NONE, no: NONE };
  let yes: CaseSet = NONE;
  let no: CaseSet = NONE;
  for (const entry of run.entries(means.aspect, item, run.cases.and(within, thing.exists))) {
    if (entry.assumed) continue;
    if ((means.mask >>> entry.value) & 1) yes = run.cases.or(yes, entry.cases);
    else no = run.cases.or(no, entry.cases);
  }
  return negated ? { yes: no, no: yes } : { yes, no };
}

const POSITIONS: ReadonlySet<string> = new Set(['open', 'closed', 'on', 'off']);

/** To ask for the position of a control would settle which one is its normal one: that is for its first step to do. */
function isUnknown(run: Run, item: number, state: string): boolean {
  const thing = run.thing(item);
  if ((thing.type !== 'control' && thing.type !== 'isolator') || !POSITIONS.has(state)) return false;
  if (state === 'off' && run.model.seats[item]!.length > 0) return false;
  if (thing.normally || thing.type === 'isolator' || run.positions.has(item)) return false;
  const { isolates, relieves, drains, servicePoints } = run.model;
  return [isolates, relieves, drains, servicePoints].every((lists) => lists[item]!.length === 0);
}
