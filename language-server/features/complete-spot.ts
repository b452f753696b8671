/**
 * The place at which something is being typed: the file is read once more with a made-up word there, so that
 * the tree itself says which part the word plays. Works in broken and cut-off text, since the parser does.
 */
import type { Comment, Span, Token } from '../../grammar/syntax/tree.ts';
import type { LoadedFile } from '../model/names.ts';
import { type Occurrence, occurrences } from './occurrences.ts';
import type { View } from './view.ts';

/** Nothing is called so, and it is near no word of the language. */
const WORD = 'zq0zq';

export type Node = Span & { kind?: string };

export interface Spot {
  view: View;
  file: LoadedFile;
  path: string;
  /** What is replaced: the word around the cursor, without the part behind it where that is none. */
  word: Span;
  /** The text as it is. */
  text: string;
  /** From the file down to the smallest node that holds the made-up word. */
  trail: Node[];
  /** The made-up word, where the tree has it as a name. */
  name: Occurrence | undefined;
  /** The tokens before the word, last one last. */
  before: readonly Token[];
  /** The word begins a line, or stands right behind a brace. */
  begins: boolean;
  /** The name whose position is being typed, behind `#`. */
  positionOf?: string;
}

export interface InText {
  /** From the opening quotation mark to the cursor. */
  start: number;
  /** What stands between them. */
  typed: string;
  /** The word before the text. */
  after: string;
}

const LETTER = /[\p{L}\p{M}\p{N}_-]/u;

/** The comment or text that an offset lies in. */
export function insideOf(
  file: LoadedFile,
  offset: number,
): { comment: Comment } | { text: InText } | undefined {
  // A comment goes to the end of its line, blanks and all.
  const comment = file.parsed.comments.find(
    ({ start }) => start < offset && !file.text.slice(start, offset).includes('\n'),
  );
  if (comment) return { comment };
  const { tokens } = file.parsed;
  const index = tokens.findIndex(
    ({ type, start, end }) => type === 'text' && start < offset && offset <= end,
  );
  const token = tokens[index];
  if (!token) return undefined;
  const whole = file.text.slice(token.start, token.end);
  const closed = whole.length > 1 && /["”]$/.test(whole);
  if (closed && offset === token.end) return undefined;
  const before = tokens[index - 1];
  return {
    text: {
      start: token.start,
      typed: file.text.slice(token.start + 1, offset),
      after: before ? file.text.slice(before.start, before.end) : '',
    },
  };
}

export function spotAt(view: View, path: string, offset: number): Spot | undefined {
  const original = view.file(path);
  if (!original) return undefined;
  const { text } = original;
  let start = offset;
  while (start > 0 && LETTER.test(text[start - 1]!)) start--;
  let end = offset;
  while (end < text.length && LETTER.test(text[end]!)) end++;
  // A number is not a word: what follows it directly is a unit (`20N`).
  const digits = /^[\d.,/]+/.exec(text.slice(start, offset))?.[0].length ?? 0;
  start += digits;
  const position = text[start - 1] === '#';
  // Glued to a word or a number, the made-up word would be part of it.
  const lead = start > 0 && /[\p{L}\p{N}]/u.test(text[start - 1]!) ? ' ' : '';
  const tried = view.trying(path, `${text.slice(0, start)}${lead}${WORD}${text.slice(end)}`);
  const file = tried.file(path);
  if (!file) return undefined;
  const at = start + lead.length;
  const { tokens } = file.parsed;
  const upTo = tokens.findIndex((token) => token.end > at);
  const before = upTo < 0 ? tokens : tokens.slice(0, upTo);
  const last = before[before.length - 1];
  const between = file.text.slice(last?.end ?? 0, at);
  const behindBrace = last?.type === 'mark' && /[{}]/.test(file.text.slice(last.start, last.end));
  const of = position ? namedBefore(before, file.text) : undefined;
  return {
    view: tried,
    file,
    path,
    word: { start, end },
    text,
    trail: trailTo(file.parsed.tree, at, at + WORD.length),
    name: occurrences(file.parsed.tree).find((one) => one.start === at && one.text === WORD),
    before,
    begins: !last || between.includes('\n') || behindBrace,
    ...(of === undefined ? {} : { positionOf: of }),
  };
}

/** `bearing-caps #1, #`: the name before the positions. */
function namedBefore(tokens: readonly Token[], text: string): string | undefined {
  for (let index = tokens.length - 1; index >= 0; index--) {
    const { type, start, end } = tokens[index]!;
    const typed = text.slice(start, end);
    if (type === 'word') return typed === 'at' || typed === 'order' || typed === 'in' ? undefined : typed;
    if (type !== 'position' && type !== 'bad' && typed !== ',' && typed !== '..') return undefined;
  }
  return undefined;
}

function trailTo(root: Node, start: number, end: number): Node[] {
  const trail: Node[] = [];
  const into = (value: unknown): boolean => {
    if (Array.isArray(value)) return value.some(into);
    if (typeof value !== 'object' || value === null) return false;
    const node = value as Node;
    if (typeof node.start !== 'number') return Object.values(node).some(into);
    if (node.start > start || node.end < end) return false;
    trail.push(node);
    Object.values(node).some(into);
    return true;
  };
  into(root);
  return trail;
}

/** The nearest node of a kind around the place. */
export function around<Kind extends string>(
  { trail }: Spot,
  ...kinds: Kind[]
): (Node & { kind: Kind }) | undefined {
  for (let index = trail.length - 1; index >= 0; index--) {
    const node = trail[index]!;
    if (kinds.includes(node.kind as Kind)) return node as Node & { kind: Kind };
  }
  return undefined;
}

/** The last of some nodes that ends before the place, with nothing but blanks between. */
export function justBefore<One extends Span>(spot: Spot, nodes: readonly One[]): One | undefined {
  const last = spot.before[spot.before.length - 1];
  return nodes.findLast((node) => last !== undefined && node.end === last.end);
}
