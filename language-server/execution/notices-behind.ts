/**
 * Notices that stand directly behind the step that they are about and guard nothing that follows in their task: the
 * step had no notice of its own, and the reader meets the hazard first and reads of it afterwards. For all cases at
 * once. Source: MIL-STD-38784, from memory: directly before the step.
 */
import type { Notice } from '../../grammar/syntax/tree.ts';
import { type CaseSet, type Cases, NONE } from './cases.ts';
import type { Meeting } from './declared-hazards.ts';
import type { Step } from './watch-place.ts';

/** A meeting of the last step, in the cases in which no notice stands directly before it. */
interface Unguarded {
  readonly meeting: Meeting;
  readonly step: Step;
  cases: CaseSet;
}

export interface Behind extends Unguarded {
  readonly notice: Notice;
  readonly file: string;
}

export interface BehindMemory {
  last: Unguarded[];
  open: Behind[];
  all: Behind[];
  outer: Behind[][];
}

export class NoticesBehind {
  private readonly cases: Cases;
  private last: Unguarded[] = [];
  private open: Behind[] = [];
  private all: Behind[] = [];
  private outer: Behind[][] = [];

  constructor(cases: Cases) {
    this.cases = cases;
  }

  memory(): BehindMemory {
    const { last, open, all, outer } = this;
    return { last, open, all, outer };
  }

  recall({ last, open, all, outer }: BehindMemory): void {
    Object.assign(this, { last, open, all, outer });
  }

  enter(): void {
    this.last = [];
    this.outer.push(this.open);
    this.open = [...this.open];
  }

  leave(): void {
    this.last = [];
    this.open = this.outer.pop()!;
  }

  /** A step was done in these cases: what stands behind the one before it is no longer directly behind. */
  acted(done: CaseSet): void {
    for (const one of this.last) one.cases = this.cases.minus(one.cases, done);
    this.last = this.last.filter((one) => one.cases !== NONE);
  }

  /** The present step meets a hazard; `unguarded` are the cases without a notice directly before it. */
  met(meeting: Meeting, step: Step, met: CaseSet, unguarded: CaseSet): void {
    const { hazard } = meeting.declared;
    // A notice guards what it names; one of its hazards is enough.
    for (const one of this.open)
      if (one.notice.hazards.some(({ text }) => text === hazard))
        one.cases = this.cases.minus(one.cases, met);
    if (unguarded !== NONE) this.last.push({ meeting, step, cases: unguarded });
  }

  noticed(notice: Notice, file: string, within: CaseSet): void {
    for (const { text: hazard } of notice.hazards) {
      for (const { meeting, step, cases } of this.last) {
        const here = this.cases.and(cases, within);
        if (here === NONE || meeting.declared.hazard !== hazard) continue;
        const one = { meeting, step, cases: here, notice, file };
        this.open.push(one);
        this.all.push(one);
      }
    }
  }

  found(): readonly Behind[] {
    return this.all.filter(({ cases }) => cases !== NONE);
  }
}
