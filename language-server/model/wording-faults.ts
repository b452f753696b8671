/**
 * What the sentences of a procedure are asked: length, one instruction each, commands, words that say nothing, Latin,
 * limits, one name for one thing. Facts `sentence-long`, `text-long`, `two-instructions`, `not-imperative`,
 * `vague-word`, `latin-abbreviation`, `semicolon`, `limit-missing`, `two-names`, `name-ambiguous`. Each is at the words it is about.
 */
import type { Action, Written } from '../../grammar/syntax/tree.ts';
import {
  approximateIn,
  countWords,
  isInstruction,
  latin,
  MAY_BE_LATIN,
  MAY_BE_VAGUE,
  notImperativeIn,
  secondInstructionIn,
  sentencesIn,
  VAGUE,
} from '../wording/index.ts';
import { placeInText } from '../wording/place.ts';
import type { Fact } from './facts.ts';
import type { Model } from './model.ts';
import { twoNames } from './name-uses.ts';
import { ambiguousNames } from './shared-names.ts';
import { sharedNames } from './spoken-things.ts';
import type { Survey } from './survey.ts';
import { type ReaderText, textsIn } from './texts-of.ts';

export interface Where {
  readonly path: string;
  readonly written: Written;
}

/** Words: ASD-STE100 rules 5.1 and 6.3; sentences: rule 6.6 (numbers as in issue 9). */
export const MOST_WORDS = { instruction: 20, description: 25 } as const;
export const MOST_SENTENCES = 6;

export function wordingFaults(model: Model, survey: Survey, file: Where): Fact[] {
  // What the sentences show by themselves stays while the machine is edited.
  const told = survey.each('wording', [], (statement) => {
    const texts = textsIn(statement);
    if (texts.length === 0) return NOTHING;
    return texts.length === 1 ? faultsOf(texts[0]!, file) : texts.flatMap((text) => faultsOf(text, file));
  });
  return [
    ...told.flatMap((one) => standing(model, one)),
    ...(sharedNames(model).length > 0
      ? survey.each('ambiguous names', [model], (one) => {
          const texts = textsIn(one);
          return texts.length === 0 ? [] : ambiguousNames(model, texts, file);
        })
      : []),
    ...twoNames(model, survey, file),
  ];
}

/** A fact; where the step tightens something (the machine says), the next one in its place. */
const NOTHING: readonly Told[] = [];

interface Told {
  readonly fact: Fact;
  readonly unlessTightened?: Action;
  readonly next?: Told;
}

function standing(model: Model, { fact, unlessTightened, next }: Told): Fact[] {
  if (!unlessTightened || !isTightened(model, unlessTightened)) return [fact];
  return next ? standing(model, next) : [];
}

function faultsOf(reader: ReaderText, file: Where): Told[] {
  const { text, kind, action } = reader;
  const { value } = text;
  const facts: Told[] = [];
  const tell = (
    check: string,
    from: number,
    to: number,
    words: Record<string, string> = {},
    mend?: string,
  ) => {
    const at = { file: file.path, ...placeInText(file.written, text, from, to) };
    const mends = mend === undefined ? {} : { mends: [{ title: `Write ${mend}`, at, text: mend }] };
    facts.push({ fact: { check, at, words, ...mends } });
  };
  for (const { pattern, write, say } of MAY_BE_LATIN.test(value) ? latin() : []) {
    const match = pattern.exec(value);
    if (!match) continue;
    tell('latin-abbreviation', match.index, match.index + match[0].length, { word: match[0], say }, write);
  }
  const semicolon = value.indexOf(';');
  if (semicolon >= 0) tell('semicolon', semicolon, semicolon + 1);
  if (kind === 'title') return facts;
  const sentences = sentencesIn(value);
  for (const { text: sentence, from, to } of sentences) {
    const long = tooLong(sentence);
    if (long) tell('sentence-long', from, to, long);
    // Behind a `stop` no steps can stand: its sentence may tell several things.
    const second = kind === 'step' ? secondInstructionIn(sentence) : undefined;
    if (second) tell('two-instructions', from + second.from, from + second.to, { verb: second.verb });
    const passive = kind === 'step' || kind === 'stop' ? notImperativeIn(sentence) : undefined;
    if (passive) tell('not-imperative', from + passive.from, from + passive.to, { words: passive.words });
    const about = action && SETS.has(action.verb) && !isLimited(action) ? approximateIn(sentence) : undefined;
    if (about && kind === 'step')
      tell('limit-missing', from + about.from, from + about.to, { words: about.words });
    if (kind === 'step' || kind === 'stop' || kind === 'criterion')
      facts.push(...vague(reader, sentence, from, file));
  }
  if (sentences.length <= MOST_SENTENCES) return facts;
  // A bracket counts as a sentence for its length, not for how many there are.
  const own = sentences.filter(({ from }, index) => index === 0 || from >= sentences[index - 1]!.to);
  if (own.length > MOST_SENTENCES)
    tell('text-long', own[0]!.from, own.at(-1)!.to, { sentences: String(own.length) });
  return facts;
}

