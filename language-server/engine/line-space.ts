/**
 * A text by lines, each with a place of its own on a long number line: a character's place is the place of its line
 * and its column. Lines keep their places when others come, go or grow, so that everything that was worked out about
 * them stays true (position-free meaning). Between two lines there is room for new ones; where it runs out, all lines
 * get new places.
 *
 * A line ends with `\n`, `\r\n` or a lone `\r`, as editors count them.
 */
import type { Written } from '../../grammar/syntax/tree.ts';

/** Counted from 0, in UTF-16 units. */
export interface LinePosition {
  line: number;
  column: number;
}

/** What an edit did to the lines. */
export interface LineChange {
  /** The first and the last line that are new or other than before; `last` is `first - 1` where lines only went. */
  first: number;
  last: number;
  /** The lines that they stand for, with their places. */
  removed: { text: string; place: number }[];
  /** All places are new. */
  renumbered: boolean;
}

/** Room that a line has for growing before the next one may come. */
const SLACK = 48;
/** Places that are dealt out: what fits into a small integer is quickest. */
const SPACE = 2 ** 30;
const MOST_APART = 2 ** 15;

export class LineSpace implements Written {
  /** The lines, each with its line end. */
  private lines: string[];
  private places: number[] = [];
  private whole: string | undefined;

  constructor(text: string) {
    this.lines = linesIn(text);
    this.whole = text;
    this.number();
  }

  get count(): number {
    return this.lines.length;
  }

  get text(): string {
    this.whole ??= this.lines.join('');
    return this.whole;
  }

  line(index: number): string {
    return this.lines[index]!;
  }

  /** Where a line begins on the number line. */
  place(index: number): number {
    return this.places[index]!;
  }

  /** The lines from one to another (that one not included). */
  stretch(from: number, to: number): string {
    return this.lines.slice(from, to).join('');
  }

