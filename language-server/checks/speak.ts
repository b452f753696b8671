/**
 * Turns a fact into a finding: the check's sentence, the story as related places, the case in words. Below it:
 * what the checks' sentences share. Titles and numbers are in ./grammatical.ts.
 */

import { type CaseSet, type Cases, EVERY } from '../execution/cases.ts';
import type { Fact, Mentioned, Story } from '../model/facts.ts';
import { list, type Thing } from '../model/model.ts';
import type { About, Finding, Related, Severity } from '../report/finding.ts';
import type { Check } from './check.ts';
import { definite, isPluralMention } from './grammatical.ts';

export function speak(
  fact: Fact,
  check: Check,
  severity: Severity,
  cases: Cases | undefined,
  built: CaseSet,
): Finding {
  const { message, help } = check.says(fact);
  const inCase = cases && caseWords(fact.cases ?? EVERY, cases, fact.every ?? built);
  return {
    ...fact.at,
    check: check.name,
    severity,
    message,
    ...(help ? { help } : {}),
    related: (fact.story ?? []).map(relate),
    ...(inCase ? { case: inCase } : {}),
    ...(fact.mends
      ? { mends: fact.mends.map(({ title, at, text }) => ({ title, edits: [{ ...at, text }] })) }
      : {}),
    ...(fact.subject || fact.inner ? { about: about(fact, cases, built) } : {}),
  };
}

function about(fact: Fact, cases: Cases | undefined, built: CaseSet): About {
  const when = cases && whenWords(fact.cases ?? EVERY, cases, built);
  return {
    check: fact.inner ?? fact.check,
    things: fact.subject ? [typed(fact.subject)] : [],
    others: (fact.others ?? []).map(typed),
    ...(when ? { when } : {}),
    ...(fact.words ? { words: fact.words } : {}),
  };
}

/** The smallest case as the condition of a `when`; empty where more than variants and choices tell it. */
function whenWords(set: CaseSet, cases: Cases, built: CaseSet): string {
  const path = cases.smallestWithin(set, built);
  if (path.some(({ axis }) => !/^(variant|choice) /.test(cases.axes[axis]!.key))) return '';
  return path.map(({ axis, value }) => cases.axes[axis]!.phrases[value]!).join(' and ');
}

/** The smallest case that shows it, in words; empty where every case does. */
export function caseWords(set: CaseSet, cases: Cases, built: CaseSet): string {
  const path = cases.smallestWithin(set, built);
  return list(path.map(({ axis, value }) => cases.axes[axis]!.phrases[value]!));
}

function relate({ at, what, thing, says }: NonNullable<Fact['story']>[number]): Related {
  if (says) return { ...at, message: says };
  if (!thing) return { ...at, message: STORY[what] };
  // Of a system it is a joint that is coated.
  if (thing.type === 'system' && what === 'coated')
    return { ...at, message: `a joint of the ${thing.title} coated here` };
  const words = what === 'taken off' ? (TAKEN[thing.type] ?? STORY[what]) : STORY[what];
  return { ...at, message: `${thing.title} ${words}` };
}

/** Kinds of things that do not come off. */
const TAKEN: Readonly<Record<string, string>> = { fastener: 'taken out here', tool: 'taken away here' };

const STORY: Readonly<Record<Story, string>> = {
  'taken off': 'taken off here',
  'put back': 'put back here',
  discarded: 'thrown away here',
  'moved aside': 'moved aside here',
  'moved back': 'moved back here',
  'fitted on trial': 'fitted on trial here',
  'fitted by hand': 'started by hand here',
  loosened: 'loosened here',
  tightened: 'tightened here',
  disconnected: 'disconnected here',
  connected: 'connected here',
  capped: 'capped here',
  opened: 'opened here',
  closed: 'closed here',
  'switched on': 'switched on here',
  'switched off': 'switched off here',
  locked: 'locked here',
  unlocked: 'unlocked here',
  isolated: 'isolated here',
  restored: 'switched on again here',
  drained: 'drained here',
  filled: 'filled here',
  relieved: 'relieved here',
  pressurised: 'put under pressure here',
  heated: 'made hot here',
  cooled: 'cooled here',
  proved: 'proved safe here',
  supported: 'supported here',
  lowered: 'lowered here',
  'put in place': 'put in place here',
  bypassed: 'bypassed here',
  marked: 'marked here',
  cleaned: 'cleaned here',
  coated: 'coated here',
  measured: 'measured here',
  disturbed: 'disturbed here',
  'worked on': 'worked on here',
  named: 'named here',
  declared: 'declared here',
  ruled: 'the rule stands here',
};

