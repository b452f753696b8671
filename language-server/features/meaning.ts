/**
 * What a name in a text stands for, and everywhere else that it stands for the same: machines, procedures,
 * things and values of a machine (and of those that extend it), variants and their values, positions, tasks,
 * choices, measured values, loop variables.
 */
import type { Machine, MachineItem, Procedure, Statement } from '../../grammar/syntax/tree.ts';
import { findMachine, findProcedure, type LoadedFile } from '../model/names.ts';
import type { Place } from '../report/finding.ts';
import { type Occurrence, occurrences } from './occurrences.ts';
import type { View } from './view.ts';

export type MeaningKind =
  | 'machine'
  | 'procedure'
  | 'thing'
  | 'value'
  | 'table'
  | 'variant'
  | 'variant value'
  | 'rule'
  | 'position'
  | 'task'
  | 'choice'
  | 'choice value'
  | 'measured value'
  | 'loop variable';

export interface Meaning {
  kind: MeaningKind;
  name: string;
  /** Where it is declared; several where machines that extend each other declare it again. */
  declared: Place[];
}

/** A name of a file with what it means. */
export interface Named {
  file: LoadedFile;
  occurrence: Occurrence;
  meaning: Meaning;
}

/** The name at an offset and what it means; undefined where there is none or it means nothing known. */
export function meaningAt(view: View, path: string, offset: number): Named | undefined {
  const file = view.file(path);
  if (!file) return undefined;
  const here = occurrencesOf(file).filter(({ start, end }) => start <= offset && offset <= end);
  // Between two names that touch (`a#b`) the later one is meant.
  const occurrence = here[here.length - 1];
  const meaning = occurrence && new Meanings(view, file).of(occurrence);
  return meaning && { file, occurrence, meaning };
}

/** Everywhere in the files that a meaning is named, its declarations included, in reading order. */
export function placesOfMeaning(view: View, paths: readonly string[], meaning: Meaning): Place[] {
  const places: Place[] = [];
  for (const path of new Set([...meaning.declared.map(({ file }) => file), ...paths])) {
    const file = view.file(path);
    if (!file?.text.includes(meaning.name)) continue;
    const meanings = new Meanings(view, file);
    for (const one of occurrencesOf(file)) {
      if (one.text !== meaning.name) continue;
      if (!sameMeaning(meanings.of(one), meaning)) continue;
      places.push({ file: path, start: one.start, end: one.end });
    }
  }
  return places;
}

export function sameMeaning(one: Meaning | undefined, other: Meaning): boolean {
  return (
    one !== undefined &&
    one.name === other.name &&
    one.declared.some((a) => other.declared.some((b) => a.file === b.file && a.start === b.start))
  );
}

const known = new WeakMap<LoadedFile, Occurrence[]>();

export function occurrencesOf(file: LoadedFile): Occurrence[] {
  let list = known.get(file);
  if (!list) {
    list = occurrences(file.parsed.tree);
    known.set(file, list);
  }
  return list;
}

/** A declaration of a name in a machine, in those it extends, or shared by a file. */
interface Declared {
  item: MachineItem;
  file: LoadedFile;
}

const MACHINE_KINDS: Readonly<Partial<Record<MachineItem['kind'], MeaningKind>>> = {
  declaration: 'thing',
  value: 'value',
  table: 'table',
  variant: 'variant',
  rule: 'rule',
};

/** Meanings of the names of one file. */
class Meanings {
  private readonly view: View;
  private readonly file: LoadedFile;

  constructor(view: View, file: LoadedFile) {
    this.view = view;
    this.file = file;
  }

  of(one: Occurrence): Meaning | undefined {
    const { view, file } = this;
    const visible = view.visible(file);
    switch (one.role) {
      case 'machine': {
        const found = one.declares
          ? { machine: file.machines.find(({ name }) => name?.start === one.start), file }
          : findMachine(visible, one.text);
        return found?.machine && this.single('machine', found.machine, found.file);
      }
      case 'procedure': {
        const found = one.declares
          ? { procedure: file.procedures.find(({ name }) => name?.start === one.start), file }
          : findProcedure(visible, one.text);
        return found?.procedure && this.single('procedure', found.procedure, found.file);
      }
      case 'state':
      case 'hazard':
      case 'harm':
      case 'doing':
      case 'clothing':
      case 'check':
      case 'outcome':
      case 'designation':
      case 'function':
      case 'kind':
        return undefined;
      default:
        return this.inScope(one);
    }
  }

  private single(kind: MeaningKind, item: Machine | Procedure, file: LoadedFile): Meaning | undefined {
    return item.name && { kind, name: item.name.text, declared: [at(file, item.name)] };
  }

  private inScope(one: Occurrence): Meaning | undefined {
    const { view, file } = this;
    const inside = ({ start, end }: { start: number; end: number }) => start <= one.start && one.end <= end;
    const procedure = file.procedures.find(inside);
    if (!procedure) {
      const machine = file.machines.find(inside);
      return this.member(one, machine, file);
    }
    const local = this.local(one, procedure);
    if (local) return local;
    if (one.role === 'task') return undefined;
    if (one.role === 'work') {
      const found = findProcedure(view.visible(file), one.text);
      return found && this.single('procedure', found.procedure, found.file);
    }
    const found = view.machineOf(procedure, file);
    return found && this.member(one, found.machine, found.file);
  }

