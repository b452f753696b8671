/**
 * Runs a procedure case by case with plain objects for the state: each combination of variants from the start,
 * and wherever something is found, measured or chosen, once for every answer, each with a state of its own. Cases
 * whose states have become the same again (but for the lines that made them so) go on as one; that changes no
 * verdict. Slow and simple on purpose: it is what the product's way of carrying all cases at once is compared with.
 */
import { ending } from './ending.ts';
import type { Model } from './model.ts';
import { holdsFor, modelOf } from './model.ts';
import type { Work } from './needs.ts';
import { perform, things } from './perform.ts';
import type { Reading } from './reader.ts';
import { readAll, wholeMachine } from './reader.ts';
import { reversed } from './reverse.ts';
import type { Action, Block, Condition, Machine, Procedure, Statement } from './shape.ts';
import { conditionHolds, copyOf, makeSo, rememberAway, START, sameState, stateAtStart } from './state.ts';

export interface Violation {
  /** The name of the finding, as in the chapter on states. */
  kind: string;
  line: number;
  /** One case that shows it: the variants and what was answered on the way. */
  cases: string;
}

/** More cases than this side by side are not run. */
const MOST_CASES = 2000;

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
  try {
    for (const procedure of reading.file.procedures) {
      if (!procedure.body) continue;
      for (const name of procedure.machines) runProcedure(reading, procedure, name, found, firstOnly);
    }
  } catch (error) {
    if (!(error instanceof FoundOne)) throw error;
  }
  return [...found.values()].toSorted((a, b) => a.line - b.line || a.kind.localeCompare(b.kind));
}

class FoundOne extends Error {}

const MACHINES = new Map<string, { machine: Machine; models: Map<string, Model> }>();

/** Machines and their models are kept from run to run: mutants change procedures only. */
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

type Variants = Record<string, string>;

function allVariants(machine: Machine, procedure: Procedure): Variants[] {
  let all: Variants[] = [{}];
  for (const { name, values } of machine.variants) {
    all = all.flatMap((one) => values.map((value) => ({ ...one, [name]: value })));
  }
  return all.filter(
    (one) =>
      !machine.nevers.some((never) => holdsFor(never, one)) &&
      (procedure.only === undefined || holdsFor(procedure.only, one)),
  );
}

function runProcedure(
  reading: Reading,
  procedure: Procedure,
  name: string,
  found: Map<string, Violation>,
  firstOnly: boolean,
): void {
  const { machine, models } = machineOf(reading, name);
  for (const variants of allVariants(machine, procedure)) {
    const key = JSON.stringify(variants);
    const model = models.get(key) ?? modelOf(machine, variants);
    models.set(key, model);
    new Execution(reading, procedure, model, variants, (kind, line, cases) => {
      if (procedure.allows.some((one) => one.check === kind && line >= one.from && line <= one.to)) return;
      if (!found.has(`${kind} ${line}`)) found.set(`${kind} ${line}`, { kind, line, cases });
      if (firstOnly) throw new FoundOne();
    }).run();
  }
}

/** One case on its way through the procedure. */
interface Case {
  work: Work;
  /** Variants and choices. */
  axes: Variants;
  /** What was answered to questions that come up again. */
  answers: Map<string, boolean>;
  trail: string[];
  continues: boolean;
}

type Report = (kind: string, line: number, cases: string) => void;

class Execution {
  private readonly reading: Reading;
  private readonly procedure: Procedure;
  private readonly model: Model;
  private readonly variants: Variants;
  private readonly report: Report;
  private readonly askedOften: ReadonlySet<string>;
  private depth = 0;

  constructor(reading: Reading, procedure: Procedure, model: Model, variants: Variants, report: Report) {
    this.reading = reading;
    this.procedure = procedure;
    this.model = model;
    this.variants = variants;
    this.report = report;
    this.askedOften = askedOften(procedure.body!);
  }

  run(): void {
    const state = stateAtStart(this.model, firstPositions(this.model, this.procedure.body!));
    const first = this.caseOf(
      { model: this.model, state, line: 0, report: () => {}, bound: new Map() },
      { ...this.variants },
      Object.entries(this.variants).map(([name, value]) => `${name} ${value}`),
    );
    for (const { claim, whole, line } of this.startClaims()) {
      makeSo(this.model, state, claim, START);
      if (whole) rememberAway(this.model, state, claim, line);
    }
    for (const one of this.block(this.procedure.body!, [first])) {
      if (!one.continues) ending(one.work, this.procedure.ends);
    }
  }

  private caseOf(work: Work, axes: Variants, trail: string[]): Case {
    const one: Case = { work, axes, answers: new Map(), trail, continues: false };
    work.report = (kind, line) => this.report(kind, line ?? work.line, one.trail.join('; '));
    return one;
  }

