/** Which procedures use which: for looking up who carries out a procedure, and what it carries out. */
import type { Procedure, Span, Statement } from '../../grammar/syntax/tree.ts';
import { findProcedure } from '../model/names.ts';
import type { View } from './view.ts';

export interface ProcedurePlace {
  path: string;
  procedure: Procedure;
}

export interface Call extends ProcedurePlace {
  /** Where the using procedure names the used one. */
  at: Span[];
}

/** The procedure whose name or use is at an offset, else the one around it. */
export function procedureAt(view: View, path: string, offset: number): ProcedurePlace | undefined {
  const file = view.file(path);
  const around = file?.procedures.find(({ start, end }) => start <= offset && offset <= end);
  if (!file || !around) return undefined;
  const use = usesIn(around).find(({ start, end }) => start <= offset && offset <= end);
  const found = use && findProcedure(view.visible(file), use.text);
  return found ? { path: found.file.path, procedure: found.procedure } : { path, procedure: around };
}

/** What a procedure carries out, each once. */
export function callsFrom(view: View, { path, procedure }: ProcedurePlace): Call[] {
  const file = view.file(path);
  const calls = new Map<Procedure, Call>();
  for (const use of file ? usesIn(procedure) : []) {
    const found = findProcedure(view.visible(file!), use.text);
    if (!found) continue;
    const call = calls.get(found.procedure) ?? { path: found.file.path, procedure: found.procedure, at: [] };
    calls.set(found.procedure, call);
    call.at.push({ start: use.start, end: use.end });
  }
  return [...calls.values()];
}

/** Who carries out a procedure, among some files. */
export function callsTo(view: View, paths: readonly string[], wanted: ProcedurePlace): Call[] {
  const result: Call[] = [];
  for (const path of new Set([wanted.path, ...paths])) {
    for (const procedure of view.file(path)?.procedures ?? []) {
      const calls = callsFrom(view, { path, procedure }).filter((call) => same(call, wanted));
      const at = calls.flatMap((call) => call.at);
      if (at.length > 0) result.push({ path, procedure, at });
    }
  }
  return result;
}

function same(one: ProcedurePlace, other: ProcedurePlace): boolean {
  return one.path === other.path && one.procedure.start === other.procedure.start;
}

/** `do` and `starts where`, where the name is no task of the procedure's own. */
function usesIn(procedure: Procedure) {
  const names = procedure.headers.flatMap((header) =>
    header.header === 'starts where' && header.ref ? [header.ref.name] : [],
  );
  const tasks = new Set<string>();
  const visit = (statements: readonly Statement[] | undefined): void => {
    for (const statement of statements ?? []) {
      if (statement.kind === 'task' && statement.name) tasks.add(statement.name.text);
      if (statement.kind === 'do' && statement.ref) names.push(statement.ref);
      if (statement.kind === 'action') for (const { body } of statement.outcomes) visit(body?.statements);
      if ('body' in statement) visit(statement.body?.statements);
      if ('otherwise' in statement) visit(statement.otherwise?.statements);
    }
  };
  visit(procedure.body?.statements);
  return names.filter(({ text }) => !tasks.has(text));
}
