/**
 * What every part of the grammar needs: problems, places, names and texts. Rules never fail: what is
 * missing is left out of the node and reported once, so that the parser needs no exceptions.
 */
import type { IToken } from 'chevrotain';
import type { Name, Span, SyntaxProblem, Text } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord, type Lexeme } from '../tokens/types.ts';
import { LeanParser } from './lean.ts';

/** What a problem adds to its sentence. */
export type Extra = Partial<Pick<SyntaxProblem, 'example' | 'related' | 'mend'>>;

export const END = Number.MAX_SAFE_INTEGER;

export class BaseRules extends LeanParser {
  problems: SyntaxProblem[] = [];
  virtual: ReadonlySet<unknown> = new Set();
  /** The token at which the last problem was reported: one problem a place. */
  private reportedAt: IToken | undefined;

  begin(lexemes: Lexeme[], virtual: ReadonlySet<unknown>): void {
    this.problems = [];
    this.virtual = virtual;
    this.reportedAt = undefined;
    this.input = lexemes;
  }

  /** What Chevrotain could not match: a fault of the grammar, never of the text. */
  failures(): SyntaxProblem[] {
    return this.errors.map((error) => ({
      check: 'syntax',
      start: error.token.startOffset || 0,
      end: (error.token.endOffset ?? -1) + 1 || 0,
      message: 'The text could not be read any further than this.',
    }));
  }

  // ------------------------------------------------------------ places

  next(): Lexeme {
    return this.LA(1) as Lexeme;
  }

  startOfNext(): number {
    return this.LA(1).startOffset;
  }

  endOfLast(): number {
    return this.LA(0).endOffset! + 1;
  }

  /** As `endOfLast`, and 0 while Chevrotain records the grammar. */
  lastEnd(): number {
    return this.RECORDING_PHASE ? 0 : this.LA(0).endOffset! + 1;
  }

  nextIs(type: IToken['tokenType']): boolean {
    return this.LA(1).tokenTypeIdx === type.tokenTypeIdx;
  }

  /** Nothing more belongs to the statement: a new one, a brace or the end of the text follows. */
  atStatementEnd(): boolean {
    const token = this.next();
    return (
      token.starts === true ||
      token.tokenType === T.RBrace ||
      token.tokenType === T.LBrace ||
      Number.isNaN(token.startOffset)
    );
  }

  readonly notStarting = (): boolean => this.next().starts !== true;

  /**
   * A name can stand here: any word on this line, and on the next line a word without a meaning of its own,
   * or any word after a comma. Phrases (`held by`) are no names.
   */
  readonly nameNext = (): boolean => {
    const token = this.next();
    if (!isWord(token) || token.image.includes(' ')) return false;
    if (!token.beginsLine || token.tokenType === T.PlainWord) return true;
    return this.LA(0).tokenType === T.Comma;
  };

  /**
   * Takes the next token without asking the grammar: for the commonest short forms, whose rules would cost more
   * than the form itself. Never while Chevrotain records the grammar, and only where the rules could not
   * read anything else.
   */
  take(): Lexeme {
    const token = this.LA(1) as Lexeme;
    this.SKIP_TOKEN();
    return token;
  }

  // ------------------------------------------------------------ problems

  problem(check: string, message: string, span: Span, extra: Extra = {}): void {
    const at = this.LA(1);
    if (at === this.reportedAt) return;
    this.reportedAt = at;
    this.problems.push({ check, start: span.start, end: span.end, message, ...extra });
  }

  /** Something is missing after what was read last. */
  missing(message: string, example?: string, check = 'syntax'): void {
    if (this.RECORDING_PHASE) return;
    const last = this.LA(0);
    const span = { start: last.startOffset, end: last.endOffset! + 1 };
    this.problem(check, message, span, example === undefined ? {} : { example });
  }

  /** The token itself is wrong where it stands. */
  wrong(token: IToken, check: string, message: string, extra: Extra = {}): void {
    if (this.RECORDING_PHASE) return;
    this.problem(check, message, spanOf(token), extra);
  }

  // ------------------------------------------------------------ words and texts

  readonly word = this.RULE('word', (): Name => nameOf(this.CONSUME(T.AnyWord)));

