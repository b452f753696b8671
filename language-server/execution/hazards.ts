/**
 * Notices: whether one that names the hazard stands before the first step that comes near it, and whether its word is
 * strong enough. For all cases at once: what was said, and what is dealt with, are sets of cases.
 *
 * A notice counts for what follows it in the same task, in the steps inside that task, and in tasks and procedures
 * entered from there; never for what follows the task. A hazard of a system is dealt with once it was noticed and
 * the system made safe (isolated, relieved, cooled, drained), until its energy comes back: then no task has to repeat
 * the notice. A thing's own hazard has to be noticed in each task that meets it. What is safe from the start is
 * somebody else's notice, and so is what another procedure does.
 *
 * Facts `caution-missing`, `caution-late`, `signal-word-weak`.
 */
import type { Action, Notice } from '../../grammar/syntax/tree.ts';
import { HAZARDS } from '../../grammar/tokens/clauses.ts';
import { brings, type Convention, DEFAULT_CONVENTION } from '../hazards/index.ts';
import { type CaseSet, NONE } from './cases.ts';
import {
  type DeclaredHazard,
  type DeclaredHazards,
  declaredHazards,
  type Meeting,
} from './declared-hazards.ts';
import type { Course, HazardMemory, Missing, Scope } from './hazard-course.ts';
import { behindFact, missingFact, tell, toldAlready, weakFact } from './hazard-facts.ts';
import { HazardSafety } from './hazard-safety.ts';
import { MildWords } from './mild-words.ts';
import { NoticesBehind } from './notices-behind.ts';
import type { Run } from './run.ts';
import type { Watcher } from './watch.ts';
import { doneIn, type Step } from './watch-place.ts';

const KNOWN: ReadonlySet<string> = new Set(HAZARDS);

export class HazardWatch implements Watcher {
  private readonly run: Run;
  private readonly convention: Convention;
  private readonly hazards: DeclaredHazards;
  private readonly courses = new Map<DeclaredHazard, Course>();
  private found: Missing[] = [];
  private readonly mild: MildWords;
  private readonly safety: HazardSafety;
  private scopes: Scope[] = [{ given: [], missing: [], acted: 0 }];
  private acted = 0;
  /** A notice without a word for its hazard: it may be about whatever the next step meets. */
  private unnamed: CaseSet = NONE;
  private readonly behind: NoticesBehind;

  constructor(run: Run, convention: Convention = DEFAULT_CONVENTION) {
    this.run = run;
    this.convention = convention;
    this.hazards = declaredHazards(run.model);
    this.behind = new NoticesBehind(run.cases);
    this.safety = new HazardSafety(run);
    this.mild = new MildWords(run.cases, convention);
    for (const declared of this.hazards.all) {
      const course: Course = {
        declared,
        safe: NONE,
        settled: NONE,
        handled: NONE,
        beginnings: [],
        perhaps: undefined,
      };
      course.safe = this.safety.safe(declared);
      course.handled = course.safe;
      this.courses.set(declared, course);
    }
  }

  private get scope(): Scope {
    return this.scopes[this.scopes.length - 1]!;
  }

  memory(): HazardMemory | undefined {
    if (this.courses.size === 0) return undefined;
    return {
      courses: [...this.courses.values()],
      found: this.found,
      weak: this.mild.all,
      cooled: this.safety.memory(),
      scopes: this.scopes.map(({ given, missing, acted }) => ({
        given,
        missing,
        idle: acted === this.acted,
      })),
      unnamed: this.unnamed,
      behind: this.behind.memory(),
    };
  }

  recall(memory: HazardMemory | undefined): void {
    if (!memory) return;
    this.courses.clear();
    for (const course of memory.courses) this.courses.set(course.declared, course);
    this.mild.recall(memory.weak);
    this.safety.recall(memory.cooled);
    this.found = memory.found;
    this.unnamed = memory.unnamed;
    this.behind.recall(memory.behind);
    this.scopes = memory.scopes.map(({ given, missing, idle }) => ({
      given,
      missing,
      acted: idle ? this.acted : -1,
    }));
  }

