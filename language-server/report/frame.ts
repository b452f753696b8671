/**
 * The piece of source that a finding shows: one line with carets under the place, cut where it is too long.
 * Says nothing about colour or about what stands around it (see text.ts).
 */
import { type Lines, linesOf } from './positions.ts';
import { type Cell, cellsOf } from './width.ts';

/** Columns of source that are shown at most. */
export const ROOM = 96;
/** Columns shown before the place where the front of a line is cut off. */
const LEAD = 24;
/** UTF-16 units of an endless line that are looked at on either side of the place. */
const REACH = 2000;

export interface Frame {
  /** Counted from 1. */
  line: number;
  source: string;
  /** Blanks before the carets, and how many carets. */
  indent: number;
  carets: number;
  /** The last line where the place goes on over several, counted from 1. */
  through?: number;
}

export function frameOf(lines: Lines, start: number, end: number): Frame {
  const from = lines.at(start);
  const to = lines.at(end);
  const { lineStart, line, cutFront, cutBack } = near(lines, from.line, from.column);
  const cells = cellsOf(line);
  const first = cells.findIndex((cell) => cell.end > start - lineStart);
  const begin = first < 0 ? cells.length : first;
  let stop = begin;
  while (stop < cells.length && cells[stop]!.start < end - lineStart) stop++;

  const { shown, before } = cut(cells, begin);
  const front = cutFront || shown.from > 0;
  const back = cutBack || shown.to < cells.length;
  const visible = Math.max(begin, Math.min(stop, shown.to));
  const frame: Frame = {
    line: from.line + 1,
    source: (front ? '…' : '') + textOf(cells, shown.from, shown.to) + (back ? '…' : ''),
    indent: (front ? 1 : 0) + before,
    carets: Math.max(1, widthOf(cells, begin, visible)),
  };
  // A place that ends where a line begins does not reach into that line.
  const last = to.column === 0 && to.line > from.line ? to.line - 1 : to.line;
  if (last > from.line) frame.through = last + 1;
  return frame;
}

/** The line, or the piece of it around the place where it is longer than any line that is meant to be read. */
function near(lines: Lines, line: number, column: number) {
  const { start, end } = lines.span(line);
  const text = lines.text(line);
  if (end - start <= REACH * 2) return { lineStart: start, line: text, cutFront: false, cutBack: false };
  const from = Math.max(0, column - REACH);
  const to = Math.min(text.length, column + REACH);
  return {
    lineStart: start + from,
    line: text.slice(from, to),
    cutFront: from > 0,
    cutBack: to < text.length,
  };
}

/** The cells to show so that the place is in sight, and the columns that stand before it. */
function cut(cells: readonly Cell[], begin: number): { shown: { from: number; to: number }; before: number } {
  let from = 0;
  if (widthOf(cells, 0, cells.length) > ROOM) {
    from = begin;
    for (let room = LEAD; from > 0 && room >= cells[from - 1]!.width; from--) room -= cells[from - 1]!.width;
  }
  let to = from;
  for (let room = ROOM; to < cells.length && room >= cells[to]!.width; to++) room -= cells[to]!.width;
  return { shown: { from, to }, before: widthOf(cells, from, begin) };
}

function widthOf(cells: readonly Cell[], from: number, to: number): number {
  let width = 0;
  for (let at = from; at < to; at++) width += cells[at]!.width;
  return width;
}

function textOf(cells: readonly Cell[], from: number, to: number): string {
  let text = '';
  for (let at = from; at < to; at++) text += cells[at]!.text;
  return text.trimEnd();
}

/** The lines of the files that a report shows, split once for each file. */
export function lineStore(read: (file: string) => string | undefined): (file: string) => Lines | undefined {
  const store = new Map<string, Lines | undefined>();
  return (file) => {
    if (!store.has(file)) {
      const text = read(file);
      store.set(file, text === undefined ? undefined : linesOf(text));
    }
    return store.get(file);
  };
}
