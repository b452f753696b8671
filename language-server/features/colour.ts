/**
 * What each piece of a text is, for colouring: names by the part they play in the tree, words of the language
 * by the word list, the rest as the scanner reads it. Pieces come in reading order and do not overlap; a text
 * of several lines is one piece.
 */
import type { ParsedFile, Span, Statement } from '../../grammar/syntax/tree.ts';
import { VERB_PHRASES } from '../../grammar/tokens/verbs.ts';
import { occurrences, type Role } from './occurrences.ts';

/** The kinds of piece; the protocol's standard names where there is one that fits. */
export const COLOURS = [
  'comment',
  'keyword',
  'verb',
  'string',
  'number',
  'unit',
  'operator',
  'machine',
  'procedure',
  'thing',
  'value',
  'variant',
  'enumMember',
  'position',
  'state',
  'hazard',
  'check',
  'task',
  'signal',
  'word',
] as const;
export type Colour = (typeof COLOURS)[number];

export const MARKS = ['declaration'] as const;

export interface Piece extends Span {
  colour: Colour;
  declares: boolean;
}

const ROLE_COLOURS: Readonly<Record<Role, Colour>> = {
  machine: 'machine',
  procedure: 'procedure',
  task: 'task',
  work: 'procedure',
  thing: 'thing',
  value: 'value',
  source: 'value',
  table: 'value',
  variant: 'variant',
  axis: 'variant',
  'axis value': 'enumMember',
  choice: 'variant',
  'measured value': 'value',
  'loop variable': 'value',
  rule: 'task',
  position: 'position',
  state: 'state',
  hazard: 'hazard',
  harm: 'hazard',
  doing: 'word',
  clothing: 'word',
  check: 'check',
  outcome: 'enumMember',
  topic: 'word',
  designation: 'number',
  function: 'keyword',
  kind: 'keyword',
};

export function piecesOf({ tree, tokens, comments }: ParsedFile, text: string): Piece[] {
  const names = new Map(occurrences(tree).map((one) => [one.start, one]));
  const words = new Map<number, { end: number; colour: Colour }>();
  wordsOf(tree, words);
  const pieces: Piece[] = comments.map(({ start, end }) => ({
    start,
    end,
    colour: 'comment',
    declares: false,
  }));
  let verbUntil = -1;
  let verb: Colour = 'verb';
  for (const { start, end, type: kind } of tokens) {
    const known = words.get(start);
    if (known) {
      verbUntil = known.end;
      verb = known.colour;
    }
    const name = names.get(start);
    const push = (colour: Colour, at: Span = { start, end }, declares = false) =>
      pieces.push({ start: at.start, end: at.end, colour, declares });
    if (name && name.end >= end && kind !== 'position') {
      push(ROLE_COLOURS[name.role], { start, end }, name.declares);
      // A name of two words: `can hurt`.
      if (name.end > end) {
        verbUntil = name.end;
        verb = ROLE_COLOURS[name.role];
      }
    } else if (end <= verbUntil) push(verb);
    else {
      switch (kind) {
        case 'text':
          pieces.push(...textPieces({ start, end }, names));
          break;
        case 'number':
        case 'count':
        case 'thread':
          push('number');
          break;
        case 'unit':
          push('unit');
          break;
        case 'position': {
          const inner = names.get(start + 1);
          push(inner ? ROLE_COLOURS[inner.role] : 'position', { start, end }, inner?.declares ?? false);
          break;
        }
        case 'word':
          push(closes(text.slice(start, end)) ? 'verb' : 'keyword');
          break;
        case 'mark':
          if (!/[{}(),;:]/.test(text.slice(start, end))) push('operator');
          break;
        case 'bad':
          break;
        default: {
          kind satisfies never;
        }
      }
    }
  }
  return pieces.sort((a, b) => a.start - b.start);
}

/** A sentence, with the values in it. */
function textPieces({ start, end }: Span, names: ReadonlyMap<number, Span>): Piece[] {
  const pieces: Piece[] = [];
  let at = start;
  for (let index = start; index < end; index++) {
    const hole = names.get(index);
    if (!hole || hole.end > end) continue;
    if (hole.start > at) pieces.push({ start: at, end: hole.start, colour: 'string', declares: false });
    pieces.push({ start: hole.start, end: hole.end, colour: 'value', declares: false });
    at = hole.end;
  }
  if (at < end) pieces.push({ start: at, end, colour: 'string', declares: false });
  return pieces;
}

/** Where the words of verbs and of notices stand. */
function wordsOf(tree: ParsedFile['tree'], into: Map<number, { end: number; colour: Colour }>): void {
  const statements = (list: readonly Statement[] | undefined): void => {
    for (const statement of list ?? []) {
      if (statement.kind === 'action') {
        into.set(statement.word.start, { end: statement.word.end, colour: 'verb' });
        for (const { body } of statement.outcomes) statements(body?.statements);
      } else if (statement.kind === 'notice')
        into.set(statement.word.start, { end: statement.word.end, colour: 'signal' });
      if ('body' in statement) statements(statement.body?.statements);
      if ('otherwise' in statement) statements(statement.otherwise?.statements);
    }
  };
  for (const item of tree.items) if (item.kind === 'procedure') statements(item.body?.statements);
}

const CLOSING: ReadonlySet<string> = new Set(
  [...VERB_PHRASES.values()].flat().flatMap(({ verb }) => verb.closing ?? []),
);

function closes(word: string): boolean {
  return CLOSING.has(word);
}
