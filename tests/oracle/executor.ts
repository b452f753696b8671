/**
 * Runs a procedure one case at a time: every combination of variants, findings, outcomes and choices, each from
 * the start, with plain objects for the state. Slow and simple on purpose; it is what the product's way of
 * carrying all cases at once is compared with.
 */
import {
  backOff,
  bringConnectionBack,
  cap,
  connect,
  disconnect,
  loosen,
  putConnectionAside,
  secure,
  takeOut,
  tighten,
  tryPutIn,
} from './act-fasteners.ts';
import { boltUp, discard, moveAside, moveToNew, putBack, remove } from './act-parts.ts';
import * as systems from './act-systems.ts';
import { ending } from './ending.ts';
import type { Item, Model, System, Variants } from './model.ts';
import { holdsFor, itemsOf, modelOf } from './model.ts';
import type { Work } from './needs.ts';
import { isPlaced, reach, stateOf, together } from './needs.ts';
import type { Reading } from './reader.ts';
import { readAll, wholeMachine } from './reader.ts';
import { reversed } from './reverse.ts';
import type { Action, Block, Claim, Condition, Machine, Procedure, Ref, Statement } from './shape.ts';
import type { State } from './state.ts';
import { conditionHolds, makeSo, START, stateAtStart } from './state.ts';

export interface Violation {
  /** The name of the finding, as in the chapter on states. */
  kind: string;
  line: number;
  /** The first case that shows it: what was chosen for each question that came up. */
  cases: string;
}

const MOST_CASES = 20_000;

/** Every finding that the chapter on states names (and `contract-broken`, for `ends with`). */
export const KINDS: ReadonlySet<string> = new Set([
  ...['covered', 'not-in-place', 'done-twice', 'refitted-before-removed', 'not-made-safe', 'not-proved-safe'],
  ...['opened-full', 'still-held', 'still-connected', 'not-supported', 'not-marked', 'thrown-away-with'],
  ...['discarded-reused', 'single-use-reused', 'trial-not-undone', 'seat-missing', 'seal-missing'],
  ...['face-not-cleaned', 'tightened-unseated', 'retightened-yield', 'stage-skipped', 'stage-repeated'],
  ...['stage-out-of-order', 'not-secured', 'wrong-verb', 'isolated-out-of-order', 'restored-out-of-order'],
  ...['turned-while-locked', 'left-off', 'left-aside', 'left-loose', 'left-disconnected', 'left-open'],
  ...['left-locked', 'left-drained', 'left-isolated', 'not-bled', 'left-supported', 'fixture-left-on'],
  ...['bypass-left', 'contract-broken'],
]);

/** All violations of the procedures of one file. With `firstOnly`: at most one, as soon as it is met. */
export function execute(
  files: Readonly<Record<string, string>>,
  path: string,
  firstOnly = false,
): Violation[] {
  const reading = readAll(files, path);
  const found = new Map<string, Violation>();
  for (const procedure of reading.file.procedures) {
    if (!procedure.body) continue;
    for (const name of procedure.machines) {
      runAllCases(reading, procedure, name, found, firstOnly);
      if (firstOnly && found.size > 0) break;
    }
  }
  return [...found.values()].toSorted((a, b) => a.line - b.line || a.kind.localeCompare(b.kind));
}

const MACHINES = new Map<string, { machine: Machine; models: Map<string, Model> }>();

function machineOf(reading: Reading, name: string): { machine: Machine; models: Map<string, Model> } {
  const key = `${name}\n${reading.key}`;
  let known = MACHINES.get(key);
  if (!known) {
    if (MACHINES.size > 50) MACHINES.clear();
    known = { machine: wholeMachine(reading, name), models: new Map() };
    MACHINES.set(key, known);
  }
  return known;
}

class FoundOne extends Error {}

