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
import {
  brings,
  type Convention,
  DEFAULT_CONVENTION,
  energyOf,
  type Harm,
  isMilder,
  type Signal,
  signalFor,
  strongest,
} from '../hazards/index.ts';
import type { Fact } from '../model/facts.ts';
import { bit, DRAINED, YES } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import {
  type DeclaredHazard,
  type DeclaredHazards,
  declaredHazards,
  type Meeting,
} from './declared-hazards.ts';
import { type Behind, type BehindMemory, NoticesBehind } from './notices-behind.ts';
import type { Run } from './run.ts';
import type { Watcher } from './watch.ts';
import { doneIn, placeOf, type Step, storyOf, withoutRounds } from './watch-place.ts';

/** What is known of one declared hazard so far. */
interface Course {
  readonly declared: DeclaredHazard;
  /** Safe as the state stands. */
  safe: CaseSet;
  /** Noticed (or found without a notice) while its energy was there. */
  settled: CaseSet;
  /** Settled and made safe since. */
  handled: CaseSet;
  /** Steps that began to make it safe without a notice before them. */
  beginnings: Beginning[];
  /** A step that may be one: the state after it tells. */
  perhaps: Beginning | undefined;
}

interface Beginning {
  readonly step: Step;
  /** What the step is about. */
  readonly via: number;
  cases: CaseSet;
}

interface Given {
  readonly hazard: string;
  readonly cases: CaseSet;
  /** Absent where a missing notice was found: it is not missed twice in a task. */
  readonly notice?: Notice;
  /** The cases in which no step has come near the hazard since: it stands directly before the next that does. */
  ahead: CaseSet;
}

interface Missing {
  readonly course: Course;
  readonly meeting: Meeting;
  /** Where the notice belongs, and the step that comes near. */
  readonly step: Step;
  readonly near: Step;
  /** What the step is about where it only begins to make safe. */
  readonly begun: number | undefined;
  cases: CaseSet;
  /** A notice that comes after, as long as nothing else follows that it can be about. */
  late: { notice: Notice; file: string } | undefined;
  open: boolean;
}

interface Scope {
  readonly given: Given[];
  readonly missing: Missing[];
  /** Actions seen when it was entered. */
  readonly acted: number;
}

interface Weak {
  readonly notice: Notice;
  readonly file: string;
  readonly declared: DeclaredHazard;
  readonly needed: Signal;
  cases: CaseSet;
}

interface HazardMemory {
  courses: Course[];
  found: Missing[];
  weak: Weak[];
  cooled: [number, CaseSet][];
  scopes: { given: Given[]; missing: Missing[]; idle: boolean }[];
  unnamed: CaseSet;
  behind: BehindMemory;
}

const KNOWN: ReadonlySet<string> = new Set(HAZARDS);

