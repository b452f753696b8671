/**
 * `after X require Y`, `after X never Y`. What is required comes some time after each X (response): a step, so many
 * times, or a state, then or later. What is never done is not done any more once X was done (absence after).
 */
import { type CaseSet, NONE } from '../execution/cases.ts';
import { Course, isState } from './course.ts';
import type { Doing } from './doings.ts';

export class AfterCourse extends Course {
  /** The cases in which the present step is X. */
  private now: CaseSet = NONE;
  /** The cases in which a state is still waited for. */
  private waiting: CaseSet = NONE;
  /** The cases in which a state that must not be is so: told once, where it came about. */
  private wrong: CaseSet = NONE;

  before(doing: Doing): void {
    const { cases, within } = this.run;
    const forbidden = this.isForbidden(doing, cases.and(within, this.marked));
    this.tell(this.instance, doing, forbidden, this.since(forbidden));
    this.now = this.triggeredBy(doing);
  }

  after(doing: Doing | undefined): void {
    const { cases, within } = this.run;
    const { demand, require } = this.instance;
    if (doing) this.count(doing, within);
    const set = cases.or(this.now, this.comesTrue());
    this.now = NONE;
    this.mark(doing, set);
    this.restart(set);
    if (!isState(demand)) return;
    if (require) {
      this.waiting = cases.or(this.waiting, set);
      const here = cases.and(this.waiting, within);
      this.waiting = cases.or(cases.minus(this.waiting, within), this.isWrong(here));
      return;
    }
    const wrong = this.isWrong(cases.and(within, this.marked));
    const fresh = cases.minus(wrong, this.wrong);
    this.wrong = cases.or(cases.minus(this.wrong, within), wrong);
    this.tell(this.instance, doing ?? 'start', fresh, this.since(fresh));
  }

  finish(finished: CaseSet): void {
    const { cases } = this.run;
    const { demand, require } = this.instance;
    if (!require) return;
    const missing = isState(demand)
      ? cases.and(finished, this.waiting)
      : cases.minus(finished, this.satisfied);
    for (const { doing, cases: set } of this.marks)
      this.tell(this.instance, doing ?? 'start', cases.and(set, missing), []);
  }

  override forget(): void {
    super.forget();
    this.waiting = NONE;
    this.wrong = NONE;
  }
}