function runAllCases(
  reading: Reading,
  procedure: Procedure,
  name: string,
  found: Map<string, Violation>,
  firstOnly: boolean,
): void {
  const { machine, models } = machineOf(reading, name);
  const questions = new Questions();
  for (let count = 1; ; count++) {
    if (count > MOST_CASES) throw new Error(`${procedure.name}: too many cases to run one by one`);
    const variants: Record<string, string> = {};
    for (const variant of machine.variants) {
      variants[variant.name] = variant.values[questions.ask(variant.name, variant.values)]!;
    }
    const built =
      !machine.nevers.some((never) => holdsFor(never, variants)) &&
      (procedure.only === undefined || holdsFor(procedure.only, variants));
    if (built) {
      const key = JSON.stringify(variants);
      const model = models.get(key) ?? modelOf(machine, variants);
      models.set(key, model);
      const report = (kind: string, line: number) => {
        if (procedure.allows.some((one) => one.check === kind && line >= one.from && line <= one.to)) return;
        const at = `${kind} ${line}`;
        if (!found.has(at)) found.set(at, { kind, line, cases: questions.text() });
        if (firstOnly) throw new FoundOne();
      };
      try {
        new Case(reading, procedure, model, variants, questions, report).run();
      } catch (error) {
        if (!(error instanceof FoundOne)) throw error;
        return;
      }
    }
    if (!questions.nextCase()) return;
  }
}

/** The questions met on the way through one case, and the next case that has not been run. */
class Questions {
  private path: { key: string; options: readonly string[]; chosen: number }[] = [];
  private depth = 0;
  private answers = new Map<string, number>();

  ask(key: string, options: readonly string[]): number {
    const before = this.answers.get(key);
    if (before !== undefined) return before;
    if (this.depth === this.path.length) this.path.push({ key, options, chosen: 0 });
    const { chosen } = this.path[this.depth++]!;
    this.answers.set(key, chosen);
    return chosen;
  }

  nextCase(): boolean {
    this.path.length = this.depth;
    while (this.path.length > 0) {
      const last = this.path.at(-1)!;
      last.chosen++;
      if (last.chosen < last.options.length) break;
      this.path.pop();
    }
    this.depth = 0;
    this.answers.clear();
    return this.path.length > 0;
  }

  text(): string {
    return this.path
      .slice(0, this.depth)
      .map((one) => `${one.key}: ${one.options[one.chosen]}`)
      .join('; ');
  }
}

class Stopped extends Error {}

class Case {
  private readonly work: Work;
  private readonly reading: Reading;
  private readonly procedure: Procedure;
  private readonly model: Model;
  private readonly questions: Questions;
  private readonly variants: Record<string, string>;
  private readonly state: State;
  /** Loop variables. */
  private readonly bound = new Map<string, string>();
  private continues = false;
  private depth = 0;

  constructor(
    reading: Reading,
    procedure: Procedure,
    model: Model,
    variants: Variants,
    questions: Questions,
    report: (kind: string, line: number) => void,
  ) {
    this.reading = reading;
    this.procedure = procedure;
    this.model = model;
    this.questions = questions;
    this.variants = { ...variants };
    this.state = stateAtStart(model, firstPositions(model, procedure));
    const work: Work = {
      model,
      state: this.state,
      line: 0,
      report: (kind, line) => report(kind, line ?? work.line),
    };
    this.work = work;
  }

  run(): void {
    for (const claim of this.startClaims(this.procedure)) makeSo(this.model, this.state, claim, START);
    try {
      this.block(this.procedure.body!);
    } catch (error) {
      if (error instanceof Stopped) return;
      throw error;
    }
    if (!this.continues) ending(this.work, this.procedure.ends);
  }

  private startClaims(procedure: Procedure): Claim[] {
    if (procedure.startsWhere === undefined) return procedure.starts;
    const before = this.reading.procedures.get(procedure.startsWhere);
    if (!before) throw new Error(`no procedure ${procedure.startsWhere}`);
    return [...before.ends, ...procedure.starts];
  }

  private block(block: Block): void {
    for (const statement of block.statements) this.statement(statement);
  }

  private statement(statement: Statement): void {
    switch (statement.kind) {
      case 'action':
        this.action(statement);
        return;
      case 'task':
      case 'step':
      case 'hold':
        this.block(statement.body);
        return;
      case 'when':
      case 'if':
        if (this.holds(statement.condition)) this.block(statement.body);
        else if (statement.otherwise) this.block(statement.otherwise);
        return;
      case 'choice':
        this.variants[statement.name] =
          statement.values[this.questions.ask(statement.name, statement.values)]!;
        return;
      case 'repeat':
        this.block(statement.body);
        if (statement.otherwise && this.yes(`repeat in line ${statement.line} ends`) === false) {
          this.block(statement.otherwise);
        }
        return;
      case 'for each': {
        const values = statement.of
          ? this.items(statement.of).map((item) => item.position)
          : statement.values;
        for (const value of values) {
          this.bound.set(statement.variable, value);
          this.block(statement.body);
        }
        this.bound.delete(statement.variable);
        return;
      }
      case 'reverse': {
        const task = findTask(this.procedure.body!, statement.task);
        if (!task) throw new Error(`no task ${statement.task}`);
        this.block(reversed(task, statement.except, statement.line));
        return;
      }
      case 'do':
        this.doNamed(statement.name, statement.line);
        return;
      case 'stop':
        throw new Stopped();
      case 'continues':
        this.continues = true;
        return;
    }
  }

