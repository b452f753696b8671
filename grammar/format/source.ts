/**
 * A parsed text as the formatter looks at it: tokens by number, comments by the gap they stand in, braces by
 * pairs. It answers questions about what the author wrote and decides nothing.
 */
import type { Comment, ParsedFile, Token } from '../syntax/tree.ts';

/** Gap `i` stands before token `i`; the last one, with the number of tokens, stands before the end of the text. */
export class Source {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly comments: readonly Comment[];
  /** For every brace the number of its partner, else -1. */
  readonly partner: Int32Array;
  /** Every brace has a partner. */
  readonly balanced: boolean;
  /** Gap `i` has the comments from `firstComment[i]` up to `firstComment[i + 1]`. */
  private readonly firstComment: Int32Array;

  constructor(text: string, parsed: ParsedFile) {
    this.text = text;
    this.tokens = parsed.tokens;
    this.comments = parsed.comments;
    this.firstComment = countComments(parsed);
    this.partner = new Int32Array(this.tokens.length).fill(-1);
    this.balanced = this.pairBraces();
  }

  /** The first token at or after an offset; the number of tokens where there is none. */
  at(offset: number): number {
    let low = 0;
    let high = this.tokens.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.tokens[middle]!.start < offset) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** The last token that begins before an offset. */
  lastBefore(offset: number): number {
    return this.at(offset) - 1;
  }

  is(token: number, mark: string): boolean {
    const found = this.tokens[token];
    return (
      found !== undefined &&
      found.type === 'mark' &&
      found.end - found.start === mark.length &&
      this.text.startsWith(mark, found.start)
    );
  }

  word(token: number): string {
    const found = this.tokens[token];
    return found ? this.text.slice(found.start, found.end) : '';
  }

  /** The first opening brace among the tokens from `first` to `last`, or -1. */
  openingBrace(first: number, last: number): number {
    for (let i = first; i <= last; i += 1) if (this.is(i, '{')) return i;
    return -1;
  }

  commentsFrom(gap: number): number {
    return this.firstComment[gap]!;
  }

  commentsTo(gap: number): number {
    return this.firstComment[gap + 1]!;
  }

  hasComment(gap: number): boolean {
    return this.commentsTo(gap) > this.commentsFrom(gap);
  }

  /** The author broke the line in the gap, or it has a comment, after which the line always ends. */
  breaksBefore(token: number): boolean {
    return this.tokens[token]!.beginsLine || this.hasComment(token);
  }

  /** Something between the tokens `first` and `last` ends a line. */
  breaksWithin(first: number, last: number): boolean {
    for (let i = first + 1; i <= last; i += 1) if (this.breaksBefore(i)) return true;
    return false;
  }

  private pairBraces(): boolean {
    const open: number[] = [];
    let balanced = true;
    for (let i = 0; i < this.tokens.length; i += 1) {
      if (this.is(i, '{')) open.push(i);
      else if (this.is(i, '}')) {
        const partner = open.pop();
        if (partner === undefined) balanced = false;
        else {
          this.partner[partner] = i;
          this.partner[i] = partner;
        }
      }
    }
    return balanced && open.length === 0;
  }
}

function countComments({ tokens, comments }: ParsedFile): Int32Array {
  const first = new Int32Array(tokens.length + 2);
  let passed = 0;
  for (let i = 0; i < tokens.length; i += 1) {
    while (passed < comments.length && comments[passed]!.start < tokens[i]!.start) passed += 1;
    first[i + 1] = passed;
  }
  first[tokens.length + 1] = comments.length;
  return first;
}
