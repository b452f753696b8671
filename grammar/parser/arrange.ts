/**
 * Between scanner and parser: says which words begin a statement and which words are special where they
 * stand, and joins words that belong together (`lock out`, `held by`). After this every decision of the
 * parser needs one token of lookahead.
 *
 * The rules: a word begins a statement when it begins a line or follows a brace, and is a verb or a word of
 * the language that can stand there; after a comma it is a name, unless a second name follows it directly
 * (no list has two names side by side), and directly before a brace among outcomes it is an outcome.
 */
import type { TokenType } from 'chevrotain';
import { STATES } from '../tokens/clauses.ts';
import * as T from '../tokens/types.ts';
import { isWord, type Lexeme } from '../tokens/types.ts';
import { VERB_PHRASES, type Verb } from '../tokens/verbs.ts';
import {
  type Context,
  DEMANDS,
  FILE_STARTS,
  MACHINE_STARTS,
  PHRASES,
  SCOPES,
  STATEMENT_STARTS,
} from '../tokens/words.ts';

export function arrange(lexemes: Lexeme[]): Lexeme[] {
  return new Arranger(lexemes).all();
}

interface Match {
  length: number;
  verb: Verb;
  closing?: string;
}

/** Types whose object may follow on the next line, so that a word there is not a new statement. */
const AWAITING: ReadonlySet<TokenType> = new Set<TokenType>([
  T.VerbStart,
  T.With,
  T.Holding,
  T.While,
  T.By,
  T.From,
  T.Into,
  T.Between,
  T.Of,
  T.Except,
  T.At,
  T.To,
  T.As,
  T.Comma,
  T.And,
  T.Or,
  T.Is,
  T.Not,
  T.Equals,
  T.Plus,
  T.Minus,
  T.Times,
  T.Slash,
  T.ReverseStart,
  T.DoStart,
  T.WhenStart,
  T.IfStart,
  T.AllowStart,
  T.ForEachStart,
  T.Signal,
]);

const NAMED: ReadonlySet<TokenType> = new Set<TokenType>([
  T.MachineStart,
  T.ProcedureStart,
  T.TaskStart,
  T.Kind,
  T.ValueStart,
  T.TableStart,
  T.VariantStart,
  T.RuleStart,
]);

/** Tail words that are also everyday names: special only where what must follow does follow. */
const NOUNS: ReadonlyMap<TokenType, readonly TokenType[]> = new Map([
  [T.Stage, [T.NumberToken]],
  [T.Expect, [T.TextString]],
  [T.Picture, [T.TextString]],
  [T.Holding, [T.PlainWord]],
]);

class Arranger {
  readonly source: Lexeme[];
  readonly out: Lexeme[] = [];
  readonly contexts: { context: Context; pending: Context }[] = [];
  context: Context = 'top';
  /** What a brace opens next. */
  pending: Context = 'block';
  at = 0;

  constructor(source: Lexeme[]) {
    this.source = source;
  }

  all(): Lexeme[] {
    const { source, out } = this;
    while (this.at < source.length) {
      const token = source[this.at]!;
      if (token.tokenType === T.PlainWord) this.word(token);
      else if (token.tokenType === T.Bad) {
        // It has been reported; without it the line may well be right. Where a name is due, it is one.
        const next = source[this.at + 1];
        if (next && token.beginsLine) next.beginsLine = true;
        const last = this.last();
        if (last && NAMED.has(last.tokenType)) {
          token.become(T.PlainWord);
          out.push(token);
        }
        this.at += 1;
      } else {
        if (token.tokenType === T.LBrace) this.open();
        else if (token.tokenType === T.RBrace) this.close();
        out.push(token);
        this.at += 1;
      }
    }
    return out;
  }

  private open(): void {
    this.contexts.push({ context: this.context, pending: this.pending });
    if (this.last()?.tokenType === T.PlanWord) this.context = 'plan';
    else if (this.context === 'outcomes') this.context = 'block';
    else this.context = this.pending;
    this.pending = this.context === 'machine' ? 'machine' : 'block';
  }

  private close(): void {
    const outer = this.contexts.pop();
    this.context = outer?.context ?? 'top';
    this.pending = this.context === 'machine' ? 'machine' : (outer?.pending ?? 'block');
  }

  private word(token: Lexeme): void {
    const { context } = this;
    const last = this.last();
    const joins = token.image === 'and' || token.image === 'or';
    const named = last?.tokenType === T.Comma && !joins && !this.twoNames() && !this.claimNext();
    if (!named) {
      const starts =
        last === undefined || token.beginsLine || last.tokenType === T.LBrace || last.tokenType === T.RBrace;
      if (starts && this.start(token, last)) return;
      if (context === 'rule' && this.rule(token, last, starts)) return;
      if (this.phrase(token, last)) return;
      if (starts && context === 'block' && !(last && AWAITING.has(last.tokenType))) {
        this.begin(token, T.Unknown, 'block');
        return;
      }
    }
    this.take(token);
  }

