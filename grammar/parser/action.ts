/** Actions: a verb of the trade, what it acts on, tails, a sentence, outcomes. */
import type { ParserMethod } from 'chevrotain';
import type { Action, Block, Interval, Outcome, Ref, Tail } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord, type Lexeme } from '../tokens/types.ts';
import { VERB_PHRASES } from '../tokens/verbs.ts';
import { TAIL_WORDS } from '../tokens/words.ts';
import { keyOf, nameOf, shown, spanOf } from './base.ts';
import { nearest } from './near.ts';
import { TailRules } from './tails.ts';

/** The action that is being read: what a piece of it needs to know of the rest. */
interface Reading {
  action: Action;
  token: Lexeme;
  /** Whether a brace opens outcomes, or a block that belongs to nothing. */
  outcomes: boolean;
  /** Still to come: the word that closes the verb. */
  closing: string | undefined;
}

export class ActionRules extends TailRules {
  /** The rule for statements in braces, which the rules of procedures define. */
  declare readonly block: ParserMethod<[], Block>;
  private reading: Reading | undefined;

  /** Made once: an action has a handful of pieces, and a file has many actions. */
  private readonly pieceKinds = {
    IGNORE_AMBIGUITIES: true,
    DEF: [
      { ALT: () => this.addTail(this.SUBRULE(this.tail)) },
      { ALT: () => this.SUBRULE(this.numberPiece) },
      { ALT: () => this.SUBRULE(this.textPiece) },
      { ALT: () => this.SUBRULE(this.outcomes) },
      { ALT: () => this.SUBRULE(this.givenPiece) },
      { ALT: () => this.SUBRULE(this.objectsPiece) },
      { ALT: () => this.SUBRULE(this.countPiece) },
    ],
  };
  private readonly pieces = { GATE: () => this.pieceNext(), DEF: () => this.OR(this.pieceKinds) };

  readonly action = this.RULE('action', (): Action => {
    const token = this.CONSUME(T.VerbStart) as Lexeme;
    const action: Action = {
      kind: 'action',
      verb: token.verb?.verb ?? token.image,
      word: nameOf(token),
      objects: [],
      together: false,
      tails: [],
      outcomes: [],
      start: token.startOffset,
      end: token.endOffset + 1,
    };
    const outer = this.reading;
    const reading: Reading = { action, token, outcomes: token.outcomes, closing: token.closing };
    this.reading = reading;
    if (this.RECORDING_PHASE || token.verb?.fresh) {
      this.OPTION({
        GATE: () => this.freshNext(),
        DEF: () => {
          action.fresh = this.CONSUME(T.PlainWord).image as 'new';
        },
      });
    }
    if (this.RECORDING_PHASE || token.verb?.topic) {
      this.OPTION1({
        GATE: () => this.topicNext(token),
        DEF: () => {
          action.topic = this.SUBRULE(this.word);
        },
      });
    }
    if (!this.RECORDING_PHASE) this.usualPieces(reading);
    this.MANY(this.pieces);
    this.reading = outer;
    if (this.RECORDING_PHASE) return action;
    this.finish(action, reading);
    action.end = this.endOfLast();
    return action;
  });

  /** One name, and a text: what most actions consist of. The pieces read the same, at several times the cost. */
  private usualPieces({ action, closing }: Reading): void {
    const next = this.next();
    if (closing !== undefined || action.topic !== undefined) return;
    if (next.tokenType !== T.PlainWord || next.starts) return;
    const refs = this.singleRef();
    if (!refs) return;
    this.takeObjects(refs);
    if (this.nextIs(T.TextString) && this.LA(2).tokenType !== T.TextString) action.text = this.takeText();
  }

  /** `new` or `kit` before what is fitted; `kit` alone is a name. */
  private freshNext(): boolean {
    const { image, beginsLine } = this.next();
    if (beginsLine || (image !== 'new' && image !== 'kit')) return false;
    return (
      image === 'new' ||
      (this.LA(2).tokenType !== T.Comma && isWord(this.LA(2)) && !PREPOSITIONS.has(this.LA(2).tokenType))
    );
  }

