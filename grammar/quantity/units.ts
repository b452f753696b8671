/**
 * The units of the language, as data: the one list that the lexer, completion, colouring and the
 * language reference are fed from.
 *
 * Factors are exact fractions of the coherent unit of the kind (kinds.ts), built from the
 * definitions: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s², US gallon 231 in³,
 * imperial gallon 4.54609 L, standard atmosphere 101325 Pa, conventional mercury 13595.1 kg/m³
 * (NIST SP 811 Appendix B gives the same values, most of them rounded). One factor is not exact and
 * says so: a turn is 2π radians.
 *
 * Not here: finding a unit in text (lexical.ts), arithmetic (arithmetic.ts).
 */

import { type Dimension, type KindName, kindNamed } from './kinds.ts';
import { inverse, multiply, ONE, parseRational, type Rational, ZERO } from './rational.ts';

export interface Unit {
  /** The spelling that the formatter and the printers write. */
  readonly symbol: string;
  /** Everything else that is read as this unit. */
  readonly spellings: readonly string[];
  readonly kind: KindName;
  readonly dimension: Dimension;
  /** One of this unit in the coherent unit of its kind. */
  readonly factor: Rational;
  /** What the coherent unit shows where this unit shows zero: only temperature readings have one. */
  readonly offset: Rational;
  readonly name: string;
  readonly plural: string;
  /** Written for readers where that differs from the symbol (`US gal`). */
  readonly readerSymbol?: string;
  /** The same for more than one (`turns`). */
  readonly readerPlural?: string;
  /** No space between number and unit (`90°`). */
  readonly closedUp?: true;
  /** Pressures that say what they are measured from. */
  readonly reference?: 'gauge' | 'absolute';
  /** The factor is rounded (radian only). */
  readonly inexact?: true;
  /** The usual partner when a reader is given both systems. */
  readonly partner?: string;
  readonly note?: string;
}

/** A word that is a unit with more than one reading: the author must say which. */
export interface AmbiguousUnit {
  readonly spellings: readonly string[];
  /** Symbols of the units it may mean. */
  readonly readings: readonly string[];
}

type Extra = Partial<
  Pick<
    Unit,
    'offset' | 'readerSymbol' | 'readerPlural' | 'closedUp' | 'reference' | 'inexact' | 'partner' | 'note'
  >
>;

const INCH = exact('0.0254');
const FOOT = times(INCH, exact('12'));
const POUND = exact('0.45359237');
const GRAVITY = exact('9.80665');
const POUND_FORCE = times(POUND, GRAVITY);
const OUNCE_FORCE = times(POUND_FORCE, exact('1/16'));
const PSI = over(POUND_FORCE, times(INCH, INCH));
const CUBIC_INCH = times(INCH, INCH, INCH);
const LITRE = exact('0.001');
const US_GALLON = times(exact('231'), CUBIC_INCH);
const IMPERIAL_GALLON = times(exact('4.54609'), LITRE);
const TORR = exact('101325/760');
const MERCURY = times(exact('13595.1'), GRAVITY);
const WATER = times(exact('1000'), GRAVITY);
const MINUTE = exact('60');
/** 180/π to 45 significant digits; the tests work π out again. */
const DEGREES_IN_A_RADIAN = exact('57.2957795130823208767981548141051703324054725');

/** The number one: for counts, and for what a quotient of like quantities is. */
export const numberUnit: Unit = unit('number', '', [], ONE, 'number', 'numbers');

