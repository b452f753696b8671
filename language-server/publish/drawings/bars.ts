/**
 * The strip-and-rebuild chart as data: for everything that comes off, from which step to which, how it ends, and
 * how deep it is nested. Read from the journal of an execution, so every case is in it; cases with the same bar
 * are one bar. Further rounds of a repeat are not told apart: a repeat is drawn as done once.
 */

import {
  ASIDE,
  CAPPED,
  CONNECTED,
  DISCONNECTED,
  FITTED,
  GONE,
  OFF,
  OUT,
  THROWN_AWAY,
  TRIAL,
  YES,
} from '../../execution/aspects.ts';
import type { CaseSet, Cases } from '../../execution/cases.ts';
import { NONE } from '../../execution/cases.ts';
import type { Execution } from '../../execution/execute.ts';
import type { Change, Run } from '../../execution/run.ts';
import { list, type Model, type Thing } from '../../model/model.ts';
import type { Place } from '../../report/finding.ts';

/** `off` and `out` lie on the bench, `aside` hangs at the machine, `apart` is a connection. */
export type Away = 'off' | 'out' | 'aside' | 'apart';

/**
 * `back`: the same one; `new`: a new one; `trial`: fitted on trial; `further`: from aside it is taken off, or the
 * other way round (another bar begins there); `never`: it stays away.
 */
export type BarEnd = 'back' | 'new' | 'trial' | 'further' | 'never';

/** One column of the chart: an action, where it stands, and what a reader calls it. */
export interface ChartStep {
  /** Counted from 1 in the order of the work. */
  readonly number: number;
  readonly at: Place;
  /** The number that the page prints, where it has one. */
  readonly label?: string;
}

export interface Bar {
  /** Name of the thing, as in the machine file. */
  readonly thing: string;
  readonly title: string;
  readonly type: Thing['type'];
  /** Names of the positions, where it is not all of the thing. */
  readonly positions?: readonly string[];
  readonly state: Away;
  /** Step number; 0: away from the start. */
  readonly from: number;
  /** Step number; undefined: away at the end. */
  readonly to: number | undefined;
  readonly end: BarEnd;
  /** The step that threw the old one away. From there on nothing of it is on the bench. */
  readonly thrownAway?: number;
  /** In words, where it is not so in every case. */
  readonly case?: string;
  /** How many bars are around it: those that begin no later and end no sooner. */
  readonly depth: number;
}

export interface Chart {
  readonly steps: readonly ChartStep[];
  /** Sorted by where they begin, the longest first. */
  readonly bars: readonly Bar[];
  /** Titles of things whose cases became too many to follow. */
  readonly undecided: readonly string[];
}

/** The chart of an execution that kept its journal (`execute(…, true)`); without one it has no bars. */
export function chartOf(
  model: Model,
  execution: Execution,
  labels?: (step: ChartStep) => string | undefined,
): Chart {
  const { run } = execution;
  return {
    steps: stepsOf(run).map((step) => {
      const label = labels?.(step);
      return label === undefined ? step : { ...step, label };
    }),
    bars: bars(model, execution),
    undecided: [...run.undecided].map(({ title }) => title),
  };
}

/** Every action in the order of the work, without the further rounds of repeats. */
export function stepsOf(run: Run): ChartStep[] {
  return [...run.steps.values()]
    .filter(({ round }) => round === 0)
    .map(({ action, file }, index) => ({
      number: index + 1,
      at: { file, start: action.start, end: action.end },
    }));
}

/** What lies on the bench after a step: bars of parts, seals and fasteners that are off and not thrown away. */
export function onTheBench(all: readonly Bar[], step: number): Bar[] {
  return all.filter(
    ({ state, from, to, thrownAway }) =>
      (state === 'off' || state === 'out') &&
      from <= step &&
      (to ?? Number.POSITIVE_INFINITY) > step &&
      (thrownAway ?? Number.POSITIVE_INFINITY) > step,
  );
}

