/**
 * What a request of an editor sees: the texts as they are now, each read once, and the models of their
 * machines, each made once. Made anew when a text changes; never changed by those who ask. No disk: texts
 * come from a SourceHost.
 */
import type { Machine, Procedure } from '../../grammar/syntax/tree.ts';
import { executeTo } from '../execution/execute.ts';
import type { Run } from '../execution/run.ts';
import { buildModel } from '../model/build.ts';
import type { Model } from '../model/model.ts';
import type { ProcedureNames } from '../model/name-scope.ts';
import { findMachine, type LoadedFile, Loader } from '../model/names.ts';
import { procedureNames } from '../model/procedure-names.ts';
import type { SourceHost } from '../project/project.ts';
import { LoaderWith } from './trial.ts';

/** A machine or procedure that an offset lies in, with the model of the machine. */
export interface Scene {
  file: LoadedFile;
  model: Model;
  machine?: Machine;
  procedure?: Procedure;
}

export class View {
  readonly host: SourceHost;
  readonly loader: Loader;
  readonly models = new Map<Machine | LoadedFile, Model>();
  private readonly names = new Map<Procedure, ProcedureNames>();
  private readonly seen = new Map<LoadedFile, LoadedFile[]>();

  constructor(host: SourceHost, known?: Pick<View, 'loader' | 'models'>, anew?: string) {
    this.host = host;
    const kept = new Map<string, LoadedFile>();
    if (known)
      for (const file of known.loader.files)
        if (!known.loader.visible(file).some(({ path }) => path === anew)) kept.set(file.path, file);
    this.loader = kept.size > 0 ? new LoaderWith(host, kept) : new Loader(host);
    for (const [key, model] of known?.models ?? []) {
      const file = 'path' in key ? key : [...kept.values()].find(({ machines }) => machines.includes(key));
      if (file && kept.get(file.path) === file) this.models.set(key, model);
    }
  }

  /** The same with another text for one file; what does not use that file is not read again. */
  trying(path: string, text: string): View {
    const { host } = this;
    const tried: SourceHost = {
      read: (other) => (other === path ? text : host.read(other)),
      resolve: (from, target) => host.resolve(from, target),
      ...(host.list ? { list: () => host.list!() } : {}),
      ...(host.houseOf ? { houseOf: (other: string) => host.houseOf!(other) } : {}),
    };
    return new View(tried, this, path);
  }

  file(path: string): LoadedFile | undefined {
    return this.loader.load(path);
  }

  /** Files that were read so far, and those that the host knows. */
  known(): string[] {
    return [...new Set([...this.loader.files.map(({ path }) => path), ...(this.host.list?.() ?? [])])];
  }

  /** What other files are called as seen from one: those of the same project that are known, by path. */
  siblings(path: string): string[] {
    const others = [...(this.host.list?.() ?? []), ...this.loader.files.map((file) => file.path)];
    return [
      ...new Set(others.filter((other) => other !== path).map((other) => relative(path, other))),
    ].sort();
  }

  /** The file and everything it uses, the files of the house that hold everywhere included. */
  visible(file: LoadedFile): LoadedFile[] {
    const known = this.seen.get(file);
    if (known) return known;
    const all = [...this.loader.visible(file)];
    for (const path of this.host.houseOf?.(file.path)?.ruleFiles ?? []) {
      const house = this.loader.load(path);
      for (const one of house ? this.loader.visible(house) : []) if (!all.includes(one)) all.push(one);
    }
    this.seen.set(file, all);
    return all;
  }

  /** The model of a machine of a file; without a machine, of what the file shares. */
  model(machine: Machine | undefined, file: LoadedFile): Model {
    const key = machine ?? file;
    let model = this.models.get(key);
    if (!model) {
      model = buildModel(machine, file, this.visible(file)).model;
      this.models.set(key, model);
    }
    return model;
  }

  /** The machine that a procedure is for. */
  machineOf(
    procedure: Procedure,
    file: LoadedFile,
  ): { machine: Machine; file: LoadedFile; model: Model } | undefined {
    const header = procedure.headers.find((one) => one.header === 'for');
    const name = header?.header === 'for' ? header.refs[0]?.name.text : undefined;
    const found = name === undefined ? undefined : findMachine(this.visible(file), name);
    return found && { ...found, model: this.model(found.machine, found.file) };
  }

  /** What an offset lies in; undefined outside everything, and where the machine is not known. */
  sceneAt(path: string, offset: number): Scene | undefined {
    const file = this.file(path);
    if (!file) return undefined;
    const inside = ({ start, end }: { start: number; end: number }) => start <= offset && offset <= end;
    const machine = file.machines.find(inside);
    if (machine) return { file, machine, model: this.model(machine, file) };
    const procedure = file.procedures.find(inside);
    if (procedure) {
      const found = this.machineOf(procedure, file);
      return found && { file, procedure, model: found.model };
    }
    return file.shared.some(inside) ? { file, model: this.model(undefined, file) } : undefined;
  }

  /** What every name in a procedure stands for. */
  namesOf(procedure: Procedure, file: LoadedFile, model: Model): ProcedureNames {
    let names = this.names.get(procedure);
    if (!names) {
      names = procedureNames(model, procedure, file, this.visible(file));
      this.names.set(procedure, names);
    }
    return names;
  }

  /**
   * The procedure carried out up to an offset, for as long as `use` looks at it. What it asked about is
   * nothing to the next who ask.
   */
  at<Answer>(
    procedure: Procedure,
    file: LoadedFile,
    model: Model,
    offset: number,
    use: (run: Run) => Answer,
  ): Answer {
    const mark = model.cases.mark;
    try {
      return use(executeTo(model, procedure, file.path, this.visible(file), offset));
    } finally {
      model.cases.rewind(mark);
    }
  }
}

/** How a file is named in the `use` of another, where both stand in one tree of folders. */
export function relative(from: string, to: string): string {
  const here = from.split('/').slice(0, -1);
  const there = to.split('/');
  let common = 0;
  while (common < here.length && common < there.length - 1 && here[common] === there[common]) common++;
  return [
    ...here.slice(common).map(() => '..'),
    ...there.slice(common).map((piece) => (to.includes('://') ? plain(piece) : piece)),
  ].join('/');
}

/** `%20` of a URI as the blank that it stands for. */
export function plain(piece: string): string {
  try {
    return decodeURIComponent(piece);
  } catch {
    return piece;
  }
}