  /** The word after `measure`, `record` is what is measured where `of`, `between` or `=` follows, or nothing else. */
  private topicNext(token: Lexeme): boolean {
    if (!this.nameNext() || PREPOSITIONS.has(this.LA(1).tokenType)) return false;
    const after = this.LA(2).tokenType;
    if (after === T.Of || after === T.Between || after === T.Equals) return true;
    return token.verb?.verb !== 'choose' && after !== T.Comma && after !== T.And && after !== T.PositionToken;
  }

  private pieceNext(): boolean {
    const { reading } = this;
    const next = this.next();
    if (next.starts) return false;
    if (next.tokenType === T.LBrace) return reading!.outcomes && reading!.action.outcomes.length === 0;
    if (isWord(next) && !TAIL_STARTS.has(next.tokenType)) {
      if (reading!.closing !== undefined && next.image === reading!.closing) return true;
      const { objects, topic } = reading!.action;
      return objects.length === 0 && topic === undefined && this.nameNext();
    }
    return true;
  }

  private addTail(tail: Tail): void {
    if (this.RECORDING_PHASE) return;
    const { action, token } = this.reading!;
    if (token.verb?.topic && action.objects.length === 0 && (tail.tail === 'of' || tail.tail === 'between')) {
      action.objects = tail.refs;
      action.together = this.lastJoin === 'and' && tail.refs.length > 1;
      if (tail.tail === 'of') return;
      tail.refs = [];
    }
    action.tails.push(tail);
  }

  /** `turn flywheel 2 turns`; `tighten nuts 2 times` */
  private readonly numberPiece = this.RULE('numberPiece', () => {
    const quantity = this.SUBRULE(this.quantity);
    let times: Lexeme | undefined;
    this.OPTION(() => {
      times = this.CONSUME(T.TimesWord) as Lexeme;
    });
    if (this.RECORDING_PHASE) return;
    const { action } = this.reading!;
    if (times) {
      const count = Number(quantity.amounts[0]?.number ?? 1);
      action.tails.push({
        tail: 'times',
        word: keyOf(times),
        count,
        start: quantity.start,
        end: this.endOfLast(),
      });
      return;
    }
    if (action.quantity) {
      this.problem(
        'syntax',
        `“${action.word.text}” has two quantities here; a limit begins with “to”, “at” or “not over”.`,
        quantity,
      );
      return;
    }
    action.quantity = quantity;
    this.checkQuantity(quantity, `“${action.word.text}”`, USUAL_UNITS[action.verb] ?? 'turns, ° or mm');
  });

  private readonly textPiece = this.RULE('textPiece', () => {
    const text = this.SUBRULE(this.text);
    if (this.RECORDING_PHASE) return;
    const { action } = this.reading!;
    if (action.text)
      this.problem('syntax', 'The action has a sentence already; two belong side by side.', text);
    else action.text = text;
  });

  /** `record total = gap + 0.2 mm` */
  private readonly givenPiece = this.RULE('givenPiece', () => {
    this.CONSUME(T.Equals);
    const expression = this.SUBRULE(this.expression);
    if (this.RECORDING_PHASE) return;
    if (expression) this.reading!.action.expression = expression;
  });

  private readonly objectsPiece = this.RULE('objectsPiece', () => {
    if (!this.RECORDING_PHASE && this.reading?.closing === undefined) {
      this.takeObjects(this.singleRef() ?? this.SUBRULE(this.refList));
      return;
    }
    this.OR([
      {
        GATE: () => this.closingNext(),
        ALT: () => {
          this.CONSUME(T.AnyWord);
          if (this.reading) this.reading.closing = undefined;
        },
      },
      { ALT: () => this.takeObjects(this.SUBRULE(this.refList)) },
    ]);
  });

  private takeObjects(refs: Ref[]): void {
    if (this.RECORDING_PHASE) return;
    const { action } = this.reading!;
    action.objects = refs;
    action.together = this.lastJoin === 'and' && refs.length > 1;
  }

