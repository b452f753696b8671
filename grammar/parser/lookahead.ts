/**
 * Decides by the next token alone. The grammar is written so that one token is enough (a test lets Chevrotain's
 * own analysis confirm it), and then the sets of first tokens say it all. They are worked out when they are
 * first asked for: most files use a small part of the grammar, and Chevrotain's general analysis of every
 * decision costs more than reading a usual file.
 */
import {
  Alternation,
  type BaseParser,
  type ILookaheadStrategy,
  type IProduction,
  type IToken,
  LLkLookaheadStrategy,
  NonTerminal,
  Option,
  Repetition,
  RepetitionMandatory,
  RepetitionMandatoryWithSeparator,
  RepetitionWithSeparator,
  type Rule,
  Terminal,
  type TokenType,
} from 'chevrotain';

type ForAlternation = ILookaheadStrategy['buildLookaheadForAlternation'];
type ForOptional = ILookaheadStrategy['buildLookaheadForOptional'];
type Looking = BaseParser & { LA(howFar: number): IToken };

interface First {
  types: Set<TokenType>;
  /** It may stand for nothing at all. */
  empty: boolean;
}

export class LookaheadByFirstToken extends LLkLookaheadStrategy {
  private readonly firstOfRule = new Map<Rule, First>();

  override buildLookaheadForAlternation(options: Parameters<ForAlternation>[0]): ReturnType<ForAlternation> {
    const build = () => this.alternatives(find(options.rule, 'Alternation', options.prodOccurrence));
    let made: ReturnType<typeof build> | undefined;
    return function (this: BaseParser, alternatives) {
      made ??= build();
      const candidates = made.byToken[(this as Looking).LA(1).tokenTypeIdx] ?? made.empty;
      for (const index of candidates) {
        const gate = alternatives![index]!.GATE;
        if (gate === undefined || gate.call(this) !== false) return index;
      }
      return undefined;
    };
  }

  override buildLookaheadForOptional(options: Parameters<ForOptional>[0]): ReturnType<ForOptional> {
    const build = () => {
      const enters: boolean[] = [];
      const { types } = this.sequence(
        find(options.rule, options.prodType, options.prodOccurrence).definition,
      );
      for (const type of types) for (const index of indexes(type)) enters[index] = true;
      return enters;
    };
    let made: boolean[] | undefined;
    return function (this: BaseParser) {
      made ??= build();
      return made[(this as Looking).LA(1).tokenTypeIdx] === true;
    };
  }

  /** Numbers of the alternatives that can begin with a token, by token; and of those that can be empty. */
  private alternatives(choice: { definition: IProduction[] }): {
    byToken: (number[] | undefined)[];
    empty: number[];
  } {
    const firsts = choice.definition.map((one) => this.first(one));
    const byToken: (number[] | undefined)[] = [];
    const empty = firsts.flatMap((first, index) => (first.empty ? [index] : []));
    for (const index of new Set(firsts.flatMap((first) => [...first.types].flatMap(indexes)))) {
      byToken[index] = firsts.flatMap((first, alternative) =>
        first.empty || [...first.types].some((type) => indexes(type).includes(index)) ? [alternative] : [],
      );
    }
    return { byToken, empty };
  }

  private sequence(productions: readonly IProduction[]): First {
    const types = new Set<TokenType>();
    for (const production of productions) {
      const first = this.first(production);
      for (const type of first.types) types.add(type);
      if (!first.empty) return { types, empty: false };
    }
    return { types, empty: true };
  }

  private first(production: IProduction): First {
    if (production instanceof Terminal) return { types: new Set([production.terminalType]), empty: false };
    if (production instanceof NonTerminal) {
      const rule = production.referencedRule;
      let known = this.firstOfRule.get(rule);
      if (!known) {
        known = this.sequence(rule.definition);
        this.firstOfRule.set(rule, known);
      }
      return known;
    }
    if (production instanceof Alternation) {
      const types = new Set<TokenType>();
      let empty = false;
      for (const alternative of production.definition) {
        const first = this.first(alternative);
        for (const type of first.types) types.add(type);
        empty ||= first.empty;
      }
      return { types, empty };
    }
    const inner = this.sequence((production as unknown as { definition: IProduction[] }).definition);
    const mayBeLeftOut =
      production instanceof Option ||
      production instanceof Repetition ||
      production instanceof RepetitionWithSeparator;
    return { types: inner.types, empty: inner.empty || mayBeLeftOut };
  }
}

/** The token type itself and every type that belongs to it. */
function indexes(type: TokenType): number[] {
  return [type.tokenTypeIdx!, ...(type.categoryMatches ?? [])];
}

const KINDS = {
  Alternation,
  Option,
  Repetition,
  RepetitionMandatory,
  RepetitionMandatoryWithSeparator,
  RepetitionWithSeparator,
};

interface Found {
  idx: number;
  definition: IProduction[];
}

function find(rule: Rule, kind: keyof typeof KINDS, occurrence: number): Found {
  const wanted = KINDS[kind];
  const search = (productions: readonly IProduction[]): Found | undefined => {
    for (const production of productions) {
      if (production instanceof wanted && (production as unknown as Found).idx === occurrence)
        return production as unknown as Found;
      if (production instanceof NonTerminal || production instanceof Terminal) continue;
      const inner = search((production as unknown as Found).definition);
      if (inner) return inner;
    }
    return undefined;
  };
  const found = search(rule.definition);
  if (!found) throw new Error(`${rule.name} has no ${kind} ${occurrence}.`);
  return found;
}
