/**
 * From text to tokens. A unit is a unit only right after a number, so the scanner asks the list of units
 * there and nowhere else. It never fails: what no token can begin with becomes one bad token, with a problem.
 *
 * Written by hand because the language decides by what stands before (units, inch threads, signs).
 */
import type { TokenType } from 'chevrotain';
import { matchUnit } from '../quantity/lexical.ts';
import type { Comment, SyntaxProblem, Token } from '../syntax/tree.ts';
import * as T from './types.ts';
import { Lexeme } from './types.ts';

export interface Scan {
  /** The tokens as the formatter and the colouring need them; made when asked for, before anything is parsed. */
  readonly tokens: Token[];
  lexemes: Lexeme[];
  comments: Comment[];
  problems: SyntaxProblem[];
}

export function scan(text: string): Scan {
  return new Scanner(text).all();
}

const KINDS: ReadonlyMap<TokenType, Token['type']> = new Map<TokenType, Token['type']>([
  [T.PlainWord, 'word'],
  [T.TextString, 'text'],
  [T.NumberToken, 'number'],
  [T.Spread, 'number'],
  [T.Unit, 'unit'],
  [T.PositionToken, 'position'],
  [T.Count, 'count'],
  [T.Thread, 'thread'],
  [T.Bad, 'bad'],
]);