export class HazardWatch implements Watcher {
  private readonly run: Run;
  private readonly convention: Convention;
  private readonly hazards: DeclaredHazards;
  private readonly courses = new Map<DeclaredHazard, Course>();
  private found: Missing[] = [];
  private readonly weak = new Map<Notice, Weak>();
  private readonly files = new Map<Notice, string>();
  /** Parts left to cool. */
  private readonly cooled = new Map<number, CaseSet>();
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
    for (const declared of this.hazards.all) {
      const course: Course = {
        declared,
        safe: NONE,
        settled: NONE,
        handled: NONE,
        beginnings: [],
        perhaps: undefined,
      };
      course.safe = this.safe(declared);
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
      weak: [...this.weak.values()],
      cooled: [...this.cooled],
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
    const put = <Key, Value>(map: Map<Key, Value>, entries: readonly (readonly [Key, Value])[]) => {
      map.clear();
      for (const [key, value] of entries) map.set(key, value);
    };
    put(
      this.courses,
      memory.courses.map((course) => [course.declared, course]),
    );
    put(
      this.weak,
      memory.weak.map((one) => [one.notice, one]),
    );
    put(this.cooled, memory.cooled);
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
      const now = this.safe(course.declared);
      course.handled = this.run.cases.or(course.handled, this.run.cases.minus(now, course.safe));
      course.safe = now;
    }
  }

  notice(notice: Notice, file: string): void {
    if (this.courses.size === 0) return;
    const { cases, within } = this.run;
    this.files.set(notice, file);
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
        this.judge(one.meeting.declared, [{ notice, cases: within }], late.cases);
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
    this.judge(meeting.declared, ahead, guarded);
    if (!meeting.begins) this.judge(meeting.declared, given, cases.minus(met, guarded));
    const bare = this.run.round === 0 ? cases.minus(unsettled, guarded) : NONE;
    this.behind.met(meeting, step, met, bare);
  }

  after(action: Action, items: readonly number[]): void {
    if (this.courses.size === 0) return;
    const { cases, within } = this.run;
    if (action.verb === 'run')
      for (const [item, set] of this.cooled) this.cooled.set(item, cases.minus(set, within));
    if (action.verb === 'let cool')
      for (const item of this.coolsWith(items))
        this.cooled.set(item, cases.or(this.cooled.get(item) ?? NONE, within));
    for (const course of this.courses.values()) this.update(course);
  }

  finish(): void {
    for (const one of this.found) {
      if (!one.late) one.cases = this.run.cases.minus(one.cases, this.toldAlready(one));
      if (one.cases !== NONE) this.tell(this.missingFact(one));
    }
    for (const one of this.behind.found()) this.tell(this.behindFact(one));
    for (const one of this.weak.values()) this.run.facts.push(this.weakFact(one));
  }

  /** One finding for one step and thing: one notice can name several hazards. */
  private tell(fact: Fact): void {
    const { cases } = this.run;
    const known = this.run.facts.find(
      ({ check, at, subject }) =>
        check === fact.check &&
        at.file === fact.at.file &&
        at.start === fact.at.start &&
        subject?.thing === fact.subject?.thing,
    );
    if (!known) {
      this.run.facts.push(fact);
      return;
    }
    known.cases = cases.or(known.cases ?? NONE, fact.cases ?? NONE);
    const hazards = new Set([...(known.words?.hazard ?? '').split(', '), fact.words?.hazard ?? '']);
    const signals = [known.words?.signal, fact.words?.signal] as Signal[];
    known.words = { ...known.words, hazard: [...hazards].join(', '), signal: strongest(signals) };
  }

  /** The same step opens the system with its energy still there: making it safe brings the notice along. */
  private toldAlready({ near, meeting }: Missing): CaseSet {
    const { file, action } = near;
    let told: CaseSet = NONE;
    for (const { check, inner, at, others, cases } of this.run.facts) {
      if ((inner ?? check) !== 'not-made-safe' || at.file !== file) continue;
      if (at.start < action.start || at.end > action.end) continue;
      if (others?.some(({ thing }) => thing === meeting.declared.thing))
        told = this.run.cases.or(told, cases ?? NONE);
    }
    return told;
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
    const now = this.safe(course.declared);
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

  /** The cases in which the energy that the hazard is about is gone. */
  private safe({ thing, hazard, system }: DeclaredHazard): CaseSet {
    const { run } = this;
    if (system === undefined) {
      if (hazard !== 'hot') return NONE;
      let all: CaseSet = thing.exists;
      for (let item = thing.first; item < thing.first + thing.positions.length; item++)
        all = run.cases.and(all, this.cooled.get(item) ?? NONE);
      return all;
    }
    const of = run.thing(system);
    const energy = energyOf(hazard);
    const exists = of.exists;
    if (energy === 'fluid' && of.hasFluid) return run.where('fluid', system, bit(DRAINED), exists);
    const has = { pressure: of.hasPressure, heat: of.hasHeat, live: of.hasLive };
    if (energy && energy !== 'fluid' && has[energy]) return run.where(energy, system, bit(YES), exists);
    // A hazard of another kind is gone with all energy that the system has.
    let all: CaseSet = exists;
    let any = false;
    for (const one of ['pressure', 'heat', 'live'] as const) {
      if (!has[one]) continue;
      any = true;
      all = run.cases.and(all, run.where(one, system, bit(YES), exists));
    }
    return any ? all : NONE;
  }

  /** What cools with these: what sits on them, and what opens the systems that are meant. */
  private coolsWith(items: readonly number[]): Set<number> {
    const { model } = this.run;
    const all = new Set(items);
    for (const item of all) {
      for (const rider of model.riders[item]!) all.add(rider);
      if (model.thingOf[item]!.type === 'system') for (const point of model.openedBy[item]!) all.add(point);
    }
    return all;
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

  /** Remembers the notices that stand for this hazard in cases in which none of them is strong enough. */
  private judge(
    declared: DeclaredHazard,
    given: readonly Pick<Given, 'notice' | 'cases'>[],
    met: CaseSet,
  ): void {
    const { cases } = this.run;
    const needed = this.needed(declared);
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

  private needed({ harm }: DeclaredHazard): Signal {
    return signalFor(harm ?? LEAST_HARM, this.convention);
  }

  private missingFact(one: Missing): Fact {
    const { meeting, step, near, late } = one;
    const { thing, hazard } = meeting.declared;
    const via = this.run.thing(meeting.via);
    const words: Record<string, string> = { hazard, signal: this.proposed(meeting.declared) };
    if (meeting.event) words.event = meeting.event;
    const begun = one.begun === undefined ? undefined : this.run.thing(one.begun);
    if (begun) words.begins = 'yes';
    const fact = {
      subject: { thing },
      others: via === thing ? [] : [{ thing: via }],
      cases: withoutRounds(this.run, one.cases),
      words,
    };
    if (late) {
      words.signal = late.notice.signal;
      const { start, end } = late.notice.word;
      return {
        ...fact,
        check: 'caution-late',
        at: { file: late.file, start, end },
        story: [{ at: placeOf(step), what: storyOf(step.action.verb), thing: begun ?? via }],
      };
    }
    const story = begun ? [{ at: placeOf(near, via), what: storyOf(near.action.verb), thing: via }] : [];
    return {
      ...fact,
      check: 'caution-missing',
      at: placeOf(step, begun ?? via),
      story,
    };
  }

  private behindFact({ meeting, step, notice, file, cases }: Behind): Fact {
    const { thing, hazard } = meeting.declared;
    const via = this.run.thing(meeting.via);
    const { start, end } = notice.word;
    return {
      check: 'caution-late',
      at: { file, start, end },
      subject: { thing },
      others: via === thing ? [] : [{ thing: via }],
      cases: withoutRounds(this.run, cases),
      words: {
        hazard,
        signal: notice.signal,
        directly: 'yes',
        ...(meeting.event ? { event: meeting.event } : {}),
        ...(meeting.begins ? { begins: 'yes' } : {}),
      },
      story: [{ at: placeOf(step, via), what: storyOf(step.action.verb), thing: via }],
    };
  }

  /** The word to write: what the harm asks for; `warning` where nobody says how bad it is. */
  private proposed({ harm }: DeclaredHazard): Signal {
    return harm ? signalFor(harm, this.convention) : 'warning';
  }

  private weakFact({ notice, file, declared, needed, cases }: Weak): Fact {
    const { start, end } = notice.word;
    const at = { file, start, end };
    return {
      check: 'signal-word-weak',
      at,
      subject: { thing: declared.thing },
      cases: withoutRounds(this.run, cases),
      words: {
        hazard: declared.hazard,
        signal: notice.signal,
        needed,
        convention: this.convention,
        ...(declared.harm ? { harm: declared.harm } : {}),
      },
      mends: [{ title: `Write ${needed}`, at, text: needed }],
    };
  }
}

/** Of a hazard whose harm nobody declares, so much is sure: it hurts people (ANSI Z535.6: a notice is no injury). */
const LEAST_HARM: Harm = 'can hurt';
