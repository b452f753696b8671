/** What the watch over notices found, as facts: `caution-missing`, `caution-late`, `signal-word-weak`. */
import { type Convention, type Harm, type Signal, signalFor, strongest } from '../hazards/index.ts';
import type { Fact } from '../model/facts.ts';
import { type CaseSet, NONE } from './cases.ts';
import type { DeclaredHazard } from './declared-hazards.ts';
import type { Missing, Weak } from './hazard-course.ts';
import type { Behind } from './notices-behind.ts';
import type { Run } from './run.ts';
import { placeOf, storyOf, withoutRounds } from './watch-place.ts';

/** One finding for one step and thing: one notice can name several hazards. */
export function tell(run: Run, fact: Fact): void {
  const { cases } = run;
  const known = run.facts.find(
    ({ check, at, subject }) =>
      check === fact.check &&
      at.file === fact.at.file &&
      at.start === fact.at.start &&
      subject?.thing === fact.subject?.thing,
  );
  if (!known) {
    run.facts.push(fact);
    return;
  }
  known.cases = cases.or(known.cases ?? NONE, fact.cases ?? NONE);
  const hazards = new Set([...(known.words?.hazard ?? '').split(', '), fact.words?.hazard ?? '']);
  const signals = [known.words?.signal, fact.words?.signal] as Signal[];
  known.words = { ...known.words, hazard: [...hazards].join(', '), signal: strongest(signals) };
}

/** The same step opens the system with its energy still there: making it safe brings the notice along. */
export function toldAlready(run: Run, { near, meeting }: Missing): CaseSet {
  const { file, action } = near;
  let told: CaseSet = NONE;
  for (const { check, inner, at, others, cases } of run.facts) {
    if ((inner ?? check) !== 'not-made-safe' || at.file !== file) continue;
    if (at.start < action.start || at.end > action.end) continue;
    if (others?.some(({ thing }) => thing === meeting.declared.thing))
      told = run.cases.or(told, cases ?? NONE);
  }
  return told;
}

/** The mildest word that is strong enough. */
export function neededFor({ harm }: DeclaredHazard, convention: Convention): Signal {
  return signalFor(harm ?? LEAST_HARM, convention);
}

export function missingFact(run: Run, one: Missing, convention: Convention): Fact {
  const { meeting, step, near, late } = one;
  const { thing, hazard } = meeting.declared;
  const via = run.thing(meeting.via);
  const words: Record<string, string> = { hazard, signal: proposed(meeting.declared, convention) };
  if (meeting.event) words.event = meeting.event;
  const begun = one.begun === undefined ? undefined : run.thing(one.begun);
  if (begun) words.begins = 'yes';
  const fact = {
    subject: { thing },
    others: via === thing ? [] : [{ thing: via }],
    cases: withoutRounds(run, one.cases),
    words,
  };
  if (late) {
    words.signal = late.notice.signal;
    const { start, end } = late.notice.word;
    return {
      ...fact,
      check: 'caution-late',
      at: { file: late.file, start, end },
      story: [{ at: placeOf(step), what: storyOf(step.action.verb), thing: begun ?? via }],
    };
  }
  const story = begun ? [{ at: placeOf(near, via), what: storyOf(near.action.verb), thing: via }] : [];
  return {
    ...fact,
    check: 'caution-missing',
    at: placeOf(step, begun ?? via),
    story,
  };
}

export function behindFact(run: Run, { meeting, step, notice, file, cases }: Behind): Fact {
  const { thing, hazard } = meeting.declared;
  const via = run.thing(meeting.via);
  const { start, end } = notice.word;
  return {
    check: 'caution-late',
    at: { file, start, end },
    subject: { thing },
    others: via === thing ? [] : [{ thing: via }],
    cases: withoutRounds(run, cases),
    words: {
      hazard,
      signal: notice.signal,
      directly: 'yes',
      ...(meeting.event ? { event: meeting.event } : {}),
      ...(meeting.begins ? { begins: 'yes' } : {}),
    },
    story: [{ at: placeOf(step, via), what: storyOf(step.action.verb), thing: via }],
  };
}

/** The word to write: what the harm asks for; `warning` where nobody says how bad it is. */
function proposed({ harm }: DeclaredHazard, convention: Convention): Signal {
  return harm ? signalFor(harm, convention) : 'warning';
}

export function weakFact(
  run: Run,
  { notice, file, declared, needed, cases }: Weak,
  convention: Convention,
): Fact {
  const { start, end } = notice.word;
  const at = { file, start, end };
  return {
    check: 'signal-word-weak',
    at,
    subject: { thing: declared.thing },
    cases: withoutRounds(run, cases),
    words: {
      hazard: declared.hazard,
      signal: notice.signal,
      needed,
      convention,
      ...(declared.harm ? { harm: declared.harm } : {}),
    },
    mends: [{ title: `Write ${needed}`, at, text: needed }],
  };
}

/** Of a hazard whose harm nobody declares, so much is sure: it hurts people (ANSI Z535.6: a notice is no injury). */
const LEAST_HARM: Harm = 'can hurt';
