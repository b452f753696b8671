/** The usual cautions and deference: on every page that shows hazardous work, and with every document. */
import type { MessageKey, Words } from './words.ts';

const KEYS: readonly MessageKey[] = ['caution.law', 'caution.licence', 'caution.maker', 'caution.person'];

export function cautionsOf(words: Words): string[] {
  return KEYS.map((key) => words.say(key));
}