  /** The line that a place lies in. */
  lineAt(place: number): number {
    const { places } = this;
    let low = 0;
    let high = places.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (places[middle]! <= place) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  positionAt(place: number): LinePosition {
    const line = this.lineAt(place);
    const column = Math.min(Math.max(0, place - this.places[line]!), lengthOf(this.lines[line]!));
    return { line, column };
  }

  /** The text between two places. */
  slice(start = 0, end = Number.MAX_SAFE_INTEGER): string {
    const from = this.lineAt(start);
    const to = this.lineAt(end);
    const [a, b] = [start - this.places[from]!, end - this.places[to]!];
    if (from === to) return this.lines[from]!.slice(a, Math.max(a, b));
    const middle = this.lines.slice(from + 1, to).join('');
    return this.lines[from]!.slice(a) + middle + this.lines[to]!.slice(0, b);
  }

  /** The place that lies so many characters behind another one. */
  after(place: number, count: number): number {
    let line = this.lineAt(place);
    let column = place - this.places[line]! + count;
    while (line < this.lines.length - 1 && column >= this.lines[line]!.length)
      column -= this.lines[line++]!.length;
    return this.places[line]! + column;
  }

  /** From an offset in the lines from `from` on to its place; offsets must be asked roughly in order. */
  placing(from = 0): (offset: number) => number {
    const { lines, places } = this;
    let line = from;
    let start = 0;
    return (offset) => {
      while (offset < start) start -= lines[--line]!.length;
      while (line < lines.length - 1 && offset >= start + lines[line]!.length) start += lines[line++]!.length;
      return places[line]! + offset - start;
    };
  }

  /** From a place to its offset in the whole text; takes one pass over the lines to make. */
  offsets(): (place: number) => number {
    const starts = [0];
    for (let index = 0; index < this.lines.length; index++)
      starts.push(starts[index]! + this.lines[index]!.length);
    return (place) => {
      const line = this.lineAt(place);
      return starts[line]! + Math.min(place - this.places[line]!, this.lines[line]!.length);
    };
  }

  offsetOf({ line, column }: LinePosition): number {
    let offset = 0;
    for (let index = 0; index < Math.min(line, this.lines.length); index++)
      offset += this.lines[index]!.length;
    return line >= this.lines.length ? offset : offset + Math.min(column, lengthOf(this.lines[line]!));
  }

  /** Puts `text` in place of what stands between two positions; one outside the text means its nearest place. */
  edit(start: LinePosition, end: LinePosition, text: string): LineChange {
    const from = this.inside(start);
    const to = this.inside(end);
    let first = from.line;
    let after = to.line + 1;
    let middle = this.lines[first]!.slice(0, from.column) + text + this.lines[to.line]!.slice(to.column);
    // A lone `\r` and a `\n` that come together are one line end.
    if (first > 0 && this.lines[first - 1]!.endsWith('\r')) middle = this.lines[--first] + middle;
    if (middle.endsWith('\r') && after < this.lines.length) middle += this.lines[after++];
    const fresh = linesIn(middle);
    // The piece behind the last line end belongs to the line that follows.
    if (after < this.lines.length && fresh.at(-1) === '') fresh.pop();
    return this.replace(first, after, fresh);
  }

  private inside({ line, column }: LinePosition): LinePosition {
    if (line < 0) return { line: 0, column: 0 };
    const last = this.lines.length - 1;
    if (line > last) return { line: last, column: this.lines[last]!.length };
    return { line, column: Math.max(0, Math.min(column, lengthOf(this.lines[line]!))) };
  }

  private replace(from: number, to: number, fresh: string[]): LineChange {
    const { lines } = this;
    let first = from;
    let last = to;
    let taken = 0;
    let left = fresh.length;
    while (first < last && taken < left && lines[first] === fresh[taken]) {
      first++;
      taken++;
    }
    while (last > first && left > taken && lines[last - 1] === fresh[left - 1]) {
      last--;
      left--;
    }
    const added = fresh.slice(taken, left);
    this.whole = undefined;
    const before = this.places.slice(first, last);
    const removed = lines.slice(first, last).map((text, index) => ({ text, place: before[index]! }));
    if (added.length < 10_000 && last - first < 10_000) {
      lines.splice(first, last - first, ...added);
      this.places.splice(first, last - first, ...added.map(() => 0));
    } else {
      this.lines = [...lines.slice(0, first), ...added, ...lines.slice(last)];
      this.places = [...this.places.slice(0, first), ...added.map(() => 0), ...this.places.slice(last)];
    }
    const renumbered = !this.settle(first, added.length, before);
    if (renumbered) this.number();
    return { first, last: first + added.length - 1, removed, renumbered };
  }

  /** Gives places to `count` lines from `first` on, those of the lines that they replace first; false where none fit. */
  private settle(first: number, count: number, before: readonly number[]): boolean {
    const { lines, places } = this;
    const end = places[first + count] ?? Number.MAX_SAFE_INTEGER;
    let least = first === 0 ? 0 : places[first - 1]! + lines[first - 1]!.length + 1;
    for (let index = 0; index < count; index++) {
      const old = before[index];
      const place = old !== undefined && old >= least ? old : least + SLACK;
      places[first + index] = place;
      least = place + lines[first + index]!.length + 1;
    }
    return least <= end;
  }

  private number(): void {
    const { lines } = this;
    const apart = Math.max(2 * SLACK, Math.min(MOST_APART, Math.floor(SPACE / (lines.length + 1))));
    let place = 0;
    this.places = lines.map((line) => {
      const own = place;
      place += Math.max(apart, line.length * 2 + SLACK);
      return own;
    });
  }
}

/** The length without the line end. */
function lengthOf(line: string): number {
  let end = line.length;
  if (end > 0 && line.charCodeAt(end - 1) === 10) end--;
  if (end > 0 && line.charCodeAt(end - 1) === 13) end--;
  return end;
}

/** Lines with their ends; the last one has none, and may be empty. */
export function linesIn(text: string): string[] {
  const lines: string[] = [];
  let start = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code !== 10 && code !== 13) continue;
    if (code === 13 && text.charCodeAt(at + 1) === 10) at++;
    lines.push(text.slice(start, at + 1));
    start = at + 1;
  }
  lines.push(text.slice(start));
  return lines;
}
