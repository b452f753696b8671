/**
 * `while X require Y`, `while X never Y`, and the same for the whole procedure (`always`). A state that is required, or
 * must not be, is looked at from the start on and after every step; a step that is required comes at least so many
 * times in each stretch in which X is so (existence), one that is never done comes in none (absence).
 */
import { type CaseSet, EVERY, NONE } from '../execution/cases.ts';
import { Course, isState } from './course.ts';
import type { Doing } from './doings.ts';

export class DuringCourse extends Course {
  /** The cases in which X was so after the last step. */
  private was: CaseSet = NONE;
  /** The cases in which the sentence is broken since an earlier step. */
  private broken: CaseSet = NONE;

  before(doing: Doing): void {
    const { demand, require } = this.instance;
    if (isState(demand) || require) return;
    this.tell(this.instance, doing, this.isForbidden(doing, this.holds().yes), []);
  }

  after(doing: Doing | undefined): void {
    const { cases, within } = this.run;
    const { demand, require, trigger } = this.instance;
    if (!isState(demand) && !require) return;
    const { yes, no } = this.holds();
    if (isState(demand)) {
      const wrong = this.isWrong(yes);
      const fresh = cases.minus(wrong, this.broken);
      this.broken = cases.or(cases.minus(this.broken, within), wrong);
      this.tell(this.instance, doing ?? 'start', fresh, []);
      return;
    }
    if (!trigger) {
      if (doing) this.count(doing, within);
      return;
    }
    const during = cases.and(this.was, within);
    if (doing) this.count(doing, during);
    const over = cases.minus(cases.and(during, no), this.satisfied);
    this.tell(this.instance, doing ?? 'start', over, this.since(over));
    const begun = cases.minus(yes, this.was);
    this.restart(begun);
    this.mark(doing, begun);
    this.was = cases.or(cases.minus(this.was, within), yes);
  }

  finish(finished: CaseSet): void {
    const { demand, require, trigger } = this.instance;
    if (isState(demand) || !require) return;
    const { cases } = this.run;
    const missing = cases.minus(cases.and(finished, trigger ? this.was : EVERY), this.satisfied);
    this.tell(this.instance, 'end', missing, this.since(missing));
  }

  override forget(): void {
    super.forget();
    this.was = NONE;
    this.broken = NONE;
    this.restart(EVERY);
  }
}
