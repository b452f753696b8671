/** Hazards as a reader says them: the words of a declaration in a sentence. */
import type { Fact } from '../../model/facts.ts';
import { list } from '../../model/model.ts';
import { others, subject } from '../speak.ts';

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
  const hazards = (fact.words?.hazard ?? '').split(', ');
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

/** The step and how it meets the hazard: `step, which opens the air at the pipe`, `step on the guard`. */
export function meets(fact: Fact): string {
  const thing = subject(fact);
  const through = fact.others?.length ? ` at ${others(fact)}` : '';
  const { begins, event } = fact.words ?? {};
  if (begins) return `step, where making ${thing} safe begins`;
  const verb = event && EVENTS[event];
  return verb ? `step, which ${verb} ${thing}${through}` : `step on ${thing}`;
}

/** The notice to write. */
export function noticeFor(fact: Fact): string {
  const { hazard = '', signal = 'warning' } = fact.words ?? {};
  return `\`${signal} ${hazard} "…"\``;
}
