/**
 * Reads one quantity that starts at a place in a text and says where it ends.
 *
 * Not here: the words before it (`at least`, `over`) and what may come after it (read.ts, find.ts).
 */

import { blanks, isComma, isDigit, isMinus, type NumberAt, numberAt, unsignedAt } from './characters.ts';
import { convertNumber, convertSize, differenceUnit, unitsDiffer } from './convert.ts';
import { matchUnit, nearUnits, unitByText } from './lexical.ts';
import { bad, good, type Outcome, type QuantityProblem } from './problem.ts';
import {
  article,
  mixedOf,
  percentToleranceOf,
  type Quantity,
  rangeOf,
  type TypedNumber,
  toleranceOf,
  typedNumber,
} from './quantity.ts';
import { abs, multiply, rational, toDecimal, toFraction } from './rational.ts';
import type { Unit } from './units.ts';

export interface Scan {
  readonly outcome: Outcome<Quantity>;
  readonly to: number;
}

interface UnitAt {
  readonly unit: Unit;
  readonly from: number;
  readonly to: number;
}

export function scanBody(text: string, from: number): Scan {
  const first = numberAt(text, from);
  if (first === undefined) return { outcome: noNumber(text, from), to: from };
  if (isComma(text, first.to)) return { outcome: decimalComma(text, from), to: first.to };
  const unit = unitAt(text, first.to);
  if (unit !== undefined && !unit.ok) return { outcome: unit, to: first.to };
  const own = unit?.value;
  const after = blanks(text, own?.to ?? first.to);
  const tolerance = toleranceMark(text, after);
  if (tolerance !== undefined) return scanTolerance(text, first, own, tolerance);
  const range = rangeMark(text, after);
  if (range > 0) {
    const scan = scanRange(text, first, own, after + range);
    if (scan !== undefined) return scan;
  }
  if (own === undefined) return { outcome: noUnit(text, first), to: first.to };
  return scanParts(text, first, own);
}

/** `1 d 2 h 3 min 4 s` has four; more of them are a row of quantities, and are not followed to the end of the text. */
const MOST_PARTS = 6;

function scanParts(text: string, first: NumberAt, unit: UnitAt): Scan {
  const parts = [{ number: first.number, unit: unit.unit }];
  let to = unit.to;
  while (parts.length < MOST_PARTS) {
    const at = blanks(text, to);
    if (at === to || !isDigit(text, at)) break;
    const next = numberAt(text, at);
    const itsUnit = next === undefined ? undefined : unitAt(text, next.to);
    if (next === undefined || !itsUnit?.ok) break;
    parts.push({ number: next.number, unit: itsUnit.value.unit });
    to = itsUnit.value.to;
  }
  return { outcome: placed(mixedOf(parts), first.from, to), to };
}

function scanRange(text: string, low: NumberAt, lowUnit: UnitAt | undefined, at: number): Scan | undefined {
  const high = numberAt(text, blanks(text, at));
  if (high === undefined) return undefined;
  if (isComma(text, high.to)) return { outcome: decimalComma(text, high.from), to: high.to };
  const found = unitAt(text, high.to);
  if (found !== undefined && !found.ok) return { outcome: found, to: high.to };
  const unit = found?.value.unit ?? lowUnit?.unit;
  if (unit === undefined) return { outcome: noUnit(text, high), to: high.to };
  const to = found?.value.to ?? high.to;
  const itsUnit = lowUnit?.unit ?? unit;
  const differ = unitsDiffer(itsUnit, unit);
  if (differ !== undefined) return { outcome: placed({ ok: false, problem: differ }, low.from, to), to };
  const start = itsUnit === unit ? low.number : inUnit(low.number, itsUnit, unit);
  return { outcome: placed(rangeOf(start, high.number, unit), low.from, to), to };
}

interface ToleranceMark {
  readonly plus: NumberAt;
  readonly minus: NumberAt;
}

/** `± 3`, `+- 3`, `+/- 3`, `+1/-0`, `+1 -0`, `-0/+1`; the sizes are read without their signs. */
function toleranceMark(text: string, at: number): ToleranceMark | undefined {
  for (const mark of ['±', '+-', '+/-']) {
    if (text.startsWith(mark, at)) {
      const size = numberAt(text, blanks(text, at + mark.length));
      return size === undefined ? undefined : { plus: size, minus: size };
    }
  }
  const up = text[at] === '+';
  if (!up && !isMinus(text, at)) return undefined;
  const first = unsignedAt(text, at + 1);
  if (first === undefined) return undefined;
  let next = blanks(text, first.to);
  if (text[next] === '/') next = blanks(text, next + 1);
  if (up ? !isMinus(text, next) : text[next] !== '+') return undefined;
  const second = unsignedAt(text, next + 1);
  if (second === undefined) return undefined;
  return up ? { plus: first, minus: second } : { plus: second, minus: first };
}

function scanTolerance(text: string, nominal: NumberAt, own: UnitAt | undefined, mark: ToleranceMark): Scan {
  const last = mark.plus.to > mark.minus.to ? mark.plus : mark.minus;
  if (isComma(text, last.to)) return { outcome: decimalComma(text, last.from), to: last.to };
  const found = unitAt(text, last.to);
  if (found !== undefined && !found.ok) return { outcome: found, to: last.to };
  let unit = own?.unit;
  let size = found?.value;
  let to = size?.to ?? last.to;
  if (unit === undefined && size?.unit.symbol === '%') {
    // `25 ± 5 % N·m`: the unit of the value comes after the percentage. `50 ± 5 %` is itself in percent.
    const behind = unitAt(text, size.to);
    if (behind?.ok) {
      unit = behind.value.unit;
      to = behind.value.to;
    }
  }
  if (unit === undefined) {
    unit = size?.unit;
    size = undefined;
  }
  if (unit === undefined) return { outcome: noUnit(text, last), to: last.to };
  const outcome = tolerance(nominal.number, unit, mark, size);
  return { outcome: placed(outcome, nominal.from, to), to };
}

