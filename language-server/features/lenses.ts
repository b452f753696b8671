/**
 * What stands above a procedure and its tasks at a glance: findings, the time that is declared, how many
 * things are off or open when it ends.
 */

import { printReader } from '../../grammar/quantity/index.ts';
import type { Procedure, Span, Task } from '../../grammar/syntax/tree.ts';
import type { Run } from '../execution/run.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import type { Model } from '../model/model.ts';
import type { Finding } from '../report/finding.ts';
import { statesOf } from './state-at.ts';
import type { View } from './view.ts';

export interface Lens extends Span {
  title: string;
  what: 'findings' | 'time' | 'state';
  /** Where the state is meant that it tells of. */
  offset?: number;
}

/** What is not as on a machine in working order: what a technician would call undone. */
export const UNDONE: readonly string[] = [
  'off',
  'thrown away',
  'aside',
  'on trial',
  'out',
  'loose',
  'started by hand',
  'part tight',
  'disconnected',
  'capped',
  'open',
  'drained',
  'low',
  'isolated',
  'locked',
];

export function lenses(view: View, path: string, findings: readonly Finding[]): Lens[] {
  const file = view.file(path);
  const result: Lens[] = [];
  for (const procedure of file?.procedures ?? []) {
    const at = procedure.name ?? { start: procedure.start, end: procedure.start + 'procedure'.length };
    const place = { start: procedure.start, end: at.end };
    const own = findings.filter(
      ({ file: where, start }) => where === path && procedure.start <= start && start <= procedure.end,
    );
    result.push({ ...place, what: 'findings', title: findingsTitle(own) });
    const found = view.machineOf(procedure, file!);
    const time = procedure.headers.find((header) => header.header === 'time');
    const said =
      time?.header === 'time' ? readTyped(time.quantity, found?.model.values ?? new Map()) : undefined;
    if (said) result.push({ ...place, what: 'time', title: printReader(said) });
    if (!found || !procedure.body) continue;
    const end = endOf(procedure.body);
    const undone = countAt(view, procedure, path, found.model, end);
    result.push({ ...place, what: 'state', title: undoneTitle(undone, 'at the end'), offset: end });
    for (const task of tasksIn(procedure)) {
      const behind = task.body ? endOf(task.body) : task.end;
      const title = undoneTitle(countAt(view, procedure, path, found.model, behind), 'after this task');
      result.push({
        start: task.start,
        end: task.name?.end ?? task.start + 4,
        what: 'state',
        title,
        offset: behind,
      });
    }
  }
  return result;
}

function findingsTitle(findings: readonly Finding[]): string {
  const serious = findings.filter(({ severity }) => severity === 'error' || severity === 'warning').length;
  const hints = findings.length - serious;
  if (findings.length === 0) return 'nothing found';
  const parts = [
    serious > 0 ? `${serious} found` : '',
    hints > 0 ? `${hints} ${hints === 1 ? 'hint' : 'hints'}` : '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function undoneTitle(count: number, when: string): string {
  if (count === 0) return `nothing off ${when}`;
  return `${count} ${count === 1 ? 'thing' : 'things'} off or open ${when}`;
}

/** Just inside the closing brace. */
function endOf({ end, closed }: { end: number; closed: boolean }): number {
  return closed ? end - 1 : end;
}

/** How many things are off, loose, open, drained, isolated or locked before an offset. */
export function countAt(
  view: View,
  procedure: Procedure,
  path: string,
  model: Model,
  offset: number,
): number {
  const file = view.file(path);
  if (!file) return 0;
  return view.at(procedure, file, model, offset, countUndone);
}

function countUndone(run: Run): number {
  const names = new Set<string>();
  for (const group of statesOf(run)) {
    if (UNDONE.includes(group.state)) for (const { name } of group.things) names.add(name);
  }
  return names.size;
}

export function tasksIn(procedure: Procedure): Task[] {
  return (procedure.body?.statements ?? []).flatMap((statement) =>
    statement.kind === 'task' ? [statement] : [],
  );
}