  enter(): void {
    if (this.courses.size === 0) return;
    this.scopes.push({ given: [...this.scope.given], missing: [], acted: this.acted });
    this.behind.enter();
  }

  leave(): void {
    if (this.courses.size === 0) return;
    const { acted, missing } = this.scopes.pop()!;
    this.behind.leave();
    for (const one of missing) one.open = false;
    // A procedure that is printed elsewhere made things safe without a step here.
    if (acted !== this.acted) return;
    for (const course of this.courses.values()) {
      const now = this.safety.safe(course.declared);
      course.handled = this.run.cases.or(course.handled, this.run.cases.minus(now, course.safe));
      course.safe = now;
    }
  }

  notice(notice: Notice, file: string): void {
    if (this.courses.size === 0) return;
    const { cases, within } = this.run;
    this.mild.noticed(notice, file);
    const names = notice.hazards.map(({ text }) => text);
    const declared = new Set([...this.courses.keys()].map(({ hazard }) => hazard));
    // A word that nobody knows may mean anything.
    const unclear = names.length === 0 || names.some((name) => !KNOWN.has(name) && !declared.has(name));
    if (unclear && notice.signal !== 'note') this.unnamed = cases.or(this.unnamed, within);
    if (!this.elsewhere && this.run.round === 0) this.behind.noticed(notice, file, within);
    for (const hazard of names) {
      this.scope.given.push({ hazard, cases: within, notice, ahead: within });
      for (const one of [...this.scope.missing]) {
        if (!one.open || one.late || one.meeting.declared.hazard !== hazard) continue;
        const late = this.part(one, within);
        if (!late) continue;
        late.late = { notice, file };
        this.mild.judge(one.meeting.declared, [{ notice, cases: within }], late.cases);
      }
      for (const course of this.courses.values()) {
        if (course.declared.hazard !== hazard) continue;
        for (const { cases: begun } of course.beginnings)
          course.settled = cases.or(course.settled, cases.and(begun, within));
        this.update(course);
      }
    }
  }

  before(action: Action, file: string, items: readonly number[]): void {
    if (this.courses.size === 0) return;
    this.acted++;
    const { cases } = this.run;
    const unnamed = this.unnamed;
    const done = doneIn(this.run, items);
    this.unnamed = cases.minus(unnamed, done);
    this.behind.acted(done);
    const meetings: [string, CaseSet][] = [];
    for (const meeting of this.hazards.meetings(action, items)) {
      const course = this.courses.get(meeting.declared)!;
      const there = cases.and(this.run.within, meeting.declared.thing.exists);
      const met = cases.and(there, this.run.thing(meeting.via).exists);
      if (met === NONE) continue;
      const said = cases.or(this.said(meeting.declared.hazard), unnamed);
      const step = { action, file };
      meetings.push([meeting.declared.hazard, met]);
      this.directly(meeting, step, met, cases.minus(met, cases.or(unnamed, course.handled)));
      if (meeting.begins) {
        course.settled = cases.or(course.settled, this.elsewhere ? met : cases.and(met, said));
        course.perhaps = {
          step,
          via: meeting.via,
          cases: cases.or(course.perhaps?.cases ?? NONE, cases.minus(met, said)),
        };
        continue;
      }
      // That it is safe now is no help where the step brings the energy.
      const handled = brings(meeting.event) ? NONE : course.handled;
      const asked = cases.minus(met, cases.or(said, handled));
      course.settled = cases.or(course.settled, met);
      if (asked !== NONE) this.missed(course, meeting, step, asked);
      // A notice that this step may be about is not one that comes too late for another thing.
      for (const one of [...this.scope.missing]) {
        const { hazard, thing } = one.meeting.declared;
        if (!one.late || hazard !== meeting.declared.hazard || thing === meeting.declared.thing) continue;
        const other = this.part(one, met);
        if (!other) continue;
        other.late = undefined;
        other.open = false;
      }
    }
    for (const [hazard, met] of meetings)
      for (const one of this.scope.given) if (one.hazard === hazard) one.ahead = cases.minus(one.ahead, met);
  }

