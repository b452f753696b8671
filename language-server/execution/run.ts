/**
 * One execution of a procedure: the state, the cases in which the present step is done, and what was found.
 * Actions (see actions/) ask and change the state through it; what a step lacks is blamed here, gathered per
 * step, check and subject, so that one cause gives one fact.
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Fact, Mentioned, Story } from '../model/facts.ts';
import type { Model, Thing } from '../model/model.ts';
import type { Place } from '../report/finding.ts';
import { ASPECT, ASPECTS, type Aspect, FINAL, NO } from './aspects.ts';
import { type CaseSet, type Cases, NONE } from './cases.ts';
import type { Choice } from './chosen.ts';
import { type Recorder, Tracked } from './recorder.ts';
import { type Entry, State } from './state.ts';
import { Steps } from './steps.ts';
import type { Watcher } from './watch.ts';

/** One aspect of one item as a step left it, for who wants to know how things came to be. */
export interface Change {
  /** -1 for how things stand at the start. */
  step: number;
  aspect: Aspect;
  item: number;
  value: number;
  cases: CaseSet;
}

/** Nodes of the decision diagram that the state of one thing may cost before it is given up: to begin with, */
const NODES_FOR_A_THING = 2_000;
/** and for every time it is written. A thing under many plain conditions costs some tens each time. */
const NODES_FOR_A_WRITE = 160;
/** From this size of the diagram on, only what costs little is still followed: what is left is kept for it. */
const MANY_NODES = 80_000;
const FEW_FOR_A_THING = 400;
const FEW_FOR_A_WRITE = 40;

interface Blame {
  check: string;
  subject: Thing;
  items: Set<number>;
  others: Map<Thing, Set<number>>;
  cases: CaseSet;
  story: Map<string, { since: number; what: Story; thing: Thing }>;
  words: Record<string, string>;
  /** The step that the fact is about, where it is not the present one. */
  at?: number;
}

export class Run {
  readonly model: Model;
  readonly cases: Cases;
  state: State;
  readonly facts: Fact[] = [];
  readonly steps = new Steps();
  /** The cases in which the present statement is carried out. */
  within: CaseSet;
  /** The cases in which work has not ended. */
  working: CaseSet;
  /** Where the procedure says how it starts: the place of what was away from the beginning. */
  before: Place | undefined;
  /** The `do` that uses another procedure, while that is carried out. */
  usedAt: Place | undefined;
  /** Things whose state was given up: the cases they depend on are too many to tell apart. */
  readonly undecided = new Set<Thing>();
  /** Where cases or steps became too many to follow: nothing is said from there on. */
  lost: Place | undefined;
  /** Items of which something was ever changed: all others stand as the machine does before the job. */
  readonly changed = new Set<number>();
  private readonly spent = new Map<Thing, { nodes: number; writes: number }>();
  /** Size of the diagram up to which its nodes are counted as somebody's. */
  private counted = 0;
  readonly watchers: Watcher[] = [];
  /** Every change of the state, in order, where somebody asked for it. */
  journal: Change[] | undefined;
  /** More than 0 in the further rounds of a repeat. */
  round = 0;
  /** The step before the outermost repeat that is running. */
  repeating: number | undefined;
  /** By item, the steps that chose it. */
  readonly chosen = new Tracked<number, readonly Choice[]>();
  /** How many actions were executed: the measure of work. */
  executed = 0;
  /** Normal positions of controls that do not declare one, found from the first action on them. */
  readonly positions = new Tracked<number, string>();
  /** Tool -> what it supports or bridges. */
  readonly heldBy = new Tracked<number, ReadonlySet<number>>();
  private readonly lockTools = new Tracked<number, ReadonlySet<number>>();
  /** What the present step lacked so far, by check and variable. */
  private readonly lacked = new Map<string, Entry[]>();
  private blames: Blame[] = [];
  private readonly reported = new Tracked<string, Fact>();
  /** A fact of an earlier part was found again in this one: the two cannot be told apart. */
  entangled = false;
  private fresh: Set<Fact> | undefined;

  /** `cases`: those of the model, or a copy of them. */
  constructor(model: Model, cases: Cases = model.cases) {
    this.model = model;
    this.cases = cases;
    this.within = model.built;
    this.working = model.built;
    const { items, thingOf } = model;
    this.state = new State(items * ASPECTS.length, cases, (variable) => thingOf[variable % items]!.exists);
    for (const thing of model.things) {
      if (thing.type !== 'tool') continue;
      for (const item of model.locks[thing.first]!) this.lockedWith(thing.first, item);
    }
  }

