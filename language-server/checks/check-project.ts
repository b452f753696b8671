/**
 * Everything that is wrong with some files: reads them and what they use, gathers the facts of all analyses,
 * lets each fact's check say it. Pure but for the host that gives the texts. A failure inside one analysis
 * becomes a finding about the tool, and the rest goes on.
 */
import type { Machine, MachineItem, Procedure } from '../../grammar/syntax/tree.ts';
import type { Cases } from '../execution/cases.ts';
import { execute, type MoreWatchers } from '../execution/execute.ts';
import { SharedWork } from '../execution/flow.ts';
import { amountFaults } from '../model/amounts-in-steps.ts';
import { buildModel } from '../model/build.ts';
import type { Fact } from '../model/facts.ts';
import { fasteningFaults } from '../model/fastening-faults.ts';
import { fasteningSteps } from '../model/fastening-steps.ts';
import { declaredFlowFaults, flowFaults } from '../model/flow-faults.ts';
import { actionAt, headOf } from '../model/flow-walk.ts';
import { fluidFaults } from '../model/fluid-faults.ts';
import { declaredHazardFaults, hazardFaults } from '../model/hazard-faults.ts';
import { machineFaults } from '../model/machine-faults.ts';
import type { Model } from '../model/model.ts';
import { findMachine, type LoadedFile, Loader, unknownName } from '../model/names.ts';
import { pictureFaults } from '../model/picture-faults.ts';
import { nameFaults } from '../model/procedure-names.ts';
import { quantityFaults, quantityFaultsIn, quantityFaultsOf } from '../model/quantity-faults.ts';
import { resourceFaults } from '../model/resource-faults.ts';
import { Surveys } from '../model/survey.ts';
import { testerFaults } from '../model/tester-faults.ts';
import { wordingFaults } from '../model/wording-faults.ts';
import type { House, SourceHost } from '../project/project.ts';
import type { Finding, Severity } from '../report/finding.ts';
import { ruleFaults } from '../rules/faults.ts';
import { idleRules, type RuleUse, ruleUses } from '../rules/idle.ts';
import { ownNameFaults, ownRules, type PlacedRule } from '../rules/own.ts';
import { ruleWatch } from '../rules/watch.ts';
import { checkNamed } from './all.ts';
import { speak } from './speak.ts';
import { toolFailure } from './text/tool-failure.ts';
import { type CheckResult, type FileChecked, together } from './together.ts';
import { readFor } from './uses.ts';
import { sortOut, type Waived } from './waivers.ts';

export type { House } from '../project/project.ts';
export type { CheckResult, FileChecked } from './together.ts';

/** Without a `house`, what the host says each file's house has agreed on. */
export function checkProject(host: SourceHost, paths: readonly string[], house?: House): CheckResult {
  return allTogether(host, paths, checkEach(host, paths, house), house);
}

/** Each file for itself; `done` is called after each. A file that cannot be had has no result. */
export function checkEach(
  host: SourceHost,
  paths: readonly string[],
  house?: House,
  done?: () => void,
): FileChecked[] {
  return eachChecker(host, house)(paths, done);
}

/**
 * The same for files that come in turns: what several of them use (a machine and its model) is read and made once. A file
 * that no other has used so far is let go when it has been checked, so that a large folder takes little room.
 */
export function eachChecker(
  host: SourceHost,
  house?: House,
): (paths: readonly string[], done?: () => void) => FileChecked[] {
  const checkers = new Map<House | undefined, { loader: Loader; checker: ProjectCheck }>();
  return (paths, done) => {
    const found: FileChecked[] = [];
    for (const [agreed, files] of byHouse(host, paths, house)) {
      let known = checkers.get(agreed);
      if (!known) {
        const loader = new Loader(host, agreed?.ruleFiles);
        known = { loader, checker: new ProjectCheck(loader, new Map(), agreed) };
        checkers.set(agreed, known);
      }
      const { loader, checker } = known;
      for (const path of files) {
        const file = loader.load(path);
        if (!file) continue;
        const { statements } = checker;
        checker.file(file);
        found.push({
          path,
          findings: checker.findings.splice(0),
          waived: checker.waived.splice(0),
          statements: checker.statements - statements,
          rules: checker.uses.splice(0),
          uses: readFor(host, loader.visible(file), agreed),
        });
        if (loader.letGo(file)) checker.letGo(file);
        done?.();
      }
    }
    return found;
  };
}