// biome-ignore format: a table, one unit a line
export const units: readonly Unit[] = [
  unit('length', 'mm', ['millimetre', 'millimetres', 'millimeter', 'millimeters'], exact('0.001'), 'millimetre', 'millimetres', { partner: 'in' }),
  unit('length', 'cm', ['centimetre', 'centimetres', 'centimeter', 'centimeters'], exact('0.01'), 'centimetre', 'centimetres', { partner: 'in' }),
  unit('length', 'm', ['metre', 'metres', 'meter', 'meters'], ONE, 'metre', 'metres', { partner: 'ft' }),
  unit('length', 'km', ['kilometre', 'kilometres', 'kilometer', 'kilometers'], exact('1000'), 'kilometre', 'kilometres'),
  unit('length', 'µm', ['um', 'micrometre', 'micrometres', 'micrometer', 'micrometers'], exact('0.000001'), 'micrometre', 'micrometres', { partner: 'thou', note: 'Never written "micron" here: that word is the vacuum unit.' }),
  unit('length', 'in', ['inch', 'inches'], INCH, 'inch', 'inches', { partner: 'mm', note: 'After a number, `in` is always the inch.' }),
  unit('length', 'ft', ['foot', 'feet'], FOOT, 'foot', 'feet', { partner: 'm' }),
  unit('length', 'thou', ['mil', 'mils'], times(INCH, exact('0.001')), 'thousandth of an inch', 'thousandths of an inch', { partner: 'mm' }),

  unit('area', 'mm²', ['mm2'], exact('0.000001'), 'square millimetre', 'square millimetres', { partner: 'in²' }),
  unit('area', 'cm²', ['cm2'], exact('0.0001'), 'square centimetre', 'square centimetres', { partner: 'in²' }),
  unit('area', 'm²', ['m2'], ONE, 'square metre', 'square metres'),
  unit('area', 'in²', ['in2', 'sq-in'], times(INCH, INCH), 'square inch', 'square inches', { partner: 'mm²' }),

  unit('volume', 'L', ['l', 'litre', 'litres', 'liter', 'liters'], LITRE, 'litre', 'litres', { partner: 'US-gal' }),
  unit('volume', 'mL', ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'], exact('0.000001'), 'millilitre', 'millilitres', { partner: 'US-fl-oz' }),
  unit('volume', 'cL', ['cl', 'centilitre', 'centilitres'], exact('0.00001'), 'centilitre', 'centilitres', { partner: 'US-fl-oz' }),
  unit('volume', 'cm³', ['cm3', 'cc'], exact('0.000001'), 'cubic centimetre', 'cubic centimetres', { partner: 'in³' }),
  unit('volume', 'm³', ['m3'], ONE, 'cubic metre', 'cubic metres'),
  unit('volume', 'in³', ['in3', 'cu-in'], CUBIC_INCH, 'cubic inch', 'cubic inches', { partner: 'cm³' }),
  unit('volume', 'US-gal', ['US gal', 'US-gallon', 'US-gallons'], US_GALLON, 'US gallon', 'US gallons', { readerSymbol: 'US gal', partner: 'L' }),
  unit('volume', 'US-qt', ['US qt', 'US-quart', 'US-quarts'], times(US_GALLON, exact('1/4')), 'US liquid quart', 'US liquid quarts', { readerSymbol: 'US qt', partner: 'L' }),
  unit('volume', 'US-pt', ['US pt', 'US-pint', 'US-pints'], times(US_GALLON, exact('1/8')), 'US liquid pint', 'US liquid pints', { readerSymbol: 'US pt', partner: 'L' }),
  unit('volume', 'US-fl-oz', ['US fl oz', 'US-floz'], times(US_GALLON, exact('1/128')), 'US fluid ounce', 'US fluid ounces', { readerSymbol: 'US fl oz', partner: 'mL' }),
  unit('volume', 'imp-gal', ['imp gal', 'imp-gallon', 'imp-gallons'], IMPERIAL_GALLON, 'imperial gallon', 'imperial gallons', { readerSymbol: 'imp gal', partner: 'L' }),
  unit('volume', 'imp-qt', ['imp qt', 'imp-quart', 'imp-quarts'], times(IMPERIAL_GALLON, exact('1/4')), 'imperial quart', 'imperial quarts', { readerSymbol: 'imp qt', partner: 'L' }),
  unit('volume', 'imp-pt', ['imp pt', 'imp-pint', 'imp-pints'], times(IMPERIAL_GALLON, exact('1/8')), 'imperial pint', 'imperial pints', { readerSymbol: 'imp pt', partner: 'L' }),
  unit('volume', 'imp-fl-oz', ['imp fl oz', 'imp-floz'], times(IMPERIAL_GALLON, exact('1/160')), 'imperial fluid ounce', 'imperial fluid ounces', { readerSymbol: 'imp fl oz', partner: 'mL' }),

  unit('mass', 'kg', ['kilogram', 'kilograms', 'kilogramme', 'kilogrammes'], ONE, 'kilogram', 'kilograms', { partner: 'lb' }),
  unit('mass', 'g', ['gram', 'grams', 'gramme', 'grammes'], exact('0.001'), 'gram', 'grams', { partner: 'oz' }),
  unit('mass', 't', ['tonne', 'tonnes'], exact('1000'), 'tonne', 'tonnes', { partner: 'lb' }),
  unit('mass', 'lb', ['lbs', 'pound', 'pounds'], POUND, 'pound', 'pounds', { partner: 'kg' }),
  unit('mass', 'oz', ['ounce', 'ounces'], times(POUND, exact('1/16')), 'ounce', 'ounces', { partner: 'g' }),
  unit('mass', 'US-ton', ['US ton', 'US tons', 'US-tons', 'short-ton', 'short-tons'], times(POUND, exact('2000')), 'US ton', 'US tons', { readerSymbol: 'US ton', readerPlural: 'US tons', partner: 't' }),
  unit('mass', 'imp-ton', ['imp ton', 'imp tons', 'imp-tons', 'long-ton', 'long-tons'], times(POUND, exact('2240')), 'imperial ton', 'imperial tons', { readerSymbol: 'imp ton', readerPlural: 'imp tons', partner: 't' }),

  unit('force', 'N', ['newton', 'newtons'], ONE, 'newton', 'newtons', { partner: 'lbf' }),
  unit('force', 'kN', ['kilonewton', 'kilonewtons'], exact('1000'), 'kilonewton', 'kilonewtons', { partner: 'lbf' }),
  unit('force', 'lbf', [], POUND_FORCE, 'pound-force', 'pounds-force', { partner: 'N' }),
  unit('force', 'ozf', [], OUNCE_FORCE, 'ounce-force', 'ounces-force', { partner: 'N' }),
  unit('force', 'kgf', ['kp'], GRAVITY, 'kilogram-force', 'kilograms-force', { partner: 'N' }),

  unit('torque', 'N·m', ['N.m', 'Nm', 'N-m', 'newton-metre', 'newton-metres', 'newton-meter', 'newton-meters'], ONE, 'newton metre', 'newton metres', { partner: 'lbf·ft' }),
  unit('torque', 'N·mm', ['N.mm', 'Nmm', 'N-mm'], exact('0.001'), 'newton millimetre', 'newton millimetres', { partner: 'ozf·in' }),
  unit('torque', 'cN·m', ['cN.m', 'cNm', 'cN-m'], exact('0.01'), 'centinewton metre', 'centinewton metres', { partner: 'ozf·in' }),
  unit('torque', 'dN·m', ['dN.m', 'dNm', 'dN-m', 'daN·cm'], exact('0.1'), 'decinewton metre', 'decinewton metres', { partner: 'lbf·in' }),
  unit('torque', 'daN·m', ['daN.m', 'daNm', 'daN-m'], exact('10'), 'decanewton metre', 'decanewton metres', { partner: 'lbf·ft' }),
  unit('torque', 'kN·m', ['kN.m', 'kNm', 'kN-m'], exact('1000'), 'kilonewton metre', 'kilonewton metres', { partner: 'lbf·ft' }),
  unit('torque', 'lbf·ft', pairs(['lbf', 'lb', 'lbs'], ['ft'], ['foot-pound', 'foot-pounds', 'pound-foot', 'pound-feet']), times(POUND_FORCE, FOOT), 'pound-force foot', 'pound-force feet', { partner: 'N·m', note: 'The pound in a torque is the pound-force, whichever way it is written.' }),
  unit('torque', 'lbf·in', pairs(['lbf', 'lb', 'lbs'], ['in'], ['inch-pound', 'inch-pounds', 'pound-inch', 'pound-inches']), times(POUND_FORCE, INCH), 'pound-force inch', 'pound-force inches', { partner: 'N·m' }),
  unit('torque', 'ozf·in', pairs(['ozf', 'oz'], ['in'], ['inch-ounce', 'inch-ounces', 'ounce-inch', 'ounce-inches']), times(OUNCE_FORCE, INCH), 'ounce-force inch', 'ounce-force inches', { partner: 'cN·m' }),
  unit('torque', 'kgf·m', ['kgf.m', 'kgf-m', 'kgfm', 'kp·m', 'kpm'], GRAVITY, 'kilogram-force metre', 'kilogram-force metres', { partner: 'N·m' }),
  unit('torque', 'kgf·cm', ['kgf.cm', 'kgf-cm', 'kgfcm', 'kp·cm', 'kpcm'], times(GRAVITY, exact('0.01')), 'kilogram-force centimetre', 'kilogram-force centimetres', { partner: 'N·m' }),

  unit('energy', 'J', ['joule', 'joules'], ONE, 'joule', 'joules'),
  unit('energy', 'kJ', ['kilojoule', 'kilojoules'], exact('1000'), 'kilojoule', 'kilojoules'),

  unit('pressure', 'Pa', ['pascal', 'pascals'], ONE, 'pascal', 'pascals'),
  unit('pressure', 'hPa', [], exact('100'), 'hectopascal', 'hectopascals', { partner: 'inHg' }),
  unit('pressure', 'kPa', ['kilopascal', 'kilopascals'], exact('1000'), 'kilopascal', 'kilopascals', { partner: 'psi' }),
  unit('pressure', 'MPa', ['megapascal', 'megapascals', 'N/mm²', 'N/mm2'], exact('1000000'), 'megapascal', 'megapascals', { partner: 'psi' }),
  unit('pressure', 'GPa', [], exact('1000000000'), 'gigapascal', 'gigapascals', { partner: 'ksi' }),
  unit('pressure', 'bar', ['bars'], exact('100000'), 'bar', 'bar', { partner: 'psi' }),
  unit('pressure', 'mbar', ['millibar', 'millibars'], exact('100'), 'millibar', 'millibars', { partner: 'inH2O' }),
  unit('pressure', 'atm', [], exact('101325'), 'standard atmosphere', 'standard atmospheres', { partner: 'psi' }),
  unit('pressure', 'kgf/cm²', ['kgf/cm2'], times(GRAVITY, exact('10000')), 'kilogram-force per square centimetre', 'kilograms-force per square centimetre', { partner: 'psi' }),
  unit('pressure', 'psi', ['PSI', 'lbf/in²', 'lbf/in2'], PSI, 'pound-force per square inch', 'pounds-force per square inch', { partner: 'kPa' }),
  unit('pressure', 'psig', ['PSIG'], PSI, 'pound-force per square inch above the surrounding air', 'pounds-force per square inch above the surrounding air', { reference: 'gauge', partner: 'kPa', note: 'Never compared with an absolute pressure: the pressure of the air is not known.' }),
  unit('pressure', 'psia', ['PSIA'], PSI, 'pound-force per square inch absolute', 'pounds-force per square inch absolute', { reference: 'absolute', partner: 'kPa' }),
  unit('pressure', 'ksi', ['kpsi'], times(PSI, exact('1000')), 'thousand pounds-force per square inch', 'thousand pounds-force per square inch', { partner: 'MPa' }),
  unit('pressure', 'inHg', ['in-Hg', 'in Hg'], times(INCH, MERCURY), 'inch of mercury', 'inches of mercury', { partner: 'kPa', note: 'The conventional inch of mercury.' }),
  unit('pressure', 'mmHg', ['mm-Hg', 'mm Hg'], times(exact('0.001'), MERCURY), 'millimetre of mercury', 'millimetres of mercury', { partner: 'kPa' }),
  unit('pressure', 'inH2O', ['inH₂O', 'in-H2O', 'inWC', 'in-WC'], times(INCH, WATER), 'inch of water', 'inches of water', { partner: 'mbar', note: 'The conventional inch of water (1000 kg/m³).' }),
  unit('pressure', 'mmH2O', ['mmH₂O', 'mm-H2O', 'mmWC'], times(exact('0.001'), WATER), 'millimetre of water', 'millimetres of water', { partner: 'inH2O' }),
  unit('pressure', 'Torr', ['torr'], TORR, 'torr', 'torr', { partner: 'Pa' }),
  unit('pressure', 'micron', ['microns', 'mTorr'], times(TORR, exact('0.001')), 'micron of mercury', 'microns of mercury', { readerPlural: 'microns', reference: 'absolute', partner: 'Pa', note: 'The vacuum unit, one thousandth of a torr. The micrometre is written `µm`.' }),

  unit('angle', '°', ['deg', 'degs', 'degree', 'degrees'], exact('1/360'), 'degree', 'degrees', { closedUp: true }),
  unit('angle', 'turn', ['turns', 'rev', 'revs', 'revolution', 'revolutions'], ONE, 'turn', 'turns', { readerPlural: 'turns' }),
  unit('angle', 'rad', ['radian', 'radians'], times(DEGREES_IN_A_RADIAN, exact('1/360')), 'radian', 'radians', { inexact: true, partner: '°', note: 'The one factor that is rounded, to 45 digits.' }),

  unit('time', 's', ['sec', 'secs', 'second', 'seconds'], ONE, 'second', 'seconds'),
  unit('time', 'min', ['mins', 'minute', 'minutes'], MINUTE, 'minute', 'minutes'),
  unit('time', 'h', ['hr', 'hrs', 'hour', 'hours'], times(MINUTE, exact('60')), 'hour', 'hours'),
  unit('time', 'd', ['day', 'days'], times(MINUTE, exact('1440')), 'day', 'days', { readerSymbol: 'day', readerPlural: 'days' }),
  unit('time', 'ms', ['millisecond', 'milliseconds'], exact('0.001'), 'millisecond', 'milliseconds'),

  unit('frequency', 'Hz', ['hertz'], ONE, 'hertz', 'hertz'),
  unit('frequency', 'kHz', [], exact('1000'), 'kilohertz', 'kilohertz'),
  unit('speed of rotation', 'rpm', ['r/min', 'rev/min', 'RPM'], exact('1/60'), 'revolution per minute', 'revolutions per minute'),
  unit('flow', 'L/min', ['l/min', 'lpm'], over(LITRE, MINUTE), 'litre per minute', 'litres per minute', { partner: 'US-gal/min' }),
  unit('flow', 'L/h', ['l/h'], over(LITRE, exact('3600')), 'litre per hour', 'litres per hour', { partner: 'US-gal/min' }),
  unit('flow', 'US-gal/min', ['US gal/min', 'US-gpm'], over(US_GALLON, MINUTE), 'US gallon per minute', 'US gallons per minute', { readerSymbol: 'US gal/min', partner: 'L/min' }),
  unit('flow', 'imp-gal/min', ['imp gal/min', 'imp-gpm'], over(IMPERIAL_GALLON, MINUTE), 'imperial gallon per minute', 'imperial gallons per minute', { readerSymbol: 'imp gal/min', partner: 'L/min' }),
  unit('stiffness', 'N/mm', [], exact('1000'), 'newton per millimetre', 'newtons per millimetre', { partner: 'lbf/in' }),
  unit('stiffness', 'lbf/in', ['lb/in'], over(POUND_FORCE, INCH), 'pound-force per inch', 'pounds-force per inch', { partner: 'N/mm' }),
  unit('viscosity', 'cSt', ['mm²/s', 'mm2/s'], exact('0.000001'), 'centistokes', 'centistokes'),

  unit('temperature', '°C', ['degC', 'deg-C', 'deg C', '° C', 'ºC', '℃'], ONE, 'degree Celsius', 'degrees Celsius', { offset: exact('273.15'), partner: '°F' }),
  unit('temperature', '°F', ['degF', 'deg-F', 'deg F', '° F', 'ºF', '℉'], exact('5/9'), 'degree Fahrenheit', 'degrees Fahrenheit', { offset: times(exact('459.67'), exact('5/9')), partner: '°C' }),
  unit('temperature', 'K', ['kelvin', 'kelvins'], ONE, 'kelvin', 'kelvins', { partner: '°C' }),
  unit('temperature difference', 'Δ°C', ['delta-degC'], ONE, 'degree Celsius of difference', 'degrees Celsius of difference', { readerSymbol: '°C', partner: 'Δ°F', note: 'What one reading less another gives; it has no zero to move.' }),
  unit('temperature difference', 'Δ°F', ['delta-degF'], exact('5/9'), 'degree Fahrenheit of difference', 'degrees Fahrenheit of difference', { readerSymbol: '°F', partner: 'Δ°C' }),
  unit('temperature difference', 'ΔK', ['delta-K'], ONE, 'kelvin of difference', 'kelvins of difference', { readerSymbol: 'K' }),

  unit('voltage', 'V', ['volt', 'volts'], ONE, 'volt', 'volts'),
  unit('voltage', 'kV', ['kilovolt', 'kilovolts'], exact('1000'), 'kilovolt', 'kilovolts'),
  unit('voltage', 'mV', ['millivolt', 'millivolts'], exact('0.001'), 'millivolt', 'millivolts'),
  unit('current', 'A', ['amp', 'amps', 'ampere', 'amperes'], ONE, 'ampere', 'amperes'),
  unit('current', 'mA', ['milliamp', 'milliamps'], exact('0.001'), 'milliampere', 'milliamperes'),
  unit('resistance', 'Ω', ['ohm', 'ohms'], ONE, 'ohm', 'ohms'),
  unit('resistance', 'mΩ', ['mohm', 'milliohm', 'milliohms'], exact('0.001'), 'milliohm', 'milliohms'),
  unit('resistance', 'kΩ', ['kohm', 'kilohm', 'kilohms'], exact('1000'), 'kilohm', 'kilohms'),
  unit('resistance', 'MΩ', ['Mohm', 'megohm', 'megohms'], exact('1000000'), 'megohm', 'megohms'),
  unit('charge', 'A·h', ['A.h', 'Ah', 'A-h'], exact('3600'), 'ampere hour', 'ampere hours'),
  unit('capacitance', 'µF', ['uF', 'microfarad', 'microfarads'], exact('0.000001'), 'microfarad', 'microfarads'),
  unit('power', 'W', ['watt', 'watts'], ONE, 'watt', 'watts'),
  unit('power', 'kW', ['kilowatt', 'kilowatts'], exact('1000'), 'kilowatt', 'kilowatts', { partner: 'hp' }),
  unit('power', 'hp', ['HP', 'horsepower'], times(POUND_FORCE, FOOT, exact('550')), 'horsepower', 'horsepower', { partner: 'kW', note: 'The mechanical horsepower, 550 foot-pounds a second.' }),

  unit('number', '%', ['percent', 'per-cent'], exact('0.01'), 'percent', 'percent'),
];

export const ambiguousUnits: readonly AmbiguousUnit[] = [
  { spellings: ['gal', 'gals', 'gallon', 'gallons'], readings: ['US-gal', 'imp-gal'] },
  { spellings: ['qt', 'qts', 'quart', 'quarts'], readings: ['US-qt', 'imp-qt'] },
  { spellings: ['pt', 'pts', 'pint', 'pints'], readings: ['US-pt', 'imp-pt'] },
  { spellings: ['fl-oz', 'fl oz', 'floz', 'fl.oz'], readings: ['US-fl-oz', 'imp-fl-oz'] },
  { spellings: ['gpm', 'gal/min'], readings: ['US-gal/min', 'imp-gal/min'] },
  { spellings: ['ton', 'tons'], readings: ['t', 'US-ton', 'imp-ton'] },
];

/** Every spelling of a unit: its symbol, its plain spellings, and the look-alike letters keyboards give. */
export function allSpellings(of: Unit): readonly string[] {
  const all = of.symbol === '' ? [...of.spellings] : [of.symbol, ...of.spellings];
  const typed = all.length;
  for (let i = 0; i < typed; i += 1) {
    const spelling = all[i]!;
    // Most spellings have none of these; each of the hundreds is asked at every start.
    if (!HAS_TWIN.test(spelling)) continue;
    for (const [usual, twin] of twins)
      if (spelling.includes(usual)) all.push(spelling.replaceAll(usual, twin));
  }
  return all;
}

const HAS_TWIN = /[\u00b7\u00b5\u03a9]/;

/** Two characters that look alike: middle dot and dot operator, micro sign and mu, ohm sign and omega. */
const twins: readonly (readonly [string, string])[] = [
  ['\u00b7', '\u22c5'],
  ['\u00b5', '\u03bc'],
  ['\u03a9', '\u2126'],
];

function unit(
  kind: KindName,
  symbol: string,
  spellings: readonly string[],
  factor: Rational,
  name: string,
  plural: string,
  extra: Extra = {},
): Unit {
  const dimension = kindNamed(kind)!.dimension;
  return { symbol, spellings, kind, dimension, factor, offset: ZERO, name, plural, ...extra };
}

/** Both orders of a torque unit with every sign between them that is met: `lbf·ft`, `ft-lb`, `ft lb` … */
function pairs(
  forces: readonly string[],
  arms: readonly string[],
  words: readonly string[],
): readonly string[] {
  const all: string[] = [];
  for (const force of forces) {
    for (const arm of arms) {
      for (const sign of ['·', '.', '-', ' ']) all.push(`${force}${sign}${arm}`, `${arm}${sign}${force}`);
    }
  }
  return [...all.slice(1), ...words];
}

function exact(text: string): Rational {
  return parseRational(text)!;
}

function times(...factors: readonly Rational[]): Rational {
  return factors.reduce(multiply, ONE);
}

function over(a: Rational, b: Rational): Rational {
  return multiply(a, inverse(b));
}
