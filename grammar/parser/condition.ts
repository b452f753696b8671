/** Conditions (`supply is single-phase`, `servo off`, "what is seen") and claims (`all of hub off`). */
import type { Condition, Name, Ref, StateClaim } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { nameOf, shown } from './base.ts';
import { ExpressionRules } from './expression.ts';

export class ConditionRules extends ExpressionRules {
  readonly condition = this.RULE('condition', (): Condition | undefined => {
    const first = this.SUBRULE(this.simpleCondition);
    let parts: Condition[] | undefined;
    this.MANY(() => {
      this.CONSUME(T.And);
      const next = this.SUBRULE1(this.simpleCondition);
      if (this.RECORDING_PHASE || !first) return;
      parts ??= [first];
      if (next) parts.push(next);
    });
    if (!parts || !first) return first;
    return { kind: 'and', parts, start: first.start, end: this.endOfLast() };
  });

  readonly simpleCondition = this.RULE('simpleCondition', (): Condition | undefined => {
    let condition: Condition | undefined;
    this.OPTION({
      GATE: () => this.nextIs(T.TextString) || this.nameNext(),
      DEF: () =>
        this.OR([
          {
            ALT: () => {
              const text = this.SUBRULE(this.text);
              condition = { kind: 'seen', text, start: text.start, end: text.end };
            },
          },
          {
            ALT: () => {
              condition = this.SUBRULE(this.wordCondition);
            },
          },
        ]),
    });
    if (!condition) {
      this.missing(
        `A condition is missing after ${shown(this.LA(0), 'the text')}.`,
        'supply is single-phase',
      );
    }
    return condition;
  });

  private readonly wordCondition = this.RULE('wordCondition', (): Condition => {
    const ref = this.SUBRULE(this.ref);
    const start = ref.start;
    let condition: Condition = {
      kind: 'state',
      ref,
      state: { start: ref.end, end: ref.end, text: '' },
      negated: false,
      start,
      end: ref.end,
    };
    this.OR([
      {
        ALT: () => {
          this.CONSUME(T.Is);
          let negated = false;
          this.OPTION(() => {
            this.CONSUME(T.Not);
            negated = true;
          });
          const values = this.SUBRULE(this.alternatives);
          if (this.RECORDING_PHASE) return;
          condition = { kind: 'axis', axis: ref.name, values, negated, start, end: this.endOfLast() };
        },
      },
      {
        ALT: () => {
          let negated = false;
          this.OPTION1({
            GATE: () => this.LA(2).tokenType !== T.LBrace,
            DEF: () => {
              this.CONSUME1(T.Not);
              negated = true;
            },
          });
          const state = this.SUBRULE(this.state);
          if (this.RECORDING_PHASE) return;
          if (!state) {
            this.missing(
              `The condition about “${ref.name.text}” says no state and no value.`,
              `${ref.name.text} off, or supply is single-phase`,
            );
            return;
          }
          condition = { kind: 'state', ref, state, negated, start, end: state.end };
        },
      },
    ]);
    return condition;
  });

  /** `single-phase or three-phase` */
  private readonly alternatives = this.RULE('alternatives', (): Name[] => {
    const values: Name[] = [];
    this.OPTION({ GATE: this.nameNext, DEF: () => values.push(this.SUBRULE(this.word)) });
    this.MANY({
      DEF: () => {
        this.OR([{ ALT: () => this.CONSUME(T.Or) }, { ALT: () => this.CONSUME(T.Comma) }]);
        this.OPTION1(() => this.CONSUME1(T.Or));
        const before = values.length;
        this.OPTION2({ GATE: this.nameNext, DEF: () => values.push(this.SUBRULE1(this.word)) });
        if (values.length === before)
          this.missing(`A value is missing after ${shown(this.LA(0), 'the text')}.`);
      },
    });
    if (values.length === 0) {
      this.missing(`A value is missing after ${shown(this.LA(0), 'the text')}.`, 'supply is single-phase');
    }
    return values;
  });

  /** A state word; `proved safe` is read as `safe`. */
  readonly state = this.RULE('state', (): Name | undefined => {
    let state: Name | undefined;
    this.OPTION({
      GATE: this.nameNext,
      DEF: () => {
        state = nameOf(this.CONSUME(T.AnyWord));
        this.OPTION1({
          GATE: () => state?.text === 'proved' && this.LA(1).image === 'safe',
          DEF: () => {
            const safe = this.CONSUME1(T.AnyWord);
            if (this.RECORDING_PHASE || !state) return;
            state = { start: state.start, end: safe.endOffset! + 1, text: safe.image };
          },
        });
      },
    });
    return state;
  });

  readonly claims = this.RULE('claims', (): StateClaim[] => {
    const claims = [this.SUBRULE(this.claim)];
    this.MANY(() => {
      this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
      this.OPTION(() => this.CONSUME1(T.And));
      claims.push(this.SUBRULE1(this.claim));
    });
    return claims;
  });

  /** Ends before a name that has a state of its own: `except spindle, cover off`. */
  private readonly exceptions = this.RULE('exceptions', (): Ref[] => {
    const list: Ref[] = [];
    this.OPTION({ GATE: this.nameNext, DEF: () => list.push(this.SUBRULE(this.ref)) });
    if (list.length === 0) this.missing('A name is missing after “except”.');
    this.MANY({
      GATE: () => {
        const next = this.LA(2).tokenType;
        const state = this.LA(3).tokenType;
        return next !== T.AllOf && next !== T.Everything && state !== T.PlainWord && state !== T.Not;
      },
      DEF: () => {
        this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
        const before = list.length;
        this.OPTION1({ GATE: this.nameNext, DEF: () => list.push(this.SUBRULE1(this.ref)) });
        if (list.length === before) this.missing(`A name is missing after ${shown(this.LA(0), 'the text')}.`);
      },
    });
    return list;
  });

  readonly claim = this.RULE('claim', (): StateClaim => {
    const start = this.startOfNext();
    const claim: StateClaim = { start, end: start, scope: 'things', refs: [], except: [] };
    let exempt = false;
    this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          ALT: () => {
            this.CONSUME(T.Everything);
            claim.scope = 'everything';
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.AllOf);
            claim.scope = 'all of';
            claim.refs = this.SUBRULE(this.refs);
          },
        },
        {
          ALT: () => {
            claim.refs = this.SUBRULE1(this.refs);
          },
        },
      ],
    });
    const state = this.SUBRULE(this.state);
    this.OPTION(() => {
      this.CONSUME(T.Except);
      exempt = true;
      claim.except = this.SUBRULE(this.exceptions);
    });
    if (this.RECORDING_PHASE) return claim;
    if (state) claim.state = state;
    else if (!exempt || claim.refs.length > 0) {
      this.missing('The claim says no state.', 'starts with supply isolated');
    }
    claim.end = this.endOfLast();
    claim.start = Math.min(start, claim.end);
    return claim;
  });
}