export function bars(model: Model, { run }: Execution): Bar[] {
  const numbers = numbersOf(run);
  const changes = new Map<number, Change[]>();
  for (const change of run.journal ?? []) {
    if (change.step >= 0 && run.steps.at(change.step)?.round !== 0) continue;
    if (change.aspect !== 'place' && change.aspect !== 'parted' && change.aspect !== 'fresh') continue;
    const known = changes.get(change.item);
    if (known) known.push(change);
    else changes.set(change.item, [change]);
  }
  const spans: Span[] = [];
  for (const thing of model.things) {
    if (run.undecided.has(thing) || !SHOWN.has(thing.type)) continue;
    for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
      spans.push(...spansOf(run, thing, item, changes.get(item) ?? [], numbers));
    }
  }
  return nested(grouped(spans, run));
}

const SHOWN: ReadonlySet<Thing['type']> = new Set([
  'part',
  'seal',
  'fastener',
  'connection',
  'control',
  'isolator',
]);

interface Span {
  thing: Thing;
  item: number;
  state: Away;
  from: number;
  to: number | undefined;
  end: BarEnd;
  thrownAway?: number;
  cases: CaseSet;
}

/** Step of the run -> number on the axis. */
function numbersOf(run: Run): number[] {
  let number = 0;
  return [...run.steps.values()].map(({ round }) => (round === 0 ? ++number : number));
}

function spansOf(
  run: Run,
  thing: Thing,
  item: number,
  changes: readonly Change[],
  numbers: number[],
): Span[] {
  const { cases } = run;
  const done: Span[] = [];
  let open: Span[] = [];
  const fresh = (step: number, within: CaseSet) =>
    changes.some(
      (one) =>
        one.step === step &&
        one.aspect === 'fresh' &&
        one.value === YES &&
        cases.and(one.cases, within) !== NONE,
    );
  /** Gives each open span that is met to `act`, cut to the cases in which it is met; keeps the rest as it is. */
  const meet = (within: CaseSet, act: (span: Span) => Span | undefined) => {
    open = open.flatMap((span) => {
      const met = cases.and(span.cases, within);
      if (met === NONE) return [span];
      const left = cases.minus(span.cases, met);
      const after = act({ ...span, cases: met });
      return [...(left === NONE ? [] : [{ ...span, cases: left }]), ...(after ? [after] : [])];
    });
  };
  for (const { step, aspect, value, cases: within } of changes) {
    const number = step < 0 ? 0 : numbers[step]!;
    const here = cases.and(cases.and(within, thing.exists), run.model.built);
    if (here === NONE) continue;
    if (aspect === 'parted' && value === THROWN_AWAY) meet(here, (span) => ({ ...span, thrownAway: number }));
    if (aspect !== 'place') continue;
    const state = awayOf(thing, value);
    if (state === undefined) {
      const isNew = fresh(step, here);
      const end: BarEnd = thing.type !== 'fastener' && value === TRIAL ? 'trial' : isNew ? 'new' : 'back';
      meet(here, (span) => {
        // What came and went within one step was never seen on the bench.
        if (span.from !== number) done.push({ ...span, to: number, end });
        return undefined;
      });
      continue;
    }
    const gone = thing.type !== 'fastener' && value === GONE;
    let starting = here;
    meet(here, (span) => {
      starting = cases.minus(starting, span.cases);
      if (gone) return { ...span, thrownAway: number };
      if (span.state === state) return span;
      if (span.from === number) return { ...span, state };
      done.push({ ...span, to: number, end: 'further' });
      return { thing, item, state, from: number, to: undefined, end: 'never', cases: span.cases };
    });
    if (starting !== NONE) {
      open.push({
        thing,
        item,
        state,
        from: number,
        to: undefined,
        end: 'never',
        cases: starting,
        ...(gone ? { thrownAway: number } : {}),
      });
    }
  }
  // Where work was stopped, everything that was off just then stays off: that is no part of the rebuild.
  for (const span of open) {
    const left = cases.and(span.cases, run.working);
    if (left !== NONE) done.push({ ...span, cases: left });
  }
  return done;
}

