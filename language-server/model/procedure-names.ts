/**
 * The names in a procedure: every reference is resolved once, whether or not its step is ever reached, and
 * what it refers to is kept for the editor. Facts: names that nothing declares, things of a kind that the verb
 * cannot act on, positions that a group does not have, names declared and never used, uses that go round.
 */
import type {
  Action,
  Block,
  Condition,
  Expression,
  Name,
  Procedure,
  Quantity,
  Ref,
  Span,
  Statement,
  Tail,
  Text,
} from '../../grammar/syntax/tree.ts';
import { type Kind, verbNamed } from '../../grammar/tokens/verbs.ts';
import type { Place } from '../report/finding.ts';
import { itemsOf } from './build.ts';
import type { Fact } from './facts.ts';
import { unknownPosition, wrongKind } from './kind-faults.ts';
import type { Model, Thing } from './model.ts';
import {
  duplicateName,
  findProcedure,
  type LoadedFile,
  repeatedValues,
  unknownName,
  unknownValue,
} from './names.ts';
import { layoutOf } from './row.ts';
import { stateFaults } from './state-words.ts';
import type { Survey } from './survey.ts';
import { useCycles } from './use-cycles.ts';

/** A name in use and what it stands for. */
export interface Use {
  at: Place;
  thing?: Thing;
  local?: Local;
}

export interface Local {
  name: string;
  what: 'task' | 'choice' | 'value' | 'measured value' | 'loop variable';
  at: Place;
  values?: readonly string[];
}

export interface ProcedureNames {
  uses: Use[];
  locals: Local[];
  facts: Fact[];
}

export function procedureNames(
  model: Model,
  procedure: Procedure,
  file: LoadedFile,
  visible: readonly LoadedFile[],
): ProcedureNames {
  return new Resolver(model, file, visible).procedure(procedure);
}

/** The facts alone; of the steps that no name of the procedure itself touches, those that are kept. */
export function nameFaults(
  model: Model,
  survey: Survey,
  file: LoadedFile,
  visible: readonly LoadedFile[],
): readonly Fact[] {
  const stretches = survey.stretches('names', [model], (statements) =>
    new Resolver(model, file, visible).alone(statements),
  );
  return new Resolver(model, file, visible).together(survey.procedure, stretches);
}

/** Steps that follow each other, as far as the names in them mean nothing of the procedure itself. */
interface Stretch {
  readonly statements: readonly Statement[];
  readonly facts: readonly Fact[];
  /** Names that are looked for in the procedure. */
  readonly names: ReadonlySet<string>;
  readonly declares: readonly string[];
  /** It rests on more than single names: what else is declared, which procedures there are. */
  readonly wide: boolean;
  /** Whether any of the names was one of these; asked again only where they are others. */
  last?: { locals: string; met: boolean };
}

/** Names of the procedure itself, by what was looked for. */
class Scope extends Map<string, Local> {
  readonly asked = new Set<string>();
  wide = false;

  override get(name: string): Local | undefined {
    this.asked.add(name);
    return super.get(name);
  }

  override has(name: string): boolean {
    this.asked.add(name);
    return super.has(name);
  }

  override values(): MapIterator<Local> {
    this.wide = true;
    return super.values();
  }
}

class Resolver {
  private readonly result: ProcedureNames = { uses: [], locals: [], facts: [] };
  private readonly scope = new Scope();
  private readonly used = new Set<Local>();
  private readonly model: Model;
  private readonly file: LoadedFile;
  private readonly visible: readonly LoadedFile[];

  constructor(model: Model, file: LoadedFile, visible: readonly LoadedFile[]) {
    this.model = model;
    this.file = file;
    this.visible = visible;
  }

  procedure(procedure: Procedure): ProcedureNames {
    this.begin(procedure);
    this.block(procedure.body);
    this.end(procedure);
    return this.result;
  }

  /** The same from stretches that were gone through alone before. */
  together(procedure: Procedure, stretches: readonly Stretch[]): readonly Fact[] {
    this.begin(procedure);
    const locals = new Set(this.result.locals.map(({ name }) => name));
    for (const { declares } of stretches) for (const name of declares) locals.add(name);
    const key = [...locals].join(' ');
    for (const stretch of stretches) {
      if (!stretch.wide && stretch.declares.length === 0 && !meets(stretch, locals, key)) {
        this.result.facts.push(...stretch.facts);
      } else for (const statement of stretch.statements) this.part(statement);
    }
    this.end(procedure);
    return this.result.facts;
  }

  alone(statements: readonly Statement[]): Stretch {
    for (const statement of statements) this.part(statement);
    const { facts, locals } = this.result;
    const { asked: names, wide } = this.scope;
    return { statements, facts, names, declares: locals.map(({ name }) => name), wide };
  }

