/**
 * A procedure carried out on its machine, for all cases at once: how it starts, its steps, how it ends.
 * Pure: gives facts, never words.
 */
import type { Header, Procedure, StateClaim } from '../../grammar/syntax/tree.ts';
import { casesOf } from '../model/conditions.ts';
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import { findProcedure, type LoadedFile } from '../model/names.ts';
import { tasksOf } from '../model/row.ts';
import type { House } from '../project/project.ts';
import { awayValue, DRAINED, OUT, YES } from './aspects.ts';
import { type CaseSet, type Cases, NONE } from './cases.ts';
import { claimed, makeSo } from './contract.ts';
import { atTheEnd } from './end.ts';
import { Flow, sameFault } from './flow.ts';
import { neverNeeded } from './never-needed.ts';
import { meaning } from './questions.ts';
import { Run } from './run.ts';
import { SharedWork } from './shared-work.ts';
import { startFaults } from './start-faults.ts';
import type { Watcher } from './watch.ts';
import { watchers } from './watchers.ts';

/** Gives who looks on beside those that always do: the rules of the house. */
export type MoreWatchers = (run: Run, procedure: Procedure, file: string) => Watcher[];

export interface Execution {
  run: Run;
  facts: Fact[];
}

/**
 * `shared`: what is known from other procedures of the same model. `journal`: keep every change of the state
 * (`run.journal`); costs memory, so only who shows how things came to be asks for it.
 */
export function execute(
  model: Model,
  procedure: Procedure,
  file: string,
  visible: readonly LoadedFile[],
  house: House = {},
  shared = new SharedWork(),
  journal = false,
  more: MoreWatchers = () => [],
): Execution {
  const { run, flow, all, mustCome } = start(model, procedure, file, visible, shared, journal, more);
  run.watchers.push(...watchers(run, procedure, house));
  flow.block(procedure.body);
  finish({ run, flow, all, mustCome }, procedure, file);
  return { run, facts: run.facts };
}

/** An execution at the start of its steps. */
export interface Started {
  run: Run;
  flow: Flow;
  /** The cases that the procedure is for. */
  all: CaseSet;
  /** What was found away and has to come back. */
  mustCome: Set<number>;
}

/** What is found once all steps were carried out; `steps` are those, where they do not stand in order in the run. */
export function finish(
  { run, flow, all, mustCome }: Started,
  procedure: Procedure,
  file: string,
  steps?: Parameters<typeof neverNeeded>[1],
): void {
  const finished = run.cases.minus(all, run.cases.or(flow.unfinished, flow.ended));
  for (const watcher of run.watchers) watcher.finish?.(procedure.body?.closed ? finished : NONE);
  // Once track is lost every thing is undecided: that is told once, at the place.
  for (const thing of run.lost ? [] : run.undecided) {
    const name = procedure.name ?? procedure;
    run.fact({ check: 'undecided', at: { file, start: name.start, end: name.end }, subject: { thing } });
  }
  if (procedure.body?.closed && !run.lost) {
    const facts = endClaims(run, procedure, file, flow);
    run.facts.push(...facts.facts);
    neverNeeded(run, steps);
    atTheEnd(run, {
      finished,
      ...facts,
      mustCome,
    });
  }
  if (run.lost) run.fact({ check: 'undecided', at: run.lost });
}

/** The state at a place of the procedure: carried out up to there, in the cases that get there. */
export function executeTo(
  model: Model,
  procedure: Procedure,
  file: string,
  visible: readonly LoadedFile[],
  offset: number,
): Run {
  const { run, flow } = start(model, procedure, file, visible);
  flow.until = { file, offset };
  flow.block(procedure.body);
  if (flow.reached !== undefined) run.within = flow.reached;
  return run;
}

export function start(
  model: Model,
  procedure: Procedure,
  file: string,
  visible: readonly LoadedFile[],
  shared = new SharedWork(),
  journal = false,
  more: MoreWatchers = () => [],
  cases: Cases = model.cases,
): Started {
  const run = new Run(model, cases);
  if (journal) run.journal = [];
  run.watchers.push(...more(run, procedure, file));
  const mustCome = begin(run, procedure, file, visible, 0);
  for (const header of procedure.headers) {
    if (header.header === 'only' && header.condition) {
      run.within = run.cases.and(
        run.within,
        casesOf(header.condition, file, run.cases, model.variants, []) ?? run.within,
      );
    }
  }
  startFaults(run, procedure, file);
  for (const watcher of run.watchers) watcher.begun?.();
  const flow = new Flow(run, file, visible, tasksOf(procedure));
  flow.shared = shared;
  flow.alone = (other, from) => {
    const { alone } = shared;
    if (!alone.has(other)) {
      // Procedures that use each other in a circle ask for this one again.
      alone.set(other, new Set());
      const { facts } = execute(model, other, from, visible, {}, shared, false, more);
      alone.set(other, new Set(facts.map(sameFault)));
    }
    return alone.get(other)!;
  };
  return { run, flow, all: run.within, mustCome };
}

