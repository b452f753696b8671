/**
 * Which actions come near which hazards. `hazard moving when turning` names its activities itself; where no `when` is
 * written, the kind of hazard says which actions count. Common practice, no source, except where energy is made
 * safe: 29 CFR 1910.147(d).
 *
 * A notice has to stand before the first action that is `near` it. An action that only `begins` to make it safe (the
 * breaker is thrown, the part is left to cool) hurts nobody; it is where the notice belongs when it is missing.
 */

/** -ing words, as they stand after `when`. */
export type Activity = string;

/** What a verb does, in the words that may stand after `when`. */
export function activitiesOf(verb: string): readonly Activity[] {
  return ACTIVITIES[verb] ?? [gerund(verb)];
}

/** `turning` from `turn`: of a verb of two words the first one. */
export function gerund(verb: string): string {
  const [first = ''] = verb.split(' ');
  if (/[^e]e$/.test(first)) return `${first.slice(0, -1)}ing`;
  if (/^[^aeiou]*[aeiou][bdgmnprt]$/.test(first) && first !== 'loosen') return `${first}${first.at(-1)}ing`;
  return `${first}ing`;
}

const COMES_OFF = ['removing', 'opening', 'lifting', 'handling'];
const GOES_ON = ['fitting', 'refitting', 'lifting', 'handling'];

const ACTIVITIES: Readonly<Record<string, readonly Activity[]>> = {
  remove: COMES_OFF,
  unbolt: [...COMES_OFF, 'unbolting'],
  'move aside': ['moving', 'removing', 'opening', 'handling'],
  'move back': ['moving', 'fitting', 'refitting', 'handling'],
  move: ['moving', 'lifting', 'handling'],
  refit: GOES_ON,
  fit: GOES_ON,
  'trial fit': GOES_ON,
  'bolt up': [...GOES_ON, 'bolting'],
  raise: ['raising', 'lifting', 'handling'],
  lower: ['lowering', 'lifting', 'handling'],
  support: ['supporting', 'lifting', 'handling'],
  disconnect: ['disconnecting', 'opening', 'handling'],
  connect: ['connecting', 'handling'],
  open: ['opening', 'handling'],
  relieve: ['relieving', 'opening'],
  drain: ['draining', 'opening'],
  recover: ['recovering', 'draining'],
  'top up': ['topping', 'filling'],
  prove: ['proving', 'testing'],
  'let cool': ['cooling'],
  'switch on': ['switching', 'handling'],
  'switch off': ['switching', 'handling'],
  'lock out': ['locking', 'handling'],
  run: ['running', 'starting'],
};

/** Every word that can stand after `when`, for the verbs given. */
export function activityWords(verbs: readonly string[]): Set<Activity> {
  return new Set(verbs.flatMap((verb) => [...activitiesOf(verb), gerund(verb)]));
}

const LIFTING: ReadonlySet<string> = new Set([
  ...['remove', 'unbolt', 'refit', 'fit', 'trial fit', 'bolt up', 'move', 'move aside', 'move back'],
  ...['raise', 'lower', 'support'],
]);

/** Work done with the hands on the thing. Looking, measuring and proving are not. */
const HANDLING: ReadonlySet<string> = new Set([
  ...LIFTING,
  ...[
    'loosen',
    'back off',
    'tighten',
    'connect',
    'disconnect',
    'cap',
    'open',
    'close',
    'switch on',
    'switch off',
  ],
  ...[
    'lock out',
    'unlock',
    'lock',
    'turn',
    'mark',
    'clean',
    'coat',
    'lubricate',
    'align',
    'secure',
    'adjust',
    'bleed',
  ],
  ...['bypass', 'run'],
]);

/** Whether an action on a thing comes near a hazard of that thing, where no `when` says so. */
export function isNear(hazard: string, verb: string): boolean {
  return hazard === 'lifting' || hazard === 'falling' ? LIFTING.has(verb) : HANDLING.has(verb);
}

/** What an action does to a system, by itself or through a point of it. */
export type SystemEvent =
  /** Something of it comes off or apart. */
  | 'opening'
  /** Its pressure or stored energy is let out. */
  | 'relieving'
  | 'draining'
  | 'filling'
  | 'bleeding'
  | 'pressurising'
  | 'proving'
  /** Its supply is cut off. */
  | 'isolating'
  | 'cooling'
  | 'other';

const LETTING_OUT: readonly SystemEvent[] = ['opening', 'relieving', 'draining', 'bleeding', 'pressurising'];
const WETTING: readonly SystemEvent[] = ['opening', 'relieving', 'draining', 'filling', 'bleeding'];

const NEAR: Readonly<Record<string, readonly SystemEvent[]>> = {
  pressure: LETTING_OUT,
  'stored-energy': LETTING_OUT,
  live: ['opening', 'proving'],
  hot: ['opening', 'draining', 'bleeding'],
  cold: WETTING,
  fuel: WETTING,
  chemical: WETTING,
};

/** Whether what is done to a system comes near a hazard of it, where no `when` says so. */
export function isNearSystem(hazard: string, event: SystemEvent): boolean {
  return (NEAR[hazard] ?? ['opening']).includes(event);
}

/** Whether the event begins to make the hazard safe, by itself without danger. */
export function begins(hazard: string, event: SystemEvent): boolean {
  return (hazard === 'live' && event === 'isolating') || (hazard === 'hot' && event === 'cooling');
}

/** Whether the event brings the energy back: then a system that is safe before it is none after it. */
export function brings(event: SystemEvent | undefined): boolean {
  return event === 'pressurising' || event === 'filling';
}

/** The energy of a system that a hazard is about; of other hazards all that it has. */
export type Energy = 'pressure' | 'heat' | 'live' | 'fluid';

export function energyOf(hazard: string): Energy | undefined {
  return ENERGY[hazard];
}

const ENERGY: Readonly<Record<string, Energy>> = {
  pressure: 'pressure',
  'stored-energy': 'pressure',
  hot: 'heat',
  live: 'live',
  cold: 'fluid',
  fuel: 'fluid',
  chemical: 'fluid',
};
