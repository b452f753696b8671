/** Files that a text names: what it uses, and pictures. */
import type { ParsedFile, Span, Statement, Text } from '../../grammar/syntax/tree.ts';

export interface Link extends Span {
  /** As typed, relative to the file. */
  target: string;
  what: 'use' | 'picture';
}

export function linksIn({ tree }: ParsedFile): Link[] {
  const links: Link[] = [];
  const add = (text: Text | undefined, what: Link['what']) => {
    // Between the quotation marks.
    if (text && text.value !== '')
      links.push({ start: text.start + 1, end: text.end - 1, target: text.value, what });
  };
  const statements = (list: readonly Statement[] | undefined): void => {
    for (const statement of list ?? []) {
      if (statement.kind === 'action') {
        for (const tail of statement.tails) if (tail.tail === 'picture') add(tail.file, 'picture');
        for (const { body } of statement.outcomes) statements(body?.statements);
      }
      if ('body' in statement) statements(statement.body?.statements);
      if ('otherwise' in statement) statements(statement.otherwise?.statements);
    }
  };
  for (const item of tree.items) {
    if (item.kind === 'use') add(item.path, 'use');
    if (item.kind === 'procedure') statements(item.body?.statements);
  }
  return links.sort((a, b) => a.start - b.start);
}