/** Sets how things stand at the start. Answers what was found away and has to come back. */
function begin(
  run: Run,
  procedure: Procedure,
  file: string,
  visible: readonly LoadedFile[],
  depth: number,
): Set<number> {
  const mustCome = new Set<number>();
  const { model } = run;
  for (const thing of model.things) {
    for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
      if (thing.added) run.start('place', item, awayValue(thing), thing.exists);
      // As it left the works it was tightened once already.
      if (thing.toYield) run.start('yielded', item, YES, thing.exists);
    }
  }
  for (const header of procedure.headers) {
    if (header.header === 'starts with') {
      run.before ??= { file, start: header.start, end: header.end };
      for (const claim of header.claims) startClaim(run, claim, mustCome);
    } else if (header.header === 'starts where' && header.ref && depth < 20) {
      const found = findProcedure(visible, header.ref.name.text);
      if (!found) continue;
      run.before ??= { file, start: header.start, end: header.end };
      begin(run, found.procedure, found.file.path, visible, depth + 1);
      if (found.procedure.body)
        new Flow(run, found.file.path, visible, tasksOf(found.procedure)).block(found.procedure.body);
      else makeSo(run, found.procedure);
      forget(run);
      run.state.settle();
      for (const thing of model.things) {
        for (let item = thing.first; item < thing.first + thing.positions.length; item++) mustCome.add(item);
      }
    }
  }
  return mustCome;
}

/** What an earlier procedure did is not this one's finding. */
function forget(run: Run): void {
  run.within = run.model.built;
  run.clear();
}

function startClaim(run: Run, claim: StateClaim, mustCome: Set<number>): void {
  const word = claim.state?.text;
  if (!word) return;
  for (const { thing, items } of claimed(run.model, claim)) {
    for (const item of items) {
      if (claim.scope !== 'things' && thing.type === 'system') {
        if (word !== 'off') continue;
        if (thing.hasFluid) run.start('fluid', item, DRAINED, thing.exists);
        if (thing.hasPressure) run.start('pressure', item, YES, thing.exists);
        if (thing.hasHeat) run.start('heat', item, YES, thing.exists);
        if (thing.hasLive) run.start('live', item, YES, thing.exists);
        continue;
      }
      // What a claim finds at the start is the normal position of a control that declares none.
      if (
        claim.scope === 'things' &&
        ['open', 'closed', 'on', 'off'].includes(word) &&
        !run.positions.has(item)
      )
        run.positions.set(item, word);
      const means = meaning(run, thing, item, word);
      if (!means || (claim.scope !== 'things' && (thing.fixed || thing.type === 'tool'))) continue;
      run.start(means.aspect, item, means.value, thing.exists);
      if (claim.scope !== 'things') mustCome.add(item);
      if (word !== 'off' || claim.scope !== 'things' || thing.type !== 'part') continue;
      // What is off has nothing left that holds it or joins it to the rest.
      for (const fastener of run.model.fastenersOf[item]!)
        run.start('place', fastener, OUT, run.thing(fastener).exists);
      for (const joint of run.model.connectionsOf[item]!)
        run.start('place', joint, 1, run.thing(joint).exists);
    }
  }
}

/** What `ends with` allows, and facts for what it claims and the steps do not reach. */
function endClaims(
  run: Run,
  procedure: Procedure,
  file: string,
  flow: Flow,
): { mayBeAway: Set<number>; claimed: Set<string>; facts: Fact[] } {
  const mayBeAway = new Set<number>();
  const aspects = new Set<string>();
  const facts: Fact[] = [];
  const within = run.cases.minus(run.model.built, run.cases.or(flow.unfinished, flow.ended));
  for (const header of procedure.headers as Header[]) {
    if (header.header !== 'ends with') continue;
    for (const claim of header.claims) {
      const word = claim.state?.text;
      if (!word) continue;
      for (const { thing, items } of claimed(run.model, claim)) {
        for (const item of items) {
          const means = meaning(run, thing, item, word);
          if (!means) continue;
          aspects.add(`${means.aspect} ${item}`);
          if (word === 'off') {
            if (claim.scope === 'things') belongings(run, item, mayBeAway);
            else mayBeAway.add(item);
          }
          if (claim.scope !== 'things') continue;
          let failing = NONE;
          for (const entry of run.entries(means.aspect, item, run.cases.and(within, thing.exists))) {
            if (!((means.mask >>> entry.value) & 1) && !entry.assumed)
              failing = run.cases.or(failing, entry.cases);
          }
          if (failing === NONE) continue;
          const known = facts.find((fact) => fact.subject?.thing === thing && fact.at.start === claim.start);
          if (known) {
            known.cases = run.cases.or(known.cases!, failing);
            known.subject!.items!.push(item);
          } else {
            facts.push({
              check: 'contract-broken',
              at: { file, start: claim.start, end: claim.end },
              subject: { thing, items: [item] },
              cases: failing,
              words: { state: word, side: 'ends' },
            });
          }
        }
      }
    }
  }
  return { mayBeAway, claimed: aspects, facts };
}

/** A thing that may stay off, with all that sits on it, holds it, seals it and joins it. */
function belongings(run: Run, item: number, into: Set<number>): void {
  const { model } = run;
  const all = new Set([item]);
  for (const one of all) {
    const { type } = run.thing(one);
    if (type !== 'part' && type !== 'control' && type !== 'isolator') continue;
    for (const rider of model.riders[one]!) all.add(rider);
  }
  for (const one of all) {
    into.add(one);
    for (const other of [...model.fastenersOf[one]!, ...model.connectionsOf[one]!, ...model.seals[one]!])
      into.add(other);
  }
}
