/**
 * The one look of pages: a work sheet with a name plate at its head. One style sheet as text, put together from parts;
 * sizes in rem, so that the reader's own setting counts. Colours are named in colours.ts only.
 */
import { COLOURS } from './colours.ts';
import { JOB } from './job.ts';
import { PAPER } from './paper.ts';
import { SHEET } from './sheet.ts';
import { SIGNALS } from './signals.ts';
import { WORK } from './work.ts';

export const STYLE: string = packed([COLOURS, SHEET, SIGNALS, JOB, WORK, PAPER].join('\n'));

/** Without comments and needless blanks. */
export function packed(css: string): string {
  return css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .replace(/ ?([{};,]) ?/g, '$1')
    .replace(/: /g, ':')
    .trim();
}
