/**
 * A finding as a person reads it in a terminal: what is wrong in one sentence, the line it stands in, the
 * places that made it so, what to do. Words and line numbers share one margin, so that the page reads from
 * top to bottom like a job sheet. Gives text, prints nothing; colour comes from outside (see colour.ts).
 */
import type { Finding, Place, Severity } from './finding.ts';
import { type Frame, frameOf } from './frame.ts';
import type { Lines } from './positions.ts';
import { printable } from './width.ts';

/** What a piece of the report is; a painter may dress it, the default leaves it plain. */
export type Dress = Severity | 'check' | 'message' | 'place' | 'margin' | 'advice';
export type Painter = (dress: Dress, text: string) => string;

export interface TextOptions {
  /** The lines of a file, or undefined where it cannot be had: then the place is named and not shown. */
  lines(file: string): Lines | undefined;
  paint?: Painter;
}

const PLAIN: Painter = (_, text) => text;
const MARGIN = 5;

/** One finding, several lines, without a line end after the last. */
export function findingText(finding: Finding, options: TextOptions): string {
  const paint = options.paint ?? PLAIN;
  const { severity } = finding;
  const rows = [
    `${paint(severity, severity)} ${paint('check', printable(finding.check))}`,
    `${' '.repeat(MARGIN + 2)}${paint('message', printable(finding.message))}`,
    '',
  ];
  const shown: Shown = { rows, options, paint };
  showPlace(shown, 'at', finding, '', severity);
  for (const related of finding.related) {
    // The place just shown needs no second frame, only its part of the story.
    if (samePlace(related, finding)) rows.push(margin(paint, 'see', printable(related.message)));
    else showPlace(shown, 'see', related, related.message, 'place');
  }
  if (finding.help !== undefined) rows.push(margin(paint, 'do', paint('advice', printable(finding.help))));
  if (finding.case !== undefined) rows.push(margin(paint, 'case', printable(finding.case)));
  return rows.join('\n');
}

interface Shown {
  rows: string[];
  options: TextOptions;
  paint: Painter;
}

function showPlace(
  { rows, options, paint }: Shown,
  label: string,
  place: Place,
  message: string,
  caretDress: Dress,
): void {
  const lines = options.lines(place.file);
  const where = paint('place', placeText(place, lines));
  rows.push(margin(paint, label, message === '' ? where : `${where}  ${printable(message)}`));
  if (lines === undefined) return;
  const frame = frameOf(lines, place.start, place.end);
  if (frame.source === '') return;
  rows.push(margin(paint, String(frame.line), `  ${frame.source}`));
  rows.push(margin(paint, '', `  ${' '.repeat(frame.indent)}${paint(caretDress, carets(frame))}`));
}

function carets(frame: Frame): string {
  const row = '^'.repeat(frame.carets);
  return frame.through === undefined ? row : `${row} to line ${frame.through}`;
}

/** `file:line:column`, counted from 1, as editors and terminals turn it into a link. */
function placeText(place: Place, lines: Lines | undefined): string {
  const file = printable(place.file);
  if (lines === undefined) return file;
  const { line, column } = lines.at(place.start);
  return `${file}:${line + 1}:${column + 1}`;
}

function margin(paint: Painter, label: string, text: string): string {
  return `${paint('margin', label.padStart(MARGIN))}  ${text}`.trimEnd();
}

function samePlace(a: Place, b: Place): boolean {
  return a.file === b.file && a.start === b.start && a.end === b.end;
}
