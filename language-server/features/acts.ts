/**
 * What a verb can act on in a state of the machine: every thing is tried in turn, on a copy of the state, and
 * what the step would be blamed for tells. Pure: the run is left as it was.
 */
import type { Action, Ref } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import { perform, type Resolve } from '../execution/actions/perform.ts';
import { NONE } from '../execution/cases.ts';
import type { Run } from '../execution/run.ts';
import type { Fact } from '../model/facts.ts';
import { itemsOf } from '../model/items.ts';
import { list, type Thing } from '../model/model.ts';

export interface Actable {
  thing: Thing;
  /** The positions that it can be done to, where it cannot be done to all. */
  positions?: string[];
  /** What must be done first: the checks that would blame the step, and the things in the way. */
  blocked?: { checks: string[]; by: string };
}

/** Findings that say that the thing is so already, or is not there for this verb: nothing else would help. */
const IDLE: ReadonlySet<string> = new Set([
  'done-twice',
  'refitted-before-removed',
  'discarded-reused',
  'single-use-reused',
  'wrong-verb',
  'not-in-place',
  'retightened-yield',
  'swapped',
]);

/** Verbs that take off or put back: nothing that is fixed. */
const MOVING: ReadonlySet<string> = new Set([
  'remove',
  'unbolt',
  'move aside',
  'move back',
  'move',
  'refit',
  'fit',
  'trial fit',
  'bolt up',
  'discard',
  'send',
]);

/** What the thing must have for the verb to mean anything. */
const NEEDS: Readonly<Record<string, (run: Run, thing: Thing) => boolean>> = {
  unbolt: held,
  'bolt up': held,
  isolate: (_, thing) => thing.hasLive,
  restore: (_, thing) => thing.hasLive,
  relieve: (_, thing) => thing.hasPressure,
  pressurise: (_, thing) => thing.hasPressure || thing.hasFluid,
  inflate: (_, thing) => thing.hasPressure,
  drain: (_, thing) => thing.hasFluid,
  recover: (_, thing) => thing.hasFluid,
  fill: (_, thing) => thing.hasFluid,
  'top up': (_, thing) => thing.hasFluid,
  evacuate: (_, thing) => thing.hasFluid || thing.hasPressure,
  bleed: (run, thing) => thing.needsBleeding || run.model.bleedPoints[thing.first]!.length > 0,
  prove: (_, thing) => thing.provable || thing.hasLive || thing.hasPressure,
  secure: (_, thing) => thing.needsSecuring,
  'let cool': (run, thing) =>
    thing.hasHeat ||
    run.model.opens[thing.first]!.some((system) => run.thing(system).hasHeat) ||
    thing.declaration.clauses.some(
      (clause) => clause.clause === 'hazard' && clause.hazards.some(({ text }) => text === 'hot'),
    ),
};

function measures({ declaration }: Thing): boolean {
  return declaration.clauses.some(({ clause }) => clause === 'range' || clause === 'accuracy');
}

function held(run: Run, thing: Thing): boolean {
  return run.model.heldBy[thing.first]!.length > 0;
}

/** The action that is being written: its verb, and what was typed of it before the name that is looked for. */
export type Begun = Pick<Action, 'verb' | 'word' | 'fresh' | 'objects' | 'tails'>;

/** Things in the order of the machine; those with nothing in the way are not marked as blocked. */
export function actable(run: Run, begun: Begun, file: string): Actable[] {
  const verb = verbNamed(begun.verb);
  if (!verb || run.within === NONE) return [];
  const kinds: readonly string[] = begun.fresh === 'kit' ? ['kit'] : verb.on;
  const named = new Set(begun.objects.map((ref) => ref.name.text));
  const trial = new Attempt(run, file);
  const state = run.state;
  const result: Actable[] = [];
  try {
    run.state = state.copy();
    if (begun.objects.length > 0) trial.blames(begun, begun.objects);
    for (const thing of run.model.things) {
      if (!kinds.includes(thing.type) || named.has(thing.name)) continue;
      if (MOVING.has(begun.verb) && thing.fixed) continue;
      if (run.cases.and(run.within, thing.exists) === NONE) continue;
      if (NEEDS[begun.verb]?.(run, thing) === false) continue;
      // A measuring tool is used, not fitted; a fixture that comes off again was fitted, not refitted.
      if (thing.type === 'tool' && (begun.verb === 'refit' || measures(thing))) continue;
      const found = trial.of(begun, thing);
      if (found) result.push(found);
    }
  } finally {
    run.state = state;
  }
  return result;
}

class Attempt {
  private readonly run: Run;
  private readonly file: string;
  private count = 0;

  constructor(run: Run, file: string) {
    this.run = run;
    this.file = file;
  }

  of(begun: Begun, thing: Thing): Actable | undefined {
    const whole = this.tried(begun, [refTo(thing)]);
    if (whole.length === 0) return { thing };
    if (!whole.some(idle)) return { thing, blocked: blockedBy(whole) };
    if (thing.positions.length < 2) return undefined;
    // Some positions are so already: those that are not can still be done.
    const open = thing.positions.filter(
      (position) => !this.tried(begun, [refTo(thing, position)]).some(idle),
    );
    if (open.length === 0 || open.length === thing.positions.length) return undefined;
    const left = this.tried(begun, [refTo(thing, ...open)]);
    return { thing, positions: open, ...(left.length > 0 ? { blocked: blockedBy(left) } : {}) };
  }

  /** The blames of an action, on a copy of the state. */
  private tried(begun: Begun, objects: readonly Ref[]): Fact[] {
    const { run } = this;
    const state = run.state;
    run.state = state.copy();
    const facts = this.blames(begun, objects);
    run.state = state;
    return facts;
  }

  /** Carries the action out and takes back what was noted of it, but for the state. */
  blames(begun: Begun, objects: readonly Ref[]): Fact[] {
    const { run } = this;
    const before = run.facts.length;
    const normal = [...run.positions];
    // Each attempt stands at a place of its own, so that none is taken for a repetition of another.
    const start = -1 - ++this.count;
    const action: Action = {
      kind: 'action',
      start,
      end: start,
      verb: begun.verb,
      word: begun.word,
      ...(begun.fresh ? { fresh: begun.fresh } : {}),
      objects: objects.map((ref) => ({ ...ref, start, end: start })),
      together: false,
      tails: begun.tails,
      outcomes: [],
    };
    const resolve: Resolve = (ref) => {
      const thing = run.model.byName.get(ref.name.text);
      return thing && itemsOf(thing, ref);
    };
    perform(run, action, this.file, resolve);
    run.steps.takeBack();
    run.positions.clear();
    for (const [item, position] of normal) run.positions.set(item, position);
    return run.facts.splice(before);
  }
}

function refTo(thing: Thing, ...positions: string[]): Ref {
  const at = { start: 0, end: 0 };
  return {
    ...at,
    name: { ...at, text: thing.name },
    positions: positions.map((from) => ({ ...at, from })),
  };
}

function idle(fact: Fact): boolean {
  return IDLE.has(fact.inner ?? fact.check);
}

function blockedBy(facts: readonly Fact[]): { checks: string[]; by: string } {
  const titles = facts.flatMap((fact) => (fact.others ?? []).map(({ thing }) => thing.title));
  return {
    checks: [...new Set(facts.map((fact) => fact.inner ?? fact.check))],
    by: list([...new Set(titles)]),
  };
}
