/** Changes to a stretch of an author's text, and how a written-out piece takes the place of a statement. */
import type { Comment, Span } from '../../grammar/syntax/tree.ts';

/** Puts `text` in the place of what stands from `start` to `end`; offsets are those of the whole file. */
export interface Edit extends Span {
  text: string;
}

/** The stretch with the changes that lie in it, which do not overlap. */
export function spliced(text: string, { start, end }: Span, edits: readonly Edit[]): string {
  const parts: string[] = [];
  let at = start;
  for (const edit of [...edits].sort((a, b) => a.start - b.start)) {
    parts.push(text.slice(at, edit.start), edit.text);
    at = edit.end;
  }
  parts.push(text.slice(at, end));
  return parts.join('');
}

/**
 * The written-out text in the place of a statement, on lines of its own: what stands before or behind the statement on
 * its line stays where it is. Comments inside the statement that are not in what was written out come first.
 */
export function inPlaceOf(
  text: string,
  statement: Span,
  written: string,
  comments: readonly Comment[],
): Edit {
  const { start, end } = statement;
  const before = text.slice(text.lastIndexOf('\n', start - 1) + 1, start);
  const lineEnd = text.indexOf('\n', end);
  const behind = text.slice(end, lineEnd < 0 ? undefined : lineEnd).trim();
  const body = [...comments.map((comment) => text.slice(comment.start, comment.end)), written].join('\n');
  const lastLine = body.slice(body.lastIndexOf('\n') + 1);
  const joins = behind === '' || (behind.startsWith('//') && !lastLine.includes('//'));
  return { start, end, text: `${before.trim() === '' ? '' : '\n'}${body}${joins ? '' : '\n'}` };
}
