/** What stands between the title of a procedure and its block. */
import type { Header, Quantity, Ref } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { ActionRules } from './action.ts';
import { keyOf, shown } from './base.ts';

export class HeaderRules extends ActionRules {
  readonly header = this.RULE('header', (): Header => {
    const header = this.OR([
      { ALT: () => this.SUBRULE(this.forHeader) },
      { ALT: () => this.SUBRULE(this.documentHeader) },
      { ALT: () => this.SUBRULE(this.peopleHeader) },
      { ALT: () => this.SUBRULE(this.textHeader) },
      { ALT: () => this.SUBRULE(this.timeHeader) },
      { ALT: () => this.SUBRULE(this.wearHeader) },
      { ALT: () => this.SUBRULE(this.toolsHeader) },
      { ALT: () => this.SUBRULE(this.suppliesHeader) },
      { ALT: () => this.SUBRULE(this.claimsHeader) },
      { ALT: () => this.SUBRULE(this.startsWhereHeader) },
      { ALT: () => this.SUBRULE(this.onlyHeader) },
    ]);
    if (!this.RECORDING_PHASE) header.end = this.endOfLast();
    return header;
  });

  private readonly forHeader = this.RULE('forHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.For));
    const refs = this.SUBRULE(this.refs);
    return { header: 'for', word, refs, start: word.start, end: word.end };
  });

  /** `document "T40-02-07" issue 3 "2026-11-02"` */
  private readonly documentHeader = this.RULE('documentHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderDocument));
    const header: Header & { header: 'document' } = {
      header: 'document',
      word,
      start: word.start,
      end: word.end,
    };
    this.OPTION(() => {
      header.number = this.SUBRULE(this.string);
    });
    if (!header.number)
      this.missing('The number of the document is missing.', 'document "T40-02-07" issue 3 "2026-11-02"');
    this.OPTION1(() => {
      this.CONSUME(T.Issue);
      this.OPTION2({
        GATE: () => !this.next().beginsLine,
        DEF: () => {
          header.issue = this.OR([
            { ALT: () => this.CONSUME(T.NumberToken).image },
            { ALT: () => this.CONSUME(T.PlainWord).image },
          ]);
        },
      });
      if (header.issue === undefined) this.missing('The issue is missing.', 'issue 3 "2026-11-02"');
    });
    this.OPTION3(() => {
      header.date = this.SUBRULE1(this.string);
    });
    return header;
  });

  private readonly peopleHeader = this.RULE('peopleHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderPeople));
    const header: Header & { header: 'people' } = {
      header: 'people',
      word,
      start: word.start,
      end: word.end,
    };
    this.OPTION(() => {
      header.count = Number(this.CONSUME(T.NumberToken).image);
    });
    if (header.count === undefined) this.missing('The number of people is missing.', 'people 2');
    return header;
  });

  /** `skill "…"`, `serial numbers "…"`, `needs "…"`, `change "…"`, `elsewhere "…"` */
  private readonly textHeader = this.RULE('textHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderText));
    const header: Header = { header: word.text as 'skill', word, start: word.start, end: word.end };
    const text = this.wantedText(word.text, `${word.text} ${HEADER_EXAMPLES[word.text] ?? '"…"'}`);
    if (text) header.text = text;
    return header;
  });

  private readonly timeHeader = this.RULE('timeHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderTime));
    const quantity = this.SUBRULE(this.quantityOrValue, { ARGS: ['“time”', 'min or h', false] });
    const header: Header = { header: 'time', word, start: word.start, end: word.end };
    if (quantity) header.quantity = quantity;
    return header;
  });

  private readonly wearHeader = this.RULE('wearHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderWear));
    const names = this.SUBRULE(this.words);
    if (names.length === 0) this.missing('What is to be worn is missing.', 'wear eye-protection, gloves');
    return { header: 'wear', word, names, start: word.start, end: word.end };
  });

  private readonly toolsHeader = this.RULE('toolsHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderTools));
    const refs = this.SUBRULE(this.refs);
    return { header: 'tools', word, refs, start: word.start, end: word.end };
  });

  /** `supplies head-gasket x1, 1.2 L pump-oil` */
  private readonly suppliesHeader = this.RULE('suppliesHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderSupplies));
    const refs: Ref[] = [];
    const fluids: { quantity: Quantity; fluid?: Ref }[] = [];
    this.SUBRULE(this.supply, { ARGS: [refs, fluids] });
    this.MANY(() => {
      this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
      this.SUBRULE1(this.supply, { ARGS: [refs, fluids] });
    });
    return { header: 'supplies', word, refs, fluids, start: word.start, end: word.end };
  });

  private readonly supply = this.RULE(
    'supply',
    (refs?: Ref[], fluids?: { quantity: Quantity; fluid?: Ref }[]) => {
      let found = false;
      this.OPTION({
        GATE: () => this.quantityNext() || this.nameNext(),
        DEF: () => {
          found = true;
          this.OR([
            {
              ALT: () => {
                const quantity = this.SUBRULE(this.quantity);
                let fluid: Ref | undefined;
                this.OPTION1({ GATE: this.nameNext, DEF: () => (fluid = this.SUBRULE(this.ref)) });
                if (this.RECORDING_PHASE) return;
                fluids?.push(fluid ? { quantity, fluid } : { quantity });
                if (!fluid) this.missing('What is supplied is missing.', 'supplies 1.2 L pump-oil');
              },
            },
            {
              ALT: () => {
                const ref = this.SUBRULE1(this.ref);
                if (!this.RECORDING_PHASE) refs?.push(ref);
              },
            },
          ]);
        },
      });
      if (!found)
        this.missing(
          `A name is missing after ${shown(this.LA(0), 'the text')}.`,
          'supplies head-gasket, 1.2 L pump-oil',
        );
    },
  );

  private readonly claimsHeader = this.RULE('claimsHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderClaims));
    const claims = this.SUBRULE(this.claims);
    return { header: word.text as 'starts with', word, claims, start: word.start, end: word.end };
  });

  /** `starts where hub-removal ends` */
  private readonly startsWhereHeader = this.RULE('startsWhereHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.HeaderStartsWhere));
    const ref = this.SUBRULE(this.oneRef);
    this.OPTION(() => this.CONSUME(T.Ends));
    const header: Header = { header: 'starts where', word, start: word.start, end: word.end };
    if (ref) header.ref = ref;
    return header;
  });

  private readonly onlyHeader = this.RULE('onlyHeader', (): Header => {
    const word = keyOf(this.CONSUME(T.Only));
    const condition = this.SUBRULE(this.condition);
    const header: Header = { header: 'only', word, start: word.start, end: word.end };
    if (condition) header.condition = condition;
    return header;
  });
}

const HEADER_EXAMPLES: Readonly<Record<string, string>> = {
  skill: '"technician"',
  'serial numbers': '"from 1200"',
  needs: '"a clean bench"',
  change: '"Torque of the cap bolts corrected"',
  elsewhere: '"chapter 2"',
};

/** Types that begin a header. */
export const HEADER_STARTS: ReadonlySet<unknown> = new Set([
  T.For,
  T.HeaderDocument,
  T.HeaderPeople,
  T.HeaderText,
  T.HeaderTime,
  T.HeaderWear,
  T.HeaderTools,
  T.HeaderSupplies,
  T.HeaderClaims,
  T.HeaderStartsWhere,
  T.Only,
]);