  private closingNext(): boolean {
    const { reading } = this;
    if (reading?.closing === undefined || this.LA(1).image !== reading.closing) return false;
    // `prove safe safe`: the first is the name.
    return reading.action.objects.length > 0 || this.LA(2).image !== reading.closing;
  }

  /** A count by itself, after a space too many or without a name. */
  private readonly countPiece = this.RULE('countPiece', () => {
    this.wrong(this.next(), 'syntax', 'A count belongs directly behind a name.', {
      example: 'fit washer x2',
    });
    this.OR([
      { ALT: () => this.CONSUME(T.Count) },
      { ALT: () => this.CONSUME(T.PositionToken) },
      { ALT: () => this.CONSUME(T.Unit) },
      { ALT: () => this.CONSUME(T.Thread) },
    ]);
  });

  /** What the whole action lacks. */
  private finish(action: Action, reading: Reading): void {
    const verb = reading.token.verb;
    if (!verb) return;
    if (reading.closing !== undefined && action.objects.length > 0) {
      this.missing(
        `“${action.word.text}” is not complete without “${reading.closing}”.`,
        `prove mains ${reading.closing}`,
      );
    }
    if (action.objects.length === 0 && !verb.objectless && action.topic === undefined) {
      const span = action.fresh
        ? { start: action.start, end: reading.token.endOffset + 1 + action.fresh.length + 1 }
        : action.word;
      this.problem('syntax', `“${action.word.text}” does not say what is acted on.`, span, {
        example: `${action.word.text} ${verb.fresh ? 'cover' : 'x'}`.replace(/ x$/, ' cover'),
      });
    }
  }

  // ------------------------------------------------------------ outcomes

  private readonly outcomes = this.RULE('outcomes', () => {
    const brace = this.CONSUME(T.LBrace);
    const reading = this.reading;
    const list: Outcome[] = [];
    if (!this.RECORDING_PHASE && reading && !reading.token.verb?.outcomes) {
      this.wrong(
        brace,
        'syntax',
        `“${reading.action.word.text}” has no outcomes; only ${OUTCOME_VERBS} have a block behind them.`,
      );
    }
    this.MANY(() =>
      this.OR({
        IGNORE_AMBIGUITIES: true,
        DEF: [
          { ALT: () => this.addOutcome(list, this.SUBRULE(this.outcome)) },
          { ALT: () => this.SUBRULE(this.strayOutcome) },
          { ALT: () => this.SUBRULE(this.skipBlock) },
        ],
      }),
    );
    this.CONSUME(T.RBrace);
    this.reading = reading;
    if (reading && !this.RECORDING_PHASE) reading.action.outcomes = list;
  });

  private addOutcome(list: Outcome[], outcome: Outcome): void {
    if (!this.RECORDING_PHASE) list.push(outcome);
  }

  private readonly outcome = this.RULE('outcome', (): Outcome => {
    const start = this.startOfNext();
    const outcome: Outcome = { intervals: [], start, end: start };
    this.OR([
      {
        ALT: () => {
          outcome.word = nameOf(this.CONSUME(T.OutcomeWord));
        },
      },
      {
        ALT: () => {
          this.addInterval(outcome, this.SUBRULE(this.interval));
          this.MANY(() => {
            const join = this.OR1([{ ALT: () => this.CONSUME(T.Or) }, { ALT: () => this.CONSUME(T.And) }]);
            if (!this.RECORDING_PHASE) outcome.join = join.image as 'or' | 'and';
            let found = false;
            this.OPTION1({
              GATE: () => INTERVAL_STARTS.has(this.LA(1).tokenType),
              DEF: () => {
                this.addInterval(outcome, this.SUBRULE1(this.interval));
                found = true;
              },
            });
            if (!found)
              this.missing(`A range is missing after “${join.image}”.`, 'below 3 mm or over 5 mm { }');
          });
        },
      },
    ]);
    this.beforeBlock('the outcome');
    this.OPTION(() => {
      outcome.body = this.SUBRULE(this.block);
    });
    if (!outcome.body)
      this.missing('The outcome has no block.', 'over 0.04 mm { send head for "facing" }', 'brace-missing');
    outcome.end = this.lastEnd();
    return outcome;
  });

