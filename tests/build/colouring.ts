/** The colouring of the language for editors, made from the word list: nothing is typed twice. */
import { CLAUSE_SHAPES, DECLARATION_KINDS, SIGNALS } from '../../grammar/tokens/clauses.ts';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import {
  FILE_STARTS,
  HEADER_WORDS,
  MACHINE_STARTS,
  STATEMENT_STARTS,
  TAIL_WORDS,
} from '../../grammar/tokens/words.ts';

interface Pattern {
  name?: string;
  match?: string;
  begin?: string;
  end?: string;
  patterns?: Pattern[];
  captures?: Record<string, { name: string }>;
}

export function colouring(): { name: string; scopeName: string; patterns: Pattern[] } {
  const verbs = VERBS.flatMap((verb) => [verb.verb, ...(verb.also ?? [])]);
  const statements = [
    ...FILE_STARTS.keys(),
    ...MACHINE_STARTS.keys(),
    ...STATEMENT_STARTS.keys(),
    ...DECLARATION_KINDS,
    'for each',
    'otherwise',
  ];
  const signals: readonly string[] = SIGNALS;
  return {
    name: 'Dowel',
    scopeName: 'source.dowel',
    patterns: [
      { name: 'comment.line.double-slash.dowel', match: '//.*$' },
      {
        name: 'string.quoted.double.dowel',
        begin: '"',
        end: '"|$',
        patterns: [
          { name: 'constant.character.escape.dowel', match: '\\\\.' },
          { name: 'variable.other.hole.dowel', match: '\\{[^}"]*\\}' },
        ],
      },
      { name: 'constant.numeric.thread.dowel', match: '\\bM\\d+(\\.\\d+)?(x\\d+(\\.\\d+)?)?\\b' },
      { name: 'constant.numeric.dowel', match: '(?<![\\p{L}\\p{N}-])[x×]?\\d+(\\.\\d+)?(/\\d+)?' },
      { name: 'constant.other.position.dowel', match: '#[\\p{L}\\p{N}-]+' },
      // A word is special only where it can stand: the first on its line, or after a brace.
      first('keyword.other.notice.dowel', signals),
      first(
        'keyword.control.dowel',
        statements.filter((word) => !signals.includes(word)),
      ),
      first('entity.name.function.verb.dowel', verbs),
      {
        name: 'keyword.other.clause.dowel',
        match: word([...Object.keys(CLAUSE_SHAPES), ...HEADER_WORDS, ...TAIL_WORDS]),
      },
    ],
  };
}

function alternatives(words: readonly string[]): string {
  return [...new Set(words)]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((one) => one.replaceAll(' ', '\\s+'))
    .join('|');
}

/** Where a statement or declaration can begin: at the start of a line, or behind a brace. */
function first(name: string, words: readonly string[]): Pattern {
  return { match: `(?:^|[{}])\\s*(${alternatives(words)})(?![\\p{L}\\p{N}-])`, captures: { '1': { name } } };
}

function word(words: readonly string[]): string {
  return `(?<![\\p{L}\\p{N}-])(?:${alternatives(words)})(?![\\p{L}\\p{N}-])`;
}