  /** Names parted by commas or `and`. */
  readonly words = this.RULE('words', (): Name[] => {
    const names: Name[] = [];
    this.OPTION({ GATE: this.nameNext, DEF: () => names.push(this.SUBRULE(this.word)) });
    this.MANY(() => {
      this.OR([
        { ALT: () => this.CONSUME(T.Comma) },
        { ALT: () => this.CONSUME(T.And) },
        { ALT: () => this.CONSUME(T.Or) },
      ]);
      this.OPTION1({
        GATE: () => this.LA(0).tokenType === T.Comma,
        DEF: () => this.OR1([{ ALT: () => this.CONSUME1(T.And) }, { ALT: () => this.CONSUME1(T.Or) }]),
      });
      const before = names.length;
      this.OPTION2({ GATE: this.nameNext, DEF: () => names.push(this.SUBRULE1(this.word)) });
      if (names.length === before) this.missing(`A name is missing after ${shown(this.LA(0), 'the text')}.`);
    });
    return names;
  });

  readonly text = this.RULE('text', (): Text => {
    const first = this.CONSUME(T.TextString);
    let value = '';
    const holes: Name[] = [];
    if (!this.RECORDING_PHASE) value = readText(first, holes);
    this.MANY(() => {
      const more = this.CONSUME1(T.TextString);
      if (this.RECORDING_PHASE) return;
      const part = readText(more, holes);
      value += value === '' || part === '' || /\s$/.test(value) || /^\s/.test(part) ? part : ` ${part}`;
    });
    return { start: first.startOffset, end: this.endOfLast(), value, holes };
  });

  /** One string, where two in a row mean two things. */
  readonly string = this.RULE('string', (): Text => {
    const token = this.CONSUME(T.TextString);
    const holes: Name[] = [];
    const value = this.RECORDING_PHASE ? '' : readText(token, holes);
    return { ...spanOf(token), value, holes };
  });

  /** The next token, which is a text with no other one behind it. */
  takeText(): Text {
    const token = this.take();
    const holes: Name[] = [];
    const value = readText(token, holes);
    return { ...spanOf(token), value, holes };
  }

  /** A text that must stand here; once in a rule. */
  wantedText(after: string, example: string): Text | undefined {
    let text: Text | undefined;
    this.option(21, () => {
      text = this.SUBRULE8(this.text);
    });
    if (!text) this.missing(`A text in quotation marks is missing after “${after}”.`, example);
    return text;
  }

  /** A text that may stand here; once in a rule. */
  optionalText(): Text | undefined {
    if (!this.RECORDING_PHASE && !this.nextIs(T.TextString)) return undefined;
    return this.option(20, () => this.SUBRULE9(this.text));
  }
}

export function spanOf(token: IToken): Span {
  return { start: token.startOffset, end: token.endOffset! + 1 };
}

export function nameOf(token: IToken): Name {
  return { start: token.startOffset, end: token.endOffset! + 1, text: token.image };
}

/** The words of the language that a token stands for, as a name with their place. */
export function keyOf(token: IToken): Name {
  return { start: token.startOffset, end: token.endOffset! + 1, text: (token as Lexeme).key ?? token.image };
}

/** A token in a sentence: in quotation marks, or `This text` for a text, which has its own. */
export function shown(token: IToken, text = 'This text'): string {
  return token.tokenType === T.TextString ? text : `“${token.image}”`;
}

const HOLE = /\{([\p{L}][\p{L}\p{M}\p{N}]*(?:-[\p{L}\p{M}\p{N}]+)*)\}/gu;

/** The text of a string token without its quotation marks, escapes undone; holes are added to `holes`. */
function readText(token: IToken, holes: Name[]): string {
  const { image } = token;
  const closing = image.charCodeAt(image.length - 1);
  const closed = image.length > 1 && (closing === 0x22 || closing === 0x201d || closing === 0x201c);
  const inner = image.slice(1, closed ? -1 : undefined);
  if (inner.includes('{')) {
    for (const found of inner.matchAll(HOLE)) {
      if (inner[found.index - 1] === '\\') continue;
      const start = token.startOffset + 1 + found.index + 1;
      holes.push({ start, end: start + found[1]!.length, text: found[1]! });
    }
  }
  return inner.includes('\\') ? inner.replace(/\\(.)/gu, '$1') : inner;
}
