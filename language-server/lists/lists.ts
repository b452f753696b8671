/** What a job needs, gathered from its headers, its steps and the machine file. The parts of it have files of their own. */
import type { Header, Procedure } from '../../grammar/syntax/tree.ts';
import type { Thing } from '../model/model.ts';
import { isNone, or, spoken } from './combos.ts';
import { consumablesOf, fluidsOf } from './fluids.ts';
import { actionsOf, type Done, type Job } from './job.ts';
import { measureTyped } from './measures.ts';
import { kitsOf, newPartsOf } from './new-parts.ts';
import { timesOf } from './times.ts';
import type { JobLists, ListEntry, ToolEntry } from './types.ts';

export function listsOf(job: Job): JobLists {
  const done = actionsOf(job);
  const { procedure } = job;
  const people = headerOf(procedure, 'people')?.count;
  const skill = headerOf(procedure, 'skill')?.text?.value;
  const kits = kitsOf(job, done);
  return {
    ...(people === undefined ? {} : { people }),
    peopleAtOnce: Math.max(1, ...done.map(({ written }) => peopleIn(written.action))),
    ...(skill === undefined ? {} : { skill }),
    times: timesOf(job, headerOf(procedure, 'time')?.quantity),
    protection: protectionOf(job),
    conditions: withUsed(job).flatMap((one) =>
      one.headers.flatMap((header) => (header.header === 'needs' && header.text ? [header.text.value] : [])),
    ),
    tools: toolsOf(job, done),
    newParts: newPartsOf(job, done),
    kits,
    fluids: fluidsOf(job, done),
    consumables: consumablesOf(job, done),
  };
}

export function headerOf<Name extends Header['header']>(
  procedure: Procedure,
  name: Name,
): (Header & { header: Name }) | undefined {
  return procedure.headers.find((one): one is Header & { header: Name } => one.header === name);
}

/** The procedure and those it uses: what they list is needed, too. */
export function withUsed(job: Job): Procedure[] {
  return [job.procedure, ...job.uses.map(({ procedure }) => procedure)];
}

function peopleIn(action: Done['written']['action']): number {
  return Math.max(1, ...action.tails.map((tail) => (tail.tail === 'with' ? (tail.people ?? 1) : 1)));
}

function protectionOf(job: Job): ListEntry[] {
  const names = new Set(
    withUsed(job).flatMap((one) => headerOf(one, 'wear')?.names.map(({ text }) => text) ?? []),
  );
  return [...names].map((id) => ({ id, name: spoken(id) }));
}

function toolsOf(job: Job, done: readonly Done[]): ToolEntry[] {
  const { model, combinations } = job;
  const used = new Map<Thing, { listed: boolean; where: readonly boolean[] | undefined }>();
  for (const one of withUsed(job)) {
    for (const { name } of headerOf(one, 'tools')?.refs ?? []) {
      const thing = model.byName.get(name.text);
      if (thing) used.set(thing, { listed: true, where: undefined });
    }
  }
  for (const { written, where } of done) {
    for (const thing of toolsIn(job, written.action)) {
      const known = used.get(thing);
      used.set(thing, {
        listed: known?.listed ?? false,
        where: known?.where ? or(known.where, where) : where,
      });
    }
  }
  return [...used].map(([thing, { listed, where }]) => {
    const when = where && !isNone(where) ? combinations.when(where, job.within) : undefined;
    const clause = (name: 'range' | 'accuracy' | 'length') => {
      const found = thing.declaration.clauses.find((one) => one.clause === name);
      const measure =
        found && 'quantity' in found ? measureTyped(found.quantity, model, job.measures) : undefined;
      return measure ? { [name]: measure } : {};
    };
    return {
      id: thing.name,
      name: thing.title,
      listed,
      ...clause('range'),
      ...clause('accuracy'),
      ...clause('length'),
      ...partNumber(thing),
      ...(when ? { when } : {}),
    };
  });
}

/** The tools that an action names. */
export function toolsIn({ model }: Job, action: Done['written']['action']): Thing[] {
  const refs = [
    ...action.objects,
    ...action.tails.flatMap((tail) => [
      ...('refs' in tail ? tail.refs : []),
      ...(tail.tail === 'holding' ? tail.with : []),
    ]),
  ];
  return refs.flatMap(({ name }) => {
    const thing = model.byName.get(name.text);
    return thing?.type === 'tool' ? [thing] : [];
  });
}

export function partNumber(thing: Thing): { partNumber?: string } {
  for (const clause of thing.declaration.clauses)
    if (clause.clause === 'part number' && clause.text) return { partNumber: clause.text.value };
  return {};
}
