/**
 * Everything that is wrong with a file: gathers the facts of all analyses, lets each fact's check say it, and sorts out
 * what the author waived. One `ProjectCheck` is for files of one house, one after the other. A failure inside one
 * analysis becomes a finding about the tool, and the rest goes on.
 */
import type { FileItem, Machine, Procedure } from '../../grammar/syntax/tree.ts';
import type { Cases } from '../execution/cases.ts';
import { execute, type MoreWatchers } from '../execution/execute.ts';
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile, Loader } from '../model/names.ts';
import { nameFaults } from '../model/procedure-names.ts';
import { quantityFaultsIn, quantityFaultsOf } from '../model/quantity-faults.ts';
import { Surveys } from '../model/survey.ts';
import type { House } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { idleRules, type RuleUse, ruleUses } from '../rules/idle.ts';
import { ownNameFaults, ownRules, type PlacedRule } from '../rules/own.ts';
import { ruleWatch } from '../rules/watch.ts';
import { analysesOfDeclarations } from './declared.ts';
import { Found } from './found.ts';
import type { Kept, ModelMade } from './kept.ts';
import { machineFor } from './machine-for.ts';
import { type Models, ModelsAtHand } from './models-at-hand.ts';
import { readingFacts } from './reading-facts.ts';
import { analysesOfSteps, followsFrom } from './steps.ts';
import { sortOut, type Waived } from './waivers.ts';

export class ProjectCheck {
  readonly waived: Waived[] = [];
  /** How the rules fared with the machines of the files checked so far. */
  readonly uses: RuleUse[] = [];
  private readonly found: Found;
  private readonly models: ModelsAtHand;
  private readonly surveys = new Map<string, Surveys>();
  private readonly checked = new Set<string>();
  private readonly loader: Pick<Loader, 'visible'>;
  private readonly house: House;
  private readonly kept: Kept | undefined;

  /** `models` may hold some that were made before, from files that the loader still gives. */
  constructor(
    loader: Pick<Loader, 'visible'>,
    models: Models = new Map(),
    house: House = {},
    kept: Kept | undefined = undefined,
  ) {
    this.loader = loader;
    this.models = new ModelsAtHand(models, kept);
    this.found = new Found(house);
    this.house = house;
    this.kept = kept;
  }

  get findings(): Finding[] {
    return this.found.findings;
  }

  /** Actions executed. */
  get statements(): number {
    return this.found.statements;
  }

  /** Statements gone through in every round and use, of all machines together. */
  get followed(): number {
    return this.found.followed;
  }

  file(file: LoadedFile): void {
    this.models.nextFile();
    const { findings, statements, followed } = this.found.apart(() => this.whole(file));
    const sorted = sortOut(findings, file.procedures, file.path);
    this.found.add({
      findings: sorted.findings.filter(({ check }) => !this.found.isOff(check)),
      statements,
      followed,
    });
    this.waived.push(...sorted.waived);
    this.found.say(sorted.facts);
    this.checked.add(file.path);
    for (const model of this.models.asked) this.uses.push(...ruleUses(model));
  }

  /** Nothing is asked any more of a file that was checked. */
  letGo(file: LoadedFile): void {
    this.models.letGo(file);
  }

  /** What only all files together show: rules that apply to none of their machines. */
  finish(): void {
    this.together(this.uses, this.checked);
  }

  /** The same from results that were kept. */
  together(uses: readonly RuleUse[], checked: ReadonlySet<string>): void {
    this.found.say(idleRules(uses, checked).filter(({ check }) => !this.found.isOff(check)));
  }

  /** What reading a file has shown. */
  reading(file: LoadedFile): void {
    this.found.say(readingFacts(file));
  }

  private whole(file: LoadedFile): void {
    const { found } = this;
    this.reading(file);
    found.say(file.facts);
    const visible = this.loader.visible(file);
    this.quantities(file);
    this.machines(file, visible);
    for (const procedure of file.procedures)
      found.guard(file, procedure.start, () => this.procedure(procedure, file, visible));
    found.guard(file, 0, () => found.say(ownNameFaults(file, [...this.models.spoken])));
  }

