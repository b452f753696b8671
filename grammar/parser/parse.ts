/**
 * The one way from text to tree: `parse`. It never throws on any text: what is wrong is in `problems`, what
 * could be read is in `tree`, and `tokens`, `comments` and the blanks between them make up the text again.
 */
import type {
  Comment,
  FileItem,
  MachineItem,
  ParsedFile,
  Span,
  Statement,
  SyntaxProblem,
  Token,
} from '../syntax/tree.ts';
import { scan } from '../tokens/scan.ts';
import * as T from '../tokens/types.ts';
import { Lexeme } from '../tokens/types.ts';
import { arrange } from './arrange.ts';
import { balance, MAX_DEPTH } from './braces.ts';
import { DowelParser } from './file.ts';

/** After this many problems of the text itself one more says that there are others. */
export const MAX_PROBLEMS = 100;

export function parse(text: string): ParsedFile {
  const { items, comments, problems } = read(text, undefined);
  let tokens: Token[] | undefined;
  return {
    tree: { kind: 'file', items, start: 0, end: text.length },
    // Only the formatter and the colouring ask for tokens: they are made again when first asked for.
    get tokens() {
      tokens ??= scan(text).tokens;
      return tokens;
    },
    comments,
    problems: capped(problems),
  };
}

/** What a text says, before it is put together to a file. */
export interface Reading {
  items: FileItem[];
  comments: Comment[];
  /** All of them, in the order of the text. */
  problems: SyntaxProblem[];
  /** No brace is missing or too many, and nothing is nested too deep. */
  balanced: boolean;
}

/** Reads a whole text whose offsets are given other places: `placeOf` must keep their order and each line whole. */
export function readAt(text: string, placeOf: (offset: number) => number): Reading {
  return read(text, placeOf);
}

/** A stretch of a block or of a machine, read as if it stood there; undefined where it cannot stand by itself. */
export interface Stretch {
  list: (Statement | MachineItem)[];
  comments: Comment[];
  problems: SyntaxProblem[];
}

/** `depth`: how many blocks stand around it. */
export function readStretch(
  text: string,
  within: 'procedure' | 'machine',
  depth: number,
  placeOf: (offset: number) => number,
): Stretch | undefined {
  const { lexemes, comments, problems } = scan(text);
  if (!standsAlone(lexemes, MAX_DEPTH - depth)) return undefined;
  move(lexemes, placeOf);
  const parser = shared();
  parser.begin(arrange(wrapped(lexemes, within)), new Set());
  const items = parser.file() ?? [];
  const only = items[0];
  if (items.length !== 1 || parser.failures().length > 0) return undefined;
  const list = only?.kind === 'procedure' ? only.body?.statements : only?.kind === 'machine' && only.items;
  // A file item among the steps is read another way where it stands.
  if (!list || only?.kind !== within || lexemes.some(({ tokenType }) => FILE_ITEMS.has(tokenType)))
    return undefined;
  for (const comment of comments) moveSpan(comment, placeOf);
  for (const problem of problems) moveProblem(problem, placeOf);
  return { list, comments, problems: ordered([...problems, ...parser.problems]) };
}

const FILE_ITEMS: ReadonlySet<unknown> = new Set([T.MachineStart, T.ProcedureStart, T.UseStart]);

/** Braces in pairs, and no deeper than may be. */
function standsAlone(lexemes: readonly Lexeme[], most: number): boolean {
  let depth = 0;
  let parens = 0;
  for (const { tokenType, beginsLine } of lexemes) {
    if (beginsLine) parens = 0;
    if (tokenType === T.LParen) parens += 1;
    if (tokenType === T.LBrace) depth += 1;
    else if (tokenType === T.RBrace) depth -= 1;
    if (depth < 0 || depth > most || parens > MAX_DEPTH) return false;
  }
  return depth === 0;
}

/** `procedure x {` … `}` around them, so that they are read as what they are. */
function wrapped(lexemes: Lexeme[], within: 'procedure' | 'machine'): Lexeme[] {
  const at = lexemes[0]?.startOffset ?? 0;
  const to = (lexemes.at(-1)?.endOffset ?? 0) + 1;
  const word = (image: string, type: Lexeme['tokenType'], begins: boolean, place: number) =>
    new Lexeme(image, place, place, type, begins);
  return [
    word(within, T.PlainWord, true, at),
    word('x', T.PlainWord, false, at),
    word('{', T.LBrace, false, at),
    ...lexemes,
    word('}', T.RBrace, true, to),
  ];
}

function read(text: string, placeOf: ((offset: number) => number) | undefined): Reading {
  const { lexemes, comments, problems: lexical } = scan(text);
  const balanced = balance(text, lexemes);
  if (placeOf) {
    move(balanced.lexemes, placeOf);
    for (const comment of comments) moveSpan(comment, placeOf);
    for (const problem of [...lexical, ...balanced.problems]) moveProblem(problem, placeOf);
  }
  const parser = shared();
  parser.begin(arrange(balanced.lexemes), balanced.virtual);
  // The rules of the parser cannot fail; if one does, what was read is lost and that is said.
  const items = parser.file() ?? [];
  const problems = ordered([...lexical, ...balanced.problems, ...parser.problems, ...parser.failures()]);
  // The tokens of a long text take more room than its tree.
  parser.begin([], new Set());
  return { items, comments, problems, balanced: balanced.problems.length === 0 };
}

function move(lexemes: readonly Lexeme[], placeOf: (offset: number) => number): void {
  for (const lexeme of lexemes) {
    const start = placeOf(lexeme.startOffset);
    // A token stands in one line.
    lexeme.endOffset += start - lexeme.startOffset;
    lexeme.startOffset = start;
  }
}

function moveSpan(span: Span, placeOf: (offset: number) => number): void {
  const start = placeOf(span.start);
  span.end = span.end === span.start ? start : placeOf(span.end - 1) + 1;
  span.start = start;
}

function moveProblem(problem: SyntaxProblem, placeOf: (offset: number) => number): void {
  moveSpan(problem, placeOf);
  if (problem.related) moveSpan(problem.related, placeOf);
  if (problem.mend) moveSpan(problem.mend, placeOf);
}

let made: DowelParser | undefined;

/** Building the parser costs more than reading most files, so it is built once, when first needed. */
function shared(): DowelParser {
  made ??= new DowelParser();
  return made;
}

function ordered(problems: SyntaxProblem[]): SyntaxProblem[] {
  return problems.sort((a, b) => a.start - b.start || a.end - b.end);
}

/** As many as a person reads; they stand in the order of the text. */
export function capped(problems: readonly SyntaxProblem[]): SyntaxProblem[] {
  if (problems.length <= MAX_PROBLEMS) return [...problems];
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
