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
  LATIN,
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
  return [
    ...survey.each('wording', [model], (statement) =>
      textsIn(statement).flatMap((text) => [
        ...faultsOf(model, text, file),
        ...ambiguousNames(model, [text], file),
      ]),
    ),
    ...twoNames(model, survey, file),
  ];
}

function faultsOf(model: Model, reader: ReaderText, file: Where): Fact[] {
  const { text, kind, action } = reader;
  const { value } = text;
  const facts: Fact[] = [];
  const tell = (
    check: string,
    from: number,
    to: number,
    words: Record<string, string> = {},
    mend?: string,
  ) => {
    const at = { file: file.path, ...placeInText(file.written, text, from, to) };
    facts.push({
      check,
      at,
      words,
      ...(mend === undefined ? {} : { mends: [{ title: `Write ${mend}`, at, text: mend }] }),
    });
  };
  for (const { pattern, write, say } of MAY_BE_LATIN.test(value) ? LATIN : []) {
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
      vague(model, reader, sentence, from, tell);
  }
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

function vague(
  model: Model,
  { action }: ReaderText,
  sentence: string,
  from: number,
  tell: (check: string, from: number, to: number, words: Record<string, string>) => void,
): void {
  if (!MAY_BE_VAGUE.test(sentence)) return;
  // A value or a sign in the same sentence says what the word leaves open.
  if (/\d|\{|\b(until|so that|so far that|by feel)\b/i.test(sentence)) return;
  for (const { pattern, say } of VAGUE) {
    const match = pattern.exec(sentence);
    if (!match) continue;
    if (action && saidElsewhere(model, action, match[0])) continue;
    tell('vague-word', from + match.index, from + match.index + match[0].length, { word: match[0], say });
    return;
  }
}

/** The value stands in a tail or in the machine file; a torque that stands nowhere is `torque-missing`. */
function saidElsewhere(model: Model, action: Action, word: string): boolean {
  if (isLimited(action)) return true;
  if (!/^(securely|firmly|properly|adequately|sufficiently|good and tight|tight enough)$/i.test(word))
    return false;
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
