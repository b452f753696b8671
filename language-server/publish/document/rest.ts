/** What is gathered from the finished flow: hazards at a glance, differences between variants, waste. */

import { isMilder } from '../../hazards/index.ts';
import { type Combos, or } from '../../lists/combos.ts';
import { fillOf, fluidOf } from '../../lists/fluids.ts';
import { actionsOf, type Job } from '../../lists/job.ts';
import { measureOf, measureTyped } from '../../lists/measures.ts';
import { countOf } from '../../lists/new-parts.ts';
import type { Thing } from '../../model/model.ts';
import type { Words } from '../words/words.ts';
import { hazardLabel, symbolOf } from './notices.ts';
import {
  type FlowItem,
  type HazardAtAGlance,
  type Notice,
  plainText,
  type Step,
  type ThingInfo,
  type VariantDifference,
  type WasteEntry,
} from './types.ts';

/** Every notice with the step it stands before, or the id of the note that it is. */
export function noticesIn(items: readonly FlowItem[]): { id: string; notice: Notice }[] {
  return items.flatMap((item): { id: string; notice: Notice }[] => {
    switch (item.kind) {
      case 'note':
        return [{ id: item.id, notice: item.notice }];
      case 'step':
        return [
          ...item.notices.map((notice) => ({ id: item.id, notice })),
          ...(item.measurement?.rows ?? []).flatMap((row) => noticesIn(row.items)),
        ];
      case 'branch':
        return item.ways.flatMap((way) => noticesIn(way.items));
      case 'repeat':
        return [...noticesIn(item.items), ...noticesIn(item.otherwise?.items ?? [])];
      default:
        return 'items' in item ? noticesIn(item.items) : [];
    }
  });
}

/** Every step, those in branches, repeats and outcomes too, in reading order. */
export function stepsIn(items: readonly FlowItem[]): Step[] {
  return items.flatMap((item): Step[] => {
    switch (item.kind) {
      case 'step':
        return [item, ...(item.measurement?.rows ?? []).flatMap((row) => stepsIn(row.items))];
      case 'branch':
        return item.ways.flatMap((way) => stepsIn(way.items));
      case 'repeat':
        return [...stepsIn(item.items), ...stepsIn(item.otherwise?.items ?? [])];
      default:
        return 'items' in item ? stepsIn(item.items) : [];
    }
  });
}

export function hazardsOf(
  flow: readonly FlowItem[],
  sets: ReadonlyMap<string, Combos>,
  job: Job,
  words: Words,
): HazardAtAGlance[] {
  const found = new Map<string, HazardAtAGlance & { set: Combos }>();
  for (const { id: step, notice } of noticesIn(flow)) {
    const set = sets.get(step) ?? job.within;
    const { signal, word, text } = notice;
    for (const { id } of notice.hazards) {
      const known = found.get(id);
      if (!known) {
        const label = hazardLabel(id, words);
        found.set(id, {
          hazard: id,
          label,
          signal,
          word,
          symbol: symbolOf(signal, id),
          text,
          steps: [step],
          set,
        });
        continue;
      }
      if (!known.steps.includes(step)) known.steps.push(step);
      known.set = or(known.set, set);
      if (isMilder(known.signal, signal)) Object.assign(known, { signal, word, text });
    }
  }
  const worst = [...found.values()].sort((a, b) => RANK.indexOf(a.signal) - RANK.indexOf(b.signal));
  return worst.map(({ set, ...hazard }) => {
    const when = job.combinations.when(set, job.within);
    return { ...hazard, ...(when ? { when } : {}) };
  });
}

const RANK: readonly string[] = ['danger', 'warning', 'caution', 'notice', 'note'];

export function differencesOf(
  steps: readonly Step[],
  sets: ReadonlyMap<string, Combos>,
  job: Job,
): VariantDifference[] {
  const found = new Map<string, VariantDifference>();
  for (const step of steps) {
    const set = sets.get(step.id);
    const when = set && job.combinations.when(set, job.within);
    if (!when) continue;
    const known = found.get(when.sentence) ?? { when, steps: [], sentences: [] };
    known.steps.push(step.id);
    known.sentences.push(plainText(step.heading));
    found.set(when.sentence, known);
  }
  return [...found.values()];
}

