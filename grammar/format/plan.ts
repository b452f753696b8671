/** What the layout wants of every gap between two tokens; whoever writes the text follows it. */
import type { Source } from './source.ts';
import { spacesBefore } from './spacing.ts';

/** The line ends in a gap where the author ended it, never, or always. */
export const AS_TYPED = 0;
export const TOGETHER = 1;
export const NEW_LINE = 2;

/** Empty lines in a gap that ends a line: none, the author's (at most one), exactly one. */
export const NONE = 0;
export const AT_MOST_ONE = 1;
export const ONE = 2;

export class GapPlan {
  readonly source: Source;
  readonly lines: Uint8Array;
  /** The column in which the token stands if it begins a line. */
  readonly indents: Int32Array;
  readonly empties: Uint8Array;
  /** 1 where two spaces part what stands on one line. */
  readonly wide: Uint8Array;

  constructor(source: Source) {
    const gaps = source.tokens.length + 1;
    this.source = source;
    this.lines = new Uint8Array(gaps);
    this.indents = new Int32Array(gaps);
    this.empties = new Uint8Array(gaps);
    this.wide = new Uint8Array(gaps);
  }

  /** Token begins a line. */
  newLine(token: number, indent: number, empty: number): void {
    this.lines[token] = NEW_LINE;
    this.indents[token] = indent;
    this.empties[token] = empty;
  }

  /** Token stays with what is before it; `indent` holds where a comment or kept text forbids that. */
  together(token: number, indent: number): void {
    this.lines[token] = TOGETHER;
    this.indents[token] = indent;
    this.empties[token] = NONE;
  }

  /** The tokens from `first` to `last` stand in column `indent` where the author begins a line with them. */
  continued(first: number, last: number, indent: number): void {
    this.indents.fill(indent, first, last + 1);
  }

  spaces(token: number): number {
    return this.wide[token] === 1 ? 2 : spacesBefore(this.source, token);
  }

  /** The width of the tokens from `first` to `last` on one line, without comments. */
  width(first: number, last: number): number {
    const { tokens } = this.source;
    let width = 0;
    for (let i = first; i <= last; i += 1) {
      const token = tokens[i]!;
      width += token.end - token.start + (i === first ? 0 : this.spaces(i));
    }
    return width;
  }
}