/** Made when first asked for: an expression over all letters of the world takes long to make, and few texts need it. */
function once(make: () => RegExp): () => RegExp {
  let made: RegExp | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

const ENDS_WORD = '(?![\\p{L}\\p{N}_])';
const SERIES = 'UNC|UNF|UNEF|UN|UNS|UNR|UNJC|UNJF|NPTF|NPT|NPSM|BSPP|BSPT|BSP|BSW|BSF|BA';
/** Designations that nothing else looks like: `1/2-13 UNC`, `M8x1.25-6g`, `Tr20x4`. */
const THREAD = once(
  () =>
    new RegExp(
      `(?:\\d+ )?\\d+/\\d+-\\d+(?:[ \\t]+(?:${SERIES}))?(?:-\\d[A-Za-z]+)?${ENDS_WORD}` +
        `|(?:M|Tr)\\d+(?:\\.\\d+)?[x×]\\d+(?:\\.\\d+)?(?:-\\d[A-Za-z]+)?${ENDS_WORD}`,
      'uy',
    ),
);
/** Designations that need the word `thread` before them: `1-8`, `G 1/2`, `1/2 NPT`, `M8-6g`. */
const AFTER_THREAD = once(
  () =>
    new RegExp(
      `(?:[GR]p?c?[ \\t]?)\\d+(?:/\\d+)?(?: \\d+/\\d+)?${ENDS_WORD}` +
        `|(?:\\d+(?:\\.\\d+)?)-\\d+(?:[ \\t]+(?:${SERIES}))?(?:-\\d[A-Za-z]+)?${ENDS_WORD}` +
        `|(?:\\d+ )?\\d+(?:/\\d+)?[ \\t]+(?:${SERIES})${ENDS_WORD}` +
        `|M\\d+(?:\\.\\d+)?-\\d[A-Za-z]+${ENDS_WORD}`,
      'uy',
    ),
);
const HASH_THREAD = once(
  () => new RegExp(`#\\d+-\\d+(?:[ \\t]+(?:${SERIES}))?(?:-\\d[A-Za-z]+)?${ENDS_WORD}`, 'uy'),
);
const NUMBER = once(() => /\d+ \d+\/\d+(?!\d|[.,]\d)|\d+\/\d+(?!\d|[.,]\d)|\d*\.\d+|\d+/y);
const DECIMAL_COMMA = once(() => /\d+,\d+(?![\d,/])/y);
const SPREAD = once(() => /\+[ \t]?(?:\d*\.)?\d+[ \t]?\/[ \t]?[-−–][ \t]?(?:\d*\.)?\d+/y);
const COUNT = once(() => /[x×][ \t]?\d+(?![\p{L}\p{N}_.-])/uy);
const POSITION = once(() => /#[\p{L}\p{N}_]+(?:-[\p{L}\p{N}_]+)*/uy);
const WORD = once(() => /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy);
const PLUS_MINUS = once(() => /\+\/[-−–]|\+[-−–]|±/y);

const PUNCTUATION = new Map<number, TokenType>([
  [0x7b, T.LBrace],
  [0x7d, T.RBrace],
  [0x28, T.LParen],
  [0x29, T.RParen],
  [0x2c, T.Comma],
  [0x3a, T.Colon],
  [0x3b, T.Semicolon],
  [0x3d, T.Equals],
  [0x2b, T.Plus],
  [0x2d, T.Minus],
  [0x2212, T.Minus],
  [0x2013, T.Minus],
  [0x2a, T.Times],
  [0xd7, T.Times],
  [0x2f, T.Slash],
]);

class Scanner {
  readonly text: string;
  readonly lexemes: Lexeme[] = [];
  readonly comments: Comment[] = [];
  readonly problems: SyntaxProblem[] = [];
  at = 0;
  newline = true;
  private lineFrom = 0;
  private lineTo = -1;

  constructor(text: string) {
    this.text = text;
  }

  get tokens(): Token[] {
    return this.lexemes.map(({ startOffset, endOffset, tokenType, beginsLine }) => ({
      start: startOffset,
      end: endOffset + 1,
      type: KINDS.get(tokenType) ?? 'mark',
      beginsLine,
    }));
  }

  all(): Scan {
    const { text } = this;
    while (this.at < text.length) {
      const code = text.charCodeAt(this.at);
      if (code === 0x20 || code === 0x09) this.at += 1;
      else if (code === 0x0a || code === 0x0d) {
        this.newline = true;
        this.at += 1;
      } else if (isLetter(code)) this.word();
      else if (isDigit(code)) this.number();
      else if (code === 0x22) this.string(this.at, 0x22);
      else if (code === 0x2f && text.charCodeAt(this.at + 1) === 0x2f) this.comment();
      else this.other(code);
    }
    return this;
  }

  private other(code: number): void {
    const { text, at } = this;
    const next = text.charCodeAt(at + 1);
    if (isBlank(code)) {
      if (code === 0x2028 || code === 0x2029 || code === 0x85) this.newline = true;
      this.at += 1;
    } else if (code === 0x23) this.hash();
    else if (code === 0x2e && next === 0x2e) this.dots();
    else if (code === 0x2026) this.push(T.Dots, at + 1);
    else if (code === 0x2e && isDigit(next)) this.number();
    else if (code === 0xd7 && this.match(COUNT)) this.push(T.Count, COUNT().lastIndex);
    else if (code === 0x2b && this.match(SPREAD)) {
      this.push(T.Spread, SPREAD().lastIndex);
      this.unit();
    } else if ((code === 0x2b || code === 0xb1) && this.match(PLUS_MINUS)) {
      this.push(T.PlusMinus, PLUS_MINUS().lastIndex);
      this.unit();
    } else if (isMinus(code) && isDigit(next) && this.isSign()) this.number();
    else if (code === 0x201c || code === 0x201d || code === 0x201e) this.string(at, 0x201d);
    else {
      const mark = PUNCTUATION.get(code);
      if (mark) this.push(mark, at + 1);
      else if (this.match(WORD)) this.word();
      else this.bad();
    }
  }

  private word(): void {
    const { text, at } = this;
    const code = text.charCodeAt(at);
    // x 6, M8x1.25, Tr20x4, G 1/2
    if (code === 0x78 && this.match(COUNT)) {
      this.push(T.Count, COUNT().lastIndex);
      return;
    }
    if ((code === 0x4d || code === 0x54) && this.match(THREAD)) {
      this.push(T.Thread, THREAD().lastIndex);
      return;
    }
    if ((code === 0x47 || code === 0x52 || code === 0x4d) && this.afterThread()) {
      this.push(T.Thread, AFTER_THREAD().lastIndex);
      return;
    }
    let end = plainWordEnd(text, at);
    const stop = text.charCodeAt(end);
    if (stop >= 0x80 || stop === 0x5f || (stop === 0x2d && text.charCodeAt(end + 1) >= 0x5f)) {
      end = this.match(WORD) ? WORD().lastIndex : Math.max(end, at + 1);
    }
    this.push(T.PlainWord, end);
    const image = this.lexemes[this.lexemes.length - 1]!.image;
    if (image.includes('_')) {
      this.problems.push({
        check: 'bad-character',
        start: at,
        end,
        message: `The name “${image}” has an underscore; the words of a name are joined by hyphens.`,
        mend: { title: 'Join with hyphens', start: at, end, text: image.replace(/_+/g, '-') },
      });
    }
  }

  private number(): void {
    const { text, at } = this;
    if (this.afterThread()) {
      this.push(T.Thread, AFTER_THREAD().lastIndex);
      return;
    }
    const simple = simpleNumberEnd(text, at);
    if (simple > at) {
      this.push(T.NumberToken, simple);
      this.unit();
      return;
    }
    if (this.match(THREAD)) {
      this.push(T.Thread, THREAD().lastIndex);
      return;
    }
    const sign = isMinus(text.charCodeAt(at)) ? 1 : 0;
    DECIMAL_COMMA().lastIndex = at + sign;
    const comma = DECIMAL_COMMA().test(text) ? DECIMAL_COMMA().lastIndex : 0;
    const unitAfterComma = comma ? this.unitAt(comma) : undefined;
    if (comma && (unitAfterComma || text.startsWith('0,', at + sign))) {
      this.decimalComma(comma);
      return;
    }
    NUMBER().lastIndex = at + sign;
    NUMBER().test(text);
    const end = NUMBER().lastIndex;
    this.push(T.NumberToken, end);
    const lexeme = this.lexemes[this.lexemes.length - 1]!;
    if (sign) lexeme.key = `-${lexeme.image.slice(1)}`;
    if (text.charCodeAt(at + sign) === 0x2e) {
      lexeme.key = lexeme.key.replace('.', '0.');
      this.problems.push({
        check: 'syntax',
        start: at,
        end,
        message: `The number ${lexeme.image} begins with its point; a zero belongs before it.`,
        example: lexeme.key,
        mend: { title: `Write ${lexeme.key}`, start: at, end, text: lexeme.key },
      });
    }
    this.unit();
  }

  private decimalComma(end: number): void {
    const { at } = this;
    this.push(T.NumberToken, end);
    const lexeme = this.lexemes[this.lexemes.length - 1]!;
    lexeme.key = lexeme.image.replace(',', '.').replace(/^[−–]/, '-');
    this.unit();
    const thousands = /,\d{3}$/.test(lexeme.image) && !/^-?0,/.test(lexeme.image);
    this.problems.push({
      check: 'decimal-comma',
      start: at,
      end,
      message: thousands
        ? `The number ${lexeme.image} has a comma, and a comma parts the members of a list.`
        : `The number ${lexeme.image} has a decimal comma; decimals are written with a point.`,
      example: thousands ? `${lexeme.image.replace(',', '')} or ${lexeme.key}` : lexeme.key,
      ...(thousands ? {} : { mend: { title: `Write ${lexeme.key}`, start: at, end, text: lexeme.key } }),
    });
  }

  /** The unit after the number (or range mark) that was just read, if there is one on the same line. */
  private unit(): void {
    const found = this.unitAt(this.at);
    if (!found) return;
    this.at = found.start;
    this.push(T.Unit, found.end);
  }

  private unitAt(end: number): { start: number; end: number } | undefined {
    const { text } = this;
    let start = end;
    while (isInlineBlank(text.charCodeAt(start))) start += 1;
    const length = matchUnit(text, start);
    if (length === 0) return undefined;
    // `in` is the inch after a number, unless it begins `in order`, `in reverse order` or `in turn`.
    if (length === 2 && text.startsWith('in', start) && IN_ORDER().test(text.slice(start, start + 24))) {
      return undefined;
    }
    return { start, end: start + length };
  }

  private hash(): void {
    if (this.match(HASH_THREAD)) {
      this.push(T.Thread, HASH_THREAD().lastIndex);
      return;
    }
    if (this.match(POSITION)) {
      this.push(T.PositionToken, POSITION().lastIndex);
      return;
    }
    this.bad();
  }

  private dots(): void {
    let end = this.at + 2;
    while (this.text.charCodeAt(end) === 0x2e) end += 1;
    const { at } = this;
    this.push(T.Dots, end);
    this.unit();
    if (end - at > 2) {
      this.problems.push({
        check: 'syntax',
        start: at,
        end,
        message: 'A range is written with two points.',
        example: '5..60 N·m',
        mend: { title: 'Write two points', start: at, end, text: '..' },
      });
    }
  }

  /** Where the line of an offset ends; looked for once a line, for lines that hold thousands of texts. */
  private lineEnd(start: number): number {
    if (start < this.lineFrom || start > this.lineTo) {
      this.lineFrom = start;
      this.lineTo = lineEnd(this.text, start);
    }
    return this.lineTo;
  }

  private comment(): void {
    const { text, at } = this;
    let end = this.lineEnd(at);
    while (end > at + 2 && isInlineBlank(text.charCodeAt(end - 1))) end -= 1;
    this.comments.push({ start: at, end, text: text.slice(at, end) });
    this.at = end;
  }

  private string(start: number, close: number): void {
    const { text } = this;
    const lineStop = this.lineEnd(start);
    let end = start + 1;
    while (end < lineStop) {
      const code = text.charCodeAt(end);
      if (code === 0x5c) end += 2;
      else if (code === 0x22 || (close !== 0x22 && (code === 0x201d || code === 0x201c))) break;
      else end += 1;
    }
    if (end < lineStop) {
      this.push(T.TextString, end + 1);
      if (close !== 0x22) this.curlyQuotes(start, end + 1);
      return;
    }
    end = lineStop;
    while (end > start + 1 && isInlineBlank(text.charCodeAt(end - 1))) end -= 1;
    // A brace that ends the line was meant as a brace: the block after it is still read.
    if (text.charCodeAt(end - 1) === 0x7b && end - 1 > start) {
      end -= 1;
      while (end > start + 1 && isInlineBlank(text.charCodeAt(end - 1))) end -= 1;
    }
    this.push(T.TextString, end);
    this.problems.push({
      check: 'text-not-closed',
      start,
      end,
      message:
        'The text that begins here has no closing quotation mark; a text ends on the line it begins on.',
      example: '"Stand to one side."',
      mend: { title: 'Close the text', start: end, end, text: '"' },
    });
  }

  private curlyQuotes(start: number, end: number): void {
    this.problems.push({
      check: 'bad-character',
      start,
      end,
      message: 'A text stands between straight quotation marks.',
      example: '"Stand to one side."',
      mend: {
        title: 'Use straight quotation marks',
        start,
        end,
        text: `"${this.text.slice(start + 1, end - 1).replace(/"/g, '\\"')}"`,
      },
    });
  }

  /** Everything up to the next blank or readable character is one bad token with one problem. */
  private bad(): void {
    const { text, at } = this;
    let end = at + (text.codePointAt(at)! > 0xffff ? 2 : 1);
    while (end < text.length && !isReadable(text, end)) end += text.codePointAt(end)! > 0xffff ? 2 : 1;
    this.push(T.Bad, end);
    const code = text.codePointAt(at)!;
    const shown = printable(code)
      ? `The character “${String.fromCodePoint(code)}”`
      : 'An unprintable character';
    this.problems.push({
      check: 'bad-character',
      start: at,
      end,
      message: `${shown} has no meaning here; outside a text a line has words, numbers and marks only.`,
    });
  }

  private isSign(): boolean {
    const { text, at } = this;
    const before = text.charCodeAt(at - 1);
    return at === 0 || isBlank(before) || before === 0x28 || before === 0x2c;
  }

  private afterThread(): boolean {
    const last = this.lexemes[this.lexemes.length - 1];
    return last !== undefined && !this.newline && last.image === 'thread' && this.match(AFTER_THREAD);
  }

  private match(expression: () => RegExp): boolean {
    const pattern = expression();
    pattern.lastIndex = this.at;
    return pattern.test(this.text);
  }

  private push(tokenType: TokenType, end: number): void {
    const start = this.at;
    this.lexemes.push(new Lexeme(this.text.slice(start, end), start, end, tokenType, this.newline));
    this.newline = false;
    this.at = end;
  }
}

const IN_ORDER = once(() => /^in[ \t]+(?:order|reverse[ \t]+order|turn)(?![\p{L}\p{N}_-])/u);

/** Where a number ends that can be nothing but whole (`25`) or decimal (`0.5`); `start` where it may be something else. */
function simpleNumberEnd(text: string, start: number): number {
  const whole = digitsEnd(text, start);
  if (whole === start) return start;
  const code = text.charCodeAt(whole);
  const next = text.charCodeAt(whole + 1);
  if (code === 0x2e) return isDigit(next) ? digitsEnd(text, whole + 1) : whole;
  // A fraction, a decimal comma or a thread: `1/2`, `1 1/2`, `0,5`, `1/2-13`.
  return code === 0x2f || code === 0x2c || (code === 0x20 && isDigit(next)) ? start : whole;
}

function digitsEnd(text: string, start: number): number {
  let at = start;
  while (isDigit(text.charCodeAt(at))) at += 1;
  return at;
}

function plainWordEnd(text: string, start: number): number {
  let at = start + 1;
  for (;;) {
    const code = text.charCodeAt(at);
    if (isLetter(code) || isDigit(code)) at += 1;
    else if (code === 0x2d && isWordCode(text.charCodeAt(at + 1))) at += 1;
    else return at;
  }
}

function isLetter(code: number): boolean {
  return (code >= 0x61 && code <= 0x7a) || (code >= 0x41 && code <= 0x5a);
}

function isDigit(code: number): boolean {
  return code >= 0x30 && code <= 0x39;
}

function isWordCode(code: number): boolean {
  return isLetter(code) || isDigit(code);
}

function isMinus(code: number): boolean {
  return code === 0x2d || code === 0x2212 || code === 0x2013;
}

function isInlineBlank(code: number): boolean {
  return code === 0x20 || code === 0x09 || code === 0xa0 || code === 0x202f || code === 0x2009;
}

function isBlank(code: number): boolean {
  return (
    code === 0x20 ||
    (code >= 0x09 && code <= 0x0d) ||
    code === 0x85 ||
    code === 0xa0 ||
    code === 0xfeff ||
    (code >= 0x2000 && code <= 0x200b) ||
    code === 0x2028 ||
    code === 0x2029 ||
    code === 0x202f ||
    code === 0x3000
  );
}

function lineEnd(text: string, start: number): number {
  let end = start;
  while (end < text.length) {
    const code = text.charCodeAt(end);
    if (code === 0x0a || code === 0x0d) break;
    end += 1;
  }
  return end;
}

const LETTER = once(() => /[\p{L}\p{N}]/u);

function isReadable(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (isBlank(code) || isLetter(code) || isDigit(code) || PUNCTUATION.has(code)) return true;
  if (code === 0x22 || code === 0x23 || code === 0x201c || code === 0x201d || code === 0x201e) return true;
  return code >= 0x80 && LETTER().test(String.fromCodePoint(text.codePointAt(at)!));
}

function printable(code: number): boolean {
  return code > 0x20 && (code < 0x7f || code > 0xa0) && !(code >= 0xd800 && code < 0xe000) && code !== 0xfffd;
}
