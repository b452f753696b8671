/** The outline of a file: machines with their things, procedures with their tasks and steps. Plain data. */
import type { Block, SourceFile, Span } from '../../grammar/syntax/tree.ts';

export interface OutlineItem extends Span {
  name: string;
  detail: string;
  kind: 'machine' | 'procedure' | 'thing' | 'task' | 'step';
  /** The name itself. */
  at: Span;
  children: OutlineItem[];
}

export function outline(tree: SourceFile): OutlineItem[] {
  const items: OutlineItem[] = [];
  for (const item of tree.items) {
    if (item.kind === 'machine') {
      items.push({
        ...named(item, item.name?.text ?? 'machine', item.title?.value ?? '', 'machine', item.name),
        children: item.items.flatMap((one) =>
          one.kind === 'declaration' && one.name
            ? [named(one, one.name.text, `${one.type} ${one.title?.value ?? ''}`.trim(), 'thing', one.name)]
            : [],
        ),
      });
    } else if (item.kind === 'procedure') {
      items.push({
        ...named(item, item.name?.text ?? 'procedure', item.title?.value ?? '', 'procedure', item.name),
        children: steps(item.body),
      });
    } else if (item.kind === 'declaration' && item.name) {
      items.push(named(item, item.name.text, item.type, 'thing', item.name));
    }
  }
  return items;
}

function steps(block: Block | undefined): OutlineItem[] {
  return (block?.statements ?? []).flatMap((statement) => {
    if (statement.kind === 'task') {
      const title = statement.title?.value ?? '';
      return [
        {
          ...named(statement, statement.name?.text ?? 'task', title, 'task', statement.name),
          children: steps(statement.body),
        },
      ];
    }
    if (statement.kind === 'step')
      return [
        {
          ...named(statement, statement.title?.value ?? 'step', '', 'step', statement.title),
          children: steps(statement.body),
        },
      ];
    return [];
  });
}

function named(
  span: Span,
  name: string,
  detail: string,
  kind: OutlineItem['kind'],
  at: Span | undefined,
): OutlineItem {
  const place = at ?? { start: span.start, end: span.start };
  return {
    start: span.start,
    end: span.end,
    name: name || kind,
    detail,
    kind,
    at: { start: place.start, end: place.end },
    children: [],
  };
}
