/** Walking the plain data of a syntax tree: for properties that hold of every node. */

import { parse } from '../../grammar/parser/parse.ts';
import type { Action, FileItem, Machine, Procedure, Span, Statement } from '../../grammar/syntax/tree.ts';

export interface Visited {
  node: Span;
  parent: Span | undefined;
  path: string;
}

/** Every object with a range in the tree, parents first. */
export function visit(tree: Span): Visited[] {
  const all: Visited[] = [];
  const walk = (value: unknown, parent: Span | undefined, path: string): void => {
    if (Array.isArray(value)) {
      value.forEach((one, i) => {
        walk(one, parent, `${path}[${i}]`);
      });
      return;
    }
    if (value === null || typeof value !== 'object') return;
    const node = value as Span;
    const ranged = typeof node.start === 'number' && typeof node.end === 'number';
    if (ranged) all.push({ node, parent, path });
    for (const [key, child] of Object.entries(value)) walk(child, ranged ? node : parent, `${path}.${key}`);
  };
  walk(tree, undefined, 'file');
  return all;
}

/** The names of machines, procedures and their tasks in order: what an outline shows first. */
export function outline(items: readonly FileItem[]): string[] {
  const names: string[] = [];
  for (const item of items) {
    if (item.kind === 'declaration') names.push(`${item.type} ${item.name?.text}`);
    else if (item.kind === 'machine') names.push(`machine ${item.name?.text}`, ...declarations(item));
    else if (item.kind === 'procedure') {
      names.push(`procedure ${item.name?.text}`);
      for (const statement of item.body?.statements ?? []) {
        if (statement.kind === 'task') names.push(`task ${statement.name?.text}`);
      }
    }
  }
  return names;
}

function declarations(machine: Machine): string[] {
  return machine.items.flatMap((item) =>
    item.kind === 'declaration' ? [`${item.type} ${item.name?.text}`] : [],
  );
}

/** The statements of the first procedure around the given lines. */
export function statementsOf(lines: string): { statements: Statement[]; problems: string[] } {
  const parsed = parse(`procedure p {\n${lines}\n}\n`);
  const procedure = parsed.tree.items.find((item): item is Procedure => item.kind === 'procedure');
  return {
    statements: procedure?.body?.statements ?? [],
    problems: parsed.problems.map((problem) => `${problem.check}: ${problem.message}`),
  };
}

/** The one action of a line, which must have no problem. */
export function actionOf(line: string): Action {
  const { statements, problems } = statementsOf(line);
  if (problems.length > 0) throw new Error(`“${line}”: ${problems.join('; ')}`);
  const [first, ...rest] = statements;
  if (first?.kind !== 'action' || rest.length > 0) throw new Error(`“${line}” is not one action`);
  return first;
}
