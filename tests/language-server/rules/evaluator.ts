/**
 * Whether a sentence of a rule is kept, read off the table in grammar/LANGUAGE.md ("Rules of the house") line by line:
 * one case at a time, over the finished sequence of steps, by looking forwards and backwards in it. Knows nothing of the
 * product: no parser, no model, no sets of cases. After the specification patterns of Dwyer, Avrunin and Corbett
 * (1999; from memory): absence, existence, universality, precedence, response, with their scopes.
 */

/** One step: what it does to which things, and how much. */
export interface Step {
  line: number;
  verb: string;
  things: string[];
  /** Turns, of `turn`. */
  turns?: number;
}

/** State words that hold, as `thing word`; index 0 is the start, then after each step. */
export interface Trace {
  steps: Step[];
  states: ReadonlySet<string>[];
  /** The things that this case has. */
  has: ReadonlySet<string>;
  /** Work came to its end: not after `stop`. */
  finished: boolean;
}

export type Pattern =
  | { kind: 'step'; verb: string; things: string[]; times?: number; turns?: number }
  | { kind: 'state'; things: string[]; word: string; negated: boolean };

export interface Sentence {
  scope: 'always' | 'before' | 'after' | 'while';
  trigger?: Pattern;
  demand: 'require' | 'never';
  demanded: Pattern;
}

export type Broken = number | 'start' | 'end';

/** Where the sentence is broken. Each thing that sets it off is judged by itself. */
export function brokenAt(sentence: Sentence, trace: Trace): Set<Broken> {
  const { trigger } = sentence;
  const found = new Set<Broken>();
  const alone =
    !trigger || trigger.things.length === 0
      ? [trigger]
      : trigger.things.map((thing) => ({ ...trigger, things: [thing] }));
  for (const one of alone)
    for (const place of judge({ ...sentence, ...(one ? { trigger: one } : {}) }, trace)) found.add(place);
  return found;
}

function judge(sentence: Sentence, trace: Trace): Broken[] {
  const { scope, trigger, demand } = sentence;
  const demanded = ownPosition(sentence);
  const last = trace.steps.length;
  const all = Array.from({ length: last }, (_, index) => index + 1);
  const line = (step: number): Broken => (step === 0 ? 'start' : trace.steps[step - 1]!.line);
  const isStep = demanded.kind === 'step';
  const require = demand === 'require';

  // Moments: 0 is the start, m is after step m.
  const wrongAt = (moment: number) =>
    demanded.kind === 'state' &&
    (require ? !everyHolds(demanded, trace, moment) : someHolds(demanded, trace, moment));
  const whileHolds = (moment: number) => trigger === undefined || someHolds(trigger as State, trace, moment);
  /** Steps at which the sentence is set off; 0 for the start. */
  const setOff = trigger
    ? trigger.kind === 'step'
      ? all.filter((step) => does(trigger, trace, step))
      : [0, ...all].filter(
          (moment) =>
            someHolds(trigger, trace, moment) && (moment === 0 || !someHolds(trigger, trace, moment - 1)),
        )
    : [];
  /** Moments at which something wrong comes about, counted from one on. */
  const comesAbout = (from: number, wrong: (moment: number) => boolean) =>
    [0, ...all].filter(
      (moment) => moment >= from && wrong(moment) && (moment === from || !wrong(moment - 1)),
    );

  switch (scope) {
    case 'before': {
      const ups = setOff.filter((step) => step > 0);
      if (!isStep) return ups.filter((step) => wrongAt(step - 1)).map(line);
      if (require)
        return ups
          .filter(
            (step) =>
              !done(
                demanded,
                trace,
                all.filter((one) => one < step),
              ),
          )
          .map(line);
      const first = ups[0];
      return first === undefined
        ? []
        : all.filter((step) => step < first && does(demanded, trace, step)).map(line);
    }
    case 'after': {
      const first = setOff[0];
      if (first === undefined) return [];
      if (require) {
        if (!trace.finished) return [];
        const missed = setOff.filter((step) =>
          isStep
            ? !done(
                demanded,
                trace,
                all.filter((one) => one > step),
              )
            : [0, ...all].every((moment) => moment < step || wrongAt(moment)),
        );
        // Told once, at the last: what comes after that one comes after all.
        return missed.slice(-1).map(line);
      }
      if (isStep) return all.filter((step) => step > first && does(demanded, trace, step)).map(line);
      return comesAbout(first, wrongAt).map(line);
    }
    default: {
      if (!isStep) return comesAbout(0, (moment) => whileHolds(moment) && wrongAt(moment)).map(line);
      if (!require)
        return all.filter((step) => whileHolds(step - 1) && does(demanded, trace, step)).map(line);
      if (!trigger) return trace.finished && !done(demanded, trace, all) ? ['end'] : [];
      const result: Broken[] = [];
      for (const from of comesAbout(0, whileHolds)) {
        let to = from;
        while (to < last && whileHolds(to + 1)) to++;
        const during = all.filter((step) => step > from && step <= to + 1);
        if (done(demanded, trace, during)) continue;
        if (to < last) result.push(line(to + 1));
        else if (trace.finished) result.push('end');
      }
      return result;
    }
  }
}