  private doNamed(name: string, line: number): void {
    if (++this.depth > 10) throw new Error(`${name} does itself`);
    const task = findTask(this.procedure.body!, name);
    const other = this.reading.procedures.get(name);
    if (task) this.block(task);
    else if (other?.body) this.block(other.body);
    else if (other) for (const claim of other.ends) makeSo(this.model, this.state, claim, line);
    else throw new Error(`no task or procedure ${name}`);
    this.depth--;
  }

  private holds(condition: Condition): boolean {
    switch (condition.kind) {
      case 'and':
        return condition.parts.every((part) => this.holds(part));
      case 'axis':
        return holdsFor(condition, this.variants);
      case 'state':
        return conditionHolds(this.model, this.state, condition);
      case 'seen':
        return this.yes(condition.text);
    }
  }

  private yes(question: string): boolean {
    const rounds = [...this.bound].map(([name, value]) => ` (${name} ${value})`).join('');
    return this.questions.ask(question + rounds, ['yes', 'no']) === 0;
  }

  // -------------------------------------------------------------- actions

  private items(ref: Ref): Item[] {
    return itemsOf(this.model, this.withBound(ref));
  }

  private withBound(ref: Ref): Ref {
    if (this.bound.size === 0) return ref;
    const name = this.bound.get(ref.name) ?? ref.name;
    return { ...ref, name, positions: ref.positions.map((position) => this.bound.get(position) ?? position) };
  }

  private action(action: Action): void {
    this.work.line = action.line;
    const refs = action.objects.map((ref) => this.withBound(ref));
    // `a, b and c`: a, then b and c together.
    const single = action.together ? refs.slice(0, -2) : refs;
    const groups = single.map((ref) => [ref]);
    if (action.together) groups.push(refs.slice(-2));
    if (action.verb === 'run') this.run_(action, refs);
    else if (action.between.length > 0 && action.verb === 'measure') this.measured(action.between);
    else for (const group of groups) this.perform(action, group);
    if (action.outcomes.length === 0) return;
    const names = action.outcomes.map((_, index) => `outcome ${index + 1}`);
    const rounds = [...this.bound.values()].join(' ');
    const chosen = this.questions.ask(`line ${action.line} ${rounds}`.trim(), names);
    this.block(action.outcomes[chosen]!);
  }

  private run_(action: Action, refs: readonly Ref[]): void {
    if (refs.length === 0) {
      systems.run(this.work, this.model.systems);
      return;
    }
    const run = new Set<System>();
    for (const ref of refs) {
      const system = this.model.systemByName.get(ref.name);
      if (system) run.add(system);
      else for (const item of this.items(ref)) for (const one of [...item.runs, ...item.within]) run.add(one);
    }
    void action;
    systems.run(this.work, [...run]);
  }

  private measured(between: readonly Ref[]): void {
    const items = between.flatMap((ref) => this.items(ref)).filter(isPlaced);
    if (!together(this.work, items, false)) this.work.report('not-in-place');
  }

  private perform(action: Action, refs: readonly Ref[]): void {
    const named = refs.flatMap((ref) => this.model.systemByName.get(ref.name) ?? []);
    for (const system of named) this.onSystem(action, system);
    const items = refs
      .filter((ref) => this.model.declared.get(ref.name)?.kind !== 'system')
      .filter((ref) => isThing(this.model, ref))
      .flatMap((ref) => this.items(ref));
    if (items.length > 0) this.onItems(action, items);
  }

  private tools(action: Action): Item[] {
    return action.with.flatMap((ref) =>
      this.model.declared.get(ref.name)?.kind === 'tool' ? this.items(ref) : [],
    );
  }