/** The result for all files, and what only all together show. `paths`: what was asked for. */
export function allTogether(
  host: SourceHost,
  paths: readonly string[],
  each: readonly FileChecked[],
  house?: House,
): CheckResult {
  const more: Finding[] = [];
  const byPath = new Map(each.map((one) => [one.path, one]));
  for (const [agreed, files] of byHouse(host, paths, house)) {
    const checker = new ProjectCheck(new Loader(host), new Map(), agreed);
    const rules = files.flatMap((path) => byPath.get(path)?.rules ?? []);
    checker.together(rules, new Set(files.filter((path) => byPath.has(path))));
    more.push(...checker.findings);
  }
  return { ...together(each, more), files: paths.length };
}

function byHouse(
  host: SourceHost,
  paths: readonly string[],
  house: House | undefined,
): Map<House | undefined, string[]> {
  const groups = new Map<House | undefined, string[]>();
  for (const path of paths) {
    const agreed = house ?? host.houseOf?.(path);
    const group = groups.get(agreed);
    if (group) group.push(path);
    else groups.set(agreed, [path]);
  }
  return groups;
}

/** What one part of a file has shown, and how much was gone through for it. */
export interface Checked {
  findings: Finding[];
  statements: number;
  followed: number;
}

/**
 * Keeps what was found for as long as what it rests on is the same. `of` is the node that it is about; `about` the
 * procedure, where it is about one.
 */
export interface Kept {
  unit(
    of: object | string,
    basis: { model?: Model; procedure?: Procedure; file: LoadedFile; more?: readonly unknown[] },
    work: () => Checked,
  ): Checked;
  model(machine: Machine | undefined, file: LoadedFile, visible: readonly LoadedFile[]): ModelMade;
  shared(model: Model, visible: readonly LoadedFile[]): SharedWork;
  /** What the statements of a file's procedures showed before. */
  surveys(path: string): Surveys;
  /** The procedure carried out as far as it is other than before; undefined where it is not kept. */
  execution(
    procedure: Procedure,
    on: {
      model: Model;
      file: LoadedFile;
      visible: readonly LoadedFile[];
      house: House;
      more: MoreWatchers;
    },
  ): { facts: readonly Fact[]; cases: Cases; executed: number; followed: number } | undefined;
}

export interface ModelMade {
  model: Model;
  facts: Fact[];
}

/** Models by the machine (or the file of shared declarations) they are made from. */
export type Models = Map<Machine | LoadedFile, ModelMade>;

export class ProjectCheck {
  findings: Finding[] = [];
  readonly waived: Waived[] = [];
  statements = 0;
  /** Statements gone through in every round and use, of all machines together. */
  followed = 0;
  private readonly models: Models;
  private readonly shared = new Map<Model, SharedWork>();
  private readonly surveys = new Map<string, Surveys>();
  private readonly loader: Pick<Loader, 'visible'>;
  private readonly house: House;
  /** How the rules fared with the machines of the files checked so far. */
  readonly uses: RuleUse[] = [];
  private readonly checked = new Set<string>();
  /** Models that the file at hand asked for. */
  private readonly asked = new Set<Model>();
  /** Models that procedures of the file at hand are for. */
  private readonly spoken = new Set<Model>();
  private readonly kept: Kept | undefined;

  /** `models` may hold some that were made before, from files that the loader still gives. */
  constructor(
    loader: Pick<Loader, 'visible'>,
    models: Models = new Map(),
    house: House = {},
    kept: Kept | undefined = undefined,
  ) {
    this.loader = loader;
    this.models = models;
    this.house = house;
    this.kept = kept;
  }

  file(file: LoadedFile): void {
    const before = this.findings.length;
    // What other files took of a machine's share of work is nothing to this one.
    if (!this.kept) for (const work of this.shared.values()) work.followed = 0;
    this.asked.clear();
    this.spoken.clear();
    this.whole(file);
    const sorted = sortOut(this.findings.splice(before), file.procedures, file.path);
    this.findings.push(...sorted.findings.filter(({ check }) => this.severity(check) !== 'off'));
    this.waived.push(...sorted.waived);
    this.say(sorted.facts);
    this.checked.add(file.path);
    for (const model of this.asked) this.uses.push(...ruleUses(model));
  }

