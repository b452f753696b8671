/**
 * Files and the names they share: what `use` brings in, which machines, procedures and shared declarations
 * are visible in a file, and the nearest name for a slip. No disk: texts come from a SourceHost.
 */

import { parse } from '../../grammar/parser/parse.ts';
import type { Machine, MachineItem, Name, Procedure, SourceFile, Span } from '../../grammar/syntax/tree.ts';
import type { Source, SourceHost } from '../project/project.ts';
import type { Fact } from './facts.ts';

export interface LoadedFile extends Source {
  uses: LoadedFile[];
  machines: Machine[];
  procedures: Procedure[];
  shared: MachineItem[];
  /** What is wrong with its `use` lines. */
  facts: Fact[];
}

/** Reads files and what they use, each once. */
export class Loader {
  private readonly loaded = new Map<string, LoadedFile>();
  private readonly visibleFrom = new Map<LoadedFile, LoadedFile[]>();
  /** Files that another one uses, or that all are taken to use. */
  private readonly used = new Set<LoadedFile>();
  private readonly host: SourceHost;
  private readonly everywhere: readonly string[];

  /** `everywhere`: files that every file is taken to use, as the host reads them. */
  constructor(host: SourceHost, everywhere: readonly string[] = []) {
    this.host = host;
    this.everywhere = everywhere;
  }

  get files(): readonly LoadedFile[] {
    return [...this.loaded.values()];
  }

  load(path: string): LoadedFile | undefined {
    const known = this.loaded.get(path);
    if (known) return known;
    const text = this.host.read(path);
    if (text === undefined) return undefined;
    const parsed = parse(text);
    const file = loadedFile({ path, text, written: text, parsed });
    this.loaded.set(path, file);
    linkUses(file, { resolve: (from, target) => this.host.resolve(from, target) }, (target) =>
      this.loadUsed(target),
    );
    return file;
  }

  private loadUsed(path: string): LoadedFile | undefined {
    const file = this.load(path);
    if (file) this.used.add(file);
    return file;
  }

  /** Forgets a file that no other one uses; false where one does. It is read again where it is asked for again. */
  letGo(file: LoadedFile): boolean {
    if (this.used.has(file)) return false;
    this.loaded.delete(file.path);
    this.visibleFrom.delete(file);
    return true;
  }

  /** The file and everything it uses, directly or through others, nearest first. */
  visible(file: LoadedFile): LoadedFile[] {
    const known = this.visibleFrom.get(file);
    if (known) return known;
    const result = visibleFrom(
      file,
      this.everywhere.flatMap((path) => this.loadUsed(path) ?? []),
    );
    this.visibleFrom.set(file, result);
    return result;
  }
}

/** The file and everything it uses, then the files that hold everywhere with what they use. */
export function visibleFrom(file: LoadedFile, everywhere: readonly LoadedFile[]): LoadedFile[] {
  const result = [file];
  withUsed(result);
  for (const house of everywhere) if (!result.includes(house)) result.push(house);
  withUsed(result);
  return result;
}

/** Adds what the files use, directly or through others. */
function withUsed(files: LoadedFile[]): void {
  for (let index = 0; index < files.length; index++) {
    for (const used of files[index]!.uses) if (!files.includes(used)) files.push(used);
  }
}

/** A file as it was read, with what stands at its top; nothing that it uses yet (see `linkUses`). */
export function loadedFile(source: Source): LoadedFile {
  // The source itself, since its text may be put together only where somebody asks for it.
  const file: LoadedFile = Object.assign(source, { uses: [], facts: [], ...sorted(source.parsed.tree) });
  file.facts.push(...repeated(file, file.machines), ...repeated(file, file.procedures));
  return file;
}

/** Fills in what a file uses, with the facts about its `use` lines. */
export function linkUses(
  file: LoadedFile,
  { resolve }: Pick<SourceHost, 'resolve'>,
  load: (path: string) => LoadedFile | undefined,
): void {
  const { path } = file;
  for (const item of file.parsed.tree.items) {
    if (item.kind !== 'use' || !item.path) continue;
    const at = { file: path, start: item.path.start, end: item.path.end };
    const target = resolve(path, item.path.value);
    if (target === path) {
      file.facts.push({ check: 'use-cycle', at, words: { name: item.path.value, of: 'file' } });
      continue;
    }
    const used = load(target);
    if (used) file.uses.push(used);
    else file.facts.push({ check: 'file-missing', at, words: { path: item.path.value } });
  }
}

function sorted(tree: SourceFile): Pick<LoadedFile, 'machines' | 'procedures' | 'shared'> {
  const machines: Machine[] = [];
  const procedures: Procedure[] = [];
  const shared: MachineItem[] = [];
  for (const item of tree.items) {
    if (item.kind === 'machine') machines.push(item);
    else if (item.kind === 'procedure') procedures.push(item);
    else if (item.kind !== 'use') shared.push(item);
  }
  return { machines, procedures, shared };
}