  private addInterval(outcome: Outcome, interval: Interval): void {
    if (!this.RECORDING_PHASE) outcome.intervals.push(interval);
  }

  private readonly strayOutcome = this.RULE('strayOutcome', () => {
    const token = this.next();
    if (!this.RECORDING_PHASE) {
      const words: Lexeme[] = [];
      for (let i = 1; isWord(this.LA(i)) && i < 8; i += 1) words.push(this.LA(i) as Lexeme);
      const last = words[words.length - 1];
      if (last && words.length > 1 && this.LA(words.length + 1).tokenType === T.LBrace) {
        const joined = words.map((word) => word.image).join('-');
        this.wrong(
          token,
          'syntax',
          'An outcome is one word, or a range; several words are joined by hyphens.',
          {
            example: `${joined} { }`,
          },
        );
      } else {
        this.wrong(
          token,
          'syntax',
          `${shown(token)} stands where an outcome should: a range or a word, and what is done then in braces.`,
          { example: 'up to 0.04 mm { }  over 0.04 mm { send head for "facing" }' },
        );
      }
    }
    this.CONSUME(T.Skippable);
    this.MANY({
      GATE: () => !OUTCOME_STARTS.has(this.LA(1).tokenType) || !this.next().beginsLine,
      DEF: () => this.CONSUME1(T.Skippable),
    });
  });

  // ------------------------------------------------------------ behind an action

  /** What stands behind a statement on its line: the next statement, a slip of the pen, or nothing known. */
  afterStatement(token: Lexeme): void {
    if (VERB_PHRASES.has(token.image) || token.image === 'let') {
      this.wrong(
        token,
        'syntax',
        `“${token.image}” begins another action here, and every action starts on a new line.`,
        {
          mend: { title: 'Start a new line', start: token.startOffset, end: token.startOffset, text: '\n' },
        },
      );
      return;
    }
    const meant = token.tokenType === T.PlainWord ? nearest(token.image, TAIL_WORDS) : undefined;
    if (meant) {
      this.wrong(
        token,
        'syntax',
        `“${token.image}” has no meaning behind an action; did you mean “${meant}”?`,
        {
          mend: { title: `Write “${meant}”`, ...spanOf(token), text: meant },
        },
      );
      return;
    }
    const before = this.LA(0);
    if (isWord(token) && (before.tokenType === T.PlainWord || before.tokenType === T.PositionToken)) {
      this.wrong(
        token,
        'syntax',
        `“${token.image}” has no meaning behind ${shown(before, 'the text')}; names in a row are parted by commas or “and”, and words of one name are joined by hyphens.`,
        { example: 'remove cover, seal' },
      );
      return;
    }
    this.wrong(token, 'syntax', `${shown(token)} has no meaning behind ${shown(before, 'the text')}.`);
  }
}

/** Of the quantity directly behind a verb. */
const USUAL_UNITS: Readonly<Record<string, string>> = {
  wait: 'min, h or s',
  fill: 'L or qt',
  'top up': 'L or qt',
  drain: 'L or qt',
  tighten: 'N·m or lbf·ft',
};

const PREPOSITIONS: ReadonlySet<unknown> = new Set([
  T.With,
  T.While,
  T.ByHand,
  T.By,
  T.From,
  T.Into,
  T.Between,
  T.Of,
  T.Except,
  T.Until,
  T.For,
  T.Within,
  T.NotOver,
  T.NotUnder,
  T.InOrder,
  T.At,
  T.To,
  T.As,
]);

/** Types that begin a tail; the everyday words among them have been sorted out before. */
const TAIL_STARTS: ReadonlySet<unknown> = new Set([
  ...PREPOSITIONS,
  T.Holding,
  T.NamedOrder,
  T.Stage,
  T.Expect,
  T.Picture,
]);

const INTERVAL_STARTS: ReadonlySet<unknown> = new Set([T.IntervalWord, T.From, T.Bound, T.NumberToken]);
const OUTCOME_STARTS: ReadonlySet<unknown> = new Set([T.OutcomeWord, ...INTERVAL_STARTS]);
const OUTCOME_VERBS = 'measure, check, inspect and record';
