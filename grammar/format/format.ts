/**
 * The layout of Dowel: one, without options. Only blanks and line ends change: every token and comment stays
 * what it is and where it is in the order, and the text means the same.
 *
 * - Two spaces for each brace around a line; lines end with LF and have no trailing blanks; the text ends with
 *   one line end and has no byte-order mark.
 * - One statement a line. What continues a statement stands two spaces further in; the author's line breaks
 *   inside statements stay, and no line is ever broken inside a sentence.
 * - Between words one space; none before commas, colons and semicolons, inside brackets and around `..`; one on
 *   both sides of `=`, `±` and the signs of a sum. Between a number and its unit as typed.
 * - No empty line behind `{` or before `}`, at most one elsewhere, none inside a statement. One between a
 *   machine or procedure and what stands around it, one before and after a task.
 * - A declaration on one line has two spaces between its clauses and one before the first. One that the author
 *   wrote over several lines, or that is wider than 100 columns, has one clause a line; the count stays with
 *   the name.
 * - `plan { 8 N·m; 16 N·m }` stands on one line where it fits, else it has one stage a line.
 * - Headers of a procedure stand as the author grouped them: on its line, or indented on lines of their own,
 *   then with the brace of the body on its own line. Two spaces part headers on one line.
 * - `{ }` without anything in it. A block with one thing to do (or a rule of one sentence) stays on its line if
 *   the author wrote it there and it fits in 100 columns; any other block, and every machine, procedure and
 *   list of outcomes, has its contents on lines of their own. `otherwise` follows the brace before it.
 * - A comment behind something stays there, two spaces apart; a comment on its own line stays before what it
 *   stood before, and stands in its column. Comments do not count for the width.
 * - Lines of text that could not be read, and the whole of a statement or head that has such a line, stay as
 *   they are (but for line ends); with braces out of balance that is the whole machine or procedure.
 */
import { MAX_PROBLEMS, parse } from '../parser/parse.ts';
import type { FileItem, ParsedFile, Span } from '../syntax/tree.ts';
import { scan } from '../tokens/scan.ts';
import { KeptLines } from './kept.ts';
import { inside, type Layout, leaf } from './layout.ts';
import { layOutMachine, layOutMachineItem } from './machine.ts';
import { GapPlan } from './plan.ts';
import { layOutProcedure } from './procedure.ts';
import { firstDifference, sameTree } from './same.ts';
import { Source } from './source.ts';
import { applied, type Edit, edits } from './write.ts';

export type { Edit } from './write.ts';

/** The text in the one layout. `parsed` is what `parse` says of the same text, where that is known already. */
export function formatText(text: string, parsed: ParsedFile = parse(text)): string {
  return applied(text, formatEdits(text, parsed));
}

/**
 * What changes where something between two tokens reaches into the range, in the order of the text and without
 * overlap. Offsets are UTF-16 positions in `text`, `end` is exclusive.
 */
export function formatRange(
  text: string,
  start: number,
  end: number,
  parsed: ParsedFile = parse(text),
): Edit[] {
  return formatEdits(text, parsed).filter((edit) => edit.end >= start && edit.start <= end);
}

/** After this many lines had to be left alone the rest of the text is, too. */
const MOST_TRIES = 12;

/**
 * All changes, in the order of the text. The result is read again before it is given away: tokens always, the
 * tree where the text has problems. Without problems the layout ends lines only where something begins anyway.
 */
function formatEdits(text: string, parsed: ParsedFile): Edit[] {
  const source = new Source(text, parsed);
  const troubles = troubleSpots(source, parsed);
  const more: Span[] = source.balanced ? [] : unbalanced(parsed);
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const list = layOut(source, parsed, troubles, more);
    const text = applied(source.text, list);
    const differs = firstDifference(source, { text, tokens: scan(text).tokens });
    if (differs < 0) {
      if (parsed.problems.length === 0 || sameTree(parsed.tree, parse(text).tree)) return list;
      return [];
    }
    // Blanks that hold two tokens apart or together: that line is left alone.
    const before = source.tokens[Math.max(0, differs - 1)];
    const here = source.tokens[differs];
    if (before && here) more.push({ start: before.start, end: here.end });
    else return [];
  }
  return [];
}

function layOut(
  source: Source,
  parsed: ParsedFile,
  troubles: readonly Span[],
  more: readonly Span[],
): Edit[] {
  const kept = new KeptLines(source.text, troubles, more);
  const plan = new GapPlan(source);
  const layout: Layout = { source, plan, kept, problems: parsed.problems };
  inside(layout, 0, source.tokens.length - 1, 0, {
    children: parsed.tree.items,
    each: (item, indent) => layOutItem(layout, item, indent),
    parted,
  });
  plan.empties[source.tokens.length] = 1;
  return edits(plan, kept);
}

function layOutItem(layout: Layout, item: FileItem, indent: number): void {
  switch (item.kind) {
    case 'use':
      leaf(layout, item, indent);
      return;
    case 'machine':
      layOutMachine(layout, item, indent);
      return;
    case 'procedure':
      layOutProcedure(layout, item, indent);
      return;
    default:
      layOutMachineItem(layout, item, indent);
  }
}

/** Items of one line may follow each other as in a list: uses, and the fluids or tools of a shared file. */
function parted(before: FileItem, after: FileItem): boolean {
  if (before.kind === 'machine' || before.kind === 'procedure') return true;
  if (after.kind === 'machine' || after.kind === 'procedure') return true;
  return (before.kind === 'use') !== (after.kind === 'use');
}

/** Where the text could not be read. The parser lists no more than a certain number; what follows is unknown. */
function troubleSpots(source: Source, { problems }: ParsedFile): Span[] {
  const spots: Span[] = problems.map(({ start, end }) => ({ start, end }));
  if (problems.length > MAX_PROBLEMS)
    spots.push({ start: problems[problems.length - 1]!.start, end: source.text.length });
  return spots;
}

/** With a brace missing the levels are a guess from the indentation, which must then stay. */
function unbalanced({ tree, problems }: ParsedFile): Span[] {
  const spots: Span[] = [];
  for (const problem of problems) {
    if (problem.check !== 'brace-missing') continue;
    spots.push(problem);
    if (problem.related) spots.push(problem.related);
  }
  return tree.items.filter((item) => spots.some((spot) => spot.start <= item.end && spot.end >= item.start));
}