  private fork(from: Case, label: string): Case {
    const work = { ...from.work, state: copyOf(from.work.state), bound: new Map(from.work.bound) };
    const one = this.caseOf(work, { ...from.axes }, [...from.trail, label]);
    one.answers = new Map(from.answers);
    one.continues = from.continues;
    return one;
  }

  private startClaims() {
    const { starts, startsWhere } = this.procedure;
    const own = starts.map((claim) => ({ claim, whole: claim.scope !== 'things', line: claim.line }));
    if (startsWhere === undefined) return own;
    const before = this.reading.procedures.get(startsWhere.name);
    if (!before) throw new Error(`no procedure ${startsWhere.name}`);
    return [...before.ends.map((claim) => ({ claim, whole: true, line: startsWhere.line })), ...own];
  }

  private block(block: Block, cases: Case[]): Case[] {
    let at = cases;
    for (const statement of block.statements) {
      if (at.length === 0) return at;
      at = this.statement(statement, at);
    }
    return at;
  }

  private statement(statement: Statement, cases: Case[]): Case[] {
    switch (statement.kind) {
      case 'action':
        for (const one of cases) perform(one.work, statement);
        return statement.outcomes.length > 0 ? this.outcomes(statement, cases) : cases;
      case 'task':
      case 'step':
      case 'hold':
        return this.block(statement.body, cases);
      case 'when':
      case 'if':
        return merged(cases.flatMap((one) => this.decided(statement, one)));
      case 'choice':
        return cases.flatMap((one) =>
          statement.values.map((value) => {
            const forked = this.fork(one, `${statement.name} ${value}`);
            forked.axes[statement.name] = value;
            return forked;
          }),
        );
      case 'repeat': {
        const after = this.block(statement.body, cases);
        const { otherwise, line } = statement;
        if (!otherwise) return after;
        const givenUp = after.map((one) => this.fork(one, `line ${line}: given up`));
        return merged([...after, ...this.block(otherwise, givenUp)]);
      }
      case 'for each':
        return this.forEach(statement, cases);
      case 'reverse': {
        const task = findTask(this.procedure.body!, statement.task);
        if (!task) throw new Error(`no task ${statement.task}`);
        return this.block(reversed(task, statement.except, statement.line), cases);
      }
      case 'do':
        return this.doNamed(statement.name, statement.line, cases);
      case 'stop':
        return [];
      case 'continues':
        for (const one of cases) one.continues = true;
        return cases;
    }
  }

  private outcomes(action: Action, cases: Case[]): Case[] {
    let after = cases;
    const eventful = action.outcomes.filter((outcome) => !onlyLooks(outcome));
    // What is only looked at in an outcome changes nothing: all such outcomes go on as one case.
    for (const outcome of action.outcomes) if (onlyLooks(outcome)) after = this.block(outcome, after);
    const forked = eventful.flatMap((outcome) => {
      const label = `line ${action.line}: outcome ${action.outcomes.indexOf(outcome) + 1}`;
      return this.block(
        outcome,
        after.map((one) => this.fork(one, label)),
      );
    });
    return merged(eventful.length === action.outcomes.length ? forked : [...after, ...forked]);
  }

  private decided(statement: Statement & { kind: 'when' | 'if' }, one: Case): Case[] {
    const nothing: Block = { statements: [] };
    const bodies = [statement.body, statement.otherwise ?? nothing] as const;
    const open = questionsOf(statement.condition)
      .map((text) => this.inRound(text, one))
      .filter((text) => !one.answers.has(text));
    if (open.length === 0) {
      return this.block(this.holds(statement.condition, one, new Map()) ? bodies[0] : bodies[1], [one]);
    }
    if (bodies.every(onlyLooks)) return this.block(bodies[1], this.block(bodies[0], [one]));
    let answers: Map<string, boolean>[] = [new Map()];
    for (const text of open) {
      answers = answers.flatMap((before) => [
        new Map(before).set(text, true),
        new Map(before).set(text, false),
      ]);
    }
    return answers.flatMap((given) => {
      const label = [...given].map(([text, answer]) => `${text}: ${answer ? 'yes' : 'no'}`).join('; ');
      const forked = this.fork(one, label);
      for (const [text, answer] of given) {
        if (this.askedOften.has(text) || this.askedOften.has('')) forked.answers.set(text, answer);
      }
      return this.block(this.holds(statement.condition, forked, given) ? bodies[0] : bodies[1], [forked]);
    });
  }

  private holds(condition: Condition, one: Case, given: ReadonlyMap<string, boolean>): boolean {
    switch (condition.kind) {
      case 'and':
        return condition.parts.every((part) => this.holds(part, one, given));
      case 'axis':
        return holdsFor(condition, one.axes);
      case 'state':
        return conditionHolds(this.model, one.work.state, condition);
      case 'seen': {
        const text = this.inRound(condition.text, one);
        return given.get(text) ?? one.answers.get(text)!;
      }
    }
  }

