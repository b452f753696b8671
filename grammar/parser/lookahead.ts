/**
 * Decides by the next token alone. The grammar is written so that one token is enough (a test lets Chevrotain's
 * own analysis confirm it), and then the sets of first tokens say it all. They are worked out when they are
 * first asked for: most files use a small part of the grammar, and Chevrotain's general analysis of every
 * decision costs more than reading a usual file. The built program has them ready (./decisions.ts).
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

/** What a way can begin with: indexes of token types, each once. */
export interface Way {
  tokens: readonly number[];
  /** It may stand for nothing at all. */
  empty: boolean;
}

/** Where a grammar goes on: one of several ways, or one that may be taken or left. */
export interface Decision {
  choice: boolean;
  ways: () => Way[];
}

export class LookaheadByFirstToken extends LLkLookaheadStrategy {
  private readonly firstOfRule = new Map<Rule, First>();
  /** What each function that was built decides by. */
  readonly decisions = new Map<unknown, Decision>();

  override buildLookaheadForAlternation(options: Parameters<ForAlternation>[0]): ReturnType<ForAlternation> {
    const ways = () =>
      find(options.rule, 'Alternation', options.prodOccurrence).definition.map((one) => way(this.first(one)));
    const made = chooser(ways);
    this.decisions.set(made, { choice: true, ways });
    return made;
  }

  override buildLookaheadForOptional(options: Parameters<ForOptional>[0]): ReturnType<ForOptional> {
    const ways = () => {
      const { definition } = find(options.rule, options.prodType, options.prodOccurrence);
      return [way(this.sequence(definition))];
    };
    const made = opener(ways);
    this.decisions.set(made, { choice: false, ways });
    return made;
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

/** Picks the first way that can begin with the next token and whose gate is open. */
export function chooser(ways: Decision['ways']): ReturnType<ForAlternation> {
  let made: { byToken: (number[] | undefined)[]; empty: number[] } | undefined;
  return function (this: BaseParser, alternatives) {
    made ??= byToken(ways());
    const candidates = made.byToken[(this as Looking).LA(1).tokenTypeIdx] ?? made.empty;
    for (const index of candidates) {
      const gate = alternatives![index]!.GATE;
      if (gate === undefined || gate.call(this) !== false) return index;
    }
    return undefined;
  };
}

/** Whether the one way can begin with the next token. */
export function opener(ways: Decision['ways']): ReturnType<ForOptional> {
  let made: boolean[] | undefined;
  return function (this: BaseParser) {
    if (made === undefined) {
      made = [];
      for (const token of ways()[0]!.tokens) made[token] = true;
    }
    return made[(this as Looking).LA(1).tokenTypeIdx] === true;
  };
}

/** Numbers of the ways that can begin with a token, by token; and of those that can be empty. */
function byToken(ways: readonly Way[]): { byToken: (number[] | undefined)[]; empty: number[] } {
  const empty = ways.flatMap((way, number) => (way.empty ? [number] : []));
  const found: (number[] | undefined)[] = [];
  ways.forEach((way, number) => {
    for (const token of way.tokens) {
      const numbers = found[token];
      if (numbers) numbers.push(number);
      else found[token] = [...empty.filter((one) => one < number), number];
    }
    if (!way.empty) return;
    // It can begin with anything that one of the ways can begin with.
    for (const numbers of found) if (numbers && numbers.at(-1) !== number) numbers.push(number);
  });
  return { byToken: found, empty };
}

function way({ types, empty }: First): Way {
  return { tokens: [...new Set([...types].flatMap(indexes))], empty };
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
