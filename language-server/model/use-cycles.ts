/** Procedures and tasks that come back to themselves by `do`: they could never end. */
import type { Block, Do, Procedure, Task } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { findProcedure, type LoadedFile } from './names.ts';
import { namesAfterDo } from './row.ts';

interface Node {
  item: Procedure | Task;
  procedure: Procedure;
  file: LoadedFile;
}

/** A fact at each `do` of the procedure from which the way leads back to what it stands in. */
export function useCycles(procedure: Procedure, file: LoadedFile, visible: readonly LoadedFile[]): Fact[] {
  if (namesAfterDo(procedure).size === 0) return [];
  const facts: Fact[] = [];
  for (const { ref, within } of usesOf(procedure.body, [procedure])) {
    if (!ref) continue;
    const target = resolve(ref.text, { item: procedure, procedure, file }, visible);
    if (!target || !leadsTo(target, new Set(within), visible)) continue;
    const at = { file: file.path, start: ref.start, end: ref.end };
    facts.push({ check: 'use-cycle', at, words: { name: ref.text, of: 'do' } });
  }
  return facts;
}

function leadsTo(from: Node, goals: ReadonlySet<Procedure | Task>, visible: readonly LoadedFile[]): boolean {
  const met = new Set<Procedure | Task>([from.item]);
  const open = [from];
  for (const node of open) {
    if (goals.has(node.item)) return true;
    for (const { ref } of usesOf(node.item.body, [])) {
      const next = ref && resolve(ref.text, node, visible);
      if (!next || met.has(next.item)) continue;
      met.add(next.item);
      open.push(next);
    }
  }
  return false;
}

function resolve(name: string, { procedure, file }: Node, visible: readonly LoadedFile[]): Node | undefined {
  const task = taskNamed(procedure.body, name);
  if (task) return { item: task, procedure, file };
  const found = findProcedure(visible, name);
  return found && { item: found.procedure, procedure: found.procedure, file: found.file };
}

function taskNamed(block: Block | undefined, name: string): Task | undefined {
  for (const statement of block?.statements ?? []) {
    if (statement.kind === 'task' && statement.name?.text === name) return statement;
    if (statement.kind !== 'task' && statement.kind !== 'step' && statement.kind !== 'hold') continue;
    const inner = taskNamed(statement.body, name);
    if (inner) return inner;
  }
  return undefined;
}

type Use = Do & { within: readonly (Procedure | Task)[] };

/** Every `do` in a block, with the tasks that it stands in. */
function usesOf(block: Block | undefined, within: readonly (Procedure | Task)[]): Use[] {
  return (block?.statements ?? []).flatMap((statement): Use[] => {
    switch (statement.kind) {
      case 'do':
        return [{ ...statement, within }];
      case 'task':
        return usesOf(statement.body, [...within, statement]);
      case 'step':
      case 'hold':
      case 'for each':
        return usesOf(statement.body, within);
      case 'when':
      case 'if':
      case 'repeat':
        return [...usesOf(statement.body, within), ...usesOf(statement.otherwise, within)];
      case 'action':
        return statement.outcomes.flatMap((outcome) => usesOf(outcome.body, within));
      default:
        return [];
    }
  });
}
