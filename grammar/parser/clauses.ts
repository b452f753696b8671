/** The clauses of a declaration, read by their shape (../tokens/clauses.ts): any clause in any order. */
import type { TokenType } from 'chevrotain';
import type { Clause, ClauseName, Layout, Name, Plan, Ref, Text } from '../syntax/tree.ts';
import { CLAUSE_UNITS } from '../tokens/clauses.ts';
import * as T from '../tokens/types.ts';
import { keyOf, nameOf, shown, spanOf } from './base.ts';
import { FasteningRules } from './fastening.ts';
import { countOf } from './quantity.ts';

export class ClauseRules extends FasteningRules {
  /** One alternative a shape, made once; what a clause lacks is missing from the node and reported. */
  protected readonly clauseKinds: { ALT: () => Clause }[] = [
    { ALT: () => this.SUBRULE(this.namesClause) },
    { ALT: () => this.SUBRULE(this.heldBy) },
    { ALT: () => this.SUBRULE(this.namesToNames) },
    { ALT: () => this.SUBRULE(this.countClause) },
    { ALT: () => this.SUBRULE(this.positionsClause) },
    { ALT: () => this.SUBRULE(this.flagClause) },
    { ALT: () => this.SUBRULE(this.textClause) },
    { ALT: () => this.SUBRULE(this.alsoCalled) },
    { ALT: () => this.SUBRULE(this.itemClause) },
    { ALT: () => this.SUBRULE(this.onlyClause) },
    { ALT: () => this.SUBRULE(this.hazardClause) },
    { ALT: () => this.SUBRULE(this.quantityClause) },
    { ALT: () => this.SUBRULE(this.holdsClause) },
    { ALT: () => this.SUBRULE(this.designationClause) },
    { ALT: () => this.SUBRULE(this.layoutClause) },
    { ALT: () => this.SUBRULE(this.orderClause) },
    { ALT: () => this.SUBRULE(this.planClause) },
    { ALT: () => this.SUBRULE(this.normallyClause) },
  ];

  /** Where the clause ends and what begins it. */
  private head<N extends ClauseName>(
    word: Name,
    clause: N,
  ): { clause: N; word: Name; start: number; end: number } {
    return { clause, word, start: word.start, end: this.lastEnd() };
  }

  private readonly namesClause = this.RULE('namesClause', (): Clause => {
    const word = keyOf(
      this.OR([
        { ALT: () => this.CONSUME(T.ClauseRefs) },
        { ALT: () => this.CONSUME(T.With) },
        { ALT: () => this.CONSUME(T.In) },
      ]),
    );
    const refs = this.SUBRULE(this.refs);
    return { clause: word.text as 'on', word, refs, start: word.start, end: this.lastEnd() };
  });

  private readonly heldBy = this.RULE('heldBy', (): Clause => {
    const word = keyOf(this.CONSUME(T.HeldBy));
    const refs = this.SUBRULE(this.refs);
    let each: number | undefined;
    this.OPTION({
      GATE: () => this.LA(2).tokenType === T.Each,
      DEF: () => {
        each = Number(this.CONSUME(T.NumberToken).image);
        this.CONSUME(T.Each);
      },
    });
    const clause: Clause = { clause: 'held by', word, refs, start: word.start, end: this.lastEnd() };
    if (each !== undefined) clause.each = each;
    return clause;
  });

  /** `clamps A, B to C`, `joins A to B` */
  private readonly namesToNames = this.RULE('namesToNames', (): Clause => {
    const word = keyOf(
      this.OR([{ ALT: () => this.CONSUME(T.Clamps) }, { ALT: () => this.CONSUME(T.Joins) }]),
    );
    const refs = this.SUBRULE(this.refs);
    let to: Ref[] = [];
    this.OPTION(() => {
      this.CONSUME(T.To);
      to = this.SUBRULE1(this.refs);
    });
    return { clause: word.text as 'clamps', word, refs, to, start: word.start, end: this.lastEnd() };
  });

  private readonly countClause = this.RULE('countClause', (): Clause => {
    const token = this.CONSUME(T.Count);
    return { ...this.head(nameOf(token), 'count'), count: countOf(token) };
  });

