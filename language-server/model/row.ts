/**
 * A procedure laid out in a row: what is done one after the other in every case, with tasks, steps and holds opened.
 * Branches, repeats and uses stay whole. Carrying out the parts of the row is carrying out the procedure.
 */
import type { Block, Procedure, Statement, Task } from '../../grammar/syntax/tree.ts';

export interface Part {
  /** A task begins or ends; a step or hold begins; a statement is carried out. */
  kind: 'enter' | 'leave' | 'open' | 'do';
  statement: Statement;
}

/** A procedure, a task, a step or a hold laid out. */
export interface Layout {
  readonly parts: readonly Part[];
  /** Tasks with a name, in reading order, those in branches not among them. */
  readonly tasks: readonly Task[];
  readonly names: Names;
}

export type Owner = Procedure | Extract<Statement, { kind: 'task' | 'step' | 'hold' }>;

const layouts = new WeakMap<Owner, Layout>();

/** Kept for as long as the node is the same, and so is what stands in it. */
export function layoutOf(owner: Owner): Layout {
  let layout = layouts.get(owner);
  if (!layout) {
    layout = layOut(owner);
    layouts.set(owner, layout);
  }
  return layout;
}

function layOut(owner: Owner): Layout {
  const parts: Part[] = [];
  const tasks: Task[] = [];
  const names = new GatheredNames();
  if (owner.kind === 'task') {
    parts.push({ kind: 'enter', statement: owner });
    if (owner.name) tasks.push(owner);
  } else if (owner.kind !== 'procedure') parts.push({ kind: 'open', statement: owner });
  for (const statement of owner.body?.statements ?? []) {
    if (statement.kind === 'task' || statement.kind === 'step' || statement.kind === 'hold') {
      const inner = layoutOf(statement);
      for (const part of inner.parts) parts.push(part);
      tasks.push(...inner.tasks);
      names.add(inner.names);
    } else {
      parts.push({ kind: 'do', statement });
      names.add(namesOf(statement));
    }
  }
  if (owner.kind === 'task') parts.push({ kind: 'leave', statement: owner });
  return { parts, tasks, names: names.all };
}

/** The named tasks of a procedure, however deep they stand. */
export function tasksOf(procedure: Procedure): Map<string, Task> {
  const tasks = new Map<string, Task>();
  for (const task of layoutOf(procedure).tasks) if (task.name) tasks.set(task.name.text, task);
  return tasks;
}

/** Carrying out one is carrying out the other. */
export function isSamePart(a: Part, b: Part): boolean {
  return a.kind === b.kind && (a.kind !== 'do' || a.statement === b.statement);
}

/** The names after `do` in a procedure, however deep they stand. */
export function namesAfterDo(procedure: Procedure): ReadonlySet<string> {
  return layoutOf(procedure).names.done;
}

/** Names in statements, however deep they stand: all that are carried out in place, and those after `do` alone. */
export interface Names {
  readonly all: ReadonlySet<string>;
  readonly done: ReadonlySet<string>;
}

class GatheredNames {
  private names: { all: Set<string>; done: Set<string> } | undefined;

  add({ all, done }: Names): void {
    if (all.size === 0) return;
    this.names ??= { all: new Set(), done: new Set() };
    for (const name of all) this.names.all.add(name);
    for (const name of done) this.names.done.add(name);
  }

  get all(): Names {
    return this.names ?? NO_NAMES;
  }
}

const NO_NAMES: Names = { all: new Set(), done: new Set() };
const found = new WeakMap<object, Names>();

/** The names after `do` and `reverse` in a statement. */
export function usesOf(statement: Statement): ReadonlySet<string> {
  return namesOf(statement).all;
}

function namesOf(statement: Statement): Names {
  switch (statement.kind) {
    case 'do': {
      const names = new Set(statement.ref ? [statement.ref.text] : []);
      return { all: names, done: names };
    }
    case 'reverse':
      return { all: new Set(statement.task ? [statement.task.text] : []), done: NO_NAMES.done };
    case 'action':
      if (statement.outcomes.length === 0) return NO_NAMES;
      return kept(statement, () => namesIn(statement.outcomes.map(({ body }) => body)));
    case 'task':
    case 'step':
    case 'hold':
      return layoutOf(statement).names;
    case 'for each':
      return kept(statement, () => namesIn([statement.body]));
    case 'when':
    case 'if':
    case 'repeat':
      return kept(statement, () => namesIn([statement.body, statement.otherwise]));
    default:
      return NO_NAMES;
  }
}

function kept(statement: Statement, work: () => Names): Names {
  let names = found.get(statement);
  if (!names) {
    names = work();
    found.set(statement, names);
  }
  return names;
}

function namesIn(blocks: readonly (Block | undefined)[]): Names {
  const names = new GatheredNames();
  for (const block of blocks) for (const statement of block?.statements ?? []) names.add(namesOf(statement));
  return names.all;
}

/** The names of tasks that are not what they were, or use one that is not. */
export function changedTasks(
  before: ReadonlyMap<string, Task>,
  after: ReadonlyMap<string, Task>,
): ReadonlySet<string> {
  const changed = new Set<string>();
  for (const [name, task] of after) if (before.get(name) !== task) changed.add(name);
  for (const name of before.keys()) if (!after.has(name)) changed.add(name);
  for (let size = 0; size !== changed.size && changed.size > 0; ) {
    size = changed.size;
    for (const [name, task] of after)
      if (!changed.has(name) && meets(usesOf(task), changed)) changed.add(name);
  }
  return changed;
}

/** Whether two sets have anything in common. */
export function meets<Value>(a: ReadonlySet<Value>, b: ReadonlySet<Value>): boolean {
  if (a.size === 0 || b.size === 0) return false;
  const [few, many] = a.size < b.size ? [a, b] : [b, a];
  for (const one of few) if (many.has(one)) return true;
  return false;
}

/** Two versions of a procedure have the same headers, and the text of both is complete or of neither. */
export function hasSameHead(a: Procedure, b: Procedure): boolean {
  return (
    a.name === b.name &&
    a.body?.closed === b.body?.closed &&
    a.headers.length === b.headers.length &&
    a.headers.every((header, index) => header === b.headers[index])
  );
}
