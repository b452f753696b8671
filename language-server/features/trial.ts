/**
 * A checker that is asked about one file again and again, each time with another text: what the file uses is
 * read once, and so are the models of its machines, so that a trial costs only reading and carrying out that
 * file. Counts its trials. No disk: texts come from a SourceHost.
 */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import type { Models } from '../checks/models-at-hand.ts';
import { ProjectCheck } from '../checks/project-check.ts';
import type { CasesMark } from '../execution/cases.ts';
import { buildModel } from '../model/build.ts';
import type { Model } from '../model/model.ts';
import { findMachine, type LoadedFile, Loader } from '../model/names.ts';
import type { House, SourceHost } from '../project/project.ts';
import { type Finding, inReadingOrder } from '../report/finding.ts';

export interface Tried {
  text: string;
  file: LoadedFile;
  /** Findings in that file, in reading order. */
  findings: Finding[];
}

export class Trial {
  readonly path: string;
  /** How many texts were checked. */
  tries = 0;
  /** Actions that were carried out: the measure of work. */
  statements = 0;
  private readonly host: SourceHost;
  private readonly house: House | undefined;
  private readonly kept = new Map<string, LoadedFile>();
  private readonly models: Models = new Map();
  private readonly marks = new Map<Model, CasesMark>();
  /** What was found in the texts that were tried. */
  private readonly found = new Map<string, Finding[]>();

  constructor(host: SourceHost, path: string) {
    this.host = host;
    this.path = path;
    this.house = host.houseOf?.(path);
    const loader = new Loader(host, this.house?.ruleFiles);
    const file = loader.load(path);
    if (!file) return;
    // What leads back to the file has to be read anew with it.
    for (const other of loader.visible(file))
      if (!loader.visible(other).includes(file)) this.kept.set(other.path, other);
  }

  /** What is wrong in the file if this were its text; a text that was tried before costs nothing. */
  findings(text: string): Finding[] {
    return this.found.get(text) ?? this.check(text).findings;
  }

  /** The same, with what was read. */
  check(text: string): Tried {
    this.tries++;
    for (const [key, { model }] of this.models) {
      const mark = this.marks.get(model);
      // Models of machines in the tried text are gone with it.
      if (mark) model.cases.rewind(mark);
      else this.models.delete(key);
    }
    const loader = this.loader(text);
    const file = loader.load(this.path)!;
    for (const procedure of file.procedures) this.prepare(loader, file, procedure);
    const checker = new ProjectCheck(loader, this.models, this.house);
    checker.file(file);
    this.statements += checker.statements;
    const findings = inReadingOrder(checker.findings.filter((finding) => finding.file === this.path));
    this.found.set(text, findings);
    return { text, file, findings };
  }

  /** The model of the machine that a procedure of a tried text is for. Valid until the next check. */
  model({ file }: Tried, procedure: Procedure): Model | undefined {
    const loader = this.loader(file.text, file);
    const found = machineOf(loader.visible(file), procedure);
    if (!found) return undefined;
    const known = this.models.get(found.machine);
    return (known ?? buildModel(found.machine, found.file, loader.visible(found.file))).model;
  }

  /** Makes the model of a machine that stays, before any work on it, so that every trial starts from there. */
  private prepare(loader: Loader, file: LoadedFile, procedure: Procedure): void {
    const found = machineOf(loader.visible(file), procedure);
    if (!found || found.file === file || this.models.has(found.machine)) return;
    if (this.kept.get(found.file.path) !== found.file) return;
    const built = buildModel(found.machine, found.file, loader.visible(found.file));
    this.models.set(found.machine, built);
    this.marks.set(built.model, built.model.cases.mark);
  }

  private loader(text: string, read?: LoadedFile): Loader {
    const host: SourceHost = {
      read: (path) => (path === this.path ? text : this.host.read(path)),
      resolve: (from, target) => this.host.resolve(from, target),
    };
    const kept = new Map(this.kept);
    if (read) kept.set(this.path, read);
    return new LoaderWith(host, kept, this.house?.ruleFiles);
  }
}

function machineOf(visible: readonly LoadedFile[], procedure: Procedure): ReturnType<typeof findMachine> {
  const header = procedure.headers.find((one) => one.header === 'for');
  const name = header?.header === 'for' ? header.refs[0]?.name.text : undefined;
  return name === undefined ? undefined : findMachine(visible, name);
}

/** Gives some files as they were read before, and reads the others. */
export class LoaderWith extends Loader {
  private readonly known: ReadonlyMap<string, LoadedFile>;

  constructor(host: SourceHost, known: ReadonlyMap<string, LoadedFile>, everywhere: readonly string[] = []) {
    super(host, everywhere);
    this.known = known;
  }

  override load(path: string): LoadedFile | undefined {
    return this.known.get(path) ?? super.load(path);
  }
}