/** Two machines, or two procedures, of one name in one file. */
function repeated(file: LoadedFile, items: readonly (Machine | Procedure)[]): Fact[] {
  const first = new Map<string, Name>();
  const facts: Fact[] = [];
  for (const { name, kind } of items) {
    if (!name) continue;
    const earlier = first.get(name.text);
    if (earlier) facts.push(duplicateName(file.path, name, kind, { file: file.path, name: earlier }));
    else first.set(name.text, name);
  }
  return facts;
}

/** A variant, a choice or a list of positions that has a value twice. */
export function repeatedValues(file: string, values: readonly Name[], what = 'value'): Fact[] {
  return values.flatMap((value, index) => {
    const first = values.findIndex((other) => other.text === value.text);
    return first === index ? [] : [duplicateName(file, value, what, { file, name: values[first]! })];
  });
}

/** The fact for a name that is declared a second time. */
export function duplicateName(
  file: string,
  name: Name,
  what: string,
  earlier: { file: string; name: Span },
): Fact {
  const { start, end } = earlier.name;
  return {
    check: 'duplicate-name',
    at: { file, start: name.start, end: name.end },
    words: { name: name.text, what },
    story: [{ at: { file: earlier.file, start, end }, what: 'declared' }],
  };
}

/** A name as the files around it declare it. */
export function findMachine(
  files: readonly LoadedFile[],
  name: string,
): { machine: Machine; file: LoadedFile } | undefined {
  for (const file of files) {
    const machine = file.machines.find((candidate) => candidate.name?.text === name);
    if (machine) return { machine, file };
  }
  return undefined;
}

export function findProcedure(
  files: readonly LoadedFile[],
  name: string,
): { procedure: Procedure; file: LoadedFile } | undefined {
  for (const file of files) {
    const procedure = file.procedures.find((candidate) => candidate.name?.text === name);
    if (procedure) return { procedure, file };
  }
  return undefined;
}

/**
 * The fact for a name that nothing declares, with the nearest one that is. `what` is what was looked for
 * (`machine`, `fastener`, or `thing` where any thing would do).
 * `others` may be meant as well, but are not told: names of things of another kind.
 */
export function unknownName(
  file: string,
  name: Name,
  what: string,
  known: Iterable<string>,
  others: readonly string[] = [],
): Fact {
  return unknown(file, name, { what }, known, others);
}

/** The fact for a value that a variant, a choice or a measured value does not have. */
export function unknownValue(file: string, value: Name, axis: Name, values: readonly string[]): Fact {
  return unknown(file, value, { what: 'value', axis: axis.text }, values);
}

/** So many names are told where none is near. */
const MOST_TOLD = 6;

function unknown(
  file: string,
  name: Name,
  words: { what: string; axis?: string },
  known: Iterable<string>,
  others: readonly string[] = [],
): Fact {
  const at = { file, start: name.start, end: name.end };
  const names = [...new Set(known)];
  const near = nearest(name.text, [...names, ...others]);
  const told = names.length > 0 && names.length <= MOST_TOLD;
  return {
    check: 'unknown-name',
    at,
    words: {
      name: name.text,
      ...words,
      ...(near ? { near } : {}),
      ...(told ? { known: names.join(', ') } : {}),
    },
    ...(near ? { mends: [{ title: `Write ${near}`, at, text: near }] } : {}),
  };
}

/**
 * The nearest of the known names: fewest single-letter slips (insertion, deletion, exchange, swap of
 * neighbours), at most a third of the length. Damerau, "A technique for computer detection and correction of
 * spelling errors" (1964), optimal string alignment form. Names that differ in a number (`screws-b3`,
 * `screws-b5`) are two things and no slip.
 */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  // Two letters are too few to tell a slip from another name.
  let least = name.length < 3 ? 1 : Math.max(1, Math.floor(name.length / 3)) + 1;
  const numbers = numbersIn(name);
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= least || numbersIn(candidate) !== numbers) continue;
    const slips = distance(name, candidate, least);
    if (slips < least) {
      least = slips;
      best = candidate;
    }
  }
  return best ?? sharedWords(name, known);
}

/** `head-gasket` for `gasket-head`: the same words in another order, or all of its words and one more. */
function sharedWords(name: string, known: Iterable<string>): string | undefined {
  const words = new Set(name.split('-'));
  if (words.size < 2) return undefined;
  for (const candidate of known) {
    const others = candidate.split('-');
    if (others.length <= words.size + 1 && [...words].every((word) => others.includes(word)))
      return candidate;
  }
  return undefined;
}

/** The one name that differs only in its numbered word: `standoffs-t9` for `standoffs-t3`. Not certain enough to propose. */
export function sameButForNumber(name: string, known: Iterable<string>): string | undefined {
  const bare = (one: string) =>
    one
      .split('-')
      .filter((word) => !/\d/.test(word))
      .join('-');
  const wanted = bare(name);
  if (wanted === '' || wanted === name) return undefined;
  const same = [...known].filter((candidate) => bare(candidate) === wanted);
  return same.length === 1 ? same[0] : undefined;
}

function numbersIn(name: string): string {
  return name.replace(/\D+/g, ' ').trim();
}

function distance(a: string, b: string, limit: number): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
      if (cost < least) least = cost;
    }
    if (least >= limit) return limit;
    before = last;
    last = row;
  }
  return last[b.length]!;
}