  /** Nothing is asked any more of a file that was checked. */
  letGo(file: LoadedFile): void {
    for (const key of [file, ...file.machines]) {
      const made = this.models.get(key);
      if (!made) continue;
      this.models.delete(key);
      this.shared.delete(made.model);
      this.asked.delete(made.model);
      this.spoken.delete(made.model);
    }
  }

  /** What only all files together show: rules that apply to none of their machines. */
  finish(): void {
    this.together(this.uses, this.checked);
  }

  /** The same from results that were kept. */
  together(uses: readonly RuleUse[], checked: ReadonlySet<string>): void {
    this.say(idleRules(uses, checked).filter(({ check }) => this.severity(check) !== 'off'));
  }

  private severity(name: string): Severity | 'off' | undefined {
    return this.house.severities?.[name];
  }

  /** What reading a file has shown. */
  reading(file: LoadedFile): void {
    for (const problem of file.parsed.problems) {
      this.say([
        {
          check: problem.check,
          at: { file: file.path, start: problem.start, end: problem.end },
          words: {
            message: problem.message,
            ...(problem.example ? { example: problem.example } : {}),
            ...(problem.related ? { related: problem.related.message } : {}),
          },
          story: problem.related
            ? [
                {
                  at: { file: file.path, start: problem.related.start, end: problem.related.end },
                  what: 'declared',
                },
              ]
            : [],
          ...(problem.mend
            ? {
                mends: [
                  {
                    title: problem.mend.title,
                    at: { file: file.path, start: problem.mend.start, end: problem.mend.end },
                    text: problem.mend.text,
                  },
                ],
              }
            : {}),
        },
      ]);
    }
  }

  private whole(file: LoadedFile): void {
    this.reading(file);
    this.say(file.facts);
    const visible = this.loader.visible(file);
    this.quantities(file);
    this.machines(file, visible);
    for (const procedure of file.procedures)
      this.guard(file, procedure.start, () => this.procedure(procedure, file, visible));
    this.guard(file, 0, () => this.say(ownNameFaults(file, [...this.spoken])));
  }

  private quantities(file: LoadedFile): void {
    if (!this.kept) {
      this.guard(file, 0, () => this.say(quantityFaults(file)));
      return;
    }
    for (const item of file.parsed.tree.items) {
      this.unit(item, { file }, () =>
        this.guard(file, item.start, () =>
          this.say(
            item.kind === 'procedure'
              ? quantityFaultsOf(this.surveysOf(file).of(item), file)
              : quantityFaultsIn(item, file),
          ),
        ),
      );
    }
  }

  private machines(file: LoadedFile, visible: readonly LoadedFile[]): void {
    const { machines, shared } = file;
    if (machines.length === 0 && shared.length === 0) return;
    if (!this.kept) {
      this.declarations(file, visible);
      return;
    }
    const made: unknown[] = [];
    for (const machine of machines.length > 0 ? machines : [undefined])
      this.guard(file, machine?.start ?? 0, () => made.push(this.model(machine, file, visible)));
    // One machine that could not be made is told already; it must not keep the others from being checked anew.
    this.unit(`machines of ${file.path}`, { file, more: [...made, ...machines, ...shared] }, () =>
      this.declarations(file, visible),
    );
  }

