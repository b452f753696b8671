/**
 * The sentences of a text, and their words as ASD-STE100 counts them: a number with its unit is one word, and so is an
 * abbreviation, an identifier, a label in quotation marks and words joined by hyphens; text in brackets is one word
 * of its sentence and a sentence of its own (account of the counting rules of issue 9, seen second hand).
 */
import { findQuantities } from '../../grammar/quantity/index.ts';

/** A sentence, and where it stands in its text. A bracket in it is a sentence of its own, too. */
export interface Sentence {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const ABBREVIATIONS =
  /(?:\b(?:e\.g|i\.e|etc|approx|no|nos|fig|figs|max|min|vs|cf|viz|ca|para|d\.c|a\.c|dia|ref|incl|eq|vol|dept|mr|mrs|dr|st)|\b[a-z])$/i;

/** Where a sentence may end or a bracket begin. */
const MARK = /[.!?(]/;
const LETTER = /\p{L}/u;
const END = /[.!?]{1,9}["')\]]{0,9}(?=\s|$)/g;

export function sentencesIn(text: string): Sentence[] {
  // Most texts are one sentence with a mark at its end, or with none.
  const mark = text.search(MARK);
  if (mark < 0 || (mark === text.length - 1 && text[mark] !== '(')) {
    const sentence = text.trim();
    if (!LETTER.test(sentence)) return [];
    const from = text.length - text.trimStart().length;
    return [{ text: sentence, from, to: from + sentence.length }];
  }
  const found: Sentence[] = [];
  let from = 0;
  const add = (to: number) => {
    const raw = text.slice(from, to);
    const lead = raw.length - raw.trimStart().length;
    const sentence = raw.trim();
    if (LETTER.test(sentence)) {
      const start = from + lead;
      found.push({ text: sentence, from: start, to: start + sentence.length });
    }
    from = to;
  };
  for (const match of text.matchAll(END)) {
    const end = match.index + match[0].length;
    // `Fig. 3`, `approx. half`: the sentence goes on. At the end of the text it does not.
    if (
      end < text.trimEnd().length &&
      match[0].startsWith('.') &&
      ABBREVIATIONS.test(text.slice(from, match.index))
    )
      continue;
    add(end);
  }
  add(text.length);
  if (!text.includes('(')) return found;
  return found.flatMap((sentence) => [sentence, ...bracketsIn(sentence)]);
}

/** Brackets that hold several words. */
function bracketsIn({ text, from }: Sentence): Sentence[] {
  return [...text.matchAll(/\(([^()]*)\)/g)].flatMap((match) => {
    const inner = match[1]!;
    const start = from + match.index + 1;
    return isSeveralWords(inner) ? [{ text: inner, from: start, to: start + inner.length }] : [];
  });
}

function isSeveralWords(text: string): boolean {
  return text.split(/\s/).filter((word) => /\p{L}/u.test(word)).length > 1;
}

/** How many words a sentence has. */
export function countWords(sentence: string): number {
  let text = sentence
    // A bracket, a label in quotation marks and a declared value are one word each.
    .replace(/\([^()]*\)/g, ' word ')
    .replace(/["“][^"“”]*["”]/g, ' word ')
    .replace(/\{[^{}]*\}/g, ' word ');
  if (/\d/.test(text)) {
    // From the back, so that the places in front stay.
    for (const { from, to } of [...findQuantities(text)].reverse())
      text = `${text.slice(0, from)} word ${text.slice(to)}`;
  }
  return text.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}