/** The subject of a fact as a reader says it: `the head bolts #1 and #3`, `the left brake pad`. */
export function subject(fact: Fact): string {
  return fact.subject ? definite(fact.subject) : 'this';
}

/** What else the fact is about: `the head bolts and the air pipe`. */
export function others(fact: Fact): string {
  return list((fact.others ?? []).map(definite));
}

/** The name to type for the subject: `brake-pads #left`. */
export function typed(mentioned: Mentioned | undefined): string {
  if (!mentioned) return '';
  const { thing, items } = mentioned;
  if (!items || items.length >= thing.positions.length) return thing.name;
  return `${thing.name} ${items.map((item) => `#${thing.positions[item - thing.first]}`).join(', ')}`;
}

/** The names to type for what else the fact is about. */
export function typedOthers(fact: Fact): string {
  return (fact.others ?? []).map(typed).join(', ');
}

/** The sentence inside another one: `in the second round: the cover is off`. What is written in capitals stays so. */
export function lower(text: string): string {
  return /^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `is` or `are`, by whether the title of what is spoken of is plural. */
export function isAre(fact: Fact, of?: 'others'): 'is' | 'are' {
  return agree(fact, 'is', 'are', of);
}

/** The form of a verb or pronoun that fits the subject, or what else the fact is about: `agree(fact, 'comes', 'come')`. */
export function agree<One extends string, Many extends string>(
  fact: Fact,
  one: One,
  many: Many,
  of?: 'others',
): One | Many {
  const mentioned = of === 'others' ? (fact.others ?? []) : fact.subject ? [fact.subject] : [];
  return mentioned.length > 1 || mentioned.some(isPluralMention) ? many : one;
}

/** `it` or `them`. */
export function them(fact: Fact, of?: 'others'): 'it' | 'them' {
  return agree(fact, 'it', 'them', of);
}

/** Whether an earlier step did this, to the thing given or to any. */
export function told(fact: Fact, what: Story, thing?: Thing): boolean {
  return fact.story?.some((one) => one.what === what && (!thing || one.thing === thing)) ?? false;
}

/** The fact without the subject among what else it is about: a thing does not stand in its own way. */
export function apartFromItself(fact: Fact): Fact & { others: Mentioned[] } {
  return { ...fact, others: (fact.others ?? []).filter(({ thing }) => thing !== fact.subject!.thing) };
}

/** How to get things out of the way, in the verbs that fit them: `Take out the screws and disconnect the hose`. */
export function clear(mentioned: readonly Mentioned[]): string {
  const verbs: Readonly<Record<string, string>> = { fastener: 'take out', connection: 'disconnect' };
  return byVerb(mentioned, (type) => verbs[type] ?? 'take off');
}

/** How to bring things back, in the verbs that fit them. */
export function bringBack(mentioned: readonly Mentioned[]): string {
  const verbs: Readonly<Record<string, string>> = { fastener: 'put in', connection: 'connect' };
  return byVerb(mentioned, (type) => verbs[type] ?? 'fit');
}

function byVerb(mentioned: readonly Mentioned[], verbOf: (type: string) => string): string {
  const groups = new Map<string, string[]>();
  for (const one of mentioned) {
    const verb = verbOf(one.thing.type);
    groups.set(verb, [...(groups.get(verb) ?? []), definite(one)]);
  }
  return capital(list([...groups].map(([verb, names]) => `${verb} ${list(names)}`)));
}

/** How each thing that is not as it should be stands: `the cover is off and the drain tap is open`. */
export function standing(fact: Fact): string {
  return list(
    fact.others!.map(
      (one) => `${definite(one)} ${isPluralMention(one) ? 'are' : 'is'} ${stateOf(fact, one.thing)}`,
    ),
  );
}

function stateOf(fact: Fact, thing: Thing): string {
  const only = (what: Story) => told(fact, what, thing) && !told(fact, 'taken off', thing);
  if (told(fact, 'locked', thing)) return 'locked';
  switch (thing.type) {
    case 'connection':
      return 'disconnected';
    case 'fastener':
      return only('loosened') ? 'loose' : 'out';
    case 'control':
      return told(fact, 'opened', thing) ? 'open' : 'off';
    case 'tool':
      return 'in place';
    default:
      return only('moved aside') ? 'aside' : 'off';
  }
}

/** Said of every check on hazardous energy: the checker knows the text, not the site. */
export const CAUTION =
  'This check reads the procedure, not the machine: the rules of the site, the law and licensed practice come first, and a silent check is no proof that the work is safe.';

/** Said at the end of what to do about hazardous energy. */
export const DEFER = 'Local safety rules and licensed practice come first.';
