/** Expressions, intervals and orders: what values, tables, outcomes and sequences are made of. */
import type { IToken } from 'chevrotain';
import type { Expression, Interval, Order } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord } from '../tokens/types.ts';
import { keyOf, shown, spanOf } from './base.ts';
import { QuantityRules } from './quantity.ts';

/** More than this many `sum of` or brackets inside one another are not read. */
const MAX_EXPRESSION_DEPTH = 40;

export class ExpressionRules extends QuantityRules {
  private expressionDepth = 0;

  readonly expression = this.RULE('expression', (): Expression | undefined => {
    let left = this.SUBRULE(this.term);
    this.MANY(() => {
      const sign = this.OR([{ ALT: () => this.CONSUME(T.Plus) }, { ALT: () => this.CONSUME(T.Minus) }]);
      const right = this.SUBRULE1(this.term);
      left = this.binary(left, sign, right);
    });
    return left;
  });

  readonly term = this.RULE('term', (): Expression | undefined => {
    let left = this.SUBRULE(this.factor);
    this.MANY(() => {
      const sign = this.OR([{ ALT: () => this.CONSUME(T.Times) }, { ALT: () => this.CONSUME(T.Slash) }]);
      const right = this.SUBRULE1(this.factor);
      left = this.binary(left, sign, right);
    });
    return left;
  });

  private binary(
    left: Expression | undefined,
    sign: IToken,
    right: Expression | undefined,
  ): Expression | undefined {
    if (this.RECORDING_PHASE || !left) return left;
    const operator = OPERATORS.get(sign.tokenType) ?? '+';
    const node: Expression = { kind: 'binary', operator, left, start: left.start, end: this.endOfLast() };
    if (right) node.right = right;
    return node;
  }

  readonly factor = this.RULE('factor', (): Expression | undefined => {
    let found: Expression | undefined;
    this.OPTION({
      GATE: () => !isWord(this.LA(1)) || this.nameNext(),
      DEF: () =>
        this.OR([
          {
            ALT: () => {
              const quantity = this.SUBRULE(this.measure);
              found = { kind: 'quantity', quantity, start: quantity.start, end: quantity.end };
            },
          },
          {
            ALT: () => {
              found = this.SUBRULE(this.bracket);
            },
          },
          {
            ALT: () => {
              found = this.SUBRULE(this.call);
            },
          },
        ]),
    });
    if (!found) this.missing(`A value is missing after ${shown(this.LA(0), 'the text')}.`, 'gap + 0.2 mm');
    return found;
  });

  readonly bracket = this.RULE('bracket', (): Expression | undefined => {
    this.CONSUME(T.LParen);
    let inner: Expression | undefined;
    this.OPTION({
      GATE: () => this.deeper(),
      DEF: () => {
        this.expressionDepth += 1;
        inner = this.SUBRULE(this.expression);
        this.expressionDepth -= 1;
      },
    });
    let closed = false;
    this.OPTION1(() => {
      this.CONSUME(T.RParen);
      closed = true;
    });
    if (!closed) this.missing('The bracket is not closed.', '(gap + 0.2 mm) / 2');
    return inner;
  });

  /** A name, or `average of a, b`. */
  readonly call = this.RULE('call', (): Expression => {
    const ref = this.SUBRULE(this.ref);
    let node: Expression = { kind: 'name', ref, start: ref.start, end: ref.end };
    this.OPTION({
      GATE: () => this.deeper(),
      DEF: () => {
        this.CONSUME(T.Of);
        const list: Expression[] = [];
        this.expressionDepth += 1;
        this.add(list, this.SUBRULE(this.term));
        this.MANY({
          GATE: () => this.LA(1).tokenType === T.And || this.LA(2).tokenType !== T.And,
          DEF: () => {
            this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
            this.add(list, this.SUBRULE1(this.term));
          },
        });
        this.expressionDepth -= 1;
        if (this.RECORDING_PHASE) return;
        node = { kind: 'call', name: ref.name, arguments: list, start: ref.start, end: this.endOfLast() };
      },
    });
    return node;
  });

  private add(list: Expression[], found: Expression | undefined): void {
    if (found) list.push(found);
  }

  private deeper(): boolean {
    if (this.expressionDepth < MAX_EXPRESSION_DEPTH) return true;
    this.wrong(
      this.LA(1),
      'nested-too-deep',
      `The expression is nested more than ${MAX_EXPRESSION_DEPTH} deep here; what is inside is not read.`,
    );
    return false;
  }

  // ------------------------------------------------------------ intervals and orders

  readonly interval = this.RULE('interval', (): Interval => {
    const start = this.startOfNext();
    const interval: Interval = { start, end: start, bound: 'exactly' };
    this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          ALT: () => {
            const word = this.OR1([
              { ALT: () => this.CONSUME(T.IntervalWord) },
              { ALT: () => this.CONSUME(T.From) },
              { ALT: () => this.CONSUME(T.Bound) },
            ]);
            interval.bound = BOUNDS.get(keyOf(word).text) ?? 'exactly';
            const quantity = this.SUBRULE(this.quantityOrValue);
            if (quantity) interval.quantity = quantity;
          },
        },
        {
          ALT: () => {
            const quantity = this.SUBRULE1(this.quantity);
            interval.quantity = quantity;
            if (!this.RECORDING_PHASE) interval.bound = quantity.form === 'range' ? 'between' : 'exactly';
          },
        },
      ],
    });
    interval.end = this.endOfLast();
    return interval;
  });

  readonly order = this.RULE('order', (): Order | undefined => {
    let order: Order | undefined;
    this.OPTION(() =>
      this.OR([
        {
          ALT: () => {
            const word = this.CONSUME(T.NamedOrder);
            order = { kind: 'named', name: keyOf(word).text as 'across', ...spanOf(word) };
          },
        },
        {
          ALT: () => {
            const positions = this.SUBRULE(this.positions);
            if (this.RECORDING_PHASE) return;
            order = { kind: 'listed', positions, start: positions[0]!.start, end: this.endOfLast() };
          },
        },
      ]),
    );
    if (!order) {
      this.missing(
        'The order is missing: from the middle, across, in turn, reverse, or the positions one by one.',
        'order from the middle',
      );
    }
    return order;
  });
}

const OPERATORS: ReadonlyMap<unknown, '+' | '-' | '*' | '/'> = new Map([
  [T.Plus, '+'],
  [T.Minus, '-'],
  [T.Times, '*'],
  [T.Slash, '/'],
]);
const BOUNDS: ReadonlyMap<string, Interval['bound']> = new Map([
  ['below', 'below'],
  ['under', 'below'],
  ['up to', 'up to'],
  ['at most', 'up to'],
  ['from', 'from'],
  ['at least', 'from'],
  ['over', 'over'],
  ['above', 'over'],
  ['exactly', 'exactly'],
]);
