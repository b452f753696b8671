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

export function rowOf(procedure: Procedure): Part[] {
  const row: Part[] = [];
  lay(procedure.body, row);
  return row;
}

function lay(block: Block | undefined, row: Part[]): void {
  for (const statement of block?.statements ?? []) {
    if (statement.kind === 'task') {
      row.push({ kind: 'enter', statement });
      lay(statement.body, row);
      row.push({ kind: 'leave', statement });
    } else if (statement.kind === 'step' || statement.kind === 'hold') {
      row.push({ kind: 'open', statement });
      lay(statement.body, row);
    } else row.push({ kind: 'do', statement });
  }
}

/** Carrying out one is carrying out the other. */
export function isSamePart(a: Part, b: Part): boolean {
  return a.kind === b.kind && (a.kind !== 'do' || a.statement === b.statement);
}

/** The names after `do` in a block, however deep they stand. */
export function namesAfterDo(block: Block | undefined): ReadonlySet<string> {
  return namesIn([block]).done;
}

/** Names in statements, however deep they stand: all that are carried out in place, and those after `do` alone. */
interface Names {
  all: ReadonlySet<string>;
  done: ReadonlySet<string>;
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
  let names: { all: Set<string>; done: Set<string> } | undefined;
  for (const block of blocks)
    for (const statement of block?.statements ?? []) {
      const inside = namesOf(statement);
      if (inside.all.size === 0) continue;
      names ??= { all: new Set(), done: new Set() };
      for (const name of inside.all) names.all.add(name);
      for (const name of inside.done) names.done.add(name);
    }
  return names ?? NO_NAMES;
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
