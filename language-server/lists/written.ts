/**
 * A procedure with its short forms written out: `reverse`, `do` and `for each` as the steps they stand for, loop
 * variables filled in. A tree of statements like the author's own, each with the file it was written in. Pure; what
 * cannot be written out (a task that leads back to itself, a name that nothing declares) stays a group without items.
 */
import type {
  Action,
  Allow,
  Block,
  Choice,
  Condition,
  Hold,
  If,
  Notice,
  Outcome,
  Position,
  Procedure,
  Ref,
  Repeat,
  Statement,
  Step,
  Stop,
  Task,
  Value,
  When,
} from '../../grammar/syntax/tree.ts';
import { itemsOf } from '../model/items.ts';
import { mirror } from '../model/mirror.ts';
import type { Model } from '../model/model.ts';
import { findProcedure, type LoadedFile } from '../model/names.ts';

/** Where a statement was written, and what the loop variables around it stand for. */
export interface Scene {
  file: LoadedFile;
  procedure: Procedure;
  bound: ReadonlyMap<string, string>;
  /** Names of the tasks and procedures being written out, so that a circle ends. */
  doing: readonly string[];
}

interface At {
  scene: Scene;
}

export type Written =
  | (At & { kind: 'action'; action: Action; outcomes: { outcome: Outcome; items: Written[] }[] })
  | (At & { kind: 'task'; task: Task; items: Written[] })
  | (At & { kind: 'step'; step: Step; items: Written[] })
  | (At & { kind: 'do task'; name: string; task: Task; items: Written[] })
  | (At & { kind: 'do procedure'; name: string; procedure: Procedure; file: LoadedFile; items: Written[] })
  | (At & { kind: 'do unknown'; name: string })
  | (At & { kind: 'reverse'; name: string; task: Task | undefined; items: Written[] })
  | (At & { kind: 'each'; variable: string; value: string; ref: Ref | undefined; items: Written[] })
  | (At & { kind: 'branch'; statement: When | If; body: Written[]; otherwise: Written[] | undefined })
  | (At & { kind: 'repeat'; repeat: Repeat; items: Written[]; otherwise: Written[] | undefined })
  | (At & { kind: 'hold'; hold: Hold; items: Written[] })
  | (At & { kind: 'choice'; choice: Choice })
  | (At & { kind: 'notice'; notice: Notice })
  | (At & { kind: 'value'; value: Value })
  | (At & { kind: 'allow'; allow: Allow })
  | (At & { kind: 'stop'; stop: Stop });

/** The procedures that are used, in the order of their first use. */
export interface WrittenOut {
  items: Written[];
  uses: { procedure: Procedure; file: LoadedFile }[];
}

/** More rounds than this of one `for each` are not written out. */
const MOST_ROUNDS = 500;
const MOST_DEEP = 12;

export function writtenOut(
  model: Model,
  procedure: Procedure,
  file: LoadedFile,
  visible: readonly LoadedFile[],
): WrittenOut {
  const writer = new Writer(model, visible);
  const scene: Scene = { file, procedure, bound: new Map(), doing: [procedure.name?.text ?? ''] };
  return { items: writer.block(procedure.body, scene), uses: writer.uses };
}

class Writer {
  readonly uses: WrittenOut['uses'] = [];
  private readonly model: Model;
  private readonly visible: readonly LoadedFile[];

  constructor(model: Model, visible: readonly LoadedFile[]) {
    this.model = model;
    this.visible = visible;
  }

  block(block: Block | undefined, scene: Scene): Written[] {
    return this.all(block?.statements ?? [], scene);
  }

  private all(statements: readonly Statement[], scene: Scene): Written[] {
    return statements.flatMap((statement) => this.one(statement, scene));
  }

  private one(statement: Statement, scene: Scene): Written[] {
    switch (statement.kind) {
      case 'action': {
        const action = boundAction(statement, scene);
        const outcomes = action.outcomes.map((outcome) => ({
          outcome,
          items: this.block(outcome.body, scene),
        }));
        return [{ kind: 'action', action, outcomes, scene }];
      }
      case 'task':
        return [{ kind: 'task', task: statement, items: this.block(statement.body, scene), scene }];
      case 'step':
        return [{ kind: 'step', step: statement, items: this.block(statement.body, scene), scene }];
      case 'notice':
        return [{ kind: 'notice', notice: statement, scene }];
      case 'when':
      case 'if': {
        const condition = statement.condition && boundCondition(statement.condition, scene);
        const bound = condition ? { ...statement, condition } : statement;
        const otherwise = statement.otherwise && this.block(statement.otherwise, scene);
        return [
          { kind: 'branch', statement: bound, body: this.block(statement.body, scene), otherwise, scene },
        ];
      }
      case 'repeat': {
        const until = statement.until && boundCondition(statement.until, scene);
        const otherwise = statement.otherwise && this.block(statement.otherwise, scene);
        const repeat = until ? { ...statement, until } : statement;
        return [{ kind: 'repeat', repeat, items: this.block(statement.body, scene), otherwise, scene }];
      }
      case 'hold':
        return [{ kind: 'hold', hold: statement, items: this.block(statement.body, scene), scene }];
      case 'choice':
        return [{ kind: 'choice', choice: statement, scene }];
      case 'value':
        return [{ kind: 'value', value: statement, scene }];
      case 'allow':
        return [{ kind: 'allow', allow: statement, scene }];
      case 'stop':
        return [{ kind: 'stop', stop: statement, scene }];
      case 'for each':
        return this.each(statement, scene);
      case 'do':
        return this.used(statement.ref?.text, scene);
      case 'reverse':
        return this.reversed(statement, scene);
      case 'continues':
      case 'broken':
        return [];
    }
  }

