/** How many spaces stand between two tokens on one line. */
import type { Source } from './source.ts';

/** Marks that stand directly behind what is before them. */
const CLOSE_BEHIND: ReadonlySet<string> = new Set([',', ';', ':', ')']);
/** Marks that join their two sides without spaces. */
const JOINING: ReadonlySet<string> = new Set(['..', '…']);
/** Marks that stand free between two sides; where only the right side is there, they stand as typed. */
const OPERATORS: ReadonlySet<string> = new Set(['+', '-', '−', '–', '/', '*', '×']);
const TOLERANCES: ReadonlySet<string> = new Set(['±', '+-', '+−', '+–', '+/-', '+/−', '+/–']);

/** The spaces before token `right`, which follows another token on the line. */
export function spacesBefore(source: Source, right: number): number {
  const before = source.tokens[right - 1]!;
  const token = source.tokens[right]!;
  const typed = token.start > before.end ? 1 : 0;
  // `90°` and `20 N·m`: both ways of writing a unit are right.
  if (token.type === 'unit') return typed;
  if (token.type === 'mark') {
    const mark = source.word(right);
    if (CLOSE_BEHIND.has(mark) || JOINING.has(mark)) return 0;
    if (lacksLeftSide(source, right, mark)) return typed;
  }
  if (before.type === 'mark') {
    const mark = source.word(right - 1);
    if (mark === '(' || JOINING.has(mark)) return 0;
    // `accuracy ±4 %`
    if (lacksLeftSide(source, right - 1, mark)) return typed;
  }
  return 1;
}

function lacksLeftSide(source: Source, token: number, mark: string): boolean {
  const operator = OPERATORS.has(mark);
  if (!operator && !TOLERANCES.has(mark)) return false;
  const left = source.tokens[token - 1];
  if (left === undefined) return true;
  if (left.type === 'mark') return !source.is(token - 1, ')');
  if (left.type === 'word') return !operator;
  return left.type !== 'number' && left.type !== 'unit';
}
