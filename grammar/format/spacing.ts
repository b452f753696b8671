/** How many spaces stand between two tokens on one line. */
import type { Source } from './source.ts';

/** Marks that stand directly behind what is before them. */
const CLOSE_BEHIND: ReadonlySet<string> = new Set([',', ';', ':', ')']);
/** Marks that join their two sides without spaces. */
const JOINING: ReadonlySet<string> = new Set(['..', '…']);
/** The spaces before token `right`, which follows another token on the line. */
export function spacesBefore(source: Source, right: number): number {
  const before = source.tokens[right - 1]!;
  const token = source.tokens[right]!;
  // `90°` and `20 N·m`: both ways of writing a unit are right.
  if (token.type === 'unit') return token.start > before.end ? 1 : 0;
  if (token.type === 'mark') {
    const mark = source.word(right);
    if (CLOSE_BEHIND.has(mark) || JOINING.has(mark)) return 0;
  }
  if (before.type !== 'mark') return 1;
  const mark = source.word(right - 1);
  return mark === '(' || JOINING.has(mark) ? 0 : 1;
}
