/**
 * Chevrotain without what this grammar has no use for. Its rules never fail and never go back, and they build their own
 * tree, so the general engine's error recovery, its stack of rules and its concrete tree are left out; and the rules are
 * recorded only where nobody knows yet how they decide (./decisions.ts). What is replaced here is what Chevrotain calls
 * itself: a test compares it with the original. Written for the version in package.json.
 */
import {
  createToken,
  EarlyExitException,
  EmbeddedActionsParser,
  type IToken,
  isRecognitionException,
  Lexer,
  NoViableAltException,
  type ParserMethod,
  type TokenType,
  tokenMatcher,
} from 'chevrotain';
import * as T from '../tokens/types.ts';
import { BUILT_IN, decideBy } from './decisions.ts';
import { LookaheadByFirstToken } from './lookahead.ts';

export interface ParserOptions {
  /** Lets Chevrotain check the grammar for ambiguities when it is built; slow, for tests. */
  validate?: boolean;
  /** Decisions worked out before, instead of those that the build put in. */
  decisions?: string;
}

/** Parts of Chevrotain's parser that its types leave out. */
interface Engine {
  tokensMap: Record<string, TokenType>;
  tokenMatcher: (token: IToken, type: TokenType) => boolean;
  definedRulesNames: string[];
  fullRuleNameToShort: Record<string, number>;
  shortRuleNameToFull: Record<number, string>;
  ruleShortNameIdx: number;
  currRuleShortName: number;
  lookAheadFuncsCache: Map<number, (this: unknown) => boolean>;
  tokVector: IToken[];
  currIdx: number;
  SAVE_ERROR(error: Error): Error;
  consumeInternalError(type: TokenType, found: IToken, options: undefined): never;
  doSingleRepetition(action: Action): boolean;
  moveToTerminatedState(): void;
  onBeforeParse(rule: string): void;
  onAfterParse(rule: string): void;
}

type Action = (this: unknown) => unknown;
type Guarded = Action | { GATE?: (this: unknown) => boolean; DEF: Action };
type Rule = (...args: unknown[]) => unknown;

/** A rule's number stands above its kind of decision (4 bits) and which of them it is (8 bits). */
const RULE_BITS = 12;

/** Chevrotain fits every token of a vocabulary with what ours have already: one does to begin with. */
const NOTHING = createToken({ name: 'Nothing', pattern: Lexer.NA });

export class LeanParser extends EmbeddedActionsParser {
  private readonly decisions: string | undefined;
  private readonly validated: boolean;

  constructor({ validate = false, decisions = BUILT_IN }: ParserOptions) {
    super([NOTHING], {
      maxLookahead: 1,
      lookaheadStrategy: new LookaheadByFirstToken({ maxLookahead: 1 }),
      recoveryEnabled: false,
      nodeLocationTracking: 'none',
      skipValidations: !validate,
    });
    this.validated = validate;
    this.decisions = validate ? undefined : decisions;
    const engine = engineOf(this);
    engine.tokenMatcher = tokenMatcher;
    for (const type of T.VOCABULARY) engine.tokensMap[type.name] = type;
  }

  /** Recording every rule to find out how the grammar decides is most of a start: not where it is known already. */
  protected override performSelfAnalysis(): void {
    if (this.decisions === undefined) super.performSelfAnalysis();
    else decideBy(this, this.decisions);
  }

  // ------------------------------------------------------------ rules

  protected override RULE<F extends (...args: never[]) => unknown>(
    name: string,
    rule: F,
  ): ParserMethod<Parameters<F>, ReturnType<F>> {
    if (this.validated) return super.RULE(name, rule) as ParserMethod<Parameters<F>, ReturnType<F>>;
    engineOf(this).definedRulesNames.push(name);
    const made = this.defineRule(name, rule as unknown as Rule);
    (this as unknown as Record<string, unknown>)[name] = made;
    return made as unknown as ParserMethod<Parameters<F>, ReturnType<F>>;
  }

  protected defineRule(name: string, rule: Rule): Rule {
    const engine = engineOf(this);
    const number = engine.ruleShortNameIdx << RULE_BITS;
    engine.ruleShortNameIdx += 1;
    engine.fullRuleNameToShort[name] = number;
    engine.shortRuleNameToFull[number] = name;
    const coreRule = function (this: Engine, ...args: unknown[]): unknown {
      const outer = this.currRuleShortName;
      this.currRuleShortName = number;
      const result = rule.apply(this, args);
      this.currRuleShortName = outer;
      return result;
    };
    const first = function (this: Engine, ...args: unknown[]): unknown {
      this.onBeforeParse(name);
      try {
        return coreRule.apply(this, args);
      } catch (error) {
        if (!isRecognitionException(error as Error)) throw error;
        this.moveToTerminatedState();
        return undefined;
      } finally {
        this.onAfterParse(name);
      }
    };
    return Object.assign(first as Rule, { ruleName: name, originalGrammarAction: rule, coreRule });
  }

  protected subruleInternal(
    rule: { coreRule: Rule },
    _number: number,
    options: { ARGS?: unknown[] } | undefined,
  ): unknown {
    const args = options?.ARGS;
    return args === undefined ? rule.coreRule.call(this) : rule.coreRule.apply(this, args);
  }

  // ------------------------------------------------------------ what stands in a rule

  protected consumeInternal(type: TokenType): IToken {
    const engine = engineOf(this);
    const token = engine.tokVector[engine.currIdx + 1]!;
    if (!tokenMatcher(token, type)) return engine.consumeInternalError(type, token, undefined);
    engine.currIdx += 1;
    return token;
  }

  protected optionInternalLogic(guarded: Guarded, _number: number, key: number): unknown {
    const enters = engineOf(this).lookAheadFuncsCache.get(key)!;
    if (typeof guarded === 'function') return enters.call(this) ? guarded.call(this) : undefined;
    if (guarded.GATE !== undefined && !guarded.GATE.call(this)) return undefined;
    return enters.call(this) ? guarded.DEF.call(this) : undefined;
  }

  protected manyInternalLogic(_number: number, guarded: Guarded, key: number): void {
    const engine = engineOf(this);
    const enters = engine.lookAheadFuncsCache.get(key)!;
    const plain = typeof guarded === 'function';
    const gate = plain ? undefined : guarded.GATE;
    const action = plain ? guarded : guarded.DEF;
    let moved = true;
    while (moved && (gate === undefined || gate.call(this)) && enters.call(this))
      moved = engine.doSingleRepetition(action);
  }

  // ------------------------------------------------------------ what never should happen

  /** Where no way fits. Chevrotain's message takes the recorded grammar, and nobody is shown it; that it came to this counts. */
  protected raiseNoAltException(): never {
    throw engineOf(this).SAVE_ERROR(new NoViableAltException('', this.LA(1), this.LA(0)));
  }

  protected raiseEarlyExitException(): never {
    throw engineOf(this).SAVE_ERROR(new EarlyExitException('', this.LA(1), this.LA(0)));
  }
}

function engineOf(parser: object): Engine {
  return parser as Engine;
}
