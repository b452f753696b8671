/** What can be folded away, and what grows round the cursor when a selection is widened. */
import type { Comment, ParsedFile, Span } from '../../grammar/syntax/tree.ts';

export interface Fold extends Span {
  kind: 'block' | 'comment' | 'uses';
}

/** Pieces that go over more than one line: blocks, runs of comments, the `use` lines. */
export function folds({ tree, comments }: ParsedFile, text: string): Fold[] {
  const result: Fold[] = [];
  const add = (span: Span, kind: Fold['kind']) => {
    if (text.slice(span.start, span.end).includes('\n'))
      result.push({ start: span.start, end: span.end, kind });
  };
  const uses = tree.items.filter(({ kind }) => kind === 'use');
  if (uses.length > 1) add({ start: uses[0]!.start, end: uses.at(-1)!.end }, 'uses');
  for (const run of runs(comments, text)) add(run, 'comment');
  visit(tree, (node, key) => {
    if (FOLDED.has(node.kind ?? '') || key === 'body' || key === 'otherwise' || key === 'plan')
      add(node, 'block');
  });
  // A statement and its block begin on the same line: the one that reaches further is kept.
  const byLine = new Map<string, Fold>();
  for (const fold of result) {
    const line = `${text.lastIndexOf('\n', fold.start)}`;
    const known = byLine.get(line);
    if (!known || known.end < fold.end) byLine.set(line, fold);
  }
  return [...byLine.values()].sort((a, b) => a.start - b.start);
}

const FOLDED: ReadonlySet<string> = new Set([
  'machine',
  'declaration',
  'procedure',
  'task',
  'step',
  'when',
  'if',
  'repeat',
  'for each',
  'hold',
  'rule',
  'table',
  'action',
  'notice',
]);

/** Comments on lines that follow one another. */
function runs(comments: readonly Comment[], text: string): Span[] {
  const result: Span[] = [];
  for (const { start, end } of comments) {
    const alone = text.slice(text.lastIndexOf('\n', start - 1) + 1, start).trim() === '';
    const last = result[result.length - 1];
    if (!alone) continue;
    if (last && /^\r?\n[ \t]*$/.test(text.slice(last.end, start))) last.end = end;
    else result.push({ start, end });
  }
  return result;
}

/** From the smallest piece round an offset to the whole text; each holds the one before. */
export function selections({ tree, tokens, comments }: ParsedFile, text: string, offset: number): Span[] {
  const around = ({ start, end }: Span) => start <= offset && offset <= end;
  const all: Span[] = [...tokens, ...comments].filter(around).map(({ start, end }) => ({ start, end }));
  visit(tree, (node) => {
    if (around(node)) all.push({ start: node.start, end: node.end });
  });
  for (const { start, end } of [...all]) {
    // Inside the quotation marks or braces first, then with them.
    if (
      /^["“{]/.test(text[start] ?? '') &&
      /["”}]$/.test(text.slice(start, end)) &&
      end - start > 2 &&
      start < offset &&
      offset < end
    )
      all.push({ start: start + 1, end: end - 1 });
  }
  all.push({ start: 0, end: text.length });
  const sorted = all.sort((a, b) => a.end - a.start - (b.end - b.start));
  const chain: Span[] = [];
  for (const span of sorted) {
    const last = chain[chain.length - 1];
    if (!last) chain.push(span);
    else if (
      span.start <= last.start &&
      last.end <= span.end &&
      span.end - span.start > last.end - last.start
    )
      chain.push(span);
  }
  return chain;
}

type Node = Span & { kind?: string };

function visit(value: unknown, see: (node: Node, key: string) => void, key = ''): void {
  if (Array.isArray(value)) {
    for (const one of value) visit(one, see, key);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  const node = value as Node;
  if (typeof node.start === 'number') see(node, key);
  for (const [name, one] of Object.entries(value)) visit(one, see, name);
}