export function wasteOf(job: Job, words: Words): WasteEntry[] {
  const waste: WasteEntry[] = [];
  const thrown = new Map<Thing, { planned: number; set: Combos }>();
  const add = (entry: WasteEntry, set: Combos) => {
    if (waste.some(({ id, kind }) => id === entry.id && kind === entry.kind)) return;
    const when = job.combinations.when(set, job.within);
    waste.push({ ...entry, ...(when ? { when } : {}) });
  };
  for (const { written, where, ifFound } of actionsOf(job)) {
    const { action } = written;
    const discards = action.verb === 'discard' || action.tails.some(({ tail }) => tail === 'and discard');
    for (const ref of action.objects) {
      const thing = job.model.byName.get(ref.name.text);
      if (!thing) continue;
      if (discards) {
        const known = thrown.get(thing);
        const count = countOf(thing, ref);
        // In one variant or another, or only if found: the most that is thrown away at once.
        const planned = !known || ifFound ? Math.max(known?.planned ?? 0, count) : sumOf(known, count, where);
        thrown.set(thing, { planned, set: known ? or(known.set, where) : where });
      }
      if (action.verb === 'drain' || action.verb === 'recover') drained(thing, action.verb, where);
    }
    // A drain point that comes out empties what it drains.
    for (const ref of action.verb === 'remove' || action.verb === 'open' ? action.objects : []) {
      const thing = job.model.byName.get(ref.name.text);
      for (const system of job.model.things)
        if (
          thing &&
          (job.model.drainPoints[system.first] ?? []).some((item) => job.model.thingOf[item] === thing)
        )
          drained(system, 'drain', where);
    }
    for (const tail of action.tails) {
      if (tail.tail !== 'with') continue;
      for (const { name } of tail.refs) {
        const thing = job.model.byName.get(name.text);
        if (thing?.type !== 'consumable') continue;
        const amount = measureTyped(tail.quantity, job.model, job.measures);
        const disposal = words.say('waste.consumable');
        add(
          { id: thing.name, name: thing.title, kind: 'consumable', disposal, ...(amount ? { amount } : {}) },
          where,
        );
      }
    }
  }
  const parts = [...thrown].map(([thing, { planned, set }]): WasteEntry => {
    const when = job.combinations.when(set, job.within);
    return {
      id: thing.name,
      name: thing.title,
      ...(Number.isNaN(planned) ? {} : { count: planned }),
      kind: 'part',
      disposal: words.say('waste.part'),
      ...(when ? { when } : {}),
    };
  });
  return [...parts, ...waste];

  function drained(system: Thing, verb: 'drain' | 'recover', where: Combos): void {
    const fluid = fluidOf(job, system);
    if (!fluid || system.type !== 'system') return;
    const amount = fillOf(job, system);
    const disposal = words.say(verb === 'recover' ? 'waste.gas' : 'waste.fluid');
    const measure = amount && measureOf(amount, job.measures);
    add(
      { id: fluid.name, name: fluid.title, kind: 'fluid', disposal, ...(measure ? { amount: measure } : {}) },
      where,
    );
  }
}

/** Thrown away once more where it was thrown away before: added up; elsewhere it is the other variant's. */
function sumOf(known: { planned: number; set: Combos }, count: number, where: Combos): number {
  const again = where.some((inside, index) => inside && known.set[index]);
  return again ? known.planned + count : Math.max(known.planned, count);
}

export function thingInfo(thing: Thing, job: Job): ThingInfo {
  const clauses = thing.declaration.clauses;
  const info: ThingInfo = {
    id: thing.name,
    name: thing.title,
    type: thing.type,
    ...(thing.positions.length > 1
      ? { count: thing.positions.length }
      : thing.count === undefined
        ? {}
        : { count: thing.count }),
    positions: thing.positions.length > 1 ? [...thing.positions] : [],
    alsoCalled: clauses.flatMap((clause) =>
      clause.clause === 'also called' ? clause.texts.map(({ value }) => value) : [],
    ),
  };
  for (const clause of clauses) {
    if (clause.clause === 'item' && clause.number !== undefined) info.item = clause.number;
    if (clause.clause === 'part number' && clause.text) info.partNumber = clause.text.value;
    if (clause.clause === 'thread' && clause.designation) info.thread = clause.designation.text;
    if ((clause.clause === 'class' || clause.clause === 'grade') && clause.designation)
      info.strength = clause.designation.text;
  }
  const when = job.combinations.when(job.combinations.of(thing.exists), job.within);
  if (when) info.when = when;
  return info;
}
