/**
 * `before X require Y`, `before X never Y`. A state Y is asked for just before each X. A step Y has to have been done
 * some time before (precedence); one that is never done before X is not done until the first X (absence before).
 */
import { type CaseSet, EVERY, NONE } from '../execution/cases.ts';
import { Course, isState } from './course.ts';
import type { Doing } from './doings.ts';

export class BeforeCourse extends Course {
  /** Steps that must not come before, with their cases. */
  private early: { doing: Doing; cases: CaseSet }[] = [];
  /** The cases in which X was not yet done. */
  private open: CaseSet = EVERY;
  /** How the state that is asked for stood before the step, where a state is what sets it off. */
  private wrongBefore: CaseSet = NONE;

  before(doing: Doing): void {
    this.judge(doing, this.triggeredBy(doing), undefined);
  }

  after(doing: Doing | undefined): void {
    const fresh = this.comesTrue();
    if (doing) {
      this.judge(doing, fresh, this.wrongBefore);
      this.count(doing, this.run.within);
      const forbidden = this.isForbidden(doing, this.run.within);
      if (forbidden !== NONE) this.early.push({ doing, cases: forbidden });
    }
    const { trigger, demand } = this.instance;
    if (!trigger || !isState(trigger) || !isState(demand)) return;
    const { cases, within } = this.run;
    this.wrongBefore = cases.or(cases.minus(this.wrongBefore, within), this.isWrong(within));
  }

  finish(): void {}

  override forget(): void {
    super.forget();
    this.early = [];
    this.open = EVERY;
  }

  private judge(doing: Doing, set: CaseSet, wrongBefore: CaseSet | undefined): void {
    if (set === NONE) return;
    const { cases } = this.run;
    const { demand, require } = this.instance;
    if (isState(demand)) {
      const wrong = wrongBefore === undefined ? this.isWrong(set) : cases.and(wrongBefore, set);
      this.tell(this.instance, doing, wrong, []);
    } else if (require) this.tell(this.instance, doing, cases.minus(set, this.satisfied), []);
    else {
      const first = cases.and(set, this.open);
      for (const one of this.early) this.tell(this.instance, one.doing, cases.and(one.cases, first), [doing]);
      this.open = cases.minus(this.open, set);
    }
  }
}