  /** Something that the procedure itself declares. */
  private local(one: Occurrence, procedure: Procedure): Meaning | undefined {
    const { view, file } = this;
    const found = view.machineOf(procedure, file);
    const { locals, uses } = found ? view.namesOf(procedure, file, found.model) : { locals: [], uses: [] };
    const text = one.of !== undefined && one.role === 'axis value' ? one.of : one.text;
    const of = locals.filter(({ name }) => name === text);
    if (one.role === 'axis value') {
      const choice = of.find(({ what }) => what === 'choice');
      if (!choice) return undefined;
      const names = valuesOf(procedure.body?.statements ?? [], text).filter((name) => name.text === one.text);
      return names.length > 0
        ? { kind: 'choice value', name: one.text, declared: names.map((name) => at(file, name)) }
        : undefined;
    }
    if (of.length === 0) return undefined;
    // Loops that follow one another may each have a variable of the same name.
    const loop = of
      .filter(
        ({ what, at: place }) => what === 'loop variable' && this.loopHolds(procedure, place.start, one),
      )
      .at(-1);
    if (loop) return { kind: 'loop variable', name: text, declared: [loop.at] };
    if (one.role === 'position') return undefined;
    const others = of.filter(({ what }) => what !== 'loop variable');
    if (others.length === 0) return undefined;
    const use = uses.find((known) => known.at.start === one.start && known.at.end === one.end);
    if (use?.thing) return undefined;
    const isTask = one.role === 'task' || one.role === 'work';
    const fitting = others.filter(({ what }) => (what === 'task') === isTask);
    if (
      fitting.length === 0 ||
      (one.role === 'topic' && !fitting.some(({ at: p }) => p.start === one.start))
    ) {
      // A topic that was written down (`record`) is declared by its first mention.
      return undefined;
    }
    const kind = fitting[0]!.what === 'value' ? 'value' : fitting[0]!.what;
    return { kind, name: text, declared: fitting.map(({ at: place }) => place) };
  }

  private loopHolds(procedure: Procedure, declared: number, one: Occurrence): boolean {
    return loopsIn(procedure.body?.statements ?? []).some(
      ({ variable, start, end }) => variable?.start === declared && start <= one.start && one.end <= end,
    );
  }

  private member(one: Occurrence, machine: Machine | undefined, file: LoadedFile): Meaning | undefined {
    if (one.role === 'axis value' || one.role === 'position') {
      const owner = one.of === undefined ? [] : this.family(one.of, machine, file);
      const names = owner.flatMap(({ item, file: from }) =>
        valueNames(item)
          .filter(({ text }) => text === one.text)
          .map((name) => at(from, name)),
      );
      const kind = one.role === 'position' ? 'position' : 'variant value';
      return names.length > 0 ? { kind, name: one.text, declared: names } : undefined;
    }
    const family = this.family(one.text, machine, file);
    const first = family[0];
    const kind = first && MACHINE_KINDS[first.item.kind];
    if (!kind) return undefined;
    return {
      kind,
      name: one.text,
      declared: family.flatMap(({ item, file: from }) =>
        'name' in item && item.name ? [at(from, item.name)] : [],
      ),
    };
  }

  /** The declaration that counts first, then those of the same name that it replaces. */
  private family(name: string, machine: Machine | undefined, file: LoadedFile): Declared[] {
    const visible = this.view.visible(file);
    const found: Declared[] = [];
    const take = (items: readonly MachineItem[], from: LoadedFile) => {
      for (const item of items)
        if ('name' in item && item.name?.text === name && MACHINE_KINDS[item.kind])
          found.push({ item, file: from });
    };
    const chain = new Set<Machine>();
    let current = machine ? { machine, file } : undefined;
    while (current && !chain.has(current.machine)) {
      chain.add(current.machine);
      take(current.machine.items, current.file);
      const { extends: base } = current.machine;
      current = base ? findMachine(visible, base.text) : undefined;
    }
    // A machine's own declaration wins over a shared one, which is then another thing.
    for (const other of visible) if (found.length === 0) take(other.shared, other);
    return found;
  }
}

function at(file: LoadedFile, { start, end }: { start: number; end: number }): Place {
  return { file: file.path, start, end };
}

function valueNames(item: MachineItem) {
  if (item.kind === 'variant') return item.values;
  if (item.kind !== 'declaration') return [];
  return item.clauses.flatMap((clause) => (clause.clause === 'positions' ? clause.names : []));
}

function everyStatement(statements: readonly Statement[]): Statement[] {
  return statements.flatMap((statement) => {
    const inner = [
      ...('body' in statement ? (statement.body?.statements ?? []) : []),
      ...('otherwise' in statement ? (statement.otherwise?.statements ?? []) : []),
      ...(statement.kind === 'action'
        ? statement.outcomes.flatMap(({ body }) => body?.statements ?? [])
        : []),
    ];
    return [statement, ...everyStatement(inner)];
  });
}

function loopsIn(statements: readonly Statement[]) {
  return everyStatement(statements).flatMap((one) => (one.kind === 'for each' ? [one] : []));
}

function valuesOf(statements: readonly Statement[], choice: string) {
  return everyStatement(statements).flatMap((one) =>
    one.kind === 'choice' && one.name?.text === choice ? one.values : [],
  );
}