  /** The word begins something; false where it does not. */
  private start(token: Lexeme, last: Lexeme | undefined): boolean {
    const { context, source, at } = this;
    const next = source[at + 1];
    const image = token.image;
    const fileStart = FILE_STARTS.get(image);
    if (fileStart && (context === 'top' || (token.beginsLine && next && isWord(next) && !next.beginsLine))) {
      this.begin(token, fileStart, fileStart === T.MachineStart ? 'machine' : 'block');
      return true;
    }
    if (context === 'block' || context === 'outcomes') return this.statement(token, last, next);
    if (context !== 'top' && context !== 'machine') return false;
    const type = MACHINE_STARTS.get(image);
    if (!type) return false;
    if (image === 'part' && isPartClause(next, source[at + 2])) return false;
    const pending = type === T.RuleStart ? 'rule' : type === T.TableStart ? 'table' : 'machine';
    this.begin(token, type, pending);
    return true;
  }

  private statement(token: Lexeme, last: Lexeme | undefined, next: Lexeme | undefined): boolean {
    const { context, source, at } = this;
    const image = token.image;
    const braceNext = next?.tokenType === T.LBrace;
    if (braceNext && context === 'outcomes') {
      this.begin(token, T.OutcomeWord, 'block');
      return true;
    }
    if (braceNext && image === 'otherwise') {
      this.begin(token, T.Otherwise, 'block');
      return true;
    }
    // Among outcomes an interval, a name or a word may stand; a statement there is a slip that the parser reports.
    if (image === 'for') {
      if (next?.image !== 'each') return false;
      this.join(token, 2, 'for each');
      this.begin(token, T.ForEachStart, 'block');
      return true;
    }
    const type = STATEMENT_STARTS.get(image);
    if (type) {
      this.begin(token, type, 'block');
      return true;
    }
    const match = verbAt(source, at);
    if (match) {
      // Among the outcomes of an action a word with a block is an outcome, anywhere else a verb.
      this.verb(token, match, true);
      return true;
    }
    const machineWord = MACHINE_STARTS.get(image);
    if (
      machineWord === T.Kind &&
      next &&
      isWord(next) &&
      !next.beginsLine &&
      !isPartClause(next, source[at + 2])
    ) {
      if (last && AWAITING.has(last.tokenType)) return false;
      this.begin(token, machineWord, 'machine');
      return true;
    }
    return false;
  }

  private rule(token: Lexeme, last: Lexeme | undefined, starts: boolean): boolean {
    const image = token.image;
    if (starts && SCOPES.has(image)) {
      this.begin(token, T.Scope, 'rule');
      return true;
    }
    if (DEMANDS.has(image)) {
      token.become(T.Demand);
      this.out.push(token);
      this.at += 1;
      return true;
    }
    if (last?.tokenType !== T.Scope && last?.tokenType !== T.Demand) return false;
    const match = verbAt(this.source, this.at);
    if (!match || this.isState(match)) return false;
    this.verb(token, match, false);
    return true;
  }

  /** `cover off` after `require`: a part that is called like a verb, and its state. */
  private isState(match: Match): boolean {
    const { source, at } = this;
    const next = source[at + match.length];
    const after = source[at + match.length + 1];
    if (!next || !(next.image in STATES)) return false;
    return !after || after.beginsLine || after.tokenType === T.RBrace || DEMANDS.has(after.image);
  }

  private phrase(token: Lexeme, last: Lexeme | undefined): boolean {
    const list = PHRASES[this.context].get(token.image);
    if (!list) return false;
    const { source, at } = this;
    for (const { words, key, type } of list) {
      if (!follows(source, at, words)) continue;
      const after = source[at + words.length];
      if (type === T.ToYield && last?.tokenType !== T.RBrace) continue;
      if (type === T.TimesWord && last?.tokenType !== T.NumberToken) continue;
      const needed = NOUNS.get(type);
      if (needed && !fits(after, needed) && (words.length > 1 || awaitsName(last))) continue;
      if (words.length > 1) this.join(token, words.length, key);
      token.become(type, key);
      this.out.push(token);
      this.at += 1;
      return true;
    }
    return false;
  }

  private verb(token: Lexeme, match: Match, starts: boolean): void {
    if (match.length > 1) this.join(token, match.length, token.image);
    token.verb = match.verb;
    token.closing = match.closing ?? match.verb.closing;
    // Where a verb without outcomes has a block, its contents show what was meant.
    const outcomes = match.verb.outcomes === true || this.outcomesAhead();
    token.outcomes = outcomes;
    if (starts) this.begin(token, T.VerbStart, outcomes ? 'outcomes' : 'block');
    else {
      token.become(T.VerbStart);
      this.out.push(token);
      this.at += 1;
    }
  }