  /**
   * What stands directly before the step has to be strong enough by itself; where nothing does, the strongest of the
   * task. `unsettled` are the cases in which the step is not made safe yet.
   */
  private directly(meeting: Meeting, step: Step, met: CaseSet, unsettled: CaseSet): void {
    if (this.elsewhere) return;
    const { cases } = this.run;
    const given = this.scope.given.filter((one) => one.hazard === meeting.declared.hazard);
    const ahead = given.flatMap(({ notice, ahead: set }) => (notice ? [{ notice, cases: set }] : []));
    let guarded: CaseSet = NONE;
    for (const one of ahead) guarded = cases.or(guarded, cases.and(met, one.cases));
    this.mild.judge(meeting.declared, ahead, guarded);
    if (!meeting.begins) this.mild.judge(meeting.declared, given, cases.minus(met, guarded));
    const bare = this.run.round === 0 ? cases.minus(unsettled, guarded) : NONE;
    this.behind.met(meeting, step, met, bare);
  }

  after(action: Action, items: readonly number[]): void {
    if (this.courses.size === 0) return;
    this.safety.after(action.verb, items);
    for (const course of this.courses.values()) this.update(course);
  }

  finish(): void {
    const { run, convention } = this;
    for (const one of this.found) {
      if (!one.late) one.cases = run.cases.minus(one.cases, toldAlready(run, one));
      if (one.cases !== NONE) tell(run, missingFact(run, one, convention));
    }
    for (const one of this.behind.found()) tell(run, behindFact(run, one));
    for (const one of this.mild.all) run.facts.push(weakFact(run, one, convention));
  }

  /** The work of another procedure: its notices are its own business. */
  private get elsewhere(): boolean {
    return this.run.usedAt !== undefined;
  }

  /** The cases in which a notice with this hazard was given, for where we are. */
  private said(hazard: string): CaseSet {
    let set: CaseSet = NONE;
    for (const one of this.scope.given) if (one.hazard === hazard) set = this.run.cases.or(set, one.cases);
    return set;
  }

  private missed(course: Course, meeting: Meeting, near: Step, asked: CaseSet): void {
    const { cases } = this.run;
    const { hazard } = meeting.declared;
    this.scope.given.push({ hazard, cases: asked, ahead: NONE });
    // In a further round everything was said in the first one.
    if (this.elsewhere || this.run.round > 0) return;
    let left = asked;
    const add = (step: Step, set: CaseSet, begun?: number) => {
      const one = { course, meeting, step, near, begun, cases: set, late: undefined, open: true };
      this.found.push(one);
      this.scope.missing.push(one);
    };
    for (const { step, via, cases: begun } of course.beginnings) {
      const set = cases.and(begun, left);
      if (set === NONE) continue;
      add(step, set, via);
      left = cases.minus(left, set);
    }
    if (left !== NONE) add(near, left);
  }

  /** Holds the state after a step against what was known before it. */
  private update(course: Course): void {
    const { cases } = this.run;
    const now = this.safety.safe(course.declared);
    const lost = cases.minus(course.safe, now);
    if (lost !== NONE) {
      course.settled = cases.minus(course.settled, lost);
      for (const beginning of course.beginnings) beginning.cases = cases.minus(beginning.cases, lost);
    }
    const { perhaps } = course;
    if (perhaps) {
      const begun = cases.and(perhaps.cases, cases.minus(now, course.safe));
      if (begun !== NONE) course.beginnings.push({ ...perhaps, cases: begun });
      course.perhaps = undefined;
    }
    course.handled = cases.and(cases.or(course.handled, course.settled), now);
    course.safe = now;
  }

  /** The part of a missing notice that is so in these cases, parted from the rest; nothing where there is none. */
  private part(one: Missing, within: CaseSet): Missing | undefined {
    const { cases } = this.run;
    const inside = cases.and(one.cases, within);
    if (inside === NONE) return undefined;
    if (inside === one.cases) return one;
    one.cases = cases.minus(one.cases, inside);
    const other = { ...one, cases: inside };
    this.found.push(other);
    this.scope.missing.push(other);
    return other;
  }
}
