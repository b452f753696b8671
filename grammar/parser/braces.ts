/**
 * Makes braces balance before anything is parsed: a brace that is missing is put in (a token without width)
 * where the indentation shows its place, one too many is left out, and what is nested too deep is skipped.
 * So one slip gives one problem, and the parser can rely on pairs and on a shallow stack.
 */
import type { SyntaxProblem } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { Lexeme } from '../tokens/types.ts';

/** Deeper than anything a person writes, shallow enough for the parser's stack. */
export const MAX_DEPTH = 64;

export interface Balanced {
  lexemes: Lexeme[];
  problems: SyntaxProblem[];
  /** Braces that were put in. */
  virtual: ReadonlySet<Lexeme>;
}

export function balance(text: string, lexemes: Lexeme[]): Balanced {
  const found = survey(lexemes);
  if (found.balanced && found.depth <= MAX_DEPTH) return { lexemes, problems: [], virtual: NONE };
  const balancer = new Balancer(text, lexemes, !found.balanced, found.surplus);
  return balancer.run();
}

const NONE: ReadonlySet<Lexeme> = new Set();

function survey(lexemes: Lexeme[]): { balanced: boolean; depth: number; surplus: number } {
  let depth = 0;
  let deepest = 0;
  let lowest = 0;
  let parens = 0;
  for (const { tokenType, beginsLine } of lexemes) {
    if (beginsLine) parens = 0;
    if (tokenType === T.LBrace) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (tokenType === T.RBrace) {
      depth -= 1;
      if (depth < lowest) lowest = depth;
    } else if (tokenType === T.LParen) {
      parens += 1;
      if (parens > deepest) deepest = parens;
    } else if (tokenType === T.RParen) parens = Math.max(0, parens - 1);
  }
  return { balanced: depth === 0 && lowest === 0, depth: deepest, surplus: -depth };
}

interface Open {
  brace: Lexeme;
  /** Column of the first token on the line of the brace. */
  indent: number;
  /** Column of the first line inside, once there is one. */
  inner: number | undefined;
}

/** Words after which a block belongs: where its brace is missing, the indentation of the next line tells. */
const OPENERS: ReadonlySet<string> = new Set([
  'task',
  'step',
  'when',
  'if',
  'otherwise',
  'repeat',
  'hold',
  'machine',
  'rule',
  'table',
]);
const FILE_WORDS: ReadonlySet<string> = new Set(['machine', 'procedure', 'use']);

class Balancer {
  readonly text: string;
  readonly source: Lexeme[];
  readonly repairing: boolean;
  /** How many closing braces there are more than opening ones. */
  surplus: number;
  readonly out: Lexeme[] = [];
  readonly problems: SyntaxProblem[] = [];
  readonly virtual = new Set<Lexeme>();
  readonly stack: Open[] = [];
  lineIndent = 0;
  lineFirst: Lexeme | undefined;
  parens = 0;

  constructor(text: string, source: Lexeme[], repairing: boolean, surplus: number) {
    this.text = text;
    this.source = source;
    this.repairing = repairing;
    this.surplus = surplus;
  }

  run(): Balanced {
    const { source, out, stack } = this;
    for (let i = 0; i < source.length; i += 1) {
      const token = source[i]!;
      if (token.beginsLine) {
        this.parens = 0;
        this.newLine(token, i);
      }
      if (token.tokenType === T.LBrace) {
        this.parens = 0;
        if (stack.length >= MAX_DEPTH) {
          i = this.skipDeep(i, T.LBrace, T.RBrace, 'Blocks are');
          continue;
        }
        stack.push({ brace: token, indent: this.lineIndent, inner: undefined });
        out.push(token);
      } else if (token.tokenType === T.RBrace) {
        this.parens = 0;
        this.close(token);
      } else if (token.tokenType === T.LParen && this.parens >= MAX_DEPTH) {
        i = this.skipDeep(i, T.LParen, T.RParen, 'Brackets are');
      } else {
        if (token.tokenType === T.LParen) this.parens += 1;
        else if (token.tokenType === T.RParen) this.parens = Math.max(0, this.parens - 1);
        out.push(token);
      }
    }
    this.finish();
    return { lexemes: out, problems: this.problems, virtual: this.virtual };
  }

  private newLine(token: Lexeme, i: number): void {
    const indent = column(this.text, token.startOffset);
    if (this.repairing) {
      if (this.surplus > 0) this.openMissing(token, indent);
      if (this.surplus <= 0 || FILE_WORDS.has(token.image)) this.closeMissing(token, indent, i);
    }
    const top = this.stack[this.stack.length - 1];
    if (top && top.inner === undefined && token.tokenType !== T.RBrace) top.inner = indent;
    this.lineIndent = indent;
    this.lineFirst = token;
  }