  private declarations(file: LoadedFile, visible: readonly LoadedFile[]): void {
    // A machine that extends another in the same file has the other's faults too.
    const told = new Set<string>();
    const ofThisFile = ({ check, at }: Fact): boolean => {
      const key = `${check} ${at.start} ${at.end}`;
      return at.file === file.path && !told.has(key) && told.add(key) !== undefined;
    };
    const analyses = (model: Model, items: readonly MachineItem[]): (() => Fact[])[] => [
      () => machineFaults(model),
      () => fasteningFaults(model),
      () => declaredHazardFaults(model),
      () => ruleFaults(model),
      () => declaredFlowFaults(model, items, file),
    ];
    for (const machine of file.machines) {
      this.guard(file, machine.start, () => {
        const { model, facts } = this.model(machine, file, visible);
        this.say(
          facts.filter((fact) => fact.at.file === file.path),
          model,
        );
        for (const analysis of analyses(model, [...machine.items, ...file.shared]))
          this.guard(file, machine.start, () => this.say(analysis().filter(ofThisFile), model));
      });
    }
    if (file.machines.length === 0 && file.shared.length > 0) {
      this.guard(file, 0, () => {
        const { model, facts } = this.model(undefined, file, visible);
        // What the machines that use the file declare is not known here.
        const own = (fact: Fact) => ofThisFile(fact) && fact.check !== 'unknown-name';
        for (const analysis of [() => facts, ...analyses(model, file.shared)])
          this.guard(file, 0, () => this.say(analysis().filter(own), model));
      });
    }
  }

  private procedure(procedure: Procedure, file: LoadedFile, visible: readonly LoadedFile[]): void {
    const model = this.machineOf(procedure, file, visible);
    if (!model) return;
    this.spoken.add(model);
    const own = this.ownRules(file.path, model, visible);
    if (own.length > 0) this.uses.push(...ruleUses(model, own));
    this.unit(procedure, { model, procedure, file }, () => this.steps(procedure, model, file, visible));
  }

  /** The rules that hold in a file, beside those that the machine knows. */
  private ownRules(path: string, model: Model, visible: readonly LoadedFile[]): PlacedRule[] {
    const file = visible.find((one) => one.path === path);
    return file ? ownRules(file, this.loader.visible(file), model) : [];
  }

  private steps(procedure: Procedure, model: Model, file: LoadedFile, visible: readonly LoadedFile[]): void {
    // What one procedure asks about is nothing to the next.
    const mark = model.cases.mark;
    const surveys = this.surveysOf(file);
    const survey = surveys.of(procedure);
    let named: readonly Fact[] = [];
    const analyses: (() => readonly Fact[])[] = [
      () => {
        named = nameFaults(model, survey, file, visible);
        return named;
      },
      () => fasteningSteps(model, survey, file),
      () => amountFaults(model, survey, file),
      () => flowFaults(model, survey, file),
      () => hazardFaults(model, survey, file),
      () => wordingFaults(model, survey, file),
      () => fluidFaults(model, survey, file),
      () => testerFaults(model, survey, file),
      () => resourceFaults(model, survey, file, visible, surveys),
      () => pictureFaults(survey, file),
    ];
    for (const analysis of analyses) this.guard(file, procedure.start, () => this.say(analysis(), model));
    this.guard(file, procedure.start, () => {
      const { facts, cases } = this.executed(procedure, model, file, visible);
      const guessed = named.filter(({ check }) => GUESSED.has(check));
      this.say(
        facts.filter((fact) => fact.at.file === file.path && !followsFrom(guessed, procedure, fact)),
        { cases, built: model.built },
      );
    });
    model.cases.rewind(mark);
  }

  private surveysOf({ path }: LoadedFile): Surveys {
    const surveys = this.kept?.surveys(path) ?? this.surveys.get(path) ?? new Surveys();
    this.surveys.set(path, surveys);
    return surveys;
  }

  private executed(
    procedure: Procedure,
    model: Model,
    file: LoadedFile,
    visible: readonly LoadedFile[],
  ): { facts: readonly Fact[]; cases: Cases } {
    const more: MoreWatchers = (one, other, path) =>
      ruleWatch(one, other, path, this.ownRules(path, model, visible));
    const kept = this.kept?.execution(procedure, { model, file, visible, house: this.house, more });
    if (kept) {
      this.statements += kept.executed;
      this.followed += kept.followed;
      return kept;
    }
    const shared = this.sharedOf(model, visible);
    const before = shared.followed;
    const { run, facts } = execute(model, procedure, file.path, visible, this.house, shared, false, more);
    this.statements += run.executed;
    this.followed += shared.followed - before;
    return { facts, cases: model.cases };
  }

