/** Turns a fact into a finding: the check's sentence, the story as related places, the case in words. */
import type { Fact, Story } from '../model/facts.ts';
import { list, mention } from '../model/model.ts';
import { type CaseSet, type Cases, EVERY, NONE } from '../execution/cases.ts';
import type { Finding, Related, Severity } from '../report/finding.ts';
import type { Check } from './check.ts';

export function speak(fact: Fact, check: Check, severity: Severity, cases: Cases | undefined, built: CaseSet): Finding {
  const { message, help } = check.says(fact);
  const inCase = cases && fact.cases !== undefined ? caseWords(fact.cases, cases, built) : undefined;
  return {
    ...fact.at,
    check: check.name,
    severity,
    message,
    ...(help ? { help } : {}),
    related: (fact.story ?? []).map(relate),
    ...(inCase ? { case: inCase } : {}),
    ...(fact.mends ? { mends: fact.mends.map(({ title, at, text }) => ({ title, edits: [{ ...at, text }] })) } : {}),
  };
}

/** The smallest case that shows it, in words; nothing where every case does. */
export function caseWords(set: CaseSet, cases: Cases, built: CaseSet): string | undefined {
  if (set === NONE || set === EVERY || set === built) return undefined;
  const words = cases.smallest(set).map(({ axis, value }) => cases.axes[axis]!.phrases[value]!);
  return words.length > 0 ? list(words) : undefined;
}

function relate({ at, what, thing }: NonNullable<Fact['story']>[number]): Related {
  return { ...at, message: thing ? `${thing.title} ${STORY[what]}` : STORY[what] };
}

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
  'put in place': 'put in place here',
  bypassed: 'bypassed here',
  marked: 'marked here',
  cleaned: 'cleaned here',
  declared: 'declared here',
};

/** The subject of a fact as a reader says it: `the head bolts #1 and #3`. */
export function subject(fact: Fact): string {
  return fact.subject ? `the ${mention(fact.subject.thing, fact.subject.items)}` : 'this';
}

/** What else the fact is about: `the head bolts and the air pipe`. */
export function others(fact: Fact): string {
  return list((fact.others ?? []).map((other) => `the ${mention(other.thing, other.items)}`));
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `is` or `are`, by whether the title of what is spoken of is plural. */
export function isAre(fact: Fact, of: 'subject' | 'others' = 'subject'): 'is' | 'are' {
  const mentioned = of === 'subject' ? (fact.subject ? [fact.subject] : []) : (fact.others ?? []);
  if (mentioned.length > 1) return 'are';
  const one = mentioned[0];
  return one && isPlural(one.thing.title, one.thing.positions.length, one.items?.length) ? 'are' : 'is';
}

function isPlural(title: string, positions: number, items: number | undefined): boolean {
  if (positions > 1 && items === 1) return false;
  return positions > 1 || (/[^s]s$/.test(title) && !/(press|lens|chassis|canvas|gas|bus)$/.test(title));
}
