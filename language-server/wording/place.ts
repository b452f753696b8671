/** From a place in the value of a text to the place in the file: escapes are undone in it, texts in a row are joined. */
import type { Span, Text, Written } from '../../grammar/syntax/tree.ts';

/** `from`, `to`: offsets in `text.value`. `source` is the whole file by the offsets of its tree. */
export function placeInText(source: Written, text: Text, from: number, to: number): Span {
  const typed = source.slice(text.start, text.end);
  // The usual text: one, with nothing escaped.
  if (typed.length === text.value.length + 2 && !typed.includes('\\'))
    return { start: text.start + 1 + from, end: text.start + 1 + to };
  const starts: number[] = [];
  let inside = false;
  for (let at = 0; at < typed.length; at++) {
    const character = typed[at]!;
    if (character === '"') {
      // The space that joins the next text to this one.
      if (!inside && starts.length > 0) starts.push(at);
      inside = !inside;
      continue;
    }
    if (!inside) continue;
    starts.push(at);
    if (character === '\\') at++;
  }
  const first = starts[from];
  const last = starts[to - 1];
  if (first === undefined || last === undefined) return { start: text.start, end: text.end };
  const place = (at: number) => source.after?.(text.start, at) ?? text.start + at;
  return { start: place(first), end: place(last) + (typed[last] === '\\' ? 2 : 1) };
}
