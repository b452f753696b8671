/**
 * The one way from text to tree: `parse`. It never throws on any text: what is wrong is in `problems`, what
 * could be read is in `tree`, and `tokens`, `comments` and the blanks between them make up the text again.
 */
import type { ParsedFile, SyntaxProblem, Token } from '../syntax/tree.ts';
import { scan } from '../tokens/scan.ts';
import { arrange } from './arrange.ts';
import { balance } from './braces.ts';
import { DowelParser } from './file.ts';

/** After this many problems of the text itself one more says that there are others. */
export const MAX_PROBLEMS = 100;

export function parse(text: string): ParsedFile {
  const { lexemes, comments, problems: lexical } = scan(text);
  const balanced = balance(text, lexemes);
  const parser = shared();
  parser.begin(arrange(balanced.lexemes), balanced.virtual);
  // The rules of the parser cannot fail; if one does, what was read is lost and that is said.
  const items = parser.file() ?? [];
  const problems = capped([...lexical, ...balanced.problems, ...parser.problems, ...parser.failures()]);
  let tokens: Token[] | undefined;
  return {
    tree: { kind: 'file', items, start: 0, end: text.length },
    // Only the formatter and the colouring ask for tokens: they are made again when first asked for.
    get tokens() {
      tokens ??= scan(text).tokens;
      return tokens;
    },
    comments,
    problems,
  };
}

let made: DowelParser | undefined;

/** Building the parser costs more than reading most files, so it is built once, when first needed. */
function shared(): DowelParser {
  made ??= new DowelParser();
  return made;
}

function capped(problems: SyntaxProblem[]): SyntaxProblem[] {
  problems.sort((a, b) => a.start - b.start || a.end - b.end);
  if (problems.length <= MAX_PROBLEMS) return problems;
  const first = problems.slice(0, MAX_PROBLEMS);
  const next = problems[MAX_PROBLEMS]!;
  const more = problems.length - MAX_PROBLEMS;
  first.push({
    check: 'syntax',
    start: next.start,
    end: next.end,
    message: `The text has ${more} more ${more === 1 ? 'problem' : 'problems'} from here on; they are not listed.`,
  });
  return first;
}
