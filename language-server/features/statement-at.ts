/** The statement of a procedure that a place lies in. */
import type { SourceFile, Span, Statement } from '../../grammar/syntax/tree.ts';

/** The innermost statement that a place lies in. */
export function statementAt(tree: SourceFile, { start, end }: Span): Statement | undefined {
  let found: Statement | undefined;
  const visit = (statements: readonly Statement[] | undefined): void => {
    for (const statement of statements ?? []) {
      if (statement.start > start || statement.end < Math.min(end, start + 1)) continue;
      found = statement;
      if (statement.kind === 'action') for (const { body } of statement.outcomes) visit(body?.statements);
      if ('body' in statement) visit(statement.body?.statements);
      if ('otherwise' in statement) visit(statement.otherwise?.statements);
    }
  };
  for (const item of tree.items) if (item.kind === 'procedure') visit(item.body?.statements);
  return found;
}
