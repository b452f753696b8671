/** Links from a document to tasks and procedures, and what these are called. */
import type { Text } from '../../../grammar/syntax/tree.ts';
import { headerOf } from '../../lists/lists.ts';
import type { Written } from '../../lists/written.ts';
import { patterned } from '../sentences/rich.ts';
import { capital, type Words } from '../words/words.ts';
import type { FlowItem, ProcedureLink, Rich } from './types.ts';

export function titleOf(title: Text | undefined, name = ''): string {
  return title?.value ?? capital(name.replaceAll('-', ' '));
}

export function linkOf(
  procedure: Extract<Written, { kind: 'do procedure' }>['procedure'],
  file: string,
  name: string,
): ProcedureLink {
  const document = headerOf(procedure, 'document');
  const elsewhere = headerOf(procedure, 'elsewhere')?.text?.value;
  return {
    id: name,
    title: titleOf(procedure.title, name),
    ...(document?.number ? { number: document.number.value } : {}),
    ...(document?.issue === undefined ? {} : { issue: document.issue }),
    file,
    ...(elsewhere === undefined ? {} : { elsewhere }),
  };
}

/** Copies of tasks say which task they are copies of: known only when every task has its number. */
export function linkTasks(items: readonly FlowItem[], words: Words): void {
  const tasks = new Map<string, { number: string; title: string }>();
  const walk = (list: readonly FlowItem[], visit: (item: FlowItem) => void): void => {
    for (const item of list) {
      visit(item);
      if ('items' in item) walk(item.items, visit);
      if (item.kind === 'branch') for (const way of item.ways) walk(way.items, visit);
      if (item.kind === 'repeat' && item.otherwise) walk(item.otherwise.items, visit);
      if (item.kind === 'step') for (const row of item.measurement?.rows ?? []) walk(row.items, visit);
    }
  };
  walk(items, (item) => {
    if (item.kind === 'task') tasks.set(item.id.split('.').at(-1)!, item);
  });
  walk(items, (item) => {
    if (item.kind !== 'group' || (item.origin.kind !== 'task' && item.origin.kind !== 'reverse')) return;
    const task = tasks.get(item.origin.task);
    if (!task) return;
    const key = item.origin.kind === 'reverse' ? 'group.reverse' : 'group.task';
    const title: Rich = [{ kind: 'link', text: task.title, target: item.origin.task, to: 'task' }];
    item.note = patterned(words.pattern(key), { number: task.number, title });
  });
}