type State = Extract<Pattern, { kind: 'state' }>;
type Doing = Extract<Pattern, { kind: 'step' }>;

/** Of the same group the same position is meant: `cam #1` sets off, `cam #1, cam #2` is asked for. */
function ownPosition({ trigger, demanded }: Sentence): Pattern {
  const about = trigger?.things[0];
  if (about === undefined || !/ #/.test(about)) return demanded;
  const group = about.split(' ')[0]!;
  const whole = GROUPS[group] ?? [];
  if (!whole.every((thing) => demanded.things.includes(thing))) return demanded;
  const others = demanded.things.filter((thing) => !whole.includes(thing));
  return { ...demanded, things: [...others, about] };
}

/** Groups with positions, by name. */
export const GROUPS: Readonly<Record<string, readonly string[]>> = { cam: ['cam #1', 'cam #2'] };

function holds({ word, negated }: State, trace: Trace, thing: string, moment: number): boolean {
  return trace.has.has(thing) && trace.states[moment]!.has(`${thing} ${word}`) !== negated;
}

function someHolds(pattern: State, trace: Trace, moment: number): boolean {
  return pattern.things.some((thing) => holds(pattern, trace, thing, moment));
}

function everyHolds(pattern: State, trace: Trace, moment: number): boolean {
  return pattern.things.every((thing) => !trace.has.has(thing) || holds(pattern, trace, thing, moment));
}

/** The step does it to one of the things (enough of it, where the pattern says how much). */
function does(pattern: Doing, trace: Trace, step: number): boolean {
  const { things } = pattern;
  if (things.length === 0) return counts(pattern, trace, step, undefined) > 0;
  return things.some((thing) => {
    const amount = counts(pattern, trace, step, thing);
    return pattern.turns === undefined ? amount > 0 : amount >= pattern.turns;
  });
}

/** Each thing that the case has got enough of it in these steps. */
function done(pattern: Doing, trace: Trace, steps: readonly number[]): boolean {
  const enough = pattern.turns ?? pattern.times ?? 1;
  const total = (thing: string | undefined) =>
    steps.reduce((sum, step) => sum + counts(pattern, trace, step, thing), 0);
  if (pattern.things.length === 0) return total(undefined) >= enough;
  return pattern.things.every((thing) => !trace.has.has(thing) || total(thing) >= enough);
}

function counts(pattern: Doing, trace: Trace, step: number, thing: string | undefined): number {
  const { verb, things, turns } = trace.steps[step - 1]!;
  const same = verb === pattern.verb || (ALSO[verb] ?? []).includes(pattern.verb);
  if (!same || (thing !== undefined && !(things.includes(thing) && trace.has.has(thing)))) return 0;
  return pattern.turns === undefined ? 1 : (turns ?? 0);
}

/** From the table “written, counts also as”, as far as the jobs of the test use it. */
const ALSO: Readonly<Record<string, readonly string[]>> = { raise: ['support'], refit: ['fit'] };
