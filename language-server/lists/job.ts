/**
 * One procedure with everything that is needed to tell a reader about it: its machine's model, its steps written out,
 * the combinations of variants that it asks about. Made once; lists and pages read it.
 */
import type { Choice, Condition, Procedure } from '../../grammar/syntax/tree.ts';
import { NONE } from '../execution/cases.ts';
import { buildModel } from '../model/build.ts';
import { casesOf } from '../model/conditions.ts';
import type { Model } from '../model/model.ts';
import { findMachine, type LoadedFile, Loader } from '../model/names.ts';
import type { SourceHost } from '../project/project.ts';
import { and, Combinations, type Combos, minus } from './combos.ts';
import type { MeasureOptions } from './measures.ts';
import type { Say } from './types.ts';
import { type Written, writtenOut } from './written.ts';

export interface Job {
  model: Model;
  procedure: Procedure;
  file: LoadedFile;
  visible: readonly LoadedFile[];
  items: Written[];
  uses: { procedure: Procedure; file: LoadedFile }[];
  combinations: Combinations;
  /** The combinations for which the job is written. */
  within: Combos;
  measures: MeasureOptions;
  say: Say;
}

export interface JobOptions extends MeasureOptions {
  say: Say;
}

/** The jobs of a file in the order they are written. A procedure whose machine is not known has an empty model. */
export function jobsOf(host: SourceHost, path: string, options: JobOptions): Job[] {
  const loader = new Loader(host);
  const file = loader.load(path);
  return file ? file.procedures.map((procedure) => jobOf(loader, file, procedure, options)) : [];
}

export function jobOf(loader: Loader, file: LoadedFile, procedure: Procedure, options: JobOptions): Job {
  const visible = loader.visible(file);
  const header = procedure.headers.find((one) => one.header === 'for');
  const name = header?.header === 'for' ? header.refs[0]?.name.text : undefined;
  const found = name === undefined ? undefined : findMachine(visible, name);
  const from = found?.file ?? file;
  const { model } = buildModel(found?.machine, from, loader.visible(from));
  const { items, uses } = writtenOut(model, procedure, file, visible);
  const { say, ...measures } = options;
  const only = procedure.headers.find((one) => one.header === 'only');
  const onlyCondition = only?.header === 'only' ? only.condition : undefined;
  const asked = new Set<string>();
  const choices: Choice[] = [];
  if (onlyCondition) axesIn(onlyCondition, asked);
  gather(items, model, asked, choices);
  const combinations = new Combinations(model, [...asked], choices, say);
  const set = onlyCondition && casesOf(onlyCondition, file.path, model.cases, model.variants, []);
  const within = set === undefined || set === NONE ? combinations.every : combinations.of(set);
  return { model, procedure, file, visible, items, uses, combinations, within, measures, say };
}

/** One action, where it is done and whether it is done for certain. */
export interface Done {
  written: Extract<Written, { kind: 'action' }>;
  where: Combos;
  /** Only where something is found, or where a repeat does not come right. */
  ifFound: boolean;
}

/** Every action in the order of the steps. */
export function actionsOf(job: Job): Done[] {
  const all: Done[] = [];
  const walk = (items: readonly Written[], where: Combos, ifFound: boolean): void => {
    for (const one of items) {
      switch (one.kind) {
        case 'action': {
          all.push({ written: one, where: whereOf(job, one, where), ifFound });
          for (const outcome of one.outcomes) walk(outcome.items, where, true);
          break;
        }
        case 'branch': {
          const set = job.combinations.where(one.statement.condition);
          const found = set === undefined || one.statement.kind === 'if';
          walk(one.body, set ? and(where, set) : where, ifFound || found);
          if (one.otherwise)
            walk(
              one.otherwise,
              set ? and(where, minus(job.combinations.every, set)) : where,
              ifFound || found,
            );
          break;
        }
        case 'repeat':
          walk(one.items, where, ifFound);
          if (one.otherwise) walk(one.otherwise, where, true);
          break;
        default:
          if ('items' in one) walk(one.items, where, ifFound);
      }
    }
  };
  walk(job.items, job.within, false);
  return all;
}

/** An action on things that are there only in some variants is done only there. */
export function whereOf(job: Job, { action }: Extract<Written, { kind: 'action' }>, where: Combos): Combos {
  const things = action.objects.flatMap(({ name }) => job.model.byName.get(name.text) ?? []);
  if (things.length === 0 || things.length < action.objects.length) return where;
  const sets = things.map((thing) => job.combinations.of(thing.exists));
  return and(
    where,
    sets.reduce((a, b) => a.map((one, index) => one || b[index]!)),
  );
}

function axesIn(condition: Condition, into: Set<string>): void {
  if (condition.kind === 'and') for (const part of condition.parts) axesIn(part, into);
  else if (condition.kind === 'axis') into.add(condition.axis.text);
}

function gather(items: readonly Written[], model: Model, asked: Set<string>, choices: Choice[]): void {
  for (const one of items) {
    if (one.kind === 'choice') choices.push(one.choice);
    if (one.kind === 'branch') {
      if (one.statement.condition) axesIn(one.statement.condition, asked);
      gather(one.body, model, asked, choices);
    }
    if (one.kind === 'action') {
      for (const { name } of one.action.objects) {
        for (const clause of model.byName.get(name.text)?.declaration.clauses ?? [])
          if (clause.clause === 'only' && clause.condition) axesIn(clause.condition, asked);
      }
      for (const outcome of one.outcomes) gather(outcome.items, model, asked, choices);
    }
    if ('items' in one) gather(one.items, model, asked, choices);
    if ('otherwise' in one && one.otherwise) gather(one.otherwise, model, asked, choices);
  }
}
