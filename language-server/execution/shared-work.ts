/** What is known across the procedures of one machine, and how much is gone through for them at the most. */
import type { Procedure } from '../../grammar/syntax/tree.ts';

/** Statements that are gone through at the most for one procedure, counted in every round and use, */
const MOST_FOLLOWED = 200_000;
/** for all of one machine, */
const MOST_FOLLOWED_IN_ALL = 1_000_000;
/** and for one procedure in any case. */
const ALWAYS_FOLLOWED = 20_000;

export class SharedWork {
  /** Statements gone through. */
  followed = 0;
  /** Faults that procedures have on their own; none yet where that is being found out. */
  readonly alone = new Map<Procedure, ReadonlySet<string>>();

  /** Statements that may be gone through for the next procedure. */
  get most(): number {
    return Math.max(ALWAYS_FOLLOWED, Math.min(MOST_FOLLOWED, MOST_FOLLOWED_IN_ALL - this.followed));
  }
}