/** The sentence has too many words: how many, and how many it may have. */
function tooLong(sentence: string): Record<string, string> | undefined {
  // Letters are counted sooner than spaces, and those sooner than words; each is never fewer.
  if (sentence.length < 2 * MOST_WORDS.instruction) return undefined;
  if (sentence.split(' ').length <= MOST_WORDS.instruction) return undefined;
  const instruction = isInstruction(sentence);
  const most = instruction ? MOST_WORDS.instruction : MOST_WORDS.description;
  const words = countWords(sentence);
  if (words <= most) return undefined;
  const kind = instruction ? 'an instruction' : 'a description';
  return { words: String(words), most: String(most), kind };
}

function vague(reader: ReaderText, sentence: string, from: number, file: Where): Told[] {
  const { text, action } = reader;
  let next: Told | undefined;
  for (const { match, say, sure } of vagueIn(reader, sentence).reverse()) {
    const start = from + match.index;
    const at = { file: file.path, ...placeInText(file.written, text, start, start + match[0].length) };
    const fact = { check: 'vague-word', at, words: { word: match[0], say } };
    next = sure || !action ? { fact } : { fact, unlessTightened: action, ...(next ? { next } : {}) };
  }
  return next ? [next] : [];
}

/** Words that say nothing, up to the first of which that is certain. */
function vagueIn(
  { action }: ReaderText,
  sentence: string,
): { match: RegExpExecArray; say: string; sure: boolean }[] {
  if (!MAY_BE_VAGUE.test(sentence)) return [];
  // A value or a sign in the same sentence says what the word leaves open.
  if (/\d|\{|\b(until|so that|so far that|by feel)\b/i.test(sentence)) return [];
  const found: { match: RegExpExecArray; say: string; sure: boolean }[] = [];
  for (const { pattern, say } of VAGUE) {
    const match = pattern.exec(sentence);
    // The value stands in a tail.
    if (!match || (action && isLimited(action))) continue;
    const sure = !action || !TIGHT.test(match[0]);
    found.push({ match, say, sure });
    if (sure) break;
  }
  return found;
}

/** Words that the machine file may give a torque for; a torque that stands nowhere is `torque-missing`. */
const TIGHT = /^(securely|firmly|properly|adequately|sufficiently|good and tight|tight enough)$/i;

function isTightened(model: Model, action: Action): boolean {
  return action.objects.some(({ name }) => {
    const type = model.byName.get(name.text)?.type;
    return type === 'fastener' || type === 'connection';
  });
}

function isLimited(action: Action): boolean {
  return action.tails.some(
    (tail) =>
      tail.tail === 'until' ||
      tail.tail === 'not over' ||
      tail.tail === 'not under' ||
      (tail.tail === 'to' && (tail.quantity !== undefined || tail.text !== undefined)),
  );
}

/** Verbs that bring something to a value. */
const SETS: ReadonlySet<string> = new Set([
  ...['adjust', 'tighten', 'fit', 'refit', 'bolt up', 'align', 'pressurise', 'inflate', 'back off', 'coat'],
]);
