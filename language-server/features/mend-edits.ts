/**
 * Steps as pieces of text: putting some in, taking one out, moving one, taking one name out of a list. Gives
 * replacements; the result reads as it should but is laid out only roughly.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Action } from '../../grammar/syntax/tree.ts';
import { beforeNotices, type Site, type Spot } from './mend-outline.ts';

/** The text with replacements made, which must not overlap. */
export function edited(text: string, edits: readonly Edit[]): string {
  let result = '';
  let at = 0;
  for (const edit of inOrder(edits)) {
    result += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return result + text.slice(at);
}

export function overlap(edits: readonly Edit[]): boolean {
  const sorted = inOrder(edits);
  return sorted.some((edit, index) => index > 0 && edit.start < sorted[index - 1]!.end);
}

function inOrder(edits: readonly Edit[]): Edit[] {
  return [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
}

/** Lines put in at a place. */
export function put(text: string, { block, index }: Site, lines: readonly string[]): Edit {
  const next = block.statements[index];
  if (next) {
    const line = lineStart(text, next.start);
    const blanks = text.slice(line, next.start);
    if (blanks.trim() !== '') return at(next.start, lines.map((one) => `${one}\n`).join(''));
    return at(ownComments(text, line), lines.map((one) => `${blanks}${one}\n`).join(''));
  }
  const last = block.statements[block.statements.length - 1];
  if (!last) return at(block.start + 1, ` ${lines.join('\n')} `);
  const line = lineStart(text, last.start);
  const blanks = text.slice(line, last.start);
  const indent = blanks.trim() === '' ? blanks : '';
  return at(behind(text, last.end), lines.map((one) => `\n${indent}${one}`).join(''));
}

/** A statement taken out, with its line where it has one of its own, and with the step that it is all of. */
export function cut(text: string, spot: Spot, alone = false): Edit {
  const { statement, block, parents } = spot;
  const step = parents[parents.length - 1];
  if (!alone && step?.statement.kind === 'step' && block.statements.length === 1) return cut(text, step);
  const line = lineStart(text, statement.start);
  const end = lineEnd(text, statement.end);
  const rest = text.slice(statement.end, end).trim();
  if (text.slice(line, statement.start).trim() === '' && (rest === '' || rest.startsWith('//')))
    return { start: line, end: Math.min(end + 1, text.length), text: '' };
  return { start: statement.start, end: statement.end, text: '' };
}

/** A statement moved to a place; nothing where it stands there. With the notices right before it, if asked. */
export function moved(text: string, spot: Spot, site: Site, withNotices = false): Edit[] | undefined {
  const { block, statement } = spot;
  const first = withNotices ? beforeNotices(spot).index : spot.index;
  if (withNotices && first === spot.index) return undefined;
  if (block === site.block && site.index >= first && site.index <= spot.index + 1) return undefined;
  if (site.block.start >= statement.start && site.block.end <= statement.end) return undefined;
  const cuts: Edit[] = [];
  const lines: string[] = [];
  for (let index = first; index <= spot.index; index++) {
    const one = block.statements[index]!;
    const taken = cut(text, { ...spot, statement: one, index }, first < spot.index);
    cuts.push(taken);
    // A comment that ends its line goes along.
    lines.push(text.slice(one.start, Math.max(one.end, text.slice(0, taken.end).trimEnd().length)));
  }
  const edits = [...cuts, put(text, site, lines)];
  return overlap(edits) ? undefined : edits;
}

/** One name taken out of a step; the whole step where there is no other. */
export function without(text: string, spot: Spot, action: Action, name: string): Edit[] {
  const left = action.objects.filter((ref) => ref.name.text !== name);
  if (left.length === 0 || left.length === action.objects.length) return [cut(text, spot)];
  return [{ ...objectSpan(action), text: listed(text, action, left) }];
}

/** The step as it would be for one of its names alone. */
export function alone(text: string, action: Action, name: string): string {
  const own = action.objects.filter((ref) => ref.name.text === name);
  if (own.length === 0 || own.length === action.objects.length) return text.slice(action.start, action.end);
  const { start, end } = objectSpan(action);
  return text.slice(action.start, start) + listed(text, action, own) + text.slice(end, action.end);
}

/** Other words before the names: `fit new` for `refit`. */
export function withVerb(text: string, action: Action, words: string): Edit | undefined {
  const first = action.objects[0];
  if (!first || text.slice(action.word.start, first.start).includes('\n')) return undefined;
  return { start: action.word.start, end: first.start, text: `${words} ` };
}

function objectSpan(action: Action): { start: number; end: number } {
  return { start: action.objects[0]!.start, end: action.objects[action.objects.length - 1]!.end };
}

function listed(text: string, action: Action, refs: Action['objects']): string {
  const words = refs.map((ref) => text.slice(ref.start, ref.end));
  if (!action.together || words.length < 2) return words.join(', ');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

function at(place: number, text: string): Edit {
  return { start: place, end: place, text };
}

function lineStart(text: string, place: number): number {
  return text.lastIndexOf('\n', place - 1) + 1;
}

function lineEnd(text: string, place: number): number {
  const end = text.indexOf('\n', place);
  return end < 0 ? text.length : end;
}

/** The start of the comment lines right above a line: they belong to what follows. */
function ownComments(text: string, line: number): number {
  let start = line;
  while (start > 0) {
    const above = lineStart(text, start - 1);
    if (!text.slice(above, start).trimStart().startsWith('//')) break;
    start = above;
  }
  return start;
}

/** Behind a statement and the comment that ends its line. */
function behind(text: string, place: number): number {
  const end = lineEnd(text, place);
  return text.slice(place, end).trimStart().startsWith('//') ? end : place;
}

/** What differs between two texts, as a range of the second. */
export function changedSpan(before: string, after: string): { start: number; end: number } {
  let start = 0;
  const most = Math.min(before.length, after.length);
  while (start < most && before[start] === after[start]) start++;
  let same = 0;
  while (same < most - start && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
  return { start, end: after.length - same };
}
