/**
 * The verbs of the trade, as data: the parser, completion, colouring and the language reference read this
 * one list. What a verb does to the machine is not here (see language-server/execution).
 */

/** Kinds of thing a verb can act on. `tool` stands for tools and fixtures that are fitted and taken off. */
export type Kind =
  | 'part'
  | 'fastener'
  | 'seal'
  | 'connection'
  | 'control'
  | 'isolator'
  | 'face'
  | 'system'
  | 'tool'
  | 'kit'
  | 'fluid'
  | 'consumable';

export interface Verb {
  /** The key, which is also how it is written. */
  verb: string;
  /** Other ways to write it, read as the same verb. */
  also?: string[];
  /** The word that closes the phrase after the objects: `prove mains safe`. */
  closing?: string;
  /** What it can act on; empty where it takes no object. */
  on: readonly Kind[];
  /** May stand without an object (`wait 30 min`, `run "…"`). */
  objectless?: boolean;
  /** Begins with a topic: `measure warp of cylinder-head`. */
  topic?: boolean;
  /** May be followed by outcomes in braces. */
  outcomes?: boolean;
  /** May carry `new` or `kit` before its objects. */
  fresh?: boolean;
  /** The verb that undoes it, where there is one. */
  undone?: string;
}

const THINGS: readonly Kind[] = ['part', 'fastener', 'seal', 'connection', 'control', 'isolator', 'face'];
const GOES_ON: readonly Kind[] = [
  'part',
  'fastener',
  'seal',
  'connection',
  'control',
  'isolator',
  'tool',
  'kit',
];

export const VERBS: readonly Verb[] = [
  {
    verb: 'remove',
    on: ['part', 'fastener', 'seal', 'tool', 'connection', 'control', 'isolator'],
    undone: 'refit',
  },
  { verb: 'unbolt', on: ['part'], undone: 'bolt up' },
  { verb: 'move aside', on: ['part', 'connection'], undone: 'move back' },
  { verb: 'move back', on: ['part', 'connection'], undone: 'move aside' },
  { verb: 'move', on: ['part', 'fastener', 'seal', 'connection'] },
  { verb: 'refit', also: ['install', 'reinstall'], on: GOES_ON, fresh: true, undone: 'remove' },
  { verb: 'fit', on: GOES_ON, fresh: true, undone: 'remove' },
  { verb: 'trial fit', on: ['part', 'seal'], undone: 'remove' },
  { verb: 'bolt up', on: ['part'], undone: 'unbolt' },
  { verb: 'loosen', also: ['slacken'], on: ['fastener'], undone: 'tighten' },
  { verb: 'back off', on: ['fastener'] },
  { verb: 'tighten', on: ['fastener'], undone: 'loosen' },
  { verb: 'connect', also: ['reconnect'], on: ['connection'], undone: 'disconnect' },
  { verb: 'disconnect', on: ['connection'], undone: 'connect' },
  { verb: 'cap', on: ['connection'], undone: 'connect' },
  { verb: 'open', on: ['control', 'isolator', 'connection'], undone: 'close' },
  { verb: 'close', on: ['control', 'isolator', 'connection'], undone: 'open' },
  { verb: 'switch on', on: ['control', 'isolator'], undone: 'switch off' },
  { verb: 'switch off', on: ['control', 'isolator'], undone: 'switch on' },
  { verb: 'lock out', on: ['isolator', 'control'], undone: 'unlock' },
  { verb: 'unlock', on: ['isolator', 'control', 'part', 'tool'], undone: 'lock' },
  { verb: 'let cool', on: ['part', 'system'] },
  { verb: 'relieve', on: ['system'] },
  { verb: 'drain', on: ['system'], undone: 'fill' },
  { verb: 'recover', on: ['system'], undone: 'fill' },
  { verb: 'evacuate', on: ['system'] },
  { verb: 'pressurise', also: ['pressurize'], on: ['system'], undone: 'relieve' },
  { verb: 'inflate', on: ['system'], undone: 'relieve' },
  { verb: 'isolate', on: ['system'], undone: 'restore' },
  { verb: 'prove', closing: 'safe', on: ['system'] },
  { verb: 'restore', on: ['system'], undone: 'isolate' },
  { verb: 'fill', also: ['refill'], on: ['system'], undone: 'drain' },
  { verb: 'top up', on: ['system'] },
  { verb: 'bleed', on: ['system'] },
  { verb: 'lock', on: ['part'], undone: 'unlock' },
  { verb: 'support', on: ['part'], undone: 'lower' },
  { verb: 'raise', on: ['part'], undone: 'lower' },
  { verb: 'lower', on: ['part'], undone: 'raise' },
  { verb: 'bypass', on: ['control', 'isolator', 'connection', 'part'], undone: 'remove' },
  { verb: 'turn', also: ['rotate'], on: ['part'] },
  { verb: 'mark', on: ['part', 'fastener', 'connection'] },
  { verb: 'clean', on: THINGS },
  { verb: 'coat', on: ['face', 'part', 'seal', 'fastener'] },
  { verb: 'lubricate', also: ['oil', 'grease'], on: ['face', 'part', 'seal', 'fastener'] },
  { verb: 'align', on: ['part'] },
  { verb: 'secure', on: ['fastener'] },
  { verb: 'inspect', on: [...THINGS, 'system'], outcomes: true },
  { verb: 'measure', on: [...THINGS, 'system', 'tool'], topic: true, outcomes: true },
  { verb: 'record', on: [...THINGS, 'system', 'tool'], topic: true, objectless: true, outcomes: true },
  { verb: 'choose', on: ['part', 'seal', 'fastener'], topic: true, objectless: true },
  { verb: 'check', on: [...THINGS, 'system', 'tool'], outcomes: true },
  { verb: 'adjust', on: ['part', 'fastener', 'control', 'system'] },
  { verb: 'discard', also: ['scrap'], on: ['part', 'seal', 'fastener', 'connection'] },
  { verb: 'send', on: ['part', 'seal', 'fastener'] },
  { verb: 'wait', on: [], objectless: true },
  { verb: 'sign', on: [], objectless: true },
  { verb: 'run', also: ['start'], on: ['part', 'system'], objectless: true },
];

/** Every way to write a verb, longest first within its first word, with the verb it means. */
export const VERB_PHRASES: ReadonlyMap<string, readonly { words: readonly string[]; verb: Verb }[]> =
  phrases();

export function verbNamed(name: string): Verb | undefined {
  return BY_NAME.get(name);
}

const BY_NAME = new Map(VERBS.map((verb) => [verb.verb, verb]));

function phrases() {
  const map = new Map<string, { words: readonly string[]; verb: Verb }[]>();
  for (const verb of VERBS) {
    for (const phrase of [verb.verb, ...(verb.also ?? [])]) {
      const words = phrase.split(' ');
      const list = map.get(words[0]!) ?? [];
      list.push({ words, verb });
      list.sort((a, b) => b.words.length - a.words.length);
      map.set(words[0]!, list);
    }
  }
  return map;
}
