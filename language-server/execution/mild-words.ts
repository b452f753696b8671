/** Notices whose word is too mild for the hazard that they stand before. */
import type { Notice } from '../../grammar/syntax/tree.ts';
import { type Convention, isMilder } from '../hazards/index.ts';
import { type CaseSet, type Cases, NONE } from './cases.ts';
import type { DeclaredHazard } from './declared-hazards.ts';
import type { Given, Weak } from './hazard-course.ts';
import { neededFor } from './hazard-facts.ts';

export class MildWords {
  private readonly cases: Cases;
  private readonly convention: Convention;
  private readonly weak = new Map<Notice, Weak>();
  private readonly files = new Map<Notice, string>();

  constructor(cases: Cases, convention: Convention) {
    this.cases = cases;
    this.convention = convention;
  }

  get all(): Weak[] {
    return [...this.weak.values()];
  }

  recall(weak: readonly Weak[]): void {
    this.weak.clear();
    for (const one of weak) this.weak.set(one.notice, one);
  }

  noticed(notice: Notice, file: string): void {
    this.files.set(notice, file);
  }

  /** Remembers the notices that stand for this hazard in cases in which none of them is strong enough. */
  judge(declared: DeclaredHazard, given: readonly Pick<Given, 'notice' | 'cases'>[], met: CaseSet): void {
    const { cases } = this;
    const needed = neededFor(declared, this.convention);
    let left = met;
    for (const { notice, cases: set } of given)
      if (notice && !isMilder(notice.signal, needed)) left = cases.minus(left, set);
    // The last notice before the step is the one to change.
    for (const { notice, cases: set } of [...given].reverse()) {
      const here = cases.and(left, set);
      if (!notice || here === NONE) continue;
      left = cases.minus(left, set);
      const known = this.weak.get(notice);
      const worse = !known || isMilder(known.needed, needed);
      this.weak.set(notice, {
        ...(worse ? { notice, file: this.files.get(notice)!, declared, needed } : known),
        cases: known ? cases.or(known.cases, here) : here,
      });
    }
  }
}
