/** The catalogue of one language: messages by key, with values put in. */
import { american } from './american.ts';
import { british, type Message, type MessageKey } from './british.ts';

export type { MessageKey };
export type Spelling = 'british' | 'american';

export interface Words {
  spelling: Spelling;
  language: 'en-GB' | 'en-US';
  say(key: MessageKey, values?: Readonly<Record<string, string | number>>): string;
  /** The message with its places still in it; `count` chooses between one and several. */
  pattern(key: MessageKey, count?: number): string;
  has(key: string): key is MessageKey;
}

const CATALOGUES: Readonly<Record<Spelling, Readonly<Record<MessageKey, Message>>>> = {
  british,
  american: { ...british, ...american },
};

export function wordsOf(spelling: Spelling): Words {
  const catalogue = CATALOGUES[spelling];
  const pattern = (key: MessageKey, count = 2): string => {
    const message = catalogue[key];
    return typeof message === 'string' ? message : count === 1 ? message.one : message.other;
  };
  return {
    spelling,
    language: spelling === 'british' ? 'en-GB' : 'en-US',
    pattern,
    say: (key, values = {}) => filled(pattern(key, Number(values.count ?? 2)), values),
    has: (key): key is MessageKey => key in catalogue,
  };
}

/** `{what}` is put in as it is, `{What}` with a capital. */
function filled(pattern: string, values: Readonly<Record<string, string | number>>): string {
  return pattern.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name] ?? values[name.charAt(0).toLowerCase() + name.slice(1)];
    const text = value === undefined ? '' : String(value);
    return name in values || !/^[A-Z]/.test(name) ? text : capital(text);
  });
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
