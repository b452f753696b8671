/** The layout of procedures, their headers, statements and outcomes. */
import type { Action, Block, Outcome, Procedure, Span, Statement } from '../syntax/tree.ts';
import {
  block,
  continued,
  extentOf,
  head,
  type Layout,
  leaf,
  STEP,
  titled,
  WIDTH,
  wideBetween,
} from './layout.ts';
import { NONE } from './plan.ts';

export function layOutProcedure(layout: Layout, procedure: Procedure, indent: number): void {
  const { source, plan, kept } = layout;
  const { headers, body } = procedure;
  const { first, last } = continued(layout, procedure, indent);
  const brace = body ? source.at(body.start) : -1;
  const opened = source.is(brace, '{');
  const headEnd = opened ? brace - 1 : last;
  kept.keepIfTroubled({ start: procedure.start, end: source.tokens[headEnd]!.end });
  titled(layout, procedure.title, indent);
  wideBetween(layout, headers);
  const oneLine = { first, last: opened ? brace : last };
  const together =
    headers.length === 0 ||
    (!source.breaksWithin(first, headEnd) && indent + plan.width(oneLine.first, oneLine.last) <= WIDTH);
  if (!together) layOutHeaders(layout, headers, indent + STEP);
  if (!opened) return;
  if (together) plan.together(brace, indent);
  else plan.newLine(brace, indent, NONE);
  statements(layout, body!, brace, indent);
}

/** Headers share a line where the author wrote them so and they fit. */
function layOutHeaders(layout: Layout, headers: readonly Span[], indent: number): void {
  const { source, plan } = layout;
  let line: Span[] = [];
  const finish = () => {
    const width =
      line.length > 1 ? plan.width(source.at(line[0]!.start), source.lastBefore(line.at(-1)!.end)) : 0;
    for (const [i, header] of line.entries()) {
      const start = source.at(header.start);
      if (i === 0 || indent + width > WIDTH) plan.newLine(start, indent, NONE);
    }
    line = [];
  };
  for (const header of headers) {
    const { first, last } = extentOf(layout, header);
    if (source.breaksBefore(first)) finish();
    plan.continued(first + 1, last, indent + STEP);
    line.push(header);
  }
  finish();
}

function statements(layout: Layout, body: Block, brace: number, indent: number): void {
  block(layout, brace, indent, {
    children: body.statements,
    each: (statement, inner) => layOutStatement(layout, statement, inner),
    parted: (before, after) => before.kind === 'task' || after.kind === 'task',
  });
}

function layOutStatement(layout: Layout, statement: Statement, indent: number): void {
  switch (statement.kind) {
    case 'task':
    case 'step':
      layOutBlocks(layout, statement, statement.title, [statement.body], indent);
      return;
    case 'hold':
    case 'for each':
      layOutBlocks(layout, statement, undefined, [statement.body], indent);
      return;
    case 'when':
    case 'if':
    case 'repeat':
      layOutBlocks(layout, statement, undefined, [statement.body, statement.otherwise], indent);
      return;
    case 'action':
      layOutAction(layout, statement, indent);
      return;
    case 'value':
      leaf(layout, statement, indent);
      titled(layout, statement.title, indent);
      return;
    case 'notice':
    case 'choice':
    case 'reverse':
    case 'do':
    case 'allow':
    case 'stop':
    case 'continues':
    case 'broken':
      leaf(layout, statement, indent);
  }
}

/** A statement with one block, or two with `otherwise` between them. */
function layOutBlocks(
  layout: Layout,
  node: Span,
  title: Span | undefined,
  blocks: readonly (Block | undefined)[],
  indent: number,
): void {
  const { source, plan } = layout;
  const extent = continued(layout, node, indent);
  const braces: number[] = [];
  let bodies: Block[] = [];
  for (const each of blocks) {
    const brace = each ? source.at(each.start) : -1;
    if (!each || !source.is(brace, '{')) continue;
    braces.push(brace);
    bodies = [...bodies, each];
  }
  head(layout, node, title, braces[0] ?? -1, indent);
  if (braces[1] !== undefined) {
    plan.together(braces[1] - 1, indent);
    plan.together(braces[1], indent);
  }
  if (bodies.every(isShort) && staysOneLine(layout, extent, braces, indent)) return;
  for (const [i, body] of bodies.entries()) statements(layout, body, braces[i]!, indent);
}

/** Nothing, or one thing to do that has no block of its own. */
function isShort({ statements: [first, second] }: Block): boolean {
  if (first === undefined) return true;
  if (second !== undefined) return false;
  switch (first.kind) {
    case 'task':
    case 'step':
    case 'hold':
    case 'for each':
    case 'when':
    case 'if':
    case 'repeat':
      return false;
    case 'action':
      return first.outcomes.length === 0;
    default:
      return true;
  }
}

/** The author wrote it on one line (but for the places before braces), and it fits. */
function staysOneLine(
  layout: Layout,
  extent: { first: number; last: number },
  braces: readonly number[],
  indent: number,
): boolean {
  const { source, plan } = layout;
  let from = extent.first;
  for (const brace of braces) {
    const before = source.is(brace - 2, '}') ? brace - 2 : brace - 1;
    if (source.breaksWithin(from, before)) return false;
    for (let i = before + 1; i <= brace; i += 1) if (source.hasComment(i)) return false;
    from = brace;
  }
  return !source.breaksWithin(from, extent.last) && indent + plan.width(extent.first, extent.last) <= WIDTH;
}

function layOutAction(layout: Layout, action: Action, indent: number): void {
  const { source } = layout;
  const { first, last } = extentOf(layout, action);
  const brace = source.openingBrace(first, last);
  if (brace < 0) {
    leaf(layout, action, indent);
    return;
  }
  continued(layout, action, indent);
  head(layout, action, undefined, brace, indent);
  block(layout, brace, indent, {
    children: action.outcomes,
    each: (outcome, inner) => layOutOutcome(layout, outcome, inner),
  });
}

function layOutOutcome(layout: Layout, outcome: Outcome, indent: number): void {
  layOutBlocks(layout, outcome, undefined, [outcome.body], indent);
}
