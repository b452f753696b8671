/**
 * Random texts of the language, derived from the grammar that the parser itself records: each rule is unrolled at
 * random, each token written as one of the words it can be. The texts are right by the grammar and mad in meaning, so
 * they reach code that changed samples never reach.
 */
import type { IProduction, TokenType } from 'chevrotain';
import { DowelParser } from '../../grammar/parser/file.ts';
import { DECLARATION_KINDS, SIGNALS } from '../../grammar/tokens/clauses.ts';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import {
  DEMANDS,
  FILE_STARTS,
  MACHINE_STARTS,
  PHRASES,
  SCOPES,
  STATEMENT_STARTS,
} from '../../grammar/tokens/words.ts';
import type { Random } from './random.ts';

/** Names that a derived machine declares and a derived step uses, so that they meet now and then. */
const NAMES = [
  'a',
  'b',
  'cover',
  'bolts',
  'oil',
  'mains',
  'n',
  'left',
  'tool-1',
  'on',
  'new',
  'pressure',
  'off',
  'open',
  'x',
];

const WRITTEN: Readonly<Record<string, readonly string[]>> = {
  LBrace: ['{'],
  RBrace: ['}'],
  LParen: ['('],
  RParen: [')'],
  Comma: [','],
  Colon: [':'],
  Semicolon: [';'],
  Equals: ['='],
  Plus: ['+'],
  Minus: ['-'],
  Times: ['*'],
  Slash: ['/'],
  Dots: ['..'],
  PlusMinus: ['±'],
  And: ['and'],
  Is: ['is'],
  Or: ['or'],
  TextString: ['"Work with care."', '"{cover} at 25 N·m"', '""', '"a" "b"'],
  NumberToken: ['0', '1', '2', '12.5', '1/6', '1 1/2', '-3', '999999999999999999999', '0.000001'],
  Spread: ['+1/-0'],
  Unit: ['N·m', 'mm', '°C', 'min', 'bar', '%', '°', 'turns', 'lbf·ft', 'L', 'kg'],
  PositionToken: ['#1', '#left', '#1..#4', '#n', '#9'],
  Count: ['x1', 'x4', 'x0', 'x12'],
  Thread: ['M8x1.25', '1/2-13 UNC', 'M6x1'],
  Kind: DECLARATION_KINDS,
  Signal: SIGNALS,
  VerbStart: VERBS.map(({ verb }) => verb),
  Scope: [...SCOPES],
  Demand: [...DEMANDS],
  Otherwise: ['otherwise'],
  OutcomeWord: ['tight', 'sound', 'broken'],
  Unknown: ['frobnicate'],
  Bad: ['§'],
  PlainWord: NAMES,
  AnyWord: NAMES,
};

/** How each token type can be written: the table above, and every phrase that the word lists give it. */
const words: ReadonlyMap<string, readonly string[]> = (() => {
  const found = new Map<string, Set<string>>();
  const add = (type: TokenType, text: string) =>
    found.set(type.name, (found.get(type.name) ?? new Set()).add(text));
  for (const starts of [FILE_STARTS, MACHINE_STARTS, STATEMENT_STARTS])
    for (const [text, type] of starts) add(type, text);
  for (const phrases of Object.values(PHRASES))
    for (const list of phrases.values())
      for (const { words: parts, type } of list) add(type, parts.join(' '));
  return new Map(
    [...Object.entries(WRITTEN), ...[...found].map(([name, texts]) => [name, [...texts]] as const)].map(
      ([name, texts]) => [name, WRITTEN[name] ?? texts],
    ),
  );
})();

const TAKES_IN_WRONG = /^(stray|junk|skipBlock|misplaced|unknown)/;

/** Whether a way through the grammar begins with a rule that takes in what is wrong. */
function isWrong(node: IProduction): boolean {
  const name = (node as { nonTerminalName?: string }).nonTerminalName;
  if (name !== undefined) return TAKES_IN_WRONG.test(name);
  const [first] = (node as { definition?: IProduction[] }).definition ?? [];
  return first !== undefined && isWrong(first);
}

const productions = new DowelParser({}).getGAstProductions();

/** A text of at most about `size` tokens. */
export function sentence(random: Random, size = 240): string {
  const out: string[] = [];
  const put = (text: string) => {
    out.push(text);
    if (text === '{' || text === '}' || random.below(9) === 0) out.push('\n');
  };
  const walk = (node: IProduction, depth: number): void => {
    const full = depth > 40 || out.length > size;
    const { definition } = node as { definition?: IProduction[] };
    switch (node.constructor.name) {
      case 'Terminal': {
        const { name } = (node as unknown as { terminalType: TokenType }).terminalType;
        put(random.of(words.get(name) ?? NAMES));
        return;
      }
      case 'NonTerminal': {
        const { nonTerminalName } = node as unknown as { nonTerminalName: string };
        // The rules that take in what is wrong would fill the text with nothing else.
        if (depth > 60 || (TAKES_IN_WRONG.test(nonTerminalName) && random.below(40) > 0)) return;
        walk(productions[nonTerminalName]!, depth + 1);
        return;
      }
      case 'Alternation': {
        const right = definition!.filter((one) => !isWrong(one));
        walk(random.of(random.below(40) === 0 || right.length === 0 ? definition! : right), depth + 1);
        return;
      }
      case 'Option':
        if (!full && random.below(2) === 0) for (const one of definition!) walk(one, depth + 1);
        return;
      case 'Repetition':
      case 'RepetitionWithSeparator':
        for (let many = full ? 0 : random.below(out.length < size / 2 ? 9 : 4); many > 0; many--)
          all(node, depth);
        return;
      case 'RepetitionMandatory':
      case 'RepetitionMandatoryWithSeparator':
        for (let many = full ? 1 : 1 + random.below(3); many > 0; many--) all(node, depth);
        return;
      default:
        for (const one of definition ?? []) walk(one, depth + 1);
    }
  };
  const all = (node: IProduction, depth: number) => {
    for (const one of (node as { definition?: IProduction[] }).definition ?? []) walk(one, depth + 1);
  };
  for (let items = 1 + random.below(4); items > 0; items--) walk(productions.file!, 0);
  return out.join(' ');
}
