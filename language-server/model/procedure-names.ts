/**
 * The names in a procedure: every reference is resolved once, whether or not its step is ever reached, and
 * what it refers to is kept for the editor. Facts: names that nothing declares, things of a kind that the verb
 * cannot act on, positions that a group does not have, names declared and never used, uses that go round.
 */
import type { Action, Block, Procedure, Statement, Tail } from '../../grammar/syntax/tree.ts';
import { type Kind, verbNamed } from '../../grammar/tokens/verbs.ts';
import { ANYONES_TOOLS } from './anyones-tools.ts';
import type { Fact } from './facts.ts';
import type { Model } from './model.ts';
import { NameLookup } from './name-lookup.ts';
import type { ProcedureNames } from './name-scope.ts';
import { findProcedure, type LoadedFile, repeatedValues } from './names.ts';
import { layoutOf } from './row.ts';
import type { Survey } from './survey.ts';
import { useCycles } from './use-cycles.ts';

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

class Resolver {
  private readonly look: NameLookup;
  private readonly file: LoadedFile;
  private readonly visible: readonly LoadedFile[];

  constructor(model: Model, file: LoadedFile, visible: readonly LoadedFile[]) {
    this.look = new NameLookup(model, file, visible);
    this.file = file;
    this.visible = visible;
  }

  procedure(procedure: Procedure): ProcedureNames {
    this.begin(procedure);
    this.block(procedure.body);
    this.end(procedure);
    return this.look.result;
  }

  /** The same from stretches that were gone through alone before. */
  together(procedure: Procedure, stretches: readonly Stretch[]): readonly Fact[] {
    this.begin(procedure);
    const locals = new Set(this.look.result.locals.map(({ name }) => name));
    for (const { declares } of stretches) for (const name of declares) locals.add(name);
    const key = [...locals].join(' ');
    for (const stretch of stretches) {
      if (!stretch.wide && stretch.declares.length === 0 && !meets(stretch, locals, key)) {
        this.look.result.facts.push(...stretch.facts);
      } else for (const statement of stretch.statements) this.part(statement);
    }
    this.end(procedure);
    return this.look.result.facts;
  }

  alone(statements: readonly Statement[]): Stretch {
    for (const statement of statements) this.part(statement);
    const { facts, locals } = this.look.result;
    const { asked: names, wide } = this.look.scope;
    return { statements, facts, names, declares: locals.map(({ name }) => name), wide };
  }

  /** A statement; of a task, step or hold the head alone. */
  private part(statement: Statement): void {
    if (statement.kind === 'task' || statement.kind === 'step') this.look.text(statement.title);
    else if (statement.kind === 'hold') this.look.text(statement.text);
    else this.statement(statement);
  }

  private begin(procedure: Procedure): void {
    for (const header of procedure.headers) {
      switch (header.header) {
        case 'tools':
          for (const ref of header.refs) this.look.thing(ref, 'tool', ['tool'], '`tools`');
          break;
        case 'supplies':
          for (const ref of header.refs) this.look.thing(ref);
          for (const { fluid, quantity } of header.fluids) {
            this.look.value(quantity);
            if (fluid) this.look.thing(fluid, 'fluid', ['fluid', 'consumable'], 'An amount of `supplies`');
          }
          break;
        case 'time':
          this.look.value(header.quantity);
          break;
        case 'starts with':
        case 'ends with':
          for (const claim of header.claims) {
            for (const ref of [...claim.refs, ...claim.except]) this.look.thing(ref);
            // Of an assembly only what can be in the state is meant.
            if (claim.state) this.look.state(claim.state, claim.scope === 'things' ? claim.refs : []);
          }
          break;
        case 'starts where':
          if (header.ref && !findProcedure(this.visible, header.ref.name.text))
            this.look.missingProcedure(header.ref.name);
          break;
        case 'only':
          if (header.condition) this.look.condition(header.condition);
          break;
        default:
          break;
      }
    }
    // Tasks may be named before they are written: `do` and `reverse` look ahead.
    for (const { name } of layoutOf(procedure).tasks) if (name) this.look.declare(name, 'task');
  }

