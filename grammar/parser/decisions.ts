/**
 * How the grammar decides, worked out when the program is built (tests/build/build.mjs), so that a start need not
 * record the rules: that costs more than reading and checking a usual file. Without a build (in tests) the parser records
 * its rules and works the same out as it goes.
 *
 * Written as JSON: the different sets of tokens, as one letter for each token type of the vocabulary, `1` where it is in;
 * then the decisions as Chevrotain numbers them, each with its ways: the number of a set, `-1 - number` where the way
 * may be empty, too.
 */
import * as T from '../tokens/types.ts';
import { chooser, type Decision, opener, type Way } from './lookahead.ts';

/** Put in by the build. */
declare const PARSER_DECISIONS: string;

export const BUILT_IN: string | undefined =
  typeof PARSER_DECISIONS === 'undefined' ? undefined : PARSER_DECISIONS;

interface Written {
  sets: string[];
  choices: [number, number[]][];
  options: [number, number][];
}

/** The parts of a Chevrotain parser that decide. */
interface Deciding {
  selfAnalysisDone: boolean;
  lookAheadFuncsCache: Map<number, unknown>;
  lookaheadStrategy: { decisions: ReadonlyMap<unknown, Decision> };
}

/** All decisions of a parser that has analysed itself. */
export function decisionsOf(parser: object): string {
  const { lookAheadFuncsCache, lookaheadStrategy } = parser as Deciding;
  const written: Written = { sets: [], choices: [], options: [] };
  const numbers = new Map<string, number>();
  const numberOf = ({ tokens, empty }: Way) => {
    const set = T.VOCABULARY.map(({ tokenTypeIdx }) => (tokens.includes(tokenTypeIdx!) ? '1' : '0')).join('');
    const number = numbers.get(set) ?? written.sets.push(set) - 1;
    numbers.set(set, number);
    return empty ? -1 - number : number;
  };
  for (const [key, decides] of lookAheadFuncsCache) {
    const { choice, ways } = lookaheadStrategy.decisions.get(decides)!;
    const sets = ways().map(numberOf);
    if (choice) written.choices.push([key, sets]);
    else written.options.push([key, sets[0]!]);
  }
  return JSON.stringify(written);
}

/** Makes a parser decide so, instead of analysing itself. Its rules and the vocabulary must be the same. */
export function decideBy(parser: object, decisions: string): void {
  const deciding = parser as Deciding;
  asPrototype(parser);
  deciding.selfAnalysisDone = true;
  const { sets, choices, options } = JSON.parse(decisions) as Written;
  // Most sets stand in many decisions, and most decisions are never come to.
  const read: number[][] = [];
  const wayOf = (number: number): Way => {
    const set = number < 0 ? -1 - number : number;
    read[set] ??= tokensIn(sets[set]!);
    return { tokens: read[set], empty: number < 0 };
  };
  for (const [key, ways] of choices)
    deciding.lookAheadFuncsCache.set(
      key,
      chooser(() => ways.map(wayOf)),
    );
  for (const [key, way] of options)
    deciding.lookAheadFuncsCache.set(
      key,
      opener(() => [wayOf(way)]),
    );
}

function tokensIn(set: string): number[] {
  const tokens: number[] = [];
  for (let at = set.indexOf('1'); at >= 0; at = set.indexOf('1', at + 1))
    tokens.push(T.VOCABULARY[at]!.tokenTypeIdx!);
  return tokens;
}

/**
 * What Chevrotain's analysis begins with: an object with so many fields is a slow dictionary to V8, until it has been
 * used as a prototype.
 */
function asPrototype(object: object): void {
  const probe = Object.create(object) as { probe?: unknown };
  const read = () => typeof probe.probe;
  read();
  read();
}
