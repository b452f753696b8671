/** Notices: the word under the convention of the house, the sign that goes with the hazard, the text in its parts. */
import type { Notice as Written } from '../../../grammar/syntax/tree.ts';
import { VERBS } from '../../../grammar/tokens/verbs.ts';
import { CONVENTION_NAMES, noticeParts } from '../../hazards/index.ts';
import type { MeasureOptions } from '../../lists/measures.ts';
import type { Model } from '../../model/model.ts';
import { saidSentence } from '../sentences/texts.ts';
import type { PublishOptions } from '../words/options.ts';
import type { Words } from '../words/words.ts';
import { type Notice, plainText, type SymbolKind } from './types.ts';

/** What the sign shows. The drawings themselves are made elsewhere. */
const SYMBOLS: Readonly<Record<string, SymbolKind>> = {
  pressure: 'pressure',
  hot: 'hot-surface',
  cold: 'cold',
  live: 'electricity',
  'stored-energy': 'stored-energy',
  fuel: 'flammable',
  chemical: 'chemical',
  lifting: 'lifting',
  moving: 'crushing',
  sharp: 'sharp',
  dust: 'dust',
  noise: 'noise',
  light: 'radiation',
  falling: 'falling-load',
};

const COMMANDS: ReadonlySet<string> = new Set(
  VERBS.flatMap(({ verb, also }) => [verb, ...(also ?? [])]).map((verb) => verb.split(' ')[0]!),
);

export function noticeOf(
  written: Written,
  model: Model,
  words: Words,
  measures: MeasureOptions,
  options: PublishOptions,
  bound: ReadonlyMap<string, string>,
): Notice {
  const text = saidSentence(written.text, model, measures, bound);
  const hazards = written.hazards.map(({ text: id }) => ({ id, label: hazardLabel(id, words) }));
  const { signal } = written;
  return {
    signal,
    word: words.say(`signal.${signal}`),
    convention: CONVENTION_NAMES[options.convention],
    hazards,
    symbol: symbolOf(signal, hazards[0]?.id),
    text,
    ...(signal === 'note' ? {} : partsOf(plainText(text))),
  };
}

export function hazardLabel(id: string, words: Words): string {
  const key = `hazard.${id}`;
  return words.has(key) ? words.say(key) : id.replaceAll('-', ' ');
}

export function symbolOf(signal: Notice['signal'], hazard: string | undefined): SymbolKind {
  if (signal === 'note') return 'information';
  return (hazard !== undefined && SYMBOLS[hazard]) || (signal === 'notice' ? 'property' : 'general');
}

/**
 * Sentence by sentence: those that tell to do or not to do something avoid it; of the others the first is the hazard and
 * what happens, where it says both, else the hazard, and the next one what happens.
 */
function partsOf(text: string): Pick<Notice, 'hazard' | 'consequence' | 'avoidance'> {
  const sentences = text.split(/(?<=[.!?])\s+/).filter((one) => one !== '');
  const avoidance: string[] = [];
  const told: string[] = [];
  for (const one of sentences) (isAvoidance(one) ? avoidance : told).push(one);
  const [first, ...rest] = told;
  return {
    ...(first === undefined ? {} : { hazard: first }),
    ...(rest.length > 0 ? { consequence: rest.join(' ') } : {}),
    ...(avoidance.length > 0 ? { avoidance: avoidance.join(' ') } : {}),
  };
}

function isAvoidance(sentence: string): boolean {
  return noticeParts(sentence, COMMANDS).avoidance;
}
