/**
 * How long a compound in the joints of a system has still to cure. The aspect `curing` of a system is a small number:
 * 0 is cured, any other stands for so many seconds to go (they are numbered as they come up, for each run).
 *
 * Only time that the steps state counts: `wait`, `for`. How long work takes is nobody's guess here; where a wait is
 * open-ended (`until`, cooling down, work elsewhere) or a sentence speaks of curing, it is taken to be long enough.
 */
import type { Action } from '../../../grammar/syntax/tree.ts';
import { bandIn, readTyped } from '../../model/fastening-amounts.ts';
import type { Model, Thing } from '../../model/model.ts';
import { bit } from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import type { Run } from '../run.ts';

const CURED = 0;
/** Different times to go that are told apart; with more the joint is taken to be cured. */
const MOST = 30;

/** Seconds to go, by number; number 0 is none. */
const timesOf = new WeakMap<Run, number[]>();

/** How many different times to go came up so far. */
export function curingTimes(run: Run): number {
  return timesOf.get(run)?.length ?? 0;
}

function numberOf(run: Run, seconds: number): number {
  if (seconds <= 0) return CURED;
  const times = timesOf.get(run) ?? [0];
  timesOf.set(run, times);
  const known = times.indexOf(seconds);
  if (known >= 0) return known;
  if (times.length >= MOST) return CURED;
  return times.push(seconds) - 1;
}

function secondsOf(run: Run, number: number): number {
  return timesOf.get(run)?.[number] ?? 0;
}

/** A compound goes on the item: every system that its joint closes has to wait for it. */
export function beginCuring(
  run: Run,
  item: number,
  named: readonly string[],
  within: CaseSet = run.within,
): void {
  const thing = run.thing(item);
  const compounds = [...named, ...(named.length > 0 ? [] : thing.coatedWith)];
  const seconds = Math.max(0, ...compounds.map((name) => curingTime(run, run.model.byName.get(name))));
  if (seconds === 0) return;
  for (const system of systemsAt(run, item)) {
    for (const entry of run.entries('curing', system, within)) {
      if (secondsOf(run, entry.value) < seconds)
        run.set('curing', system, numberOf(run, seconds), entry.cases);
    }
  }
}

function curingTime(run: Run, thing: Thing | undefined): number {
  for (const clause of thing?.declaration.clauses ?? []) {
    if (clause.clause !== 'curing time') continue;
    const time = readTyped(clause.quantity, run.model.values);
    return time?.unit.kind === 'time' ? bandIn(time, 's').low : 0;
  }
  return 0;
}

/** The systems that are closed by what lies in the joint of the item. */
function systemsAt(run: Run, item: number): Set<number> {
  const { model } = run;
  const joint = new Set([item]);
  if (run.thing(item).type === 'face') for (const over of overFace(model, item)) joint.add(over);
  for (const one of [...joint]) for (const part of model.sealedParts[one]!) joint.add(part);
  return new Set(
    [...joint].flatMap((one) => [...model.opens[one]!, ...model.drains[one]!, ...model.relieves[one]!]),
  );
}

/** Time goes by in a step. */
export function timePasses(run: Run, action: Action): void {
  const times = timesOf.get(run);
  if (!times) return;
  const long = isOpenEnded(action);
  const seconds = long ? Number.POSITIVE_INFINITY : statedSeconds(run, action);
  if (seconds === 0) return;
  for (const thing of run.model.things) {
    if (thing.type !== 'system') continue;
    for (const entry of run.entries('curing', thing.first)) {
      if (entry.value === CURED) continue;
      const left = numberOf(run, secondsOf(run, entry.value) - seconds);
      // The step to be told is the one that put it on, not the wait.
      run.state.set(run.variable('curing', thing.first), left, entry.cases, entry.since, entry.assumed);
    }
  }
}

function isOpenEnded(action: Action): boolean {
  if (action.verb === 'send' || action.verb === 'let cool') return true;
  if (action.text && /\b(cur(e|es|ed|ing)|harden\w*|dr(y|ies|ied|ying)|overnight)\b/i.test(action.text.value))
    return true;
  if (action.verb !== 'wait') return false;
  return !action.quantity && !action.tails.some((tail) => tail.tail === 'for' && tail.quantity);
}

function statedSeconds(run: Run, action: Action): number {
  const stated = action.verb === 'wait' ? [action.quantity] : [];
  for (const tail of action.tails) if (tail.tail === 'for') stated.push(tail.quantity);
  return stated.reduce((sum, typed) => {
    const time = readTyped(typed, run.model.values);
    if (time?.unit.kind !== 'time') return sum;
    const { low, high } = bandIn(time, 's');
    return sum + (Number.isFinite(high) ? high : Math.max(low, Number.MAX_SAFE_INTEGER));
  }, 0);
}

/** Nothing goes into a system whose joints still cure. */
export function cured(run: Run, system: number, within: CaseSet): void {
  if (!timesOf.has(run)) return;
  for (const entry of run.entries('curing', system, within)) {
    if (entry.value === CURED || entry.assumed) continue;
    run.blame('filled-before-cured', system, {
      cases: entry.cases,
      since: entry.since,
      what: 'coated',
      words: { left: spoken(secondsOf(run, entry.value)) },
    });
  }
  const wet = run.where('curing', system, ~bit(CURED), within);
  if (wet !== NONE) run.assume('curing', system, CURED, wet);
}

/** `2 h`, `1 h 30 min`, `1 h 59 min 30 s`: to the second, so that a wait of so long is long enough. */
function spoken(seconds: number): string {
  let left = Math.ceil(seconds);
  const parts = [
    { size: 86_400, unit: 'd' },
    { size: 3_600, unit: 'h' },
    { size: 60, unit: 'min' },
    { size: 1, unit: 's' },
  ];
  const said = parts.flatMap(({ size, unit }) => {
    const count = Math.floor(left / size);
    left -= count * size;
    return count > 0 ? [`${count} ${unit}`] : [];
  });
  return said.join(' ');
}

/** What lies on a face: `face … under …`. */
export function overFace(model: Model, face: number): readonly number[] {
  return model.covers[face]!;
}

/** The compounds that the step names. */
export function withOf(action: Action): string[] {
  return action.tails.flatMap((tail) => (tail.tail === 'with' ? tail.refs.map((ref) => ref.name.text) : []));
}