  /** Tools that lock the item: declared so, or used so in this procedure. */
  lockingTools(item: number): number[] {
    return [...(this.lockTools.get(item) ?? [])];
  }

  lockedWith(tool: number, item: number): void {
    const tools = this.lockTools.get(item);
    if (!tools?.has(tool)) this.lockTools.set(item, new Set([...(tools ?? []), tool]));
  }

  /** Tells the recorder what is written from here on; without one nobody is told. */
  record(recorder: Recorder | undefined): void {
    this.state.recorder = recorder;
    this.fresh = recorder && new Set();
    for (const map of this.tracked) map.recorder = recorder;
  }

  /** What is kept beside the state of things, and can be taken back. */
  get tracked(): Tracked<unknown, unknown>[] {
    const { chosen, positions, heldBy, lockTools, reported } = this;
    return [chosen, positions, heldBy, lockTools, reported] as Tracked<never, unknown>[] as Tracked<
      unknown,
      unknown
    >[];
  }

  /** The number of the present step. */
  get step(): number {
    return this.steps.last;
  }

  begin(action: Action, file: string): void {
    this.counted = this.cases.size;
    this.steps.add({
      action,
      file,
      within: this.within,
      shown: this.usedAt,
      touched: [],
      round: this.round,
    });
    this.executed++;
  }

  /** Notes what the present step is about. */
  touch(items: readonly number[], more: readonly number[]): void {
    this.steps.present!.touched = more.length === 0 ? items : [...items, ...more];
  }

  variable(aspect: Aspect, item: number): number {
    return ASPECT[aspect] * this.model.items + item;
  }

  thing(item: number): Thing {
    return this.model.thingOf[item]!;
  }

  where(aspect: Aspect, item: number, mask: number, within = this.within): CaseSet {
    return this.state.where(this.variable(aspect, item), mask, within);
  }

  entries(aspect: Aspect, item: number, within = this.within): Entry[] {
    return this.state.entries(this.variable(aspect, item), within);
  }

  set(aspect: Aspect, item: number, value: number, within = this.within): void {
    this.write(aspect, item, value, within, this.step, false);
  }

  /** Sets an aspect to how things stand at the start, as if no step had done it. */
  start(aspect: Aspect, item: number, value: number, within: CaseSet): void {
    this.changed.add(item);
    this.state.set(this.variable(aspect, item), value, within, -1);
    this.journal?.push({ step: -1, aspect, item, value, cases: within });
  }

  assume(aspect: Aspect, item: number, value: number, within: CaseSet): void {
    this.write(aspect, item, value, within, this.step, true);
  }

  /** Writes, and gives up on a thing whose cases have become too many to tell apart. */
  private write(
    aspect: Aspect,
    item: number,
    value: number,
    within: CaseSet,
    since: number,
    assumed: boolean,
  ): void {
    const thing = this.thing(item);
    if (this.undecided.has(thing)) return;
    this.changed.add(item);
    this.state.set(this.variable(aspect, item), value, within, since, assumed);
    this.journal?.push({ step: since, aspect, item, value, cases: within });
    // What was asked in order to write counts as well.
    const made = this.cases.size - this.counted;
    this.counted = this.cases.size;
    if (made === 0) return;
    const spent = this.spent.get(thing) ?? { nodes: 0, writes: 0 };
    this.spent.set(thing, spent);
    spent.nodes += made;
    spent.writes++;
    const many = this.cases.size > MANY_NODES;
    const allowed = many
      ? FEW_FOR_A_THING + FEW_FOR_A_WRITE * spent.writes
      : NODES_FOR_A_THING + NODES_FOR_A_WRITE * spent.writes;
    if (spent.nodes > allowed) this.giveUp(thing, since);
  }

  private giveUp(thing: Thing, since: number): void {
    this.undecided.add(thing);
    for (let index = 0; index < thing.positions.length; index++) this.changed.add(thing.first + index);
    for (const one of ASPECTS) {
      for (let index = 0; index < thing.positions.length; index++)
        this.state.set(this.variable(one, thing.first + index), 0, thing.exists, since, true);
    }
  }

  /**
   * Where an operation on cases was over budget, its result is not what was asked: nothing that rests on it is
   * said, and nothing more is followed.
   */
  loseTrack(at: Place): void {
    if (!this.cases.overflowed) return;
    this.cases.overflowed = false;
    this.stopFollowing(at);
  }

