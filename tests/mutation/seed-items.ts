/** What a seed needs of a machine and of a text: names by kind, edits, line numbers. */
import { parse } from '../../grammar/parser/parse.ts';
import type { Action, Block, Declaration, Span, Statement } from '../../grammar/syntax/tree.ts';

/** The declarations of a text, by name. */
export type Items = ReadonlyMap<string, Declaration>;

export function itemsIn(text: string): Items {
  const all = parse(text).tree.items.flatMap((item) => (item.kind === 'machine' ? item.items : [item]));
  return new Map(
    all.flatMap((item) =>
      item.kind === 'declaration' && item.name ? [[item.name.text, item] as const] : [],
    ),
  );
}

export function replaced(source: string, { start, end }: Span, text: string): string {
  return source.slice(0, start) + text + source.slice(end);
}

export function lineAt(source: string, offset: number): number {
  return source.slice(0, offset).split('\n').length;
}

/** One line of the text, to say what was changed. */
export function saidAt(source: string, { start, end }: Span): string {
  return source.slice(start, end).split('\n')[0]!.trim().slice(0, 70);
}

/** Every list of statements, however deep it stands. */
export function* lists(block: Block): Generator<readonly Statement[]> {
  yield block.statements;
  for (const statement of block.statements) {
    if ('body' in statement && statement.body) yield* lists(statement.body);
    if ('otherwise' in statement && statement.otherwise) yield* lists(statement.otherwise);
    if (statement.kind === 'action')
      for (const outcome of statement.outcomes) if (outcome.body) yield* lists(outcome.body);
  }
}

export function actionsIn(block: Block): Action[] {
  return [...lists(block)].flatMap((list) => list.filter((one): one is Action => one.kind === 'action'));
}