  private quantities(file: LoadedFile): void {
    const facts = (item: FileItem) =>
      item.kind === 'procedure'
        ? quantityFaultsOf(this.surveysOf(file).of(item), file)
        : quantityFaultsIn(item, file);
    for (const item of file.parsed.tree.items)
      this.unit(item, { file }, () => this.found.guard(file, item.start, () => this.found.say(facts(item))));
  }

  private machines(file: LoadedFile, visible: readonly LoadedFile[]): void {
    const { machines, shared } = file;
    if (machines.length === 0 && shared.length === 0) return;
    // A machine that cannot be made is told here; the others are checked all the same.
    const made = new Map<Machine | undefined, ModelMade>();
    for (const machine of machines.length > 0 ? machines : [undefined])
      this.found.guard(file, machine?.start ?? 0, () =>
        made.set(machine, this.models.of(machine, file, visible)),
      );
    const more = [...made.values(), ...machines, ...shared];
    this.unit(`machines of ${file.path}`, { file, more }, () => {
      for (const { start, model, facts } of analysesOfDeclarations(file, made))
        this.found.guard(file, start, () => this.found.say(facts(), model));
    });
  }

  private procedure(procedure: Procedure, file: LoadedFile, visible: readonly LoadedFile[]): void {
    const { found, facts } = machineFor(procedure, file.path, visible);
    this.found.say(facts);
    if (!found) return;
    const { model } = this.models.of(found.machine, found.file, this.loader.visible(found.file));
    this.models.spoken.add(model);
    this.uses.push(...ruleUses(model, this.ownRules(file.path, model, visible)));
    this.unit(procedure, { model, procedure, file }, () => this.steps(procedure, model, file, visible));
  }

  /** The rules that hold in a file, beside those that the machine knows. */
  private ownRules(path: string, model: Model, visible: readonly LoadedFile[]): PlacedRule[] {
    return visible
      .filter((one) => one.path === path)
      .flatMap((file) => ownRules(file, this.loader.visible(file), model));
  }

  private steps(procedure: Procedure, model: Model, file: LoadedFile, visible: readonly LoadedFile[]): void {
    const guard = (work: () => void) => this.found.guard(file, procedure.start, work);
    // What one procedure asks about is nothing to the next.
    const mark = model.cases.mark;
    const surveys = this.surveysOf(file);
    let named: readonly Fact[] = [];
    guard(() => {
      named = nameFaults(model, surveys.of(procedure), file, visible);
      this.found.say(named, model);
    });
    for (const analysis of analysesOfSteps(procedure, model, file, visible, surveys))
      guard(() => this.found.say(analysis(), model));
    guard(() => {
      const { facts, cases } = this.executed(procedure, model, file, visible);
      const own = facts.filter((fact) => fact.at.file === file.path && !followsFrom(named, procedure, fact));
      this.found.say(own, { cases, built: model.built });
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
    const { found, house } = this;
    const more: MoreWatchers = (one, other, path) =>
      ruleWatch(one, other, path, this.ownRules(path, model, visible));
    const kept = this.kept?.execution(procedure, { model, file, visible, house, more });
    if (kept) {
      found.statements += kept.executed;
      found.followed += kept.followed;
      return kept;
    }
    const shared = this.models.sharedOf(model, visible);
    const before = shared.followed;
    const { run, facts } = execute(model, procedure, file.path, visible, house, shared, false, more);
    found.statements += run.executed;
    found.followed += shared.followed - before;
    return { facts, cases: model.cases };
  }

  /** Carries out one part, or takes over what it showed before. */
  private unit(of: object | string, basis: Parameters<Kept['unit']>[1], work: () => void): void {
    if (this.kept) this.found.add(this.kept.unit(of, basis, () => this.found.apart(work)));
    else work();
  }
}
