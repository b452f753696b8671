/** Walks over tokens; the small pieces that machines and procedures both need: refs, texts, quantities, conditions. */
import type { Token } from './lexer.ts';
import type { Amount, Condition, Ref } from './shape.ts';

/** Phrases by their first word, longer ones first. */
export type Phrases = ReadonlyMap<string, readonly string[]>;

export function phrases(list: readonly string[]): Phrases {
  const map = new Map<string, string[]>();
  for (const phrase of list.toSorted((a, b) => b.length - a.length)) {
    const first = wordsOf(phrase)[0]!;
    map.set(first, [...(map.get(first) ?? []), phrase]);
  }
  return map;
}

const SPLIT = new Map<string, readonly string[]>();

function wordsOf(phrase: string): readonly string[] {
  let words = SPLIT.get(phrase);
  if (!words) {
    words = phrase.split(' ');
    SPLIT.set(phrase, words);
  }
  return words;
}

export class Cursor {
  readonly tokens: readonly Token[];
  at = 0;

  constructor(tokens: readonly Token[]) {
    this.tokens = tokens;
  }

  peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  next(): Token {
    const token = this.tokens[this.at++];
    if (!token) throw new Error('the oracle met the end of the text too early');
    return token;
  }

  fail(wanted: string): never {
    const token = this.peek();
    throw new Error(`line ${token?.line ?? 'last'}: wanted ${wanted}, met ${token?.text ?? 'the end'}`);
  }

  mark(text: string): boolean {
    const token = this.peek();
    return token?.type === 'mark' && token.text === text;
  }

  takeMark(text: string): boolean {
    if (!this.mark(text)) return false;
    this.at++;
    return true;
  }

  needMark(text: string): Token {
    if (!this.mark(text)) this.fail(text);
    return this.next();
  }

  /** True where the words of the phrase stand here, one after the other. */
  words(phrase: string): boolean {
    const words = wordsOf(phrase);
    for (let index = 0; index < words.length; index++) {
      const token = this.tokens[this.at + index];
      if (token?.type !== 'word' || token.text !== words[index]) return false;
    }
    return true;
  }

  takeWords(phrase: string): boolean {
    if (!this.words(phrase)) return false;
    this.at += wordsOf(phrase).length;
    return true;
  }

  /** The first of the phrases that stands here, taken. */
  takeOneOf(phrases: Phrases): string | undefined {
    const token = this.peek();
    if (token?.type !== 'word') return undefined;
    return phrases.get(token.text)?.find((phrase) => this.takeWords(phrase));
  }

  isOneOf(phrases: Phrases): boolean {
    const token = this.peek();
    return token?.type === 'word' && (phrases.get(token.text)?.some((phrase) => this.words(phrase)) ?? false);
  }

  needWord(): string {
    if (this.peek()?.type !== 'word') this.fail('a name');
    return this.next().text;
  }

  needNumber(): number {
    if (this.peek()?.type !== 'number') this.fail('a number');
    return Number(this.next().text);
  }

  isText(): boolean {
    return this.peek()?.type === 'text';
  }

  /** Texts in a row are one. */
  takeText(): string | undefined {
    if (!this.isText()) return undefined;
    let text = this.next().text;
    while (this.isText()) text += ` ${this.next().text}`;
    return text;
  }

  /** `x6` or `x 6` */
  takeCount(): number | undefined {
    const token = this.peek();
    if (token?.type !== 'word') return undefined;
    if (/^x\d+$/.test(token.text)) return Number(this.next().text.slice(1));
    if (token.text === 'x' && this.peek(1)?.type === 'number') {
      this.at++;
      return this.needNumber();
    }
    return undefined;
  }

  ref(): Ref {
    const ref: Ref = { name: this.needWord(), positions: [] };
    while (this.peek()?.type === 'position') {
      let position = this.next().text;
      if (this.takeMark('..')) position += `..${this.next().text}`;
      ref.positions.push(position);
      // `caps #2, #3`: the list of positions goes on; `caps #2, nuts`: the list of things does.
      if (!this.mark(',') || this.peek(1)?.type !== 'position') break;
      this.at++;
    }
    const count = this.takeCount();
    if (count !== undefined) ref.count = count;
    return ref;
  }

  refs(): Ref[] {
    const refs = [this.ref()];
    while (this.separator()) refs.push(this.ref());
    return refs;
  }

  names(): string[] {
    const names = [this.needWord()];
    while (this.separator()) names.push(this.needWord());
    return names;
  }

  /** A comma or `and` before another name; `and discard` ends a list. */
  separator(): boolean {
    if (this.takeMark(',')) return true;
    if (!this.words('and') || this.words('and discard')) return false;
    if (this.peek(1)?.type !== 'word') return false;
    this.at++;
    return true;
  }

  /** Any quantity: numbers, units and what joins them. */
  skipQuantity(): void {
    for (const bound of ['at least', 'at most', 'up to', 'about']) this.takeWords(bound);
    const joins = ['..', '±', '+-', '+/-', '+', '-', '−', '–', '/', '(', ')', '×', '.'];
    for (;;) {
      const token = this.peek();
      if (!token) return;
      if (token.type === 'number' || token.type === 'unit') this.at++;
      else if (token.type === 'mark' && joins.includes(token.text)) this.at++;
      else return;
    }
  }

  /** As `skipQuantity`; gives its first number and unit. */
  takeAmount(): Amount | undefined {
    const from = this.at;
    this.skipQuantity();
    const tokens = this.tokens.slice(from, this.at);
    const number = tokens.find(({ type }) => type === 'number');
    const unit = tokens.find(({ type }) => type === 'unit');
    return number && { value: Number(number.text), unit: unit?.text ?? '' };
  }

  /** From `{` to its `}`, unread. */
  skipBraces(): void {
    this.needMark('{');
    for (let depth = 1; depth > 0; ) {
      const token = this.next();
      if (token.type !== 'mark') continue;
      if (token.text === '{') depth++;
      if (token.text === '}') depth--;
    }
  }

  condition(): Condition {
    const parts = [this.oneCondition()];
    while (this.takeWords('and')) parts.push(this.oneCondition());
    return parts.length === 1 ? parts[0]! : { kind: 'and', parts };
  }

  private oneCondition(): Condition {
    const text = this.takeText();
    if (text !== undefined) return { kind: 'seen', text: text.trim().toLowerCase() };
    const ref = this.ref();
    if (this.takeWords('is')) {
      const negated = this.takeWords('not');
      const values = [this.next().text];
      while (this.takeMark(',') || this.takeWords('or')) values.push(this.next().text);
      return { kind: 'axis', axis: ref.name, values, negated };
    }
    const negated = this.takeWords('not');
    return { kind: 'state', ref, state: this.needWord(), negated };
  }
}