function tolerance(
  nominal: TypedNumber,
  unit: Unit,
  mark: ToleranceMark,
  size: UnitAt | undefined,
): Outcome<Quantity> {
  const plus = mark.plus.number;
  const minus = mark.minus.number;
  if (size === undefined || size.unit === unit) return toleranceOf(nominal, plus, minus, unit);
  if (size.unit.symbol === '%') {
    if (mark.plus === mark.minus) return percentToleranceOf(nominal, plus.value, unit);
    const checked = percentToleranceOf(nominal, plus.value, unit);
    if (!checked.ok) return checked;
    const share = (of: TypedNumber): TypedNumber => {
      const value = multiply(multiply(abs(nominal.value), of.value), rational(1, 100));
      return { value, step: of.step, fraction: false };
    };
    return toleranceOf(nominal, share(plus), share(minus), unit);
  }
  const inner = size.unit.kind === unit.kind ? unit : differenceUnit(unit);
  if (unitsDiffer(size.unit, inner) !== undefined) {
    return bad(
      'tolerance-unit',
      `The tolerance is in ${size.unit.symbol}, ${article(size.unit.kind)}, but the value is in ${unit.symbol}, ${article(unit.kind)}.`,
      [`${numberText(nominal)} ± ${numberText(plus)} ${unit.symbol}`],
      size.from,
      size.to,
    );
  }
  const sized = (of: TypedNumber): TypedNumber => ({
    value: convertSize(of.value, size.unit, inner),
    step: convertSize(of.step, size.unit, inner),
    fraction: of.fraction,
  });
  return toleranceOf(nominal, sized(plus), sized(minus), unit);
}

/** The unit after a number, blanks between them skipped; undefined where there is none at all. */
function unitAt(text: string, numberEnd: number): Outcome<UnitAt> | undefined {
  const from = blanks(text, numberEnd);
  const length = matchUnit(text, from);
  if (length === 0) return undefined;
  const to = from + length;
  const spelling = text.slice(from, to);
  const found = unitByText(spelling);
  if (found === undefined) return undefined;
  if (found.is === 'unit') return good({ unit: found.unit, from, to });
  const names = found.readings.map((unit) => unit.plural);
  const last = names.pop();
  return bad(
    'unit-ambiguous',
    `"${spelling}" may mean ${names.join(', ')} or ${last}; say which.`,
    found.readings.map((unit) => unit.symbol),
    from,
    to,
  );
}

function noUnit(text: string, number: NumberAt): Outcome<Quantity> {
  const from = blanks(text, number.to);
  const word = /^[^\s\d(),;:{}±+]+/.exec(text.slice(from, from + 40))?.[0];
  if (word === undefined || word.startsWith('..')) {
    return bad(
      'unit-missing',
      `The number ${text.slice(number.from, number.to)} has no unit.`,
      [],
      number.from,
      number.to,
    );
  }
  const near = nearUnits(word).map((unit) => unit.symbol);
  const hint = near.length === 0 ? '' : ` Perhaps ${near.join(' or ')} is meant.`;
  return bad('unit-unknown', `"${word}" is not a unit.${hint}`, near, from, from + word.length);
}

function noNumber(text: string, from: number): Outcome<Quantity> {
  const word = text.slice(from, from + 40).trim();
  const message = word === '' ? 'A number is missing here.' : `"${word}" does not begin with a number.`;
  return bad('number-malformed', message, [], from, text.length);
}

function decimalComma(text: string, from: number): Outcome<Quantity> {
  const written = /^[-+−]?[\d.,]{1,40}/.exec(text.slice(from, from + 41))?.[0] ?? '';
  const trimmed = written.replace(/[.,]+$/, '');
  const proposals = [trimmed.replace(',', '.'), trimmed.replaceAll(',', '')].filter(
    (proposal) => typedNumber(proposal) !== undefined,
  );
  return bad(
    'decimal-comma',
    `A number has a point and no comma: ${trimmed}.`,
    proposals,
    from,
    from + trimmed.length,
  );
}

function rangeMark(text: string, at: number): number {
  if (text.startsWith('..', at)) return 2;
  if (text.startsWith('to ', at)) return 3;
  return text[at] === '–' || text[at] === '-' ? 1 : 0;
}

function inUnit(number: TypedNumber, from: Unit, to: Unit): TypedNumber {
  return {
    value: convertNumber(number.value, from, to),
    step: convertSize(number.step, from, to),
    fraction: number.fraction,
  };
}

/** Problems of arithmetic know no place: they are given the whole quantity. */
function placed(outcome: Outcome<Quantity>, from: number, to: number): Outcome<Quantity> {
  if (outcome.ok || outcome.problem.from !== undefined) return outcome;
  const problem: QuantityProblem = { ...outcome.problem, from, to };
  return { ok: false, problem };
}

function numberText(number: TypedNumber): string {
  return number.fraction ? toFraction(number.value) : (toDecimal(number.value) ?? toFraction(number.value));
}
