/**
 * Torques that a step types or tells in its sentence against the declared ones. Facts `torque-differs`,
 * `torque-above-strength`, `angle-too-large`, `second-unit-differs`. An exception that is meant is left alone: a
 * value inside an outcome, an `if` or a `repeat` holds for what was found there.
 */
import {
  checkSecond,
  compareCentres,
  liesWithin,
  printReader,
  type Quantity,
  relate,
  roundedIn,
} from '../../grammar/quantity/index.ts';
import type { Text, Written } from '../../grammar/syntax/tree.ts';
import type { Place } from '../report/finding.ts';
import { hasDigit, secondsIn, torquesIn } from '../wording/torque-words.ts';
import type { Fact } from './facts.ts';
import { said, torqueBand } from './fastening-amounts.ts';
import { type Declared, declared, firstOf, largestTorque, placeIn } from './fastening-declared.ts';
import type { Tightened } from './fastening-steps.ts';
import { aboveStrength, aboveUsual, belowUsual } from './fastening-strength.ts';
import { list, type Model } from './model.ts';

export interface Context {
  readonly model: Model;
  readonly file: string;
  /** The text of the file: where in it a sentence stands. */
  readonly written: Written;
}

/** A torque typed after `to` or `at`, or right after the verb. */
export function typedTorqueFault(
  { model }: Context,
  one: Tightened,
  typed: Quantity,
  at: Place,
  how: { conditional: boolean; checking: boolean; felt: boolean },
): Fact | undefined {
  const known = declared(model, one.thing);
  const allowed = allowedBy(known, one);
  // What the declared torque itself does to the thread is said where it is declared.
  if (allowed?.some((each) => says(typed, each))) return undefined;
  if (allowed === undefined || how.conditional) {
    const above = aboveStrength(model, known, typed, at);
    if (above || how.conditional || how.checking || how.felt || known.stages.length > 0) return above;
    return aboveUsual(model, known, typed, at) ?? belowUsual(model, known, typed, at);
  }
  if (how.checking && !isAboveAll(typed, allowed)) return undefined;
  if (known.limit && isBelow(typed, known.limit) && isAboveAll(typed, allowed)) return undefined;
  return differs(known, one, allowed, typed, at);
}

/** Torques in the sentence of a step; for all that it tightens together. */
export function toldTorqueFaults(context: Context, text: Text, tightened: readonly Tightened[]): Fact[] {
  if (!hasDigit(text.value)) return [];
  const told = torquesIn(text.value).filter(({ role }) => role === 'value');
  if (told.length === 0) return [];
  const known = tightened.map((one) => ({
    one,
    allowed: allowedBy(declared(context.model, one.thing), one),
  }));
  const facts: Fact[] = [];
  for (const { quantity, from, to } of told) {
    if (known.some(({ allowed }) => !allowed || allowed.some((each) => says(quantity, each)))) continue;
    const { one, allowed } = known[0] ?? {};
    if (!one || !allowed) continue;
    facts.push(
      differs(declared(context.model, one.thing), one, allowed, quantity, placeOf(context, text, from, to)),
    );
  }
  // Of several torques in one sentence only one need be the declared one: the others lead up to it.
  return facts.length < told.length && told.length > 1
    ? facts.filter((fact) => fact.words?.above === 'yes')
    : facts;
}

/** `80 lbf·ft (200 N·m)` in any sentence: the second unit is no conversion of the first. */
export function secondFaults(context: Context, text: Text): Fact[] {
  return secondsIn(text.value).flatMap(({ first, second }) => {
    const check = checkSecond(first.quantity, second.quantity);
    if (!check.ok || check.value.verdict !== 'differs') return [];
    const right = roundedIn(first.quantity, second.quantity.unit);
    const torque = first.quantity.unit.kind === 'torque';
    return {
      check: torque ? 'torque-differs' : 'second-unit-differs',
      at: placeOf(context, text, second.from, second.to),
      words: {
        first: text.value.slice(first.from, first.to),
        second: text.value.slice(second.from, second.to),
        ...(right.ok ? { right: printReader(right.value) } : {}),
      },
    };
  });
}

/** Where a piece of a sentence stands in the file; the whole text where it is written in pieces. */
function placeOf({ file, written }: Context, { start, end, value }: Text, from: number, to: number): Place {
  const plain = written.slice(start + 1, end - 1) === value;
  return plain ? { file, start: start + 1 + from, end: start + 1 + to } : { file, start, end };
}

/** The torques that the machine file lets this step have; undefined where it does not say. */
function allowedBy({ torques, stages }: Declared, { stage }: Tightened): readonly Quantity[] | undefined {
  if (stage !== undefined) {
    const torque = stages[stage - 1]?.torque;
    return torque ? [torque] : undefined;
  }
  // A percentage of nothing known, or a feel, may be any torque.
  const open = stages.some(
    ({ stage: { kind }, torque }) => kind === 'until' || (kind === 'percent' && !torque),
  );
  return torques.length === 0 || open ? undefined : torques;
}

/** The typed value says the same as the declared one, or the same with a tolerance of its own. */
function says(typed: Quantity, wanted: Quantity): boolean {
  const inside = liesWithin(typed, wanted);
  if (inside.ok && inside.value) return true;
  if (typed.form === 'value' || typed.form === 'range') return false;
  const centres = compareCentres(typed, wanted);
  return centres.ok && centres.value === 0;
}

function differs(
  known: Declared,
  one: Tightened,
  allowed: readonly Quantity[],
  typed: Quantity,
  at: Place,
): Fact {
  const texts = [...new Set(allowed.map(said))];
  const clause = known.thing.torque;
  const first = clause
    ? placeIn(known.thing, firstOf(clause))
    : known.stages.find(({ torque }) => torque)?.at;
  const sameNumber = allowed.some(
    (each) => each.unit !== typed.unit && said(each).split(' ')[0] === said(typed).split(' ')[0],
  );
  return {
    check: 'torque-differs',
    at,
    subject: { thing: known.thing },
    words: {
      typed: said(typed),
      declared: list(texts),
      ...(texts.length > 1 ? { several: 'yes' } : {}),
      ...(one.stage === undefined ? {} : { stage: String(one.stage) }),
      ...(sameNumber ? { sameNumber: 'yes' } : {}),
      ...(isAboveAll(typed, allowed) ? { above: 'yes' } : {}),
    },
    story: first ? [{ at: first, what: 'declared', thing: known.thing }] : [],
  };
}

function isAboveAll(typed: Quantity, allowed: readonly Quantity[]): boolean {
  const largest = largestTorque(allowed);
  const relation = largest && relate(typed, largest);
  return relation?.ok === true && relation.value === 'above';
}

function isBelow(typed: Quantity, limit: Quantity): boolean {
  const [value, most] = [torqueBand(typed), torqueBand(limit)];
  return value !== undefined && most !== undefined && value.high <= most.high * 1.0001;
}