  /** A statement; of a task, step or hold the head alone. */
  private part(statement: Statement): void {
    if (statement.kind === 'task' || statement.kind === 'step') this.text(statement.title);
    else if (statement.kind === 'hold') this.text(statement.text);
    else this.statement(statement);
  }

  private begin(procedure: Procedure): void {
    for (const header of procedure.headers) {
      switch (header.header) {
        case 'tools':
          for (const ref of header.refs) this.thing(ref, 'tool', ['tool'], '`tools`');
          break;
        case 'supplies':
          for (const ref of header.refs) this.thing(ref);
          for (const { fluid, quantity } of header.fluids) {
            this.value(quantity);
            if (fluid) this.thing(fluid, 'fluid', ['fluid', 'consumable'], 'An amount of `supplies`');
          }
          break;
        case 'time':
          this.value(header.quantity);
          break;
        case 'starts with':
        case 'ends with':
          for (const claim of header.claims) {
            for (const ref of [...claim.refs, ...claim.except]) this.thing(ref);
            // Of an assembly only what can be in the state is meant.
            if (claim.state) this.state(claim.state, claim.scope === 'things' ? claim.refs : []);
          }
          break;
        case 'starts where':
          if (header.ref && !findProcedure(this.visible, header.ref.name.text))
            this.missingProcedure(header.ref.name);
          break;
        case 'only':
          if (header.condition) this.condition(header.condition);
          break;
        default:
          break;
      }
    }
    // Tasks may be named before they are written: `do` and `reverse` look ahead.
    for (const { name } of layoutOf(procedure).tasks) if (name) this.declare(name, 'task');
  }

  private end(procedure: Procedure): void {
    this.result.facts.push(...useCycles(procedure, this.file, this.visible));
    for (const local of this.result.locals) {
      if (this.used.has(local) || local.what === 'task' || local.what === 'loop variable') continue;
      this.result.facts.push({
        check: 'unused-name',
        at: local.at,
        words: { name: local.name, what: local.what },
      });
    }
  }

  private declare(name: Name, what: Local['what'], values?: readonly string[]): void {
    const at = this.at(name);
    const earlier = this.scope.get(name.text);
    if (
      earlier &&
      what !== 'loop variable' &&
      !(what === 'measured value' && earlier.what === 'measured value')
    ) {
      this.result.facts.push(
        duplicateName(this.file.path, name, what, { file: earlier.at.file, name: earlier.at }),
      );
      return;
    }
    const local: Local = { name: name.text, what, at, ...(values ? { values } : {}) };
    this.scope.set(name.text, local);
    this.result.locals.push(local);
    if (earlier && this.used.has(earlier)) this.used.add(local);
  }

  /** What is written down may be named later; it need not be, and it may bear the name of something else. */
  private written(topic: Name): void {
    if (this.scope.has(topic.text)) return;
    this.declare(topic, 'measured value');
    this.used.add(this.scope.get(topic.text)!);
  }

  private block(block: Block | undefined): void {
    for (const statement of block?.statements ?? []) this.statement(statement);
  }

  private statement(statement: Statement): void {
    switch (statement.kind) {
      case 'action':
        this.action(statement);
        return;
      case 'task':
      case 'step':
        this.text(statement.title);
        this.block(statement.body);
        return;
      case 'hold':
        this.text(statement.text);
        this.block(statement.body);
        return;
      case 'when':
      case 'if':
        if (statement.condition) this.condition(statement.condition);
        this.block(statement.body);
        this.block(statement.otherwise);
        return;
      case 'choice':
        this.result.facts.push(...repeatedValues(this.file.path, statement.values));
        if (statement.name)
          this.declare(
            statement.name,
            'choice',
            statement.values.map((value) => value.text),
          );
        return;
      case 'value':
        if (statement.expression) this.expression(statement.expression);
        if (statement.name) this.declare(statement.name, 'value');
        return;
      case 'repeat':
        this.block(statement.body);
        // The end is asked behind each round: it may be about what the round finds.
        if (statement.until) this.condition(statement.until);
        this.block(statement.otherwise);
        return;
      case 'for each': {
        const { variable, over } = statement;
        if (over?.kind === 'positions') this.thing(over.ref);
        if (over?.kind === 'names' && !variable) for (const name of over.names) this.name(name);
        const before = variable && this.scope.get(variable.text);
        if (variable)
          this.declare(
            variable,
            'loop variable',
            over?.kind === 'names' ? over.names.map((name) => name.text) : undefined,
          );
        this.block(statement.body);
        if (variable) {
          if (before) this.scope.set(variable.text, before);
          else this.scope.delete(variable.text);
        }
        return;
      }
      case 'reverse':
        if (statement.task) this.task(statement.task);
        for (const ref of statement.except) this.thing(ref);
        return;
      case 'do':
        if (statement.ref) this.task(statement.ref);
        return;
      case 'notice':
      case 'stop':
        this.text(statement.text);
        return;
      case 'allow':
      case 'continues':
      case 'broken':
        return;
      default:
        statement satisfies never;
    }
  }