function awayOf(thing: Thing, value: number): Away | undefined {
  switch (thing.type) {
    case 'fastener':
      return value === OUT ? 'out' : undefined;
    case 'connection':
      return value === DISCONNECTED || value === CAPPED ? 'apart' : value === CONNECTED ? undefined : 'apart';
    default:
      if (value === ASIDE) return 'aside';
      return value === FITTED || value === TRIAL
        ? undefined
        : value === OFF || value === GONE
          ? 'off'
          : undefined;
  }
}

/** Items of one thing, and cases, that have the same bar become one. */
function grouped(spans: readonly Span[], run: Run): Omit<Bar, 'depth'>[] {
  const { cases, model } = run;
  const sameItem = new Map<string, Span>();
  for (const span of spans) {
    const key = `${span.item} ${keyOf(span)}`;
    const known = sameItem.get(key);
    if (known) known.cases = cases.or(known.cases, span.cases);
    else sameItem.set(key, { ...span });
  }
  const groups = new Map<string, Span & { items: number[] }>();
  for (const span of sameItem.values()) {
    const key = `${span.thing.id} ${keyOf(span)} ${String(span.cases)}`;
    const known = groups.get(key);
    if (known) known.items.push(span.item);
    else groups.set(key, { ...span, items: [span.item] });
  }
  return [...groups.values()].map(({ thing, items, state, from, to, end, thrownAway, cases: set }) => {
    const every = wholeOf(cases, cases.and(model.built, thing.exists), run.working);
    const inCase = cases.minus(every, set) === NONE ? undefined : caseText(cases, set, every);
    return {
      thing: thing.name,
      title: thing.title,
      type: thing.type,
      ...(items.length < thing.positions.length
        ? { positions: items.map((item) => thing.positions[item - thing.first]!) }
        : {}),
      state,
      from,
      to,
      end,
      ...(thrownAway === undefined ? {} : { thrownAway }),
      ...(inCase === undefined ? {} : { case: inCase }),
    };
  });
}

/** The cases that a bar must have to be so always: those that come to the end, where there are any. */
function wholeOf(cases: Cases, all: CaseSet, working: CaseSet): CaseSet {
  const ending = cases.and(all, working);
  return ending === NONE ? all : ending;
}

/**
 * In words when it is so: one case, without what makes no difference among the cases `every`. Where other cases
 * show it too, it is told as an example.
 */
function caseText(cases: Cases, all: CaseSet, every: CaseSet): string {
  const ending = cases.and(all, every);
  const set = ending === NONE ? all : ending;
  const within = (path: readonly { axis: number; value: number }[]) =>
    path.reduce((left, { axis, value }) => cases.and(left, cases.oneOf(axis, [value])), every);
  let path = cases.smallest(set);
  for (const one of path) {
    const rest = path.filter((other) => other !== one);
    if (cases.minus(within(rest), set) === NONE) path = rest;
  }
  const words = list(path.map(({ axis, value }) => cases.axes[axis]!.phrases[value]!));
  return cases.minus(set, within(path)) === NONE ? words : `${words}, for example`;
}

function keyOf({ state, from, to, end, thrownAway }: Span): string {
  return `${state} ${from} ${to ?? ''} ${end} ${thrownAway ?? ''}`;
}

function nested(flat: readonly Omit<Bar, 'depth'>[]): Bar[] {
  const endOf = ({ to }: Omit<Bar, 'depth'>) => to ?? Number.POSITIVE_INFINITY;
  const sorted = [...flat].sort((a, b) => a.from - b.from || endOf(b) - endOf(a));
  let open: Omit<Bar, 'depth'>[] = [];
  return sorted.map((bar) => {
    open = open.filter((one) => endOf(one) > bar.from);
    const depth = open.filter((one) => endOf(one) >= endOf(bar)).length;
    open.push(bar);
    return { ...bar, depth };
  });
}
