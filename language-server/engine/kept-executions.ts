/**
 * Executions of long procedures that are being edited, to be taken up again: those that were asked for last. Found by
 * file and name; what they rest on is compared.
 */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import type { Kept } from '../checks/kept.ts';
import { KeptExecution } from '../execution/kept-execution.ts';

/** Statements at the top of a procedure, or in its tasks, from which on keeping costs less than it saves. */
const LONG = 8;
const MOST_KEPT = 4;
/** Edits for which one that could not be taken up is carried out as a whole, before that is tried again. */
const PAUSE = 8;

type Asked = Parameters<Kept['execution']>[1];

interface Entry {
  readonly path: string;
  readonly name: string | undefined;
  readonly basis: readonly unknown[];
  readonly execution: KeptExecution | undefined;
  pause: number;
}

export class KeptExecutions {
  private readonly entries = new Map<string, Entry>();

  /** `more`: what else the findings rest on. */
  take(procedure: Procedure, on: Asked, more: readonly unknown[]): KeptExecution | undefined {
    if (!isLong(procedure)) return undefined;
    const key = `${on.file.path} ${procedure.name?.text}`;
    const basis = [on.model, ...more];
    const known = this.entries.get(key);
    if (known && isEqual(known.basis, basis)) {
      if (known.execution?.update(procedure)) {
        // The one that was asked for last goes last.
        this.entries.delete(key);
        this.entries.set(key, known);
        return known.execution;
      }
      if (!known.execution && known.pause-- > 0) return undefined;
    }
    const { path } = on.file;
    const execution = new KeptExecution({ ...on, procedure, file: path });
    this.entries.delete(key);
    this.dropGone(on.file);
    this.entries.set(key, {
      path,
      name: procedure.name?.text,
      basis,
      execution: execution.usable ? execution : undefined,
      pause: PAUSE,
    });
    for (const first of this.entries.keys()) {
      if (this.entries.size <= MOST_KEPT) break;
      this.entries.delete(first);
    }
    return execution;
  }

  /** Procedures that are no longer written in the file are kept no longer. */
  private dropGone({ path, procedures }: Asked['file']): void {
    const names = new Set(procedures.map(({ name }) => name?.text));
    for (const [key, entry] of this.entries)
      if (entry.path === path && !names.has(entry.name)) this.entries.delete(key);
  }
}

function isLong(procedure: Procedure): boolean {
  let count = 0;
  for (const statement of procedure.body?.statements ?? []) {
    count += 1 + (statement.kind === 'task' ? (statement.body?.statements.length ?? 0) : 0);
    if (count >= LONG) return true;
  }
  return false;
}

function isEqual(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