  /** In a loop over things the same words are about another thing each time. */
  private inRound(text: string, one: Case): string {
    return text + [...one.work.bound].map(([name, value]) => ` (${name} ${value})`).join('');
  }

  private forEach(statement: Statement & { kind: 'for each' }, cases: Case[]): Case[] {
    const { of, variable, body } = statement;
    const values = of ? things(cases[0]!.work, of).map((item) => item.position) : statement.values;
    let at = cases;
    for (const value of values) {
      for (const one of at) one.work.bound.set(variable, value);
      at = this.block(body, at);
    }
    for (const one of at) one.work.bound.delete(variable);
    return at;
  }

  private doNamed(name: string, line: number, cases: Case[]): Case[] {
    if (++this.depth > 10) throw new Error(`${name} does itself`);
    const other = this.reading.procedures.get(name);
    const body = findTask(this.procedure.body!, name) ?? other?.body;
    if (!body && !other) throw new Error(`no task or procedure ${name}`);
    const after = body ? this.block(body, cases) : cases;
    if (!body) {
      for (const claim of other!.ends)
        for (const one of after) makeSo(this.model, one.work.state, claim, line);
    }
    this.depth--;
    return after;
  }
}

/** Cases that differ in nothing that can matter any more go on as one. */
function merged(cases: Case[]): Case[] {
  const kept: Case[] = [];
  for (const one of cases) {
    const same = (other: Case) =>
      one.continues === other.continues &&
      JSON.stringify([one.axes, [...one.answers]]) === JSON.stringify([other.axes, [...other.answers]]) &&
      sameState(one.work.state, other.work.state);
    if (!kept.some(same)) kept.push(one);
  }
  if (kept.length > MOST_CASES) throw new Error('too many cases to run one by one');
  return kept;
}

const LOOKING = [
  'inspect',
  'measure',
  'record',
  'choose',
  'check',
  'send',
  'wait',
  'sign',
  'align',
  'adjust',
];

function onlyLooks(block: Block): boolean {
  return block.statements.every((statement) => {
    if (statement.kind === 'step' || statement.kind === 'hold') return onlyLooks(statement.body);
    return (
      statement.kind === 'action' && LOOKING.includes(statement.verb) && statement.outcomes.every(onlyLooks)
    );
  });
}

function questionsOf(condition: Condition): string[] {
  if (condition.kind === 'seen') return [condition.text];
  return condition.kind === 'and' ? condition.parts.flatMap(questionsOf) : [];
}

/** Every block of a statement. */
function blocksOf(statement: Statement): Block[] {
  if (statement.kind === 'action') return statement.outcomes;
  const blocks = 'body' in statement ? [statement.body] : [];
  return 'otherwise' in statement && statement.otherwise ? [...blocks, statement.otherwise] : blocks;
}

function everyStatement(block: Block, visit: (statement: Statement) => void): void {
  for (const statement of block.statements) {
    visit(statement);
    for (const inner of blocksOf(statement)) everyStatement(inner, visit);
  }
}

/** The questions that come up more than once; the empty text stands for all of them (a task done again). */
function askedOften(body: Block): Set<string> {
  const seen = new Map<string, number>();
  everyStatement(body, (statement) => {
    if (statement.kind === 'reverse' || statement.kind === 'do') seen.set('', 2);
    if (statement.kind !== 'if' && statement.kind !== 'when') return;
    for (const text of questionsOf(statement.condition)) seen.set(text, (seen.get(text) ?? 0) + 1);
  });
  return new Set([...seen].filter(([, times]) => times > 1).map(([text]) => text));
}

function findTask(body: Block, name: string): Block | undefined {
  let found: Block | undefined;
  everyStatement(body, (statement) => {
    if (statement.kind === 'task' && statement.name === name) found ??= statement.body;
  });
  return found;
}

const MAKES: Record<string, boolean> = {
  open: true,
  close: false,
  'switch on': true,
  'switch off': false,
  isolate: false,
  restore: true,
};

/** For each control: what the first action on it in the text makes of it (true: open or on). */
function firstPositions(model: Model, body: Block): Map<string, boolean> {
  const first = new Map<string, boolean>();
  // What isolates a live system is on at the start.
  for (const system of model.systems)
    for (const isolator of system.isolators) first.set(isolator.name, false);
  everyStatement(body, (statement) => {
    const flowing = statement.kind === 'action' ? MAKES[statement.verb] : undefined;
    if (flowing === undefined || statement.kind !== 'action') return;
    for (const ref of statement.objects) if (!first.has(ref.name)) first.set(ref.name, flowing);
  });
  return first;
}
