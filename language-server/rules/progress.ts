/** How often, or how much, something was done so far, for all cases at once: a number for each set of cases. */
import { type CaseSet, type Cases, EVERY, NONE } from '../execution/cases.ts';

/** Different numbers that are told apart; beyond them it is taken to be enough. */
const MOST_NUMBERS = 32;

export class Progress {
  private readonly cases: Cases;
  private readonly target: number;
  private parts = new Map<number, CaseSet>([[0, EVERY]]);

  constructor(cases: Cases, target: number) {
    this.cases = cases;
    this.target = target;
  }

  get reached(): CaseSet {
    return this.parts.get(this.target) ?? NONE;
  }

  add(amount: number, within: CaseSet): void {
    this.move(within, (number) => number + amount);
  }

  reset(within: CaseSet): void {
    this.move(within, () => 0);
  }

  /** Enough in these cases: nobody can tell how much was done. */
  give(within: CaseSet): void {
    this.move(within, () => this.target);
  }

  private move(within: CaseSet, to: (number: number) => number): void {
    if (within === NONE) return;
    const { cases, target } = this;
    const after = new Map<number, CaseSet>();
    const put = (number: number, set: CaseSet) => {
      // A hair's breadth is rounding: 720° and two turns are the same.
      const key = number >= target * (1 - 1e-9) || after.size > MOST_NUMBERS ? target : number;
      after.set(key, cases.or(after.get(key) ?? NONE, set));
    };
    for (const [number, set] of this.parts) {
      const moved = cases.and(set, within);
      if (moved !== NONE) put(to(number), moved);
      const stays = moved === NONE ? set : cases.minus(set, moved);
      if (stays !== NONE) put(number, stays);
    }
    this.parts = after;
  }
}