  private onItems(action: Action, items: readonly Item[]): void {
    const w = this.work;
    const parts = items.filter(isPlaced);
    const fasteners = items.filter((item) => item.kind === 'fastener');
    const connections = items.filter((item) => item.kind === 'connection');
    const tools = items.filter((item) => item.kind === 'tool');
    const each = (list: readonly Item[], act: (item: Item) => void) => {
      for (const item of list) act(item);
    };
    const controls = items.filter((item) => item.kind === 'control' || item.kind === 'isolator');
    switch (action.verb) {
      case 'remove':
        each(fasteners, (item) => takeOut(w, item, action.discard));
        each(connections, (item) => disconnect(w, item, action.discard));
        if (parts.length > 0) remove(w, parts, { discard: action.discard });
        each(tools, (item) => systems.removeTool(w, item));
        return;
      case 'unbolt':
        remove(w, parts, { unbolt: true, discard: action.discard });
        return;
      case 'move aside':
        if (parts.length > 0) moveAside(w, parts);
        each(connections, (item) => putConnectionAside(w, item));
        return;
      case 'move back':
        if (parts.length > 0) putBack(w, parts, 'back');
        each(connections, (item) => bringConnectionBack(w, item));
        return;
      case 'move':
        if (action.toNew)
          for (const to of this.items(action.toNew)) each(parts, (item) => moveToNew(w, item, to));
        return;
      case 'refit':
      case 'fit':
        this.fit(action, items);
        return;
      case 'trial fit':
        putBack(w, parts, 'trial');
        return;
      case 'bolt up':
        boltUp(w, parts);
        return;
      case 'loosen':
        each(fasteners, (item) => loosen(w, item));
        return;
      case 'back off':
        each(fasteners, (item) => backOff(w, item));
        return;
      case 'tighten': {
        const how = { until: action.until, ...pick(action) };
        each(fasteners, (item) => tighten(w, item, how));
        return;
      }
      case 'secure':
        each(fasteners, (item) => secure(w, item));
        return;
      case 'connect':
        each(connections, (item) => connect(w, item));
        return;
      case 'disconnect':
        each(connections, (item) => disconnect(w, item));
        return;
      case 'cap':
        each(connections, (item) => cap(w, item));
        return;
      case 'open':
      case 'switch on':
        each(connections, (item) => disconnect(w, item));
        each(controls, (item) => systems.setPosition(w, item, true));
        return;
      case 'close':
      case 'switch off':
        each(connections, (item) => connect(w, item));
        each(controls, (item) => systems.setPosition(w, item, false));
        return;
      case 'lock out':
        each(controls, (item) => systems.lockOut(w, item));
        return;
      case 'unlock':
        each(controls, (item) => systems.unlock(w, item));
        each(tools, (item) => systems.removeTool(w, item));
        each(
          parts.filter((item) => !controls.includes(item)),
          (item) => systems.unlockPart(w, item),
        );
        return;
      case 'let cool':
        each(items, (item) => systems.letCool(w, [...item.opens, ...item.within]));
        return;
      case 'lock':
        each(parts, (item) => systems.lock(w, item, this.tools(action)));
        return;
      case 'support':
      case 'raise':
        each(parts, (item) => systems.support(w, item, this.tools(action), action.verb === 'raise'));
        return;
      case 'lower':
        each(parts, (item) => systems.lower(w, item));
        return;
      case 'bypass':
        each(items, (item) => systems.bypass(w, item, this.tools(action)));
        return;
      case 'turn':
        each(parts, (item) => systems.turn(w, item));
        return;
      case 'mark':
      case 'clean':
      case 'coat':
      case 'lubricate':
        each(items, (item) => this.treat(action.verb, item));
        return;
      case 'align':
      case 'adjust':
        each(items, (item) => {
          this.mustBeThere(item);
          reach(w, item);
        });
        return;
      case 'check':
        if (action.at || fasteners.length > 0) each(fasteners, (item) => this.mustBeThere(item));
        each(parts, (item) => this.mustNotBeGone(item));
        return;
      case 'inspect':
      case 'measure':
      case 'record':
      case 'choose':
      case 'send':
        each(items, (item) => this.mustNotBeGone(item));
        return;
      case 'discard':
        each(items, (item) => discard(w, item));
        return;
      default:
        throw new Error(`line ${action.line}: ${action.verb} is not done to ${items[0]!.kind}`);
    }
  }

