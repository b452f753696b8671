/** The tails that any action may carry, in any order. */
import type { Quantity, Ref, Tail, TailName } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord } from '../tokens/types.ts';
import { keyOf, shown, spanOf } from './base.ts';
import { MachineRules } from './machine.ts';

export class TailRules extends MachineRules {
  private tailAlternatives: { ALT: () => Tail }[] | undefined;

  readonly tail = this.RULE('tail', (): Tail => {
    this.tailAlternatives ??= [
      { ALT: () => this.SUBRULE(this.withTail) },
      { ALT: () => this.SUBRULE(this.holdingTail) },
      { ALT: () => this.SUBRULE(this.whileTail) },
      { ALT: () => this.SUBRULE(this.byHandTail) },
      { ALT: () => this.SUBRULE(this.namesTail) },
      { ALT: () => this.SUBRULE(this.textTail) },
      { ALT: () => this.SUBRULE(this.forTail) },
      { ALT: () => this.SUBRULE(this.limitTail) },
      { ALT: () => this.SUBRULE(this.orderTail) },
      { ALT: () => this.SUBRULE(this.atTail) },
      { ALT: () => this.SUBRULE(this.toTail) },
      { ALT: () => this.SUBRULE(this.stageTail) },
      { ALT: () => this.SUBRULE(this.asTail) },
      { ALT: () => this.SUBRULE(this.pictureTail) },
      { ALT: () => this.SUBRULE(this.discardTail) },
    ];
    const tail = this.OR(this.tailAlternatives);
    if (!this.RECORDING_PHASE) tail.end = this.endOfLast();
    return tail;
  });