  /** Carries out one part, or takes over what it showed before. */
  private unit(of: object | string, basis: Parameters<Kept['unit']>[1], work: () => void): void {
    if (!this.kept) {
      work();
      return;
    }
    const checked = this.kept.unit(of, basis, () => {
      const { findings, statements, followed } = this;
      this.findings = [];
      this.statements = 0;
      this.followed = 0;
      work();
      const own = { findings: this.findings, statements: this.statements, followed: this.followed };
      Object.assign(this, { findings, statements, followed });
      return own;
    });
    for (const finding of checked.findings) this.findings.push(finding);
    this.statements += checked.statements;
    this.followed += checked.followed;
  }

  private sharedOf(model: Model, visible: readonly LoadedFile[]): SharedWork {
    const shared = this.shared.get(model) ?? this.kept?.shared(model, visible) ?? new SharedWork();
    this.shared.set(model, shared);
    return shared;
  }

  private machineOf(
    procedure: Procedure,
    file: LoadedFile,
    visible: readonly LoadedFile[],
  ): Model | undefined {
    const header = procedure.headers.find((one) => one.header === 'for');
    const ref = header?.header === 'for' ? header.refs[0] : undefined;
    const known = visible.flatMap((one) => one.machines.flatMap((machine) => machine.name?.text ?? []));
    if (!ref) {
      // What is printed elsewhere has no steps that could be checked.
      if (procedure.name && !procedure.headers.some((one) => one.header === 'elsewhere')) {
        this.say([
          {
            check: 'machine-missing',
            at: { file: file.path, start: procedure.name.start, end: procedure.name.end },
            words: { known: known.join(', ') },
          },
        ]);
      }
      return undefined;
    }
    const found = findMachine(visible, ref.name.text);
    if (!found) {
      this.say([unknownName(file.path, ref.name, 'machine', known)]);
      return undefined;
    }
    return this.model(found.machine, found.file, this.loader.visible(found.file)).model;
  }

  private model(machine: Machine | undefined, file: LoadedFile, visible: readonly LoadedFile[]): ModelMade {
    const key = machine ?? file;
    let built = this.models.get(key);
    if (!built) {
      built = this.kept?.model(machine, file, visible) ?? buildModel(machine, file, visible);
      this.models.set(key, built);
    }
    this.asked.add(built.model);
    return built;
  }

  /** `model`: whose cases the facts speak of. */
  private say(facts: readonly Fact[], model?: Pick<Model, 'cases' | 'built'>): void {
    for (const fact of facts) {
      const check = checkNamed(fact.check);
      if (!check) throw new Error(`No check is called ${fact.check}.`);
      const inner = fact.inner === undefined ? undefined : checkNamed(fact.inner);
      // A fault of a loop, a branch or a used procedure tells the fault itself in that check's own sentence.
      const told = inner ? { ...fact, words: { ...fact.words, inner: inner.says(fact).message } } : fact;
      const asked = this.severity(check.name);
      const severity = asked === undefined || asked === 'off' ? check.severity : asked;
      this.findings.push(speak(told, check, severity, model?.cases, model?.built ?? 1));
    }
  }

  /** A failure of the tool is reported as such and stops nothing else. */
  private guard(file: LoadedFile, start: number, work: () => void): void {
    try {
      work();
    } catch (error) {
      this.findings.push({
        file: file.path,
        start,
        end: start + file.written.slice(start, start + 1).length,
        check: 'tool-failure',
        severity: 'error',
        ...toolFailure.says({
          check: toolFailure.name,
          at: { file: file.path, start, end: start },
          words: { error: error instanceof Error ? error.message : String(error) },
        }),
        related: [],
      });
    }
  }
}

/**
 * A step with a name that is wrong was carried out on a guess: what it does wrong there has that one cause. A slip in
 * one of its outcomes is in another step.
 */
function followsFrom(slips: readonly Fact[], procedure: Procedure, { at }: Fact): boolean {
  if (slips.length === 0) return false;
  const action = actionAt(procedure.body, at.start);
  const end = Math.min(at.end, action ? headOf(action).end : at.end);
  return slips.some(({ at: slip }) => at.start <= slip.start && slip.end <= end);
}

const GUESSED: ReadonlySet<string> = new Set(['unknown-name', 'unknown-position', 'wrong-kind']);