  private each(statement: Extract<Statement, { kind: 'for each' }>, scene: Scene): Written[] {
    const { variable, over, body } = statement;
    if (!variable || !over) return [];
    const ref = over.kind === 'positions' ? boundRef(over.ref, scene) : undefined;
    return this.valuesOf(over, scene)
      .slice(0, MOST_ROUNDS)
      .map((value) => {
        const bound = new Map(scene.bound).set(variable.text, value);
        const inner = { ...scene, bound };
        return {
          kind: 'each',
          variable: variable.text,
          value,
          ref,
          items: this.block(body, inner),
          scene: inner,
        };
      });
  }

  private valuesOf(
    over: NonNullable<Extract<Statement, { kind: 'for each' }>['over']>,
    scene: Scene,
  ): string[] {
    switch (over.kind) {
      case 'numbers': {
        const count = Math.min(Math.max(over.to - over.from + 1, 0), MOST_ROUNDS);
        return Array.from({ length: count }, (_, index) => String(over.from + index));
      }
      case 'names':
        return over.names.map(({ text }) => text);
      case 'positions': {
        const ref = boundRef(over.ref, scene);
        const thing = this.model.byName.get(ref.name.text);
        return thing ? itemsOf(thing, ref).items.map((item) => thing.positions[item - thing.first]!) : [];
      }
    }
  }

  private used(name: string | undefined, scene: Scene): Written[] {
    if (name === undefined) return [];
    if (scene.doing.includes(name) || scene.doing.length > MOST_DEEP)
      return [{ kind: 'do unknown', name, scene }];
    const task = taskNamed(scene.procedure, name);
    const doing = [...scene.doing, name];
    if (task)
      return [{ kind: 'do task', name, task, items: this.block(task.body, { ...scene, doing }), scene }];
    const found = findProcedure(this.visible, name);
    if (!found) return [{ kind: 'do unknown', name, scene }];
    if (!this.uses.some(({ procedure }) => procedure === found.procedure)) this.uses.push(found);
    const there: Scene = { file: found.file, procedure: found.procedure, bound: new Map(), doing };
    const items = this.block(found.procedure.body, there);
    return [{ kind: 'do procedure', name, ...found, items, scene }];
  }

  private reversed(statement: Extract<Statement, { kind: 'reverse' }>, scene: Scene): Written[] {
    const name = statement.task?.text ?? '';
    const task = taskNamed(scene.procedure, name);
    const { statements } = mirror(task?.body, statement, this.model);
    return [{ kind: 'reverse', name, task, items: this.all(statements, scene), scene }];
  }
}

/** A task of the procedure, however deep it stands. */
function taskNamed(procedure: Procedure, name: string): Task | undefined {
  const search = (block: Block | undefined): Task | undefined => {
    for (const statement of block?.statements ?? []) {
      if (statement.kind === 'task' && statement.name?.text === name) return statement;
      if (!('body' in statement)) continue;
      const found =
        search(statement.body) ?? ('otherwise' in statement ? search(statement.otherwise) : undefined);
      if (found) return found;
    }
    return undefined;
  };
  return search(procedure.body);
}

// ------------------------------------------------------------ what loop variables stand for

function boundRef(ref: Ref, { bound }: Scene): Ref {
  if (bound.size === 0) return ref;
  const text = bound.get(ref.name.text) ?? ref.name.text;
  return {
    ...ref,
    name: { ...ref.name, text },
    positions: ref.positions.map((one) => boundPosition(one, bound)),
  };
}

function boundPosition(position: Position, bound: ReadonlyMap<string, string>): Position {
  const value = (text: string) => bound.get(text) ?? text;
  const { from, to } = position;
  return { ...position, from: value(from), ...(to === undefined ? {} : { to: value(to) }) };
}

function boundCondition(condition: Condition, scene: Scene): Condition {
  if (condition.kind === 'and')
    return { ...condition, parts: condition.parts.map((part) => boundCondition(part, scene)) };
  if (condition.kind === 'state') return { ...condition, ref: boundRef(condition.ref, scene) };
  return condition;
}

function boundAction(action: Action, scene: Scene): Action {
  if (scene.bound.size === 0) return action;
  const refs = (list: readonly Ref[]) => list.map((ref) => boundRef(ref, scene));
  const tails = action.tails.map((tail) => {
    const result = { ...tail };
    if ('refs' in result) result.refs = refs(result.refs);
    if (result.tail === 'holding') result.with = refs(result.with);
    if (result.tail === 'at')
      result.positions = result.positions.map((one) => boundPosition(one, scene.bound));
    return result;
  });
  return { ...action, objects: refs(action.objects), tails };
}
