/** Quantities of the tree as a reader sees them, with the usual second unit. */
import { exact, printReader, type Quantity, roundedIn, unitNamed } from '../../grammar/quantity/index.ts';
import type { Quantity as Typed } from '../../grammar/syntax/tree.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import type { Model } from '../model/model.ts';
import type { Measure } from './types.ts';

export interface MeasureOptions {
  /** Worked out for each quantity, or only what the author typed himself, or none at all. */
  secondUnits: boolean | 'never';
  /** The system that comes first; as the author wrote it where nothing is said. */
  units?: 'as written' | 'metric' | 'us';
  /** The greatest torque, in N·m, that is read beside this one: all of them get the same second unit. */
  greatestTorque?: number;
}

/** What the configuration says of second units, for the options. */
export function secondUnitsOf(choice: 'as written' | 'always' | 'never'): MeasureOptions['secondUnits'] {
  return choice === 'always' ? true : choice === 'never' ? 'never' : false;
}

/** As typed; a second unit that the author gave himself is kept as it is. */
export function measureTyped(
  typed: Typed | undefined,
  model: Model,
  options: MeasureOptions,
): Measure | undefined {
  const quantity = readTyped(typed, model.values);
  if (!quantity) return undefined;
  const own = readTyped(typed?.second, model.values);
  return measureOf(quantity, options, own && printReader(own));
}

/** Small torques are read in inches: below this many N·m the second unit is lbf·in (common practice, no source). */
const INCH_POUNDS_BELOW = 20;

export function measureOf(quantity: Quantity, options: MeasureOptions, own?: string): Measure {
  const end = (value: Quantity['low']) => (value === undefined ? undefined : exact.toNumber(value));
  const low = end(quantity.low);
  const high = end(quantity.high);
  const written = printReader(quantity);
  const wanted = options.units ?? 'as written';
  const swapped = wanted !== 'as written' && (wanted === 'us') !== US.has(quantity.unit.symbol);
  const always = options.secondUnits === true;
  const typed = options.secondUnits === 'never' ? undefined : own;
  const other =
    (swapped ? own : typed) ?? (always || swapped ? secondOf(quantity, options.greatestTorque) : undefined);
  const turned = swapped && other !== undefined;
  const text = turned ? other : written;
  const second = turned ? (always || typed ? written : undefined) : other;
  return {
    text,
    ...(second === undefined ? {} : { second }),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    unit: quantity.unit.symbol,
  };
}

/** In the partner unit, rounded inwards: converted back it stays in what was allowed (see the printer of quantities). */
function secondOf(quantity: Quantity, greatest?: number): string | undefined {
  const { unit } = quantity;
  if (TIMES_AND_TURNS.has(unit.kind)) return undefined;
  const size = quantity.high ?? quantity.low;
  const small =
    unit.symbol === 'N·m' &&
    size !== undefined &&
    Math.max(exact.toNumber(size), greatest ?? 0) < INCH_POUNDS_BELOW;
  const partner = small
    ? 'lbf·in'
    : LITRES.has(unit.symbol) && size && exact.toNumber(size) < 4
      ? 'US-qt'
      : unit.partner;
  const other = partner === undefined ? undefined : unitNamed(partner);
  const rounded = other && roundedIn(quantity, other);
  return rounded?.ok ? printReader(rounded.value) : undefined;
}

/** Units of the US customary system; all others count as metric. */
const US: ReadonlySet<string> = new Set(
  'in ft thou in² in³ US-gal US-qt US-pt US-fl-oz lb oz US-ton lbf ozf lbf·ft lbf·in ozf·in hp psi psig psia ksi inHg inH2O °F Δ°F US-gal/min lbf/in'.split(
    ' ',
  ),
);

const TIMES_AND_TURNS: ReadonlySet<string> = new Set([
  'time',
  'angle',
  'number',
  'frequency',
  'speed of rotation',
]);
const LITRES: ReadonlySet<string> = new Set(['L']);

/** `22 N·m (16.2 lbf·ft)` */
export function bothUnits({ text, second }: Measure): string {
  return second === undefined ? text : `${text} (${second})`;
}