  /** The next brace on the way to the end of the line opens outcomes: `{ tight { } }`, `{ up to 3 mm { } }`. */
  private outcomesAhead(): boolean {
    const { source } = this;
    let i = this.at + 1;
    while (i < source.length && source[i]!.tokenType !== T.LBrace) {
      if (source[i]!.beginsLine || source[i]!.tokenType === T.RBrace) return false;
      i += 1;
    }
    const first = source[i + 1];
    if (first === undefined) return false;
    if (first.tokenType === T.NumberToken || source[i + 2]?.tokenType === T.LBrace) return true;
    return ['up', 'over', 'below', 'above', 'from', 'exactly'].includes(first.image);
  }

  private begin(token: Lexeme, type: TokenType, pending: Context): void {
    token.become(type);
    token.starts = true;
    this.pending = pending;
    this.out.push(token);
    this.at += 1;
  }

  /** Makes one token of `count` words; the words after the first are left out. */
  private join(token: Lexeme, count: number, key: string): void {
    const { source, at } = this;
    const final = source[at + count - 1]!;
    const images = [token.image];
    for (let i = 1; i < count; i += 1) images.push(source[at + i]!.image);
    token.image = images.join(' ');
    token.key = key;
    token.endOffset = final.endOffset;
    this.at += count - 1;
  }

  private take(token: Lexeme): void {
    this.out.push(token);
    this.at += 1;
  }

  private last(): Lexeme | undefined {
    return this.out[this.out.length - 1];
  }

  /** `all of` and `everything off` begin a claim after a comma, too. */
  private claimNext(): boolean {
    const { source, at } = this;
    const next = source[at + 1];
    if (next === undefined || next.beginsLine) return false;
    const { image } = source[at]!;
    if (image === 'all') return next.image === 'of';
    return image === 'everything' && next.tokenType === T.PlainWord && !PHRASES[this.context].has(next.image);
  }

  /** Two plain words side by side on a new line after a comma: a statement, not the next name of a list. */
  private twoNames(): boolean {
    const { source, at, context } = this;
    const token = source[at]!;
    if (!token.beginsLine) return false;
    const phrase =
      context === 'block' ? verbAt(source, at)?.length : MACHINE_STARTS.has(token.image) ? 1 : undefined;
    if (phrase === undefined) return false;
    const next = source[at + phrase];
    if (next?.tokenType !== T.PlainWord || next.beginsLine) return false;
    return !PHRASES[context].has(next.image);
  }
}

/**
 * The verb that the words at `at` write: the longest phrase, also parted by its object (`let head cool`).
 * The words of a phrase stand on one line.
 */
export function verbAt(source: readonly Lexeme[], at: number): Match | undefined {
  const list = VERB_PHRASES.get(source[at]!.image);
  if (!list) return undefined;
  for (const { words, verb } of list) {
    if (follows(source, at, words)) return { length: words.length, verb };
    if (words.length === 2 && partedBy(source, at, words[1]!)) return { length: 1, verb, closing: words[1]! };
  }
  return undefined;
}

/** Whether the word stands behind the objects of the verb at `at`, on the same line and before any tail. */
function partedBy(source: readonly Lexeme[], at: number, closing: string): boolean {
  for (let i = at + 1; i < source.length; i += 1) {
    const token = source[i]!;
    if (token.beginsLine || token.tokenType === T.LBrace || token.tokenType === T.TextString) return false;
    if (i > at + 1 && token.image === closing && source[i - 1]!.tokenType !== T.Comma) {
      return source[i - 1]!.image !== 'and';
    }
    if (PHRASES.block.has(token.image) && token.image !== 'and') return false;
  }
  return false;
}

function follows(source: readonly Lexeme[], at: number, words: readonly string[]): boolean {
  for (let i = 1; i < words.length; i += 1) {
    const token = source[at + i];
    if (token === undefined || token.image !== words[i] || token.beginsLine) return false;
  }
  return source[at]!.image === words[0];
}

/** `part of …` and `part number "…"` are clauses. */
function isPartClause(next: Lexeme | undefined, after: Lexeme | undefined): boolean {
  if (next === undefined || next.beginsLine) return false;
  return next.image === 'of' || (next.image === 'number' && after?.tokenType === T.TextString);
}

function fits(after: Lexeme | undefined, needed: readonly TokenType[]): boolean {
  return after !== undefined && needed.includes(after.tokenType);
}

/** After these a name is due, so that an everyday word is one. */
function awaitsName(last: Lexeme | undefined): boolean {
  if (!last) return false;
  return AWAITING.has(last.tokenType) || (last.tokenType === T.PlainWord && last.image === 'new');
}