  /** Nothing is followed or said from here on. */
  stopFollowing(at: Place): void {
    this.blames = [];
    this.lost ??= at;
    for (const thing of this.model.things) if (!this.undecided.has(thing)) this.giveUp(thing, this.step);
    this.within = NONE;
  }

  /**
   * Asks that `item` has a value of `mask`. Where it has not, the step is blamed (unless that was only
   * assumed), and the value is taken to be `wanted` from here on. Answers the cases in which it was not so.
   */
  require(
    check: string,
    subject: number,
    aspect: Aspect,
    item: number,
    mask: number,
    wanted: number,
    within: CaseSet,
    what: Story | ((value: number) => Story),
    words?: Record<string, string>,
  ): CaseSet {
    // In cases that do not have the subject, nothing is done to it and nothing is asked.
    const asked = this.cases.and(within, this.thing(subject).exists);
    const failing = this.where(aspect, item, ~mask, asked);
    // Another position of the same group may have met the same lack just now, and had it assumed away.
    if (failing === NONE && this.lacked.size === 0) return NONE;
    const key = `${check} ${this.variable(aspect, item)}`;
    let lacking: Entry[] = [];
    if (failing === NONE) {
      lacking = this.lacked.get(key) ?? [];
      if (lacking.length === 0) return NONE;
    } else lacking = this.entries(aspect, item, failing).filter((entry) => !entry.assumed);
    for (const whole of lacking) {
      const entry = { ...whole, cases: this.cases.and(whole.cases, asked) };
      if (entry.cases === NONE) continue;
      this.blame(check, subject, {
        other: item === subject ? undefined : item,
        cases: entry.cases,
        since: entry.since,
        what: typeof what === 'string' ? what : what(entry.value),
        ...(words ? { words } : {}),
      });
    }
    if (failing === NONE) return NONE;
    this.lacked.set(key, lacking);
    this.assume(aspect, item, wanted, failing);
    // A fastener that is taken to be in is taken to be secured as well.
    if (aspect === 'place' && wanted === FINAL && this.thing(item).type === 'fastener')
      this.assume('secured', item, NO, failing);
    return failing;
  }

  blame(
    check: string,
    subject: number,
    more: {
      cases: CaseSet;
      other?: number | undefined;
      since?: number;
      what?: Story;
      storyOf?: number;
      words?: Record<string, string>;
      /** The step that the fact is about, where it is not the present one. */
      at?: number;
    },
  ): void {
    const thing = this.thing(subject);
    let blame = this.blames.find((one) => one.check === check && one.subject === thing && one.at === more.at);
    if (!blame) {
      blame = {
        check,
        subject: thing,
        items: new Set(),
        others: new Map(),
        cases: NONE,
        story: new Map(),
        words: {},
        ...(more.at === undefined ? {} : { at: more.at }),
      };
      this.blames.push(blame);
    }
    blame.items.add(subject);
    blame.cases = this.cases.or(blame.cases, more.cases);
    if (more.other !== undefined && more.other >= 0) {
      const other = this.thing(more.other);
      let items = blame.others.get(other);
      if (!items) {
        items = new Set();
        blame.others.set(other, items);
      }
      items.add(more.other);
    }
    if (more.since !== undefined && more.since >= 0 && more.what) {
      const of = this.thing(
        more.storyOf ?? (more.other !== undefined && more.other >= 0 ? more.other : subject),
      );
      blame.story.set(`${more.since} ${more.what} ${of.id}`, {
        since: more.since,
        what: more.what,
        thing: of,
      });
    }
    if (more.words) Object.assign(blame.words, more.words);
  }

  /** Turns what the step was blamed for into facts: once for each check, subject and step. */
  flush(): void {
    if (this.lacked.size > 0) this.lacked.clear();
    const last = this.steps.present;
    if (last)
      this.loseTrack(last.shown ?? { file: last.file, start: last.action.start, end: last.action.end });
    if (this.blames.length === 0) return;
    for (const blame of this.blames) {
      const step = this.stepAt(blame.at ?? this.step);
      if (!step) continue;
      const key = `${blame.check} ${blame.subject.id} ${step.file} ${step.start}`;
      const known = this.reported.get(key);
      if (known) {
        // A later round of a loop, or another use of the same task: one finding for all its cases.
        known.cases = this.cases.or(known.cases ?? NONE, blame.cases);
        also(known.subject!, blame.items);
        for (const [thing, items] of blame.others) {
          const other = known.others!.find((one) => one.thing === thing);
          if (other) also(other, items);
          else known.others!.push({ thing, items: inOrder(items) });
        }
        this.again(known);
        continue;
      }
      const object = step.objects.find((ref) => ref.name.text === blame.subject.name);
      const place = object ?? step;
      const check = this.nameFor(blame);
      const fact: Fact = {
        check,
        ...(check === blame.check ? {} : { inner: blame.check }),
        at: { file: step.file, start: place.start, end: place.end },
        subject: { thing: blame.subject, items: inOrder(blame.items) },
        others: [...blame.others].map(([thing, items]) => ({ thing, items: inOrder(items) })),
        story: this.storyOf(blame),
        cases: blame.cases,
        every: this.working,
        words: blame.words,
      };
      this.facts.push(fact);
      this.reported.set(key, fact);
      this.fresh?.add(fact);
    }
    this.blames = [];
  }

