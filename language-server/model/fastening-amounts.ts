/**
 * Quantities of the tree as numbers to reckon with: declared values that stand for a quantity are looked up, a
 * torque becomes a band in N·m. What cannot be read is undefined; that it cannot is said elsewhere.
 */
import {
  convertNumber,
  exact,
  numberUnit,
  plainValue,
  printReader,
  type Quantity,
  type Rational,
  rangeOf,
  readQuantity,
  toleranceOf,
  typedNumber,
  unitNamed,
} from '../../grammar/quantity/index.ts';
import type { Expression, Quantity as Typed } from '../../grammar/syntax/tree.ts';
import type { Band } from '../fastening/index.ts';
import type { Model } from './model.ts';

/** The quantity as an interval in its own unit; of a named value, what the machine file declares. */
export function readTyped(typed: Typed | undefined, values: Model['values']): Quantity | undefined {
  const own = typed?.named ? named(values.get(typed.named.name.text)?.expression) : typed;
  if (!own) return undefined;
  if (own.amounts.every(({ unit }) => unit === undefined)) return plainNumbers(own);
  const text = sourceOf(own);
  if (text === undefined) return undefined;
  const outcome = readQuantity(text);
  return outcome.ok ? outcome.value : undefined;
}

/** N·m; from 0 where there is no lower end, to infinity where there is no upper end. Undefined for other kinds. */
export function torqueBand(quantity: Quantity | undefined): Band | undefined {
  if (quantity?.unit.kind !== 'torque') return undefined;
  let band = bands.get(quantity);
  if (!band) {
    band = bandIn(quantity, 'N·m');
    bands.set(quantity, band);
  }
  return band;
}

/** The same quantity is asked for again and again: reading gives the same object for the same text. */
const bands = new WeakMap<Quantity, Band>();

/** Ends in the unit named, from 0 to infinity where an end is open. The unit must be of the quantity's kind. */
export function bandIn(quantity: Quantity, symbol: string): Band {
  const unit = unitNamed(symbol) ?? quantity.unit;
  const end = (value: Rational | undefined, open: number) =>
    value === undefined ? open : exact.toNumber(convertNumber(value, quantity.unit, unit));
  return { low: end(quantity.low, 0), high: end(quantity.high, Number.POSITIVE_INFINITY) };
}

/** A torque in N·m as a reader gets it, in the unit of `like`, to so many digits: `51 N·m`. */
export function torqueText(newtonMetres: number, like: Quantity, digits = 2): string {
  const perUnit = exact.toNumber(like.unit.factor);
  return `${Number((newtonMetres / perUnit).toPrecision(digits))} ${like.unit.symbol}`;
}

/** `25 N·m`, as it is said in a sentence. */
export const said = printReader;

function named(expression: Expression | undefined): Typed | undefined {
  return expression?.kind === 'quantity' ? expression.quantity : undefined;
}

/** `0.15`, `0.12..0.18`: numbers that need no unit. */
function plainNumbers({ form, bound, amounts }: Typed): Quantity | undefined {
  const [first, second] = amounts.map(({ number }) => typedNumber(number));
  if (!first || bound) return undefined;
  if (form === 'plain') return plainValue(first, numberUnit);
  if (!second || (form !== 'range' && form !== 'tolerance')) return undefined;
  const outcome =
    form === 'range' ? rangeOf(first, second, numberUnit) : toleranceOf(first, second, second, numberUnit);
  return outcome.ok ? outcome.value : undefined;
}

/** The quantity as it would be typed, from its amounts; its second unit is left out. */
function sourceOf(typed: Typed): string | undefined {
  const amounts = typed.amounts.map(({ number, unit }) => (unit ? `${number} ${unit.text}` : number));
  const [first, second, third] = amounts;
  if (first === undefined) return undefined;
  const bound = typed.bound ? `${typed.bound} ` : '';
  switch (typed.form) {
    case 'plain':
      return bound + first;
    case 'sum':
      return bound + amounts.join(' ');
    case 'range':
      return second === undefined ? undefined : `${first}..${second}`;
    case 'tolerance':
      return second === undefined ? undefined : `${first} ± ${second}`;
    case 'spread':
      return third === undefined ? undefined : `${first} ${second}/${third}`;
  }
}