  /** A line set back to (or before) the line of an open brace shows that its block ended above. */
  private closeMissing(token: Lexeme, indent: number, i: number): void {
    const closing = token.tokenType === T.RBrace;
    const fileItem = FILE_WORDS.has(token.image) && this.source[i + 1]?.beginsLine === false;
    for (;;) {
      const top = this.stack[this.stack.length - 1];
      if (!top || top.brace.startOffset >= token.startOffset) return;
      const indented = top.inner === undefined || top.inner > top.indent;
      const below = this.stack[this.stack.length - 2];
      if (closing) {
        // The brace closes an outer block: the one on top was forgotten.
        if (!(indented && indent < top.indent && below)) return;
      } else if (
        !(indented && indent <= top.indent && top.inner !== undefined) &&
        !(fileItem && indent <= top.indent)
      ) {
        return;
      }
      this.putClose(top, token);
    }
  }

  private putClose(open: Open, before: Lexeme): void {
    const previous = this.out[this.out.length - 1]!;
    const at = previous.endOffset + 1;
    this.push(T.RBrace, at);
    this.stack.pop();
    this.surplus += 1;
    this.problems.push({
      check: 'brace-missing',
      start: open.brace.startOffset,
      end: open.brace.endOffset + 1,
      message: 'The block that is opened here has no closing brace.',
      related: {
        start: before.startOffset,
        end: before.endOffset + 1,
        message: 'By the indentation the block has ended before this line.',
      },
      mend: { title: 'Close the block', start: at, end: at, text: `\n${' '.repeat(open.indent)}}` },
    });
  }

  private openMissing(token: Lexeme, indent: number): void {
    const header = this.lineFirst;
    if (!header || !OPENERS.has(header.image) || token.tokenType === T.LBrace) return;
    if (indent <= this.lineIndent) return;
    const previous = this.out[this.out.length - 1]!;
    if (previous.tokenType === T.LBrace || previous.tokenType === T.RBrace) return;
    const at = previous.endOffset + 1;
    const brace = this.push(T.LBrace, at);
    this.stack.push({ brace, indent: this.lineIndent, inner: indent });
    this.surplus -= 1;
    this.problems.push({
      check: 'brace-missing',
      start: header.startOffset,
      end: at,
      message: `The block of this “${header.image}” has no opening brace.`,
      mend: { title: 'Open the block', start: at, end: at, text: ' {' },
    });
  }

  private close(token: Lexeme): void {
    if (this.stack.length > 0) {
      this.stack.pop();
      this.out.push(token);
      return;
    }
    this.surplus -= 1;
    this.problems.push({
      check: 'brace-missing',
      start: token.startOffset,
      end: token.endOffset + 1,
      message:
        'This brace closes no block: there is one closing brace too many, or an opening one is missing above.',
      mend: { title: 'Take the brace out', start: token.startOffset, end: token.endOffset + 1, text: '' },
    });
  }

  /** Leaves the contents out, keeps the pair: the statement that owns it stays whole. */
  private skipDeep(i: number, open: Lexeme['tokenType'], close: Lexeme['tokenType'], what: string): number {
    const { source } = this;
    const first = source[i]!;
    let depth = 0;
    let last = i;
    for (; last < source.length; last += 1) {
      const { tokenType, beginsLine } = source[last]!;
      // Brackets end with their line at the latest.
      if (open === T.LParen && beginsLine && last > i) {
        last -= 1;
        break;
      }
      if (tokenType === open) depth += 1;
      else if (tokenType === close) {
        depth -= 1;
        if (depth === 0) break;
      } else if (open === T.LParen && (tokenType === T.LBrace || tokenType === T.RBrace)) {
        last -= 1;
        break;
      }
    }
    this.problems.push({
      check: 'nested-too-deep',
      start: first.startOffset,
      end: first.endOffset + 1,
      message: `${what} nested more than ${MAX_DEPTH} deep here; what is inside is not read.`,
    });
    if (open === T.LBrace) {
      this.out.push(first);
      if (last < source.length) this.out.push(source[last]!);
      else this.push(T.RBrace, source[source.length - 1]!.endOffset + 1);
    }
    return last;
  }

  private finish(): void {
    const { stack } = this;
    if (stack.length === 0) return;
    const end = this.source[this.source.length - 1]!.endOffset + 1;
    const innermost = stack[stack.length - 1]!;
    const more = stack.length - 1;
    for (let i = 0; i < stack.length; i += 1) this.push(T.RBrace, end);
    this.problems.push({
      check: 'brace-missing',
      start: innermost.brace.startOffset,
      end: innermost.brace.endOffset + 1,
      message:
        more === 0
          ? 'The block that is opened here has no closing brace.'
          : `The block that is opened here has no closing brace, nor ${more === 1 ? 'has the block' : `have the ${more} blocks`} around it.`,
      related: { start: end, end, message: 'The text ends here.' },
    });
  }

  private push(tokenType: Lexeme['tokenType'], at: number): Lexeme {
    const token = new Lexeme('', at, at, tokenType, false);
    this.virtual.add(token);
    this.out.push(token);
    return token;
  }
}

function column(text: string, offset: number): number {
  let at = offset;
  while (at > 0) {
    const code = text.charCodeAt(at - 1);
    if (code === 0x0a || code === 0x0d) break;
    at -= 1;
  }
  return offset - at;
}