  /** What earlier steps did, in their order; what a step did in several rounds of a repeat once. */
  private storyOf(blame: Blame): NonNullable<Fact['story']> {
    const told = new Map<string, NonNullable<Fact['story']>[number]>();
    for (const { since, what, thing } of [...blame.story.values()].sort((a, b) => a.since - b.since)) {
      const { action, file } = this.steps.at(since)!;
      const at = { file, start: action.start, end: action.end };
      told.set(`${file} ${at.start} ${what} ${thing.id}`, { at, what, thing });
    }
    return [...told.values()];
  }

  /**
   * A fault that only a further round of a repeat shows is about the repeat; one that only some cases show,
   * though its cause stands in more, is about the branch that leaves them out.
   */
  private nameFor(blame: Blame): string {
    if (this.round > 0 && blame.at === undefined) return 'loop-not-restored';
    const ending = blame.at !== undefined;
    const failing = ending ? this.within : (this.steps.present?.within ?? this.within);
    let reach = this.cases.and(failing, blame.subject.exists);
    const causes = [...blame.story.values()].map(({ since }) => since);
    if (blame.at !== undefined) causes.push(blame.at);
    for (const since of causes) if (since >= 0) reach = this.cases.and(reach, this.steps.at(since)!.within);
    for (const other of blame.others.keys()) reach = this.cases.and(reach, other.exists);
    // Rounds of a repeat are no branches.
    const axes = this.cases
      .smallestWithin(blame.cases, reach)
      .map(({ axis }) => this.cases.axes[axis]!.key)
      .filter((key) => !key.startsWith('repeat '));
    if (axes.length === 0) return blame.check;
    return axes.every((key) => key.startsWith('variant ') || key.startsWith('choice '))
      ? 'variant-uncovered'
      : 'branch-unfinished';
  }

  /** Forgets steps and findings, keeps the state: what came before was another procedure's work. */
  clear(): void {
    this.blames = [];
    this.facts.length = 0;
    this.steps.clear();
    this.chosen.clear();
    for (const change of this.journal ?? []) change.step = -1;
    this.reported.clear();
  }

  /** Adds a fact that is not a step's own blame: once for each check, subject and place. */
  fact(fact: Fact): void {
    const key = `${fact.check} ${fact.subject?.thing.id ?? ''} ${fact.at.file} ${fact.at.start}`;
    const known = this.reported.get(key);
    if (known) {
      this.again(known);
      if (known.cases !== undefined && fact.cases !== undefined)
        known.cases = this.cases.or(known.cases, fact.cases);
      return;
    }
    this.facts.push(fact);
    this.reported.set(key, fact);
    this.fresh?.add(fact);
  }

  /** What was found so far, by what tells it apart. */
  get known(): Tracked<string, Fact> {
    return this.reported;
  }

  private again(fact: Fact): void {
    if (this.fresh && !this.fresh.has(fact)) this.entangled = true;
  }

  private stepAt(index: number): (Place & { objects: Action['objects'] }) | undefined {
    if (index < 0) return this.before ? { ...this.before, objects: [] } : undefined;
    const step = this.steps.at(index);
    if (step?.shown) return { ...step.shown, objects: [] };
    return (
      step && {
        file: step.file,
        start: step.action.start,
        end: step.action.end,
        objects: step.action.objects,
      }
    );
  }
}

/** The same fault at more positions. */
function also(known: Mentioned, items: Iterable<number>): void {
  known.items = inOrder([...(known.items ?? []), ...items]);
}

function inOrder(items: Iterable<number>): number[] {
  return [...new Set(items)].sort((a, b) => a - b);
}
