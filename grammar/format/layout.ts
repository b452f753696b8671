/** What every part of the layout shares: the text, the plan that is being made, and blocks in braces. */
import type { ParsedFile, Span } from '../syntax/tree.ts';
import type { KeptLines } from './kept.ts';
import { AT_MOST_ONE, type GapPlan, ONE } from './plan.ts';
import type { Source } from './source.ts';

export const WIDTH = 100;
export const STEP = 2;

export interface Layout {
  source: Source;
  plan: GapPlan;
  kept: KeptLines;
  problems: ParsedFile['problems'];
}

/** The tokens of a node by number. */
export interface Extent {
  first: number;
  last: number;
}

export function extentOf(layout: Layout, node: Span): Extent {
  return { first: layout.source.at(node.start), last: layout.source.lastBefore(node.end) };
}

/** A node whose continuation lines stand one step further in than its first. */
export function continued(layout: Layout, node: Span, indent: number): Extent {
  const extent = extentOf(layout, node);
  layout.plan.continued(extent.first + 1, extent.last, indent + STEP);
  return extent;
}

/** A leaf: what can only be kept or laid out as a whole. */
export function leaf(layout: Layout, node: Span, indent: number): Extent {
  layout.kept.keepIfTroubled(node);
  return continued(layout, node, indent);
}

/** What stands before the block of a node; with its brace, which stays on the line. */
export function head(
  layout: Layout,
  node: Span,
  title: Span | undefined,
  brace: number,
  indent: number,
): void {
  const { source, plan, kept } = layout;
  titled(layout, title, indent);
  if (!source.is(brace, '{')) {
    kept.keepIfTroubled(node);
    return;
  }
  kept.keepIfTroubled({ start: node.start, end: source.tokens[brace]!.start });
  plan.together(brace, indent);
}

export interface Children<Child extends Span> {
  children: readonly Child[];
  /** Lays out a child that begins a line in the given column. */
  each(child: Child, indent: number): void;
  /** An empty line is wanted between the two. */
  parted?(before: Child, after: Child): boolean;
}

/** What stands in the braces of a block, one child a line; nothing at all as `{ }`. */
export function block<Child extends Span>(
  layout: Layout,
  brace: number,
  indent: number,
  what: Children<Child>,
): void {
  const { source, plan } = layout;
  const closing = source.partner[brace] ?? -1;
  if (closing < 0) return;
  if (isEmpty(layout, brace)) {
    plan.together(closing, indent);
    return;
  }
  plan.continued(brace + 1, closing - 1, indent + STEP);
  inside(layout, brace + 1, closing - 1, indent + STEP, what);
  plan.newLine(closing, indent, AT_MOST_ONE);
}

/** The same without braces, as at the top of a file. */
export function inside<Child extends Span>(
  layout: Layout,
  first: number,
  last: number,
  indent: number,
  what: Children<Child>,
): void {
  const { source, plan } = layout;
  let next = first;
  let before: Child | undefined;
  for (const child of what.children) {
    const start = source.at(child.start);
    keepUnread(layout, next, start - 1);
    const parted = before !== undefined && what.parted?.(before, child) === true;
    plan.newLine(start, indent, parted ? ONE : AT_MOST_ONE);
    what.each(child, indent);
    next = Math.max(next, source.lastBefore(child.end) + 1);
    before = child;
  }
  keepUnread(layout, next, last);
}

export function isEmpty(layout: Layout, brace: number): boolean {
  const { source } = layout;
  return source.partner[brace] === brace + 1 && !source.hasComment(brace + 1);
}

/** A part of a line that no break of the author and no comment parts, and that fits. */
export function fitsOneLine(layout: Layout, { first, last }: Extent, indent: number): boolean {
  return !layout.source.breaksWithin(first, last) && indent + layout.plan.width(first, last) <= WIDTH;
}

/** Clauses of one sentence: on its line two spaces apart from each other. */
export function wideBetween(layout: Layout, nodes: readonly Span[]): void {
  for (let i = 1; i < nodes.length; i += 1) layout.plan.wide[layout.source.at(nodes[i]!.start)] = 1;
}

/** Puts a title directly behind the name it belongs to. */
export function titled(layout: Layout, title: Span | undefined, indent: number): void {
  if (title) layout.plan.together(layout.source.at(title.start), indent + STEP);
}

/** Tokens that belong to no node: the parser has stepped over them, so their lines are left alone. */
function keepUnread(layout: Layout, first: number, last: number): void {
  const { source, kept, plan } = layout;
  for (let i = first; i <= last; i += 1) {
    if (source.is(i, ';')) plan.together(i, plan.indents[i]!);
    else if (layout.problems.length > 0) kept.keep(source.tokens[i]!);
  }
}
