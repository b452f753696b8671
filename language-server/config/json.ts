/**
 * JSON (RFC 8259) with the place of every value and key. Gives the first thing that is wrong in words, with what
 * people write who know other notations: comments, commas at the end, single quotation marks.
 */
import type { Span } from '../../grammar/syntax/tree.ts';

export type JsonNode = Span &
  (
    | { kind: 'object'; members: { key: Span & { name: string }; value: JsonNode }[] }
    | { kind: 'array'; items: JsonNode[] }
    | { kind: 'plain'; value: string | number | boolean | null }
  );

export interface JsonProblem extends Span {
  message: string;
  help: string;
}

export type JsonResult = { node: JsonNode } | { problem: JsonProblem };

/** Brackets in one another. A configuration needs three. */
const MOST_DEEP = 64;

export function readJson(text: string): JsonResult {
  try {
    return { node: new Reader(text).file() };
  } catch (error) {
    if (error instanceof Slip) return { problem: error.problem };
    throw error;
  }
}

/** The value without its places. Where a key stands twice, the last one counts. */
export function plainOf(node: JsonNode): unknown {
  switch (node.kind) {
    case 'plain':
      return node.value;
    case 'array':
      return node.items.map(plainOf);
    case 'object':
      return Object.fromEntries(node.members.map(({ key, value }) => [key.name, plainOf(value)]));
  }
}

class Slip extends Error {
  readonly problem: JsonProblem;

  constructor(problem: JsonProblem) {
    super(problem.message);
    this.problem = problem;
  }
}

class Reader {
  private readonly text: string;
  private at = 0;
  private depth = 0;

  constructor(text: string) {
    this.text = text;
  }

  file(): JsonNode {
    this.blanks();
    if (this.at >= this.text.length)
      this.wrong('The file is empty.', 'Write at least `{}`, or take the file away.');
    const node = this.value();
    this.blanks();
    if (this.at < this.text.length)
      this.wrong(`${this.seen()} stands after the end.`, 'One pair of braces holds the whole configuration.');
    return node;
  }

  private value(): JsonNode {
    const start = this.at;
    switch (this.text[start]) {
      case '{':
        return this.object();
      case '[':
        return this.array();
      case '"':
        return { kind: 'plain', value: this.string(), start, end: this.at };
      default:
        return this.word();
    }
  }

  private object(): JsonNode {
    const start = this.open();
    const members: Extract<JsonNode, { kind: 'object' }>['members'] = [];
    this.list('}', start, () => {
      const from = this.at;
      if (this.text[from] !== '"')
        this.wrong(
          `The name of a field is expected, not ${this.seen()}.`,
          'Names stand in double quotation marks: `"convention": "ansi"`.',
        );
      const key = { name: this.string(), start: from, end: this.at };
      this.blanks();
      if (this.text[this.at] !== ':')
        this.wrong(
          `A colon is missing after “${key.name}”.`,
          `Write \`"${key.name}": \` and then its value.`,
        );
      this.at++;
      this.blanks();
      members.push({ key, value: this.value() });
    });
    return { kind: 'object', members, start, end: this.at };
  }

  private array(): JsonNode {
    const start = this.open();
    const items: JsonNode[] = [];
    this.list(']', start, () => items.push(this.value()));
    return { kind: 'array', items, start, end: this.at };
  }

  private open(): number {
    if (++this.depth > MOST_DEEP)
      this.wrong('Brackets are nested deeper than any configuration needs.', 'Take some of them away.');
    return this.at++;
  }

  /** Members with commas between them up to the closing bracket. */
  private list(closing: '}' | ']', start: number, member: () => void): void {
    for (;;) {
      this.blanks();
      if (this.text[this.at] === closing) break;
      member();
      this.blanks();
      const next = this.text[this.at];
      if (next === closing) break;
      if (next === undefined)
        this.wrong(
          `The ${closing} is missing that closes what begins here.`,
          `Write ${closing} at its end.`,
          {
            start,
            end: start + 1,
          },
        );
      if (next !== ',')
        this.wrong(`A comma is missing before ${this.seen()}.`, 'Commas part one from the next.');
      const comma = this.at++;
      this.blanks();
      if (this.text[this.at] === closing)
        this.wrong('A comma stands behind the last one.', 'Take the comma away.', {
          start: comma,
          end: comma + 1,
        });
    }
    this.at++;
    this.depth--;
  }

  private string(): string {
    const start = this.at;
    STRING.lastIndex = start;
    const found = STRING.exec(this.text);
    if (!found) {
      LINE.lastIndex = start;
      const end = start + (LINE.exec(this.text)?.[0].length ?? 1);
      this.wrong(
        'This text is not written as JSON asks.',
        'Close it with " on the same line; write \\" and \\\\ for a quotation mark and a backslash in it.',
        { start, end },
      );
    }
    this.at += found[0].length;
    return JSON.parse(found[0]) as string;
  }

  private word(): JsonNode {
    const start = this.at;
    WORD.lastIndex = start;
    const word = WORD.exec(this.text)?.[0] ?? '';
    const span = { start, end: start + word.length };
    if (word === 'true' || word === 'false' || word === 'null' || NUMBER.test(word)) {
      this.at = span.end;
      return { kind: 'plain', value: JSON.parse(word) as boolean | number | null, ...span };
    }
    if (word !== '')
      this.wrong(
        `\`${word}\` means nothing in JSON.`,
        `Texts stand in double quotation marks: \`"${word}"\`.`,
        span,
      );
    return this.wrong(
      start < this.text.length ? `A value is expected, not ${this.seen()}.` : 'The file ends in the middle.',
      'A value is a text in double quotation marks, a number, `true`, `false`, or something in brackets.',
    );
  }

  private blanks(): void {
    BLANKS.lastIndex = this.at;
    this.at += BLANKS.exec(this.text)?.[0].length ?? 0;
    if (/^\/[/*]/.test(this.text.slice(this.at, this.at + 2)))
      this.wrong('JSON has no comments.', 'Take the comment away.');
  }

  private seen(): string {
    const next = this.text.codePointAt(this.at);
    if (next === undefined) return 'the end of the file';
    return next === 0x22 ? 'a text' : `“${String.fromCodePoint(next)}”`;
  }

  private wrong(message: string, help: string, span?: Span): never {
    const start = Math.min(this.at, this.text.length);
    throw new Slip({ message, help, start, end: Math.min(start + 1, this.text.length), ...span });
  }
}

const BLANKS = /[ \t\r\n]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what JSON does not allow in a text
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const LINE = /[^\r\n]*/y;
const WORD = /[\w.+-]+/y;
const NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/;
