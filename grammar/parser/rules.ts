/** House rules: scope first, then what is required or never done. */
import type { Name, Rule, RuleBody, RulePattern, Selector } from '../syntax/tree.ts';
import type { Lexeme } from '../tokens/types.ts';
import * as T from '../tokens/types.ts';
import { nameOf, shown, spanOf } from './base.ts';
import { ClauseRules } from './clauses.ts';

/** `any … of any … of any …` is read this deep. */
const MAX_SELECTOR_DEPTH = 8;
const EXAMPLE = 'before loosen flywheel-bolt require holding-strap fitted';

export class RuleRules extends ClauseRules {
  private selectorDepth = 0;

  readonly rule = this.RULE('rule', (): Rule => {
    const start = this.CONSUME(T.RuleStart).startOffset;
    const rule: Rule = { kind: 'rule', bodies: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (rule.name = this.SUBRULE(this.word)) });
    if (!rule.name) this.missing('The name of the rule is missing.', 'rule strap-first "Why" { … }');
    const title = this.optionalText();
    if (title) rule.title = title;
    let opened = false;
    this.OPTION1(() => {
      opened = true;
      this.CONSUME(T.LBrace);
      this.MANY(() =>
        this.OR({
          IGNORE_AMBIGUITIES: true,
          DEF: [
            {
              ALT: () => {
                const body = this.SUBRULE(this.ruleBody);
                if (!this.RECORDING_PHASE) rule.bodies.push(body);
              },
            },
            { ALT: () => this.SUBRULE(this.strayInRule) },
            { ALT: () => this.SUBRULE(this.skipBlock) },
          ],
        }),
      );
      this.CONSUME(T.RBrace);
    });
    if (!opened) this.missing('The rule has no block.', `rule strap-first { ${EXAMPLE} }`, 'brace-missing');
    rule.end = this.lastEnd();
    return rule;
  });

  private readonly strayInRule = this.RULE('strayInRule', () => {
    const token = this.next();
    this.wrong(token, 'syntax', `${shown(token)} does not belong to this sentence of the rule.`, {
      example: EXAMPLE,
    });
    this.CONSUME(T.Skippable);
    this.MANY({
      GATE: () =>
        !this.next().beginsLine && this.LA(1).tokenType !== T.Scope && this.LA(1).tokenType !== T.Demand,
      DEF: () => this.CONSUME1(T.Skippable),
    });
  });

  private readonly ruleBody = this.RULE('ruleBody', (): RuleBody => {
    const start = this.startOfNext();
    const body: RuleBody = { scope: 'always', demand: 'require', start, end: start };
    let scoped = false;
    let demanded = false;
    this.OR([
      {
        ALT: () => {
          const scope = this.CONSUME(T.Scope);
          scoped = true;
          if (!this.RECORDING_PHASE) body.scope = scope.image as RuleBody['scope'];
          this.OPTION({
            GATE: () => body.scope !== 'always' && this.LA(1).tokenType !== T.Demand,
            DEF: () => {
              const trigger = this.SUBRULE(this.pattern);
              if (trigger) body.trigger = trigger;
            },
          });
          if (!this.RECORDING_PHASE && body.scope !== 'always' && !body.trigger) {
            this.missing(`An action or a state is missing after “${body.scope}”.`, EXAMPLE);
          }
          this.OPTION1(() => {
            demanded = true;
            this.SUBRULE(this.demand, { ARGS: [body] });
          });
        },
      },
      {
        ALT: () => {
          demanded = true;
          this.SUBRULE1(this.demand, { ARGS: [body] });
        },
      },
    ]);
    if (scoped && !demanded)
      this.missing('The rule does not say what it requires, or what is never done.', EXAMPLE);
    body.end = this.lastEnd();
    return body;
  });

  private readonly demand = this.RULE('demand', (body?: RuleBody) => {
    const word = this.CONSUME(T.Demand);
    const pattern = this.SUBRULE(this.pattern);
    if (this.RECORDING_PHASE || !body) return;
    body.demand = word.image as 'require' | 'never';
    if (pattern) body.demanded = pattern;
    else this.missing(`An action or a state is missing after “${word.image}”.`, EXAMPLE);
  });

  private readonly pattern = this.RULE('pattern', (): RulePattern | undefined => {
    let pattern: RulePattern | undefined;
    this.OPTION({
      GATE: () => this.nextIs(T.VerbStart) || this.nameNext(),
      DEF: () =>
        this.OR([
          {
            ALT: () => {
              pattern = this.SUBRULE(this.eventPattern);
            },
          },
          {
            ALT: () => {
              pattern = this.SUBRULE(this.statePattern);
            },
          },
        ]),
    });
    return pattern;
  });

  private readonly eventPattern = this.RULE('eventPattern', (): RulePattern => {
    const token = this.CONSUME(T.VerbStart) as Lexeme;
    const event: RulePattern & { kind: 'event' } = {
      kind: 'event',
      verb: { ...spanOf(token), text: token.verb?.verb ?? token.image },
      selectors: [],
      ...spanOf(token),
    };
    this.OPTION({ GATE: this.nameNext, DEF: () => (event.selectors = this.SUBRULE(this.selectors)) });
    if (!this.RECORDING_PHASE && event.selectors.length === 0 && !token.verb?.objectless) {
      this.missing(`“${token.image}” does not say of what.`, EXAMPLE);
    }
    // The word that closes the verb: `prove mains safe`.
    this.OPTION1({
      GATE: () => token.closing !== undefined && this.LA(1).image === token.closing,
      DEF: () => this.CONSUME(T.AnyWord),
    });
    this.OPTION2({
      GATE: () => !this.next().beginsLine,
      DEF: () => {
        const number = this.LA(1);
        if (this.LA(2).tokenType === T.TimesWord) event.times = Number(number.image);
        const quantity = this.SUBRULE(this.quantity);
        this.OPTION3(() => this.CONSUME(T.TimesWord));
        if (!this.RECORDING_PHASE && event.times === undefined) {
          event.quantity = quantity;
          this.checkQuantity(quantity, `“${token.image}”`, '°, turns or N·m');
        }
      },
    });
    event.end = this.lastEnd();
    return event;
  });

  private readonly statePattern = this.RULE('statePattern', (): RulePattern => {
    const start = this.startOfNext();
    const selectors = this.SUBRULE(this.selectors);
    let negated = false;
    this.OPTION(() => {
      this.CONSUME(T.Not);
      negated = true;
    });
    const state = this.SUBRULE(this.state);
    if (!state) this.missing('The rule names a thing but neither an action nor a state.', EXAMPLE);
    const end = this.lastEnd();
    return { kind: 'state', selectors, state: state ?? { start: end, end, text: '' }, negated, start, end };
  });

  private readonly selectors = this.RULE('selectors', (): Selector[] => {
    const list: Selector[] = [];
    const first = this.SUBRULE(this.selector);
    if (first) list.push(first);
    this.MANY(() => {
      this.OR([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
      const more = this.SUBRULE1(this.selector);
      if (more) list.push(more);
      else this.missing(`A name is missing after ${shown(this.LA(0), 'the text')}.`);
    });
    return list;
  });

  private readonly selector: () => Selector | undefined = this.RULE('selector', (): Selector | undefined => {
    let selector: Selector | undefined;
    this.OPTION({
      GATE: this.nameNext,
      DEF: () => {
        selector = this.OR({
          IGNORE_AMBIGUITIES: true,
          DEF: [
            { ALT: () => this.SUBRULE(this.anySelector) },
            { ALT: () => this.SUBRULE(this.thatSelector) },
            { ALT: () => this.SUBRULE(this.namedSelector) },
          ],
        });
      },
    });
    return selector;
  }) as never;

  private readonly namedSelector = this.RULE('namedSelector', (): Selector => {
    const ref = this.SUBRULE(this.ref);
    return { kind: 'named', ref, start: ref.start, end: ref.end };
  });

  private readonly thatSelector = this.RULE('thatSelector', (): Selector => {
    const that = this.CONSUME(T.That);
    const what = this.what();
    return { kind: 'that', what, start: that.startOffset, end: what.end };
  });

  private readonly anySelector = this.RULE('anySelector', (): Selector => {
    const any = this.CONSUME(T.Any);
    const selector: Selector & { kind: 'any' } = { kind: 'any', what: this.what(), ...spanOf(any) };
    this.OPTION({
      GATE: () => this.selectorDepth < MAX_SELECTOR_DEPTH,
      DEF: () => {
        this.CONSUME(T.Of);
        this.selectorDepth += 1;
        const of = this.SUBRULE(this.selector as never) as Selector | undefined;
        this.selectorDepth -= 1;
        if (of && !this.RECORDING_PHASE) selector.of = of;
      },
    });
    this.OPTION1(() => {
      this.CONSUME(T.With);
      this.option(22, { GATE: this.nameNext, DEF: () => (selector.with = this.SUBRULE(this.word)) });
    });
    selector.end = this.lastEnd();
    return selector;
  });

  /** The kind of thing after `any` or `that`. */
  private what(): Name {
    let what: Name | undefined;
    this.option(23, { GATE: this.nameNext, DEF: () => (what = nameOf(this.CONSUME9(T.AnyWord))) });
    if (what) return what;
    this.missing('The kind of thing is missing.', 'any system');
    const end = this.lastEnd();
    return { start: end, end, text: '' };
  }
}
