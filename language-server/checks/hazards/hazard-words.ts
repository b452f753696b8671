/** Hazards as a reader says them: the words of a declaration in a sentence. */
import type { Fact } from '../../model/facts.ts';
import { list } from '../../model/model.ts';
import { definite } from '../grammatical.ts';
import { subject } from '../speak.ts';

const SAID: Readonly<Record<string, string>> = {
  live: 'live parts',
  hot: 'heat',
  cold: 'cold',
  'stored-energy': 'stored energy',
  chemical: 'chemicals',
  moving: 'moving parts',
  sharp: 'sharp edges',
  falling: 'falling parts',
};

/** `pressure`, `live parts`. */
export function hazardSaid(fact: Fact): string {
  const hazards = fact.words!.hazard!.split(', ');
  return list(hazards.map((hazard) => SAID[hazard] ?? hazard.replaceAll('-', ' ')));
}

const EVENTS: Readonly<Record<string, string>> = {
  opening: 'opens',
  relieving: 'lets out',
  draining: 'drains',
  filling: 'fills',
  bleeding: 'bleeds',
  pressurising: 'puts pressure on',
  proving: 'tests',
  isolating: 'isolates',
  cooling: 'cools',
};

/** `the air at the pipe`; the system itself where the hazard is that of the fluid in it. */
function met(fact: Fact): string {
  const [via] = fact.others!;
  if (!via) return subject(fact);
  return via.thing.type === 'system' ? definite(via) : `${subject(fact)} at ${definite(via)}`;
}

/** What a step works with, not on. */
const USED: ReadonlySet<string> = new Set(['fluid', 'consumable']);

/** The step and how it meets the hazard: `step, which opens the air at the pipe`, `step on the guard`. */
export function meets(fact: Fact): string {
  const thing = subject(fact);
  const { begins, event } = fact.words!;
  if (begins) return `step, where making ${thing} safe begins`;
  const verb = event && EVENTS[event];
  if (verb) return `step, which ${verb} ${met(fact)}`;
  const used = USED.has(fact.subject!.thing.type);
  return `step ${used ? 'with' : 'on'} ${thing}`;
}

/** What the notice is called: `warning`, `danger notice`. */
export function noticeSaid(signal: string): string {
  return signal === 'danger' ? 'danger notice' : signal;
}

/** The notice to write. */
export function noticeFor(fact: Fact): string {
  const { hazard, signal } = fact.words!;
  return `\`${signal} ${hazard} "…"\``;
}
