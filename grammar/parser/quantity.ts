/** Names in use and quantities: the small parts that clauses, tails and rows share. */
import type { IToken } from 'chevrotain';
import type { Amount, Name, Position, Quantity, Ref } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord, type Lexeme } from '../tokens/types.ts';
import { BaseRules, keyOf, nameOf, shown, spanOf } from './base.ts';

/** The numbers of a quantity without units, as they are written. */
function numbersOf({ form, amounts }: Quantity): string {
  const numbers = amounts.map(({ number }) => number);
  if (form === 'range') return numbers.join('..');
  if (form === 'tolerance') return numbers.join(' ± ');
  if (form === 'spread') {
    const [first, ...limits] = numbers;
    return `${first} ${limits.map((limit) => (/^\d/.test(limit) ? `+${limit}` : limit)).join('/')}`;
  }
  return numbers.at(-1) ?? '';
}

export class QuantityRules extends BaseRules {
  // ------------------------------------------------------------ names in use

  readonly position = this.RULE('position', (): Position => {
    const first = this.CONSUME(T.PositionToken);
    const position: Position = { ...spanOf(first), from: first.image.slice(1) };
    this.OPTION(() => {
      this.CONSUME(T.Dots);
      const last = this.OPTION1(() =>
        this.OR([{ ALT: () => this.CONSUME1(T.PositionToken) }, { ALT: () => this.CONSUME(T.NumberToken) }]),
      );
      if (this.RECORDING_PHASE) return;
      if (last) position.to = last.image.replace(/^#/, '');
      else this.missing('The last position of the range is missing.', '#1..#4');
      position.end = this.endOfLast();
    });
    return position;
  });

  /** `#2, #3`: a comma goes on with the positions only where a position follows it. */
  readonly positions = this.RULE('positions', (): Position[] => {
    const list = [this.SUBRULE(this.position)];
    this.MANY({
      GATE: () => this.LA(2).tokenType === T.PositionToken,
      DEF: () => {
        this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
        list.push(this.SUBRULE1(this.position));
      },
    });
    return list;
  });

  readonly ref = this.RULE('ref', (): Ref => {
    const word = this.CONSUME(T.AnyWord);
    const name = nameOf(word);
    const ref: Ref = { name, positions: [], start: name.start, end: name.end };
    // Most names stand alone: the look ahead of the options is only asked where it can say yes.
    const next = this.LA(1).tokenType;
    if (next !== T.PositionToken && next !== T.Count && !this.RECORDING_PHASE) return ref;
    this.OPTION(() => {
      ref.positions = this.SUBRULE(this.positions);
    });
    this.OPTION1(() => {
      ref.count = countOf(this.CONSUME(T.Count));
    });
    ref.end = this.endOfLast();
    return ref;
  });

  /** The commonest list: one name and nothing that goes on with it. */
  singleRef(): Ref[] | undefined {
    this.lastJoin = 'comma';
    if (!this.nameNext() || GOES_ON.has(this.LA(2).tokenType)) return undefined;
    const name = nameOf(this.take());
    return [{ name, positions: [], start: name.start, end: name.end }];
  }

  /** Names parted by commas or `and`; that there is none is reported with what it was wanted for. */
  readonly refs = this.RULE('refs', (wanted?: string): Ref[] => {
    this.lastJoin = 'comma';
    const single = this.RECORDING_PHASE ? undefined : this.singleRef();
    if (single) return single;
    let list: Ref[] = [];
    this.OPTION({ GATE: this.nameNext, DEF: () => (list = this.SUBRULE(this.refList)) });
    if (list.length === 0)
      this.missing(`A name is missing ${wanted ?? `after ${shown(this.LA(0), 'the text')}`}.`);
    return list;
  });

  /** A comma before `all of` or `everything` parts claims, not names. */
  private readonly listGoesOn = (): boolean => {
    const next = this.LA(2).tokenType;
    return next !== T.AllOf && next !== T.Everything;
  };

  readonly refList = this.RULE('refList', (): Ref[] => {
    this.lastJoin = 'comma';
    const list = [this.SUBRULE(this.ref)];
    const next = this.LA(1).tokenType;
    if (next !== T.Comma && next !== T.And && !this.RECORDING_PHASE) return list;
    this.MANY({
      GATE: this.listGoesOn,
      DEF: () => {
        let and = false;
        this.OR([
          { ALT: () => this.CONSUME(T.Comma) },
          {
            ALT: () => {
              this.CONSUME(T.And);
              and = true;
            },
          },
        ]);
        this.OPTION1({
          GATE: () => !and,
          DEF: () => {
            this.CONSUME1(T.And);
            and = true;
          },
        });
        const before = list.length;
        this.OPTION2({ GATE: this.nameNext, DEF: () => list.push(this.SUBRULE1(this.ref)) });
        this.lastJoin = and ? 'and' : 'comma';
        if (list.length === before) this.missing(`A name is missing after ${shown(this.LA(0), 'the text')}.`);
      },
    });
    return list;
  });
  /** How the last two names of the list that was read last are joined. */
  lastJoin: 'and' | 'comma' = 'comma';

  readonly oneRef = this.RULE('oneRef', (): Ref | undefined => {
    let ref: Ref | undefined;
    this.OPTION({
      GATE: this.nameNext,
      DEF: () => {
        ref = this.SUBRULE(this.ref);
      },
    });
    if (!ref) this.missing(`A name is missing after ${shown(this.LA(0), 'the text')}.`);
    return ref;
  });

  // ------------------------------------------------------------ quantities

  readonly amount = this.RULE('amount', (): Amount => {
    const number = this.CONSUME(T.NumberToken);
    const amount: Amount = {
      number: (number as Lexeme).key,
      start: number.startOffset,
      end: number.endOffset! + 1,
    };
    this.OPTION(() => {
      const unit = this.CONSUME(T.Unit);
      amount.unit = nameOf(unit);
      amount.end = amount.unit.end;
    });
    return amount;
  });

  /** A quantity without a second one in brackets. */
  readonly measure = this.RULE('measure', (): Quantity => {
    const start = this.startOfNext();
    const amounts: Amount[] = [];
    const quantity: Quantity = { start, end: start, form: 'plain', amounts };
    if (!this.RECORDING_PHASE && this.plainNext()) {
      const number = this.take();
      const unit = nameOf(this.take());
      amounts.push({ number: number.key, unit, start, end: unit.end });
      quantity.end = unit.end;
      return quantity;
    }
    this.OR1([
      {
        ALT: () => {
          quantity.bound = keyOf(this.CONSUME(T.Bound)).text as 'at least' | 'at most';
          this.OPTION1(() => amounts.push(this.SUBRULE4(this.amount)));
        },
      },
      { ALT: () => amounts.push(this.SUBRULE(this.amount)) },
    ]);
    if (amounts.length > 0) {
      this.OPTION2(() =>
        this.OR([
          {
            ALT: () => {
              this.CONSUME(T.Dots);
              quantity.form = 'range';
              this.OPTION3(() => amounts.push(this.SUBRULE1(this.amount)));
              if (amounts.length < 2) this.missing('The second number of the range is missing.', '5..60 N·m');
            },
          },
          {
            ALT: () => {
              this.CONSUME(T.PlusMinus);
              quantity.form = 'tolerance';
              this.OPTION4(() => amounts.push(this.SUBRULE2(this.amount)));
              if (amounts.length < 2) this.missing('The tolerance is missing after “±”.', '25 ± 3 N·m');
            },
          },
          {
            ALT: () => {
              const spread = this.CONSUME(T.Spread);
              quantity.form = 'spread';
              let unit: Name | undefined;
              this.OPTION5(() => {
                unit = nameOf(this.CONSUME(T.Unit));
              });
              if (!this.RECORDING_PHASE) amounts.push(...spreadAmounts(spread, unit));
            },
          },
        ]),
      );
      this.unitAlone(amounts);
      this.MANY({
        GATE: () => this.moreOfSum(quantity),
        DEF: () => {
          amounts.push(this.SUBRULE3(this.amount));
          quantity.form = 'sum';
        },
      });
    }
    quantity.end = this.endOfLast();
    return quantity;
  });

  /** A number, its unit and nothing that goes on with the quantity. */
  private plainNext(): boolean {
    return (
      this.LA(1).tokenType === T.NumberToken &&
      this.LA(2).tokenType === T.Unit &&
      !QUANTITY_GOES_ON.has(this.LA(3).tokenType)
    );
  }

  /** `1 h 30 min`: each number with a unit of its own, on one line. */
  private moreOfSum(quantity: Quantity): boolean {
    if (quantity.form !== 'plain' && quantity.form !== 'sum') return false;
    const unit = quantity.amounts[quantity.amounts.length - 1]?.unit;
    const next = this.next();
    if (unit === undefined || next.tokenType !== T.NumberToken || next.beginsLine) return false;
    return this.LA(2).tokenType === T.Unit && this.LA(2).image !== unit.text;
  }

  /** The unit behind a number that is missing: it belongs to the number before. */
  private unitAlone(amounts: Amount[]): void {
    this.option(24, () => {
      const unit = nameOf(this.CONSUME9(T.Unit));
      const amount = amounts[amounts.length - 1];
      if (this.RECORDING_PHASE || !amount) return;
      amount.unit = unit;
      amount.end = unit.end;
    });
  }

  readonly quantity = this.RULE('quantity', (): Quantity => {
    const quantity = this.SUBRULE(this.measure);
    if (!this.RECORDING_PHASE && !this.nextIs(T.LParen)) return quantity;
    this.OPTION({
      GATE: () => QUANTITY_STARTS.has(this.LA(2).tokenType),
      DEF: () => {
        this.CONSUME(T.LParen);
        const second = this.SUBRULE1(this.measure);
        let closed = false;
        this.OPTION1(() => {
          this.CONSUME(T.RParen);
          closed = true;
        });
        if (this.RECORDING_PHASE) return;
        quantity.second = second;
        if (!closed)
          this.missing('The bracket around the second value is not closed.', '80 lbf·ft (110 N·m)');
        quantity.end = this.endOfLast();
      },
    });
    return quantity;
  });

  quantityNext(): boolean {
    return QUANTITY_STARTS.has(this.LA(1).tokenType);
  }

  /**
   * A quantity or the name of a declared value. `units` names the usual units where one is needed; with
   * `named` false a word is not read as a value.
   */
  readonly quantityOrValue = this.RULE(
    'quantityOrValue',
    (what?: string, units?: string, named?: boolean): Quantity | undefined => {
      let quantity: Quantity | undefined;
      this.OPTION({
        GATE: () => this.quantityNext() || (named !== false && this.nameNext()),
        DEF: () =>
          this.OR([
            {
              ALT: () => {
                quantity = this.SUBRULE(this.quantity);
              },
            },
            {
              ALT: () => {
                const ref = this.SUBRULE(this.ref);
                quantity = { start: ref.start, end: ref.end, form: 'plain', amounts: [], named: ref };
              },
            },
          ]),
      });
      if (this.RECORDING_PHASE) return quantity;
      if (!quantity) {
        this.missing(
          `A number is missing after ${shown(this.LA(0), 'the text')}.`,
          units ? exampleOf(units) : undefined,
        );
      } else this.checkQuantity(quantity, what ?? 'a value', units);
      return quantity;
    },
  );

  /** Reports a quantity that has no number after its bound, or no unit where one is needed. */
  checkQuantity(quantity: Quantity, what: string, units: string | undefined): void {
    if (this.RECORDING_PHASE || quantity.named) return;
    const last = quantity.amounts[quantity.amounts.length - 1];
    if (!last) {
      this.missing(`A number is missing after “${quantity.bound ?? ''}”.`, units && exampleOf(units));
      return;
    }
    if (units === undefined || last.unit || quantity.amounts.some((amount) => amount.unit)) return;
    const next = this.next();
    const typed = isWord(next) && !next.beginsLine && next.tokenType === T.PlainWord ? next : undefined;
    const list = numbersOf(quantity);
    const example = `${list} ${units.split(/[ ,]/)[0]}`;
    if (typed) {
      // The word is reported where it stands, so that stepping over it says nothing more.
      this.problem(
        'unit-missing',
        `“${typed.image}” is not a unit that ${what} can have here; usual units are ${units}.`,
        spanOf(typed),
        { example },
      );
      return;
    }
    this.problem(
      'unit-missing',
      `The number ${list} for ${what} has no unit; usual units are ${units}.`,
      { start: quantity.start, end: quantity.end },
      { example },
    );
  }
}

/** What goes on with a name or a list of names. */
const GOES_ON: ReadonlySet<unknown> = new Set([T.Comma, T.And, T.PositionToken, T.Count]);
const QUANTITY_GOES_ON: ReadonlySet<unknown> = new Set([
  T.Dots,
  T.PlusMinus,
  T.Spread,
  T.NumberToken,
  T.Unit,
]);
const QUANTITY_STARTS: ReadonlySet<unknown> = new Set([T.NumberToken, T.Bound]);

function exampleOf(units: string): string {
  return `25 ${units.split(/[ ,]/)[0]}`;
}

export function countOf(token: IToken): number {
  return Number.parseInt(token.image.replace(/^[x×]\s*/, ''), 10);
}

/** `+1/-0` as two amounts with their signs; the unit belongs to the second. */
function spreadAmounts(token: IToken, unit: Name | undefined): Amount[] {
  const { image, startOffset } = token;
  const slash = image.indexOf('/');
  const plus = image.slice(0, slash).trimEnd();
  const minusAt = slash + 1 + (image.slice(slash + 1).length - image.slice(slash + 1).trimStart().length);
  const plain = (typed: string) => typed.replace(/[ \t]/g, '').replace(/^[−–]/, '-');
  const first: Amount = { start: startOffset, end: startOffset + plus.length, number: plain(plus) };
  const second: Amount = {
    start: startOffset + minusAt,
    end: unit?.end ?? startOffset + image.length,
    number: plain(image.slice(minusAt)),
  };
  if (unit) second.unit = unit;
  return [first, second];
}