  private action(action: Action): void {
    const verb = verbNamed(action.verb);
    for (const ref of action.objects) {
      const local = this.local(ref);
      if (local) continue;
      const words = action.fresh ? `\`${action.word.text} ${action.fresh}\`` : `\`${action.word.text}\``;
      this.thing(ref, undefined, action.fresh === 'kit' ? ['kit'] : verb?.on, words);
    }
    this.value(action.quantity);
    if (action.expression) this.expression(action.expression);
    for (const tail of action.tails) this.tail(tail, action);
    if (action.verb === 'record' && action.topic) this.written(action.topic);
    this.text(action.text);
    for (const outcome of action.outcomes) {
      for (const { quantity } of outcome.intervals) this.value(quantity);
      this.block(outcome.body);
    }
  }

  private tail(tail: Tail, action: Action): void {
    if ('quantity' in tail) this.value(tail.quantity);
    if ('text' in tail) this.text(tail.text);
    switch (tail.tail) {
      case 'with':
        for (const ref of tail.refs) {
          if (ANYONES_TOOLS.has(ref.name.text) && !this.model.byName.has(ref.name.text)) continue;
          this.thing(
            ref,
            tail.quantity ? 'fluid' : 'thing',
            GOES_ON[action.verb],
            `\`${action.verb} … with\``,
          );
        }
        return;
      case 'holding':
        for (const ref of [...tail.refs, ...tail.with]) this.thing(ref);
        return;
      case 'while':
      case 'into':
      case 'between':
      case 'of':
      case 'except':
        for (const ref of tail.refs) this.thing(ref);
        return;
      case 'by':
      case 'from':
        for (const ref of tail.refs)
          if (!this.local(ref) && !this.model.tables.has(ref.name.text)) this.thing(ref, 'table');
        return;
      case 'to':
      case 'at':
        for (const ref of tail.refs) if (!this.local(ref)) this.thing(ref);
        return;
      case 'as':
        if (tail.name) {
          const values = action.outcomes.flatMap((outcome) => (outcome.word ? [outcome.word.text] : []));
          const earlier = tail.positions.length > 0 ? this.scope.get(tail.name.text) : undefined;
          // `as zero #1`, `as zero #2` are readings of one name.
          if (earlier?.what === 'measured value')
            this.result.uses.push({ at: this.at(tail.name), local: earlier });
          else this.declare(tail.name, 'measured value', values.length > 0 ? values : undefined);
        }
        return;
      default:
        return;
    }
  }

  private condition(condition: Condition): void {
    switch (condition.kind) {
      case 'and':
        for (const part of condition.parts) this.condition(part);
        return;
      case 'state':
        this.thing(condition.ref);
        this.state(condition.state, [condition.ref]);
        return;
      case 'axis': {
        const local = this.scope.get(condition.axis.text);
        const variant = this.model.variants.get(condition.axis.text);
        const values = local?.values ?? variant?.values;
        if (local) {
          this.used.add(local);
          this.result.uses.push({ at: this.at(condition.axis), local });
        }
        if (!values) {
          if (!local) {
            const known = [
              ...this.model.variants.keys(),
              ...[...this.scope.values()].filter((one) => one.values).map((one) => one.name),
            ];
            this.result.facts.push(unknownName(this.file.path, condition.axis, 'variant', known));
          }
          return;
        }
        for (const value of condition.values) {
          if (values.includes(value.text)) continue;
          this.result.facts.push(unknownValue(this.file.path, value, condition.axis, values));
        }
        return;
      }
      case 'seen':
        this.text(condition.text);
        return;
    }
  }

  private expression(expression: Expression): void {
    switch (expression.kind) {
      case 'name':
        this.valueNamed(expression.ref.name);
        return;
      case 'binary':
        this.expression(expression.left);
        if (expression.right) this.expression(expression.right);
        return;
      case 'call':
        for (const argument of expression.arguments) this.expression(argument);
        return;
      case 'quantity':
        return;
    }
  }

  /** A declared value in the place of a quantity. */
  private value(quantity: Quantity | undefined): void {
    if (quantity?.named) this.valueNamed(quantity.named.name);
  }

  /** `{name}` in a text stands for a value. */
  private text(text: Text | undefined): void {
    for (const hole of text?.holes ?? []) this.valueNamed(hole);
  }