  private readonly withTail = this.RULE('withTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.With));
    const tail: Tail & { tail: 'with' } = { tail: 'with', word, refs: [], start: word.start, end: word.end };
    let people = false;
    this.OPTION(() => {
      people = this.LA(2).image === 'people' || this.LA(2).image === 'person';
      tail.quantity = this.SUBRULE(this.quantity);
      this.OPTION1({
        GATE: () => people,
        DEF: () => {
          this.CONSUME(T.PlainWord);
          if (this.RECORDING_PHASE) return;
          tail.people = Number(tail.quantity!.amounts[0]!.number);
          delete tail.quantity;
        },
      });
    });
    this.OPTION2({
      GATE: () => people,
      DEF: () => this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]),
    });
    const due = tail.people === undefined && tail.quantity === undefined;
    const joined = this.LA(0).tokenType === T.Comma || this.LA(0).tokenType === T.And;
    this.OPTION3({
      GATE: () => (people ? joined : true) && (due || this.nameNext()),
      DEF: () => {
        tail.refs = this.SUBRULE(this.refs, { ARGS: ['after “with”'] });
      },
    });
    if (this.RECORDING_PHASE) return tail;
    if (due && tail.refs.length === 0)
      this.missing('A name is missing after “with”.', 'with torque-wrench, with 2 people');
    if (tail.quantity) {
      const units = 'L, g or ml';
      const last = tail.quantity.amounts[tail.quantity.amounts.length - 1];
      if (last && !last.unit && tail.refs.length > 0) {
        this.problems.push({
          check: 'unit-missing',
          start: tail.quantity.start,
          end: tail.quantity.end,
          message: `The number ${last.number} after “with” has no unit; usual units are ${units}. A number of things is written with x.`,
          example: `with ${tail.refs[0]!.name.text} x${last.number}`,
        });
      } else this.checkQuantity(tail.quantity, '“with”', units);
    }
    return tail;
  });

  private readonly holdingTail = this.RULE('holdingTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.Holding));
    const refs = this.SUBRULE(this.refs);
    let tools: Ref[] = [];
    // `with 2 people` is a tail of its own.
    this.OPTION({
      GATE: () => this.LA(2).tokenType !== T.NumberToken,
      DEF: () => {
        this.CONSUME(T.With);
        tools = this.SUBRULE1(this.refs);
      },
    });
    return { tail: 'holding', word, refs, with: tools, start: word.start, end: word.end };
  });

  private readonly whileTail = this.RULE('whileTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.While));
    const tail: Tail & { tail: 'while' } = {
      tail: 'while',
      word,
      refs: [],
      start: word.start,
      end: word.end,
    };
    this.OPTION({ GATE: this.nameNext, DEF: () => (tail.doing = this.SUBRULE(this.word)) });
    if (!tail.doing) this.missing('What is being done is missing after “while”.', 'while turning drum');
    this.OPTION1({ GATE: this.nameNext, DEF: () => (tail.refs = this.SUBRULE(this.refs)) });
    return tail;
  });

  private readonly byHandTail = this.RULE('byHandTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.ByHand));
    return { tail: 'by hand', word, start: word.start, end: word.end };
  });

  private readonly namesTail = this.RULE('namesTail', (): Tail => {
    const token = this.OR([
      { ALT: () => this.CONSUME(T.By) },
      { ALT: () => this.CONSUME(T.From) },
      { ALT: () => this.CONSUME(T.Into) },
      { ALT: () => this.CONSUME(T.Between) },
      { ALT: () => this.CONSUME(T.Of) },
      { ALT: () => this.CONSUME(T.Except) },
    ]);
    const word = keyOf(token);
    const refs = this.SUBRULE(this.refs);
    const tail = (word.text === 'by table' ? 'by' : word.text) as 'by';
    return { tail, word, refs, start: word.start, end: word.end };
  });

  private readonly textTail = this.RULE('textTail', (): Tail => {
    const word = keyOf(
      this.OR([{ ALT: () => this.CONSUME(T.Until) }, { ALT: () => this.CONSUME(T.Expect) }]),
    );
    const tail: Tail = { tail: word.text as 'until', word, start: word.start, end: word.end };
    const text = this.wantedText(
      word.text,
      word.text === 'until' ? 'until "the hub binds"' : 'expect "a dry joint"',
    );
    if (text) tail.text = text;
    return tail;
  });

  private readonly forTail = this.RULE('forTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.For));
    const tail: Tail & { tail: 'for' } = { tail: 'for', word, start: word.start, end: word.end };
    this.OPTION({
      GATE: () => this.nextIs(T.TextString) || this.quantityNext() || this.nameNext(),
      DEF: () =>
        this.OR([
          {
            ALT: () => {
              tail.text = this.SUBRULE(this.text);
            },
          },
          {
            ALT: () => {
              const quantity = this.SUBRULE(this.quantityOrValue, { ARGS: ['“for”', 'min, h or s'] });
              if (quantity) tail.quantity = quantity;
            },
          },
        ]),
    });
    if (!tail.text && !tail.quantity) {
      this.missing(
        'A time, or a text that says what for, is missing after “for”.',
        'for 30 min, for "leaks"',
      );
    }
    return tail;
  });

  private readonly limitTail = this.RULE('limitTail', (): Tail => {
    const word = keyOf(
      this.OR([
        { ALT: () => this.CONSUME(T.Within) },
        { ALT: () => this.CONSUME(T.NotOver) },
        { ALT: () => this.CONSUME(T.NotUnder) },
      ]),
    );
    const units = word.text === 'within' ? 'min, h or s' : 'N·m, bar or °C';
    const quantity = this.SUBRULE(this.quantityOrValue, { ARGS: [`“${word.text}”`, units] });
    const tail: Tail = { tail: word.text as 'within', word, start: word.start, end: word.end };
    if (quantity) tail.quantity = quantity;
    return tail;
  });

  private readonly orderTail = this.RULE('orderTail', (): Tail => {
    let word = { start: 0, end: 0, text: '' };
    const tail: Tail & { tail: 'in order' } = { tail: 'in order', word, start: 0, end: 0 };
    this.OR([
      {
        ALT: () => {
          word = keyOf(this.CONSUME(T.InOrder));
          let given = word.text !== 'in order';
          if (given) tail.order = { kind: 'named', name: 'reverse', start: word.start, end: word.end };
          this.OPTION({
            GATE: () => !given,
            DEF: () => {
              given = true;
              const order = this.SUBRULE(this.order);
              if (order) tail.order = order;
            },
          });
          if (!given) this.missing('The order is missing after “in order”.', 'in order across');
        },
      },
      {
        ALT: () => {
          word = keyOf(this.CONSUME(T.NamedOrder));
          tail.order = { kind: 'named', name: word.text as 'across', start: word.start, end: word.end };
        },
      },
    ]);
    tail.word = word;
    tail.start = word.start;
    return tail;
  });

  private readonly atTail = this.RULE('atTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.At));
    const tail: Tail & { tail: 'at' } = {
      tail: 'at',
      word,
      positions: [],
      refs: [],
      start: word.start,
      end: word.end,
    };
    let found = false;
    this.OPTION({
      GATE: () => !isWord(this.LA(1)) || this.nameNext(),
      DEF: () => {
        found = true;
        this.OR([
          {
            ALT: () => {
              tail.positions = this.SUBRULE(this.positions);
            },
          },
          {
            ALT: () => {
              tail.quantity = this.SUBRULE(this.quantity);
              this.checkQuantity(tail.quantity, '“at”', 'N·m, bar or °C');
            },
          },
          {
            ALT: () => {
              tail.refs = this.SUBRULE(this.refs);
            },
          },
        ]);
      },
    });
    if (!found)
      this.missing('A position, a value or a place is missing after “at”.', 'at #3, at 80 N·m, at bleeder');
    return tail;
  });

  private readonly toTail = this.RULE('toTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.To));
    const tail: Tail & { tail: 'to' } = {
      tail: 'to',
      word,
      refs: [],
      below: false,
      fresh: false,
      start: word.start,
      end: word.end,
    };
    this.OPTION(() => {
      this.CONSUME(T.IntervalWord);
      tail.below = true;
    });
    this.OPTION1({
      GATE: () => this.LA(1).image === 'new' && isWord(this.LA(2)),
      DEF: () => {
        this.CONSUME(T.PlainWord);
        tail.fresh = true;
      },
    });
    let found = false;
    this.OPTION2({
      GATE: () => !isWord(this.LA(1)) || this.nameNext(),
      DEF: () => {
        found = true;
        this.OR([
          {
            ALT: () => {
              tail.text = this.SUBRULE(this.text);
            },
          },
          {
            ALT: () => {
              tail.quantity = this.SUBRULE(this.quantity);
              this.checkQuantity(tail.quantity, '“to”', 'N·m, bar or mm');
            },
          },
          {
            ALT: () => {
              tail.refs = this.SUBRULE(this.refs);
            },
          },
        ]);
      },
    });
    if (!found) {
      this.missing(
        `A value, a mark or a name is missing after ${shown(this.LA(0), 'the text')}.`,
        'to 25 N·m, to "the mark", to below thermostat',
      );
    }
    return tail;
  });

  /** `stage 2`, `to stage 2`, `pass 30 %` */
  private readonly stageTail = this.RULE('stageTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.Stage));
    const name: TailName & ('stage' | 'pass') = word.text === 'pass' ? 'pass' : 'stage';
    let quantity: Quantity | undefined;
    this.OPTION(() => {
      quantity = this.SUBRULE(this.quantity);
      if (name === 'pass') this.checkQuantity(quantity, 'a pass', '%');
    });
    const tail: Tail = { tail: name, word, start: word.start, end: word.end };
    if (quantity) tail.quantity = quantity;
    else this.missing(`A number is missing after “${word.text}”.`, name === 'pass' ? 'pass 30 %' : 'stage 2');
    return tail;
  });

  private readonly asTail = this.RULE('asTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.As));
    const tail: Tail & { tail: 'as' } = {
      tail: 'as',
      positions: [],
      word,
      start: word.start,
      end: word.end,
    };
    this.OPTION({ GATE: this.nameNext, DEF: () => (tail.name = this.SUBRULE(this.word)) });
    this.OPTION1(() => {
      const positions = this.SUBRULE(this.positions);
      if (!this.RECORDING_PHASE) tail.positions = positions;
    });
    if (!tail.name) this.missing('The name that the value gets is missing after “as”.', 'as gap');
    return tail;
  });

  private readonly pictureTail = this.RULE('pictureTail', (): Tail => {
    const word = keyOf(this.CONSUME(T.Picture));
    const tail: Tail & { tail: 'picture' } = { tail: 'picture', word, start: word.start, end: word.end };
    this.OPTION(() => {
      tail.file = this.SUBRULE(this.string);
      this.OPTION1(() => {
        tail.shows = this.SUBRULE(this.text);
      });
    });
    if (!tail.file)
      this.missing('The file is missing after “picture”.', 'picture "head.jpg" "the six bolts"');
    return tail;
  });

  private readonly discardTail = this.RULE('discardTail', (): Tail => {
    const token = this.CONSUME(T.AndDiscard);
    return { tail: 'and discard', word: keyOf(token), ...spanOf(token) };
  });
}