  private readonly positionsClause = this.RULE('positionsClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Positions));
    const names = this.SUBRULE(this.words);
    if (names.length === 0) this.missing('The names of the positions are missing.', 'positions left, right');
    return { ...this.head(word, 'positions'), names };
  });

  private readonly flagClause = this.RULE('flagClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.ClauseFlag));
    return this.head(word, word.text as 'fixed');
  });

  private readonly textClause = this.RULE('textClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.ClauseText));
    const text = this.wantedText(word.text, `${word.text} ${CLAUSE_EXAMPLES[word.text] ?? '"…"'}`);
    const clause: Clause = this.head(word, word.text as 'goes');
    if (text) clause.text = text;
    return clause;
  });

  private readonly alsoCalled = this.RULE('alsoCalled', (): Clause => {
    const word = keyOf(this.CONSUME(T.AlsoCalled));
    const texts: Text[] = [];
    const first = this.wantedText('also called', 'also called "lifter"');
    if (first) texts.push(first);
    this.MANY(() => {
      this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
      const before = texts.length;
      this.OPTION(() => texts.push(this.SUBRULE(this.text)));
      if (texts.length === before)
        this.missing(`A text in quotation marks is missing after ${shown(this.LA(0), 'the text')}.`);
    });
    return { ...this.head(word, 'also called'), texts };
  });

  private readonly itemClause = this.RULE('itemClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Item));
    let number: string | undefined;
    this.OPTION({
      GATE: () => !this.next().beginsLine,
      DEF: () =>
        this.OR([
          {
            ALT: () => {
              number = this.CONSUME(T.NumberToken).image;
              // `item 7a`
              this.OPTION1({
                GATE: () => this.LA(1).startOffset === this.LA(0).endOffset! + 1,
                DEF: () => {
                  number += this.CONSUME(T.PlainWord).image;
                },
              });
            },
          },
          {
            ALT: () => {
              number = this.SUBRULE(this.string).value;
            },
          },
        ]),
    });
    if (number === undefined) this.missing('The number of the item in the figure is missing.', 'item 7');
    const clause: Clause = this.head(word, 'item');
    if (number !== undefined) clause.number = number;
    return clause;
  });

  private readonly onlyClause = this.RULE('onlyClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Only));
    const condition = this.SUBRULE(this.condition);
    const clause: Clause = this.head(word, 'only');
    if (condition) clause.condition = condition;
    return clause;
  });

  private readonly hazardClause = this.RULE('hazardClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Hazard));
    const hazards = this.SUBRULE(this.words);
    if (hazards.length === 0) this.missing('The kind of hazard is missing.', 'hazard moving when turning');
    let when: Name[] = [];
    let harm: Name | undefined;
    this.OPTION(() => {
      harm = keyOf(this.CONSUME(T.Harm));
    });
    this.OPTION1(() => {
      this.CONSUME(T.When);
      when = this.SUBRULE1(this.words);
      if (when.length === 0)
        this.missing('What is being done is missing after “when”.', 'hazard moving when turning');
    });
    this.OPTION2(() => {
      const after = keyOf(this.CONSUME1(T.Harm));
      harm ??= after;
    });
    return { ...this.head(word, 'hazard'), hazards, when, ...(harm ? { harm } : {}) };
  });

  private readonly quantityClause = this.RULE('quantityClause', (): Clause => {
    const word = keyOf(
      this.OR([{ ALT: () => this.CONSUME(T.ClauseQuantity) }, { ALT: () => this.CONSUME(T.NotOver) }]),
    );
    const units = CLAUSE_UNITS[word.text as ClauseName];
    const quantity = this.SUBRULE(this.quantityOrValue, { ARGS: [`“${word.text}”`, units] });
    const clause: Clause = this.head(word, word.text as 'mass');
    if (quantity) clause.quantity = quantity;
    return clause;
  });

  private readonly holdsClause = this.RULE('holdsClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Holds));
    const clause: Clause & { clause: 'holds' } = this.head(word, 'holds');
    this.OPTION(() => {
      clause.quantity = this.SUBRULE(this.quantity);
    });
    // Behind a quantity the fluid may be left out: a clause word there begins the next clause.
    this.OPTION1({
      GATE: () => this.nameNext() && (!clause.quantity || this.nextIs(T.PlainWord)),
      DEF: () => {
        clause.fluid = this.SUBRULE(this.ref);
      },
    });
    if (this.RECORDING_PHASE) return clause;
    if (clause.quantity && !clause.fluid) this.checkQuantity(clause.quantity, '“holds”', CLAUSE_UNITS.holds);
    else if (clause.quantity?.amounts.every((amount) => !amount.unit)) {
      this.problem(
        'unit-missing',
        `The quantity that the system holds has no unit; usual units are ${CLAUSE_UNITS.holds}.`,
        { start: clause.quantity.start, end: clause.quantity.end },
        { example: 'holds 1.2 L pump-oil' },
      );
    }
    if (!clause.quantity && !clause.fluid) {
      this.missing('What the system holds is missing after “holds”.', 'holds 1.2 L pump-oil');
    }
    clause.end = this.endOfLast();
    return clause;
  });

  private readonly designationClause = this.RULE('designationClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.ClauseDesignation));
    let designation: Name | undefined;
    this.OPTION({
      GATE: () => !this.next().beginsLine,
      DEF: () => {
        designation = nameOf(
          this.OR([
            { ALT: () => this.CONSUME(T.Thread) },
            { ALT: () => this.CONSUME(T.NumberToken) },
            { ALT: () => this.CONSUME(T.PlainWord) },
          ]),
        );
      },
    });
    if (!designation) {
      this.missing(
        `The designation is missing after “${word.text}”.`,
        word.text === 'thread' ? 'thread M8x1.25' : word.text === 'class' ? 'class 8.8' : 'grade 5',
      );
    }
    const clause: Clause = this.head(word, word.text as 'thread');
    if (designation) clause.designation = designation;
    return clause;
  });

  private readonly layoutClause = this.RULE('layoutClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Layout));
    let layout: Layout | undefined;
    this.OPTION({
      GATE: () => !this.next().beginsLine,
      DEF: () => {
        layout = this.OR([
          { ALT: () => this.SUBRULE(this.rows) },
          { ALT: () => this.SUBRULE(this.circle) },
          { ALT: () => this.SUBRULE(this.places) },
        ]);
        this.OPTION1({
          GATE: () => this.LA(2).tokenType === T.TextString,
          DEF: () => {
            const position = this.CONSUME(T.PositionToken);
            const first = this.SUBRULE(this.text);
            if (this.RECORDING_PHASE || !layout) return;
            layout.first = first;
            layout.end = first.end;
            if (position.image !== '#1') {
              this.problem(
                'syntax',
                'A layout says where #1 is; the others follow from it.',
                spanOf(position),
                {
                  example: 'layout circle #1 "at the top"',
                },
              );
            }
          },
        });
      },
    });
    if (!layout)
      this.missing(
        'The layout is missing after “layout”.',
        'layout 2 rows of 3, layout circle, layout at 0 0, 50 0 mm',
      );
    const clause: Clause = this.head(word, 'layout');
    if (layout) clause.layout = layout;
    return clause;
  });

  private readonly planClause = this.RULE('planClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.PlanWord));
    let plan: Plan = { start: word.end, end: word.end, stages: [], toYield: false };
    let found = false;
    this.OPTION(() => {
      plan = this.SUBRULE(this.plan);
      found = true;
    });
    if (!found)
      this.missing(
        'The stages are missing after “plan”; they stand in braces.',
        'plan { 8 N·m; 16 N·m; 60° }',
      );
    return { ...this.head(word, 'plan'), plan };
  });

  private readonly orderClause = this.RULE('orderClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.OrderWord));
    const order = this.SUBRULE(this.order);
    const clause: Clause = this.head(word, 'order');
    if (order) clause.order = order;
    return clause;
  });

  private readonly normallyClause = this.RULE('normallyClause', (): Clause => {
    const word = keyOf(this.CONSUME(T.Normally));
    const state = this.SUBRULE(this.state);
    if (!state) this.missing('The normal position is missing after “normally”.', 'normally closed');
    const clause: Clause = this.head(word, 'normally');
    if (state) clause.state = state;
    return clause;
  });
}

const CLAUSE_EXAMPLES: Readonly<Record<string, string>> = {
  goes: '"tab outwards"',
  'part number': '"12-034"',
  stored: '"a loaded spring"',
};

export const CLAUSE_STARTS: readonly TokenType[] = [
  T.ClauseRefs,
  T.With,
  T.In,
  T.HeldBy,
  T.Clamps,
  T.Joins,
  T.Count,
  T.Positions,
  T.ClauseFlag,
  T.ClauseText,
  T.AlsoCalled,
  T.Item,
  T.Only,
  T.Hazard,
  T.ClauseQuantity,
  T.NotOver,
  T.Holds,
  T.ClauseDesignation,
  T.Layout,
  T.OrderWord,
  T.PlanWord,
  T.Normally,
];