  private valueNamed(name: Name): void {
    const { model, scope } = this;
    const ref: Ref = { name, positions: [], start: name.start, end: name.end };
    if (this.local(ref) || model.values.has(name.text) || model.variants.has(name.text)) return;
    const thing = model.byName.get(name.text);
    if (thing) this.result.uses.push({ at: this.at(name), thing });
    else if (model.machine) {
      const values = [...scope.values()].filter((local) => local.what !== 'task');
      const known = [...model.values.keys(), ...values.map((local) => local.name)];
      this.result.facts.push(unknownName(this.file.path, name, 'value', known));
    }
  }

  private state(state: Name, refs: readonly Ref[]): void {
    const things = refs.flatMap((ref) => this.model.byName.get(ref.name.text) ?? []);
    this.result.facts.push(...stateFaults(this.file.path, state, things));
  }

  private task(name: Name): void {
    this.scope.wide = true;
    const local = this.scope.get(name.text);
    if (local?.what === 'task') {
      this.used.add(local);
      this.result.uses.push({ at: this.at(name), local });
    } else if (!findProcedure(this.visible, name.text)) this.missingProcedure(name);
  }

  private missingProcedure(name: Name): void {
    const known = [
      ...[...this.scope.values()].filter((local) => local.what === 'task').map((local) => local.name),
      ...this.visible.flatMap((file) => file.procedures.flatMap((procedure) => procedure.name?.text ?? [])),
    ];
    this.result.facts.push({
      ...unknownName(this.file.path, name, 'procedure or task', known),
      check: 'procedure-missing',
    });
  }

  private local(ref: Ref): Local | undefined {
    const local = this.scope.get(ref.name.text);
    if (!local) return undefined;
    this.used.add(local);
    this.result.uses.push({ at: this.at(ref.name), local });
    return local;
  }

  private name(name: Name): void {
    this.thing({ name, positions: [], start: name.start, end: name.end });
  }

  /** `what` is looked for, where any thing will not do; `by` is the word that allows only some kinds. */
  private thing(ref: Ref, what = 'thing', allowed?: readonly Kind[], by = ''): void {
    const thing = this.model.byName.get(ref.name.text);
    if (!thing) {
      if (this.local(ref) || this.model.values.has(ref.name.text) || this.model.tables.has(ref.name.text))
        return;
      // Where no machine is known, its names cannot be.
      if (this.model.machine)
        this.result.facts.push(
          unknownName(
            this.file.path,
            ref.name,
            allowed?.length === 1 ? allowed[0]! : what,
            this.candidates(allowed),
          ),
        );
      return;
    }
    this.result.uses.push({ at: this.at(ref.name), thing });
    if (allowed && allowed.length > 0 && !(allowed as readonly string[]).includes(thing.type)) {
      this.result.facts.push(wrongKind(this.file.path, ref, thing, allowed, by));
      return;
    }
    const fixed = ref.positions.filter(
      (position) => !this.scope.has(position.from) && !(position.to && this.scope.has(position.to)),
    );
    const { unknown } = itemsOf(thing, { ...ref, positions: fixed });
    if (unknown && fixed.length > 0) {
      this.result.facts.push(unknownPosition(this.file.path, unknown, thing));
    }
    for (const position of ref.positions) {
      const local = this.scope.get(position.from);
      if (local) this.used.add(local);
    }
  }

  /** Names that could have been meant: of the right kind first. */
  private candidates(allowed: readonly Kind[] | undefined): string[] {
    const names = [...this.model.byName.values()];
    const fitting = allowed
      ? names.filter((thing) => (allowed as readonly string[]).includes(thing.type))
      : names;
    return [...fitting, ...names].map((thing) => thing.name);
  }

  private at(span: Span): Place {
    return { file: this.file.path, start: span.start, end: span.end };
  }
}

function meets(stretch: Stretch, locals: ReadonlySet<string>, key: string): boolean {
  if (stretch.last?.locals !== key) {
    let met = false;
    for (const name of stretch.names) met ||= locals.has(name);
    stretch.last = { locals: key, met };
  }
  return stretch.last.met;
}

/** What can be put on or filled in, or done with; other verbs may be done with anything. */
const GOES_ON: Readonly<Record<string, readonly Kind[]>> = {
  coat: ['consumable', 'fluid', 'tool'],
  lubricate: ['consumable', 'fluid', 'tool'],
  fill: ['fluid', 'consumable', 'tool'],
  'top up': ['fluid', 'consumable', 'tool'],
};

/** Things that every workshop has: they may be named without being declared. */
export const ANYONES_TOOLS: ReadonlySet<string> = new Set([
  'hoist',
  'padlock',
  'helper',
  'brush',
  'rag',
  'cloth',
  'solvent',
  'compressed-air',
  'fingers',
]);