  private fit(action: Action, items: readonly Item[]): void {
    const w = this.work;
    const fresh = action.fresh !== undefined;
    const kits = items.filter((item) => item.kind === 'kit');
    const all = [...items.filter((item) => item.kind !== 'kit'), ...kits.flatMap((kit) => kit.contains)];
    const parts = all.filter(isPlaced);
    if (action.together) putBack(w, parts, fresh ? 'new' : 'fit');
    for (const item of all) {
      if (item.kind === 'fastener') tryPutIn(w, item, { fresh, byHand: action.byHand });
      else if (item.kind === 'connection') connect(w, item, fresh);
      else if (item.kind === 'tool') systems.fitTool(w, item, item.locks);
      else if (!action.together) putBack(w, [item], fresh ? 'new' : 'fit');
    }
  }

  private treat(verb: string, item: Item): void {
    const one = stateOf(this.work, item);
    this.mustNotBeGone(item);
    reach(this.work, item);
    if (verb === 'clean') one.clean = true;
    if (verb === 'mark') one.marked = true;
  }

  private mustBeThere(item: Item): void {
    const one = stateOf(this.work, item);
    const off =
      item.kind === 'fastener' ? one.fastening === 'out' : one.place === 'off' || one.place === 'discarded';
    if (off) this.work.report('not-in-place');
  }

  private mustNotBeGone(item: Item): void {
    if (stateOf(this.work, item).place === 'discarded') this.work.report('not-in-place');
  }

  private onSystem(action: Action, system: System): void {
    const w = this.work;
    switch (action.verb) {
      case 'isolate':
        systems.isolate(w, system);
        return;
      case 'restore':
        systems.restore(w, system);
        return;
      case 'relieve':
        systems.relieve(w, system);
        return;
      case 'prove':
        systems.prove(w, system);
        return;
      case 'let cool':
        systems.letCool(w, [system]);
        return;
      case 'drain':
      case 'recover':
        systems.drain(w, system);
        return;
      case 'fill':
        systems.fill(w, system);
        return;
      case 'top up':
        systems.topUp(w, system);
        return;
      case 'bleed':
        systems.bleed(w, system);
        return;
      case 'evacuate':
        systems.evacuate(w, system);
        return;
      case 'pressurise':
      case 'inflate':
        systems.pressurise(w, system);
        return;
      case 'inspect':
      case 'measure':
      case 'record':
      case 'check':
      case 'adjust':
        return;
      default:
        throw new Error(`line ${action.line}: ${action.verb} is not done to a system`);
    }
  }
}

function pick(action: Action): { stage?: number; pass?: number } {
  const how: { stage?: number; pass?: number } = {};
  if (action.stage !== undefined) how.stage = action.stage;
  if (action.pass !== undefined) how.pass = action.pass;
  return how;
}

const THINGS = ['part', 'seal', 'fastener', 'connection', 'control', 'isolator', 'face', 'tool', 'kit'];

/** Values, fluids and names of readings are no things. */
function isThing(model: Model, ref: Ref): boolean {
  const declaration = model.declared.get(ref.name);
  if (!declaration) throw new Error(`nothing is called ${ref.name}`);
  return THINGS.includes(declaration.kind);
}

function findTask(block: Block, name: string): Block | undefined {
  for (const statement of block.statements) {
    if (statement.kind === 'task' && statement.name === name) return statement.body;
    if ('body' in statement) {
      const inner = findTask(statement.body, name);
      if (inner) return inner;
    }
  }
  return undefined;
}

/** For each control: what the first action on it in the text makes of it (true: open or on). */
function firstPositions(model: Model, procedure: Procedure): Map<string, boolean> {
  const first = new Map<string, boolean>();
  const note = (name: string, flowing: boolean) => {
    if (!first.has(name)) first.set(name, flowing);
  };
  const visit = (block: Block) => {
    for (const statement of block.statements) {
      if (statement.kind === 'action') {
        const flowing = MAKES[statement.verb];
        if (flowing !== undefined) {
          for (const ref of statement.objects) {
            note(ref.name, flowing);
            for (const isolator of model.systemByName.get(ref.name)?.isolators ?? [])
              note(isolator.name, flowing);
          }
        }
        for (const outcome of statement.outcomes) visit(outcome);
      } else if ('body' in statement) {
        visit(statement.body);
        if ('otherwise' in statement && statement.otherwise) visit(statement.otherwise);
      }
    }
  };
  visit(procedure.body!);
  // What isolates a live system is on at the start.
  for (const system of model.systems)
    for (const isolator of system.isolators) first.set(isolator.name, false);
  return first;
}

const MAKES: Record<string, boolean> = {
  open: true,
  close: false,
  'switch on': true,
  'switch off': false,
  isolate: false,
  restore: true,
};