  private end(procedure: Procedure): void {
    this.look.result.facts.push(...useCycles(procedure, this.file, this.visible));
    for (const local of this.look.result.locals) {
      if (this.look.used.has(local) || local.what === 'task' || local.what === 'loop variable') continue;
      this.look.result.facts.push({
        check: 'unused-name',
        at: local.at,
        words: { name: local.name, what: local.what },
      });
    }
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
        this.look.text(statement.title);
        this.block(statement.body);
        return;
      case 'hold':
        this.look.text(statement.text);
        this.block(statement.body);
        return;
      case 'when':
      case 'if':
        if (statement.condition) this.look.condition(statement.condition);
        this.block(statement.body);
        this.block(statement.otherwise);
        return;
      case 'choice':
        this.look.result.facts.push(...repeatedValues(this.look.file.path, statement.values));
        if (statement.name)
          this.look.declare(
            statement.name,
            'choice',
            statement.values.map((value) => value.text),
          );
        return;
      case 'value':
        if (statement.expression) this.look.expression(statement.expression);
        if (statement.name) this.look.declare(statement.name, 'value');
        return;
      case 'repeat':
        this.block(statement.body);
        // The end is asked behind each round: it may be about what the round finds.
        if (statement.until) this.look.condition(statement.until);
        this.block(statement.otherwise);
        return;
      case 'for each': {
        const { variable, over } = statement;
        if (over?.kind === 'positions') this.look.thing(over.ref);
        if (over?.kind === 'names' && !variable) for (const name of over.names) this.look.name(name);
        const before = variable && this.look.scope.get(variable.text);
        if (variable)
          this.look.declare(
            variable,
            'loop variable',
            over?.kind === 'names' ? over.names.map((name) => name.text) : undefined,
          );
        this.block(statement.body);
        if (variable) {
          if (before) this.look.scope.set(variable.text, before);
          else this.look.scope.delete(variable.text);
        }
        return;
      }
      case 'reverse':
        if (statement.task) this.look.task(statement.task);
        for (const ref of statement.except) this.look.thing(ref);
        return;
      case 'do':
        if (statement.ref) this.look.task(statement.ref);
        return;
      case 'notice':
      case 'stop':
        this.look.text(statement.text);
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
      const local = this.look.local(ref);
      if (local) continue;
      const words = action.fresh ? `\`${action.word.text} ${action.fresh}\`` : `\`${action.word.text}\``;
      this.look.thing(ref, undefined, action.fresh === 'kit' ? ['kit'] : verb?.on, words);
    }
    this.look.value(action.quantity);
    if (action.expression) this.look.expression(action.expression);
    for (const tail of action.tails) this.tail(tail, action);
    if (action.verb === 'record' && action.topic) this.look.written(action.topic);
    this.look.text(action.text);
    for (const outcome of action.outcomes) {
      for (const { quantity } of outcome.intervals) this.look.value(quantity);
      this.block(outcome.body);
    }
  }

  private tail(tail: Tail, action: Action): void {
    if ('quantity' in tail) this.look.value(tail.quantity);
    if ('text' in tail) this.look.text(tail.text);
    switch (tail.tail) {
      case 'with':
        for (const ref of tail.refs) {
          if (ANYONES_TOOLS.has(ref.name.text) && !this.look.model.byName.has(ref.name.text)) continue;
          this.look.thing(
            ref,
            tail.quantity ? 'fluid' : 'thing',
            GOES_ON[action.verb],
            `\`${action.verb} … with\``,
          );
        }
        return;
      case 'holding':
        for (const ref of [...tail.refs, ...tail.with]) this.look.thing(ref);
        return;
      case 'while':
      case 'into':
      case 'between':
      case 'of':
      case 'except':
        for (const ref of tail.refs) this.look.thing(ref);
        return;
      case 'by':
      case 'from':
        for (const ref of tail.refs) {
          const { byName, tables } = this.look.model;
          if (this.look.local(ref) || tables.has(ref.name.text)) continue;
          if (action.verb === 'choose' && !byName.has(ref.name.text))
            this.look.chosenFrom(ref.name, tail.tail);
          else this.look.thing(ref);
        }
        return;
      case 'to':
      case 'at':
        for (const ref of tail.refs) if (!this.look.local(ref)) this.look.thing(ref);
        return;
      case 'as':
        if (tail.name) {
          const values = action.outcomes.flatMap((outcome) => (outcome.word ? [outcome.word.text] : []));
          const earlier = tail.positions.length > 0 ? this.look.scope.get(tail.name.text) : undefined;
          // `as zero #1`, `as zero #2` are readings of one name.
          if (earlier?.what === 'measured value')
            this.look.result.uses.push({ at: this.look.at(tail.name), local: earlier });
          else this.look.declare(tail.name, 'measured value', values.length > 0 ? values : undefined);
        }
        return;
      default:
        return;
    }
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
