/**
 * Which kinds of quantity are right where: in a clause, behind a verb, in a tail, in a stage of a plan. A place
 * that is not listed takes any kind: where several are right, nothing is said.
 */
import { type KindName, unitNamed } from '../../grammar/quantity/index.ts';
import type { ClauseName, Stage, TailName } from '../../grammar/syntax/tree.ts';

export interface Wanted {
  kinds: readonly KindName[];
  /** `a mass, in kg or lb` */
  words: string;
}

const MASS: Wanted = { kinds: ['mass'], words: 'a mass, in kg or lb' };
const TORQUE: Wanted = { kinds: ['torque'], words: 'a torque, in N·m or lbf·ft' };
const PRESSURE: Wanted = { kinds: ['pressure'], words: 'a pressure, in bar or psi' };
const TEMPERATURE: Wanted = { kinds: ['temperature'], words: 'a temperature, in °C or °F' };
const VOLTAGE: Wanted = { kinds: ['voltage'], words: 'a voltage, in V' };
const TIME: Wanted = { kinds: ['time'], words: 'a time, in min or h' };
const LENGTH: Wanted = { kinds: ['length'], words: 'a length, in mm or in' };
const AMOUNT: Wanted = { kinds: ['volume', 'mass'], words: 'a volume or a mass, in L or kg' };
const NUMBER: Wanted = { kinds: ['number'], words: 'a number without a unit' };
const PERCENT: Wanted = { kinds: ['number', 'torque'], words: 'a percentage' };
/** Wire and tape come by the metre, cloth by the square metre, gas by its pressure in the bottle. */
const SUPPLY: Wanted = {
  kinds: ['volume', 'mass', 'length', 'area', 'pressure', 'number'],
  words: 'a volume, a mass or a length, in L, kg or m',
};

export const CLAUSE_KINDS: Readonly<Partial<Record<ClauseName, Wanted>>> = {
  mass: MASS,
  torque: TORQUE,
  'prevailing torque': TORQUE,
  pressure: PRESSURE,
  temperature: TEMPERATURE,
  live: VOLTAGE,
  holds: AMOUNT,
  'service fill': AMOUNT,
  length: LENGTH,
  'open time': TIME,
  'curing time': TIME,
  'nut factor': NUMBER,
  'thread friction': NUMBER,
  'head friction': NUMBER,
};

export const LAYOUT_KINDS = LENGTH;
export const TIME_HEADER_KINDS = TIME;
export const SUPPLY_KINDS = SUPPLY;

/** The parser takes a stage whose unit is neither an angle nor a percentage for a torque. */
export const STAGE_KINDS: Readonly<Partial<Record<Stage['kind'], Wanted>>> = {
  // A stud that is drawn by a hydraulic tensioner has a pressure in its plan.
  torque: { kinds: ['torque', 'pressure'], words: 'a torque, an angle or a percentage, in N·m, ° or %' },
  'back off': { kinds: ['angle', 'length'], words: 'an angle, in ° or turns' },
  wait: TIME,
  again: { kinds: ['torque', 'number', 'angle', 'pressure'], words: 'a torque, in N·m or lbf·ft' },
};

export const TAIL_KINDS: Readonly<Partial<Record<TailName, Wanted>>> = {
  for: { kinds: ['time', 'length', 'angle', 'number'], words: 'a time, in min or h' },
  stage: NUMBER,
  pass: PERCENT,
};

/** `wait 30 min`, `turn flywheel 2 turns` */
export const VERB_KINDS: Readonly<Record<string, Wanted>> = {
  wait: TIME,
  turn: { kinds: ['angle', 'length', 'time', 'number'], words: 'an angle, in ° or turns' },
  'back off': { kinds: ['angle', 'length'], words: 'an angle, in ° or turns' },
  loosen: { kinds: ['angle', 'length'], words: 'an angle, in ° or turns' },
  tighten: {
    kinds: ['angle', 'torque', 'length', 'number', 'pressure'],
    words: 'a torque or an angle, in N·m or °',
  },
  fill: { kinds: ['volume', 'mass', 'pressure', 'length'], words: 'a volume or a mass, in L or kg' },
  'top up': { kinds: ['volume', 'mass', 'pressure', 'length'], words: 'a volume or a mass, in L or kg' },
  drain: { kinds: ['volume', 'mass', 'length', 'time'], words: 'a volume or a mass, in L or kg' },
  inflate: PRESSURE,
  pressurise: PRESSURE,
  'let cool': { kinds: ['time', 'temperature', 'temperature difference'], words: 'a time, in min or h' },
  raise: { kinds: ['length', 'angle'], words: 'a length, in mm or in' },
  lower: { kinds: ['length', 'angle'], words: 'a length, in mm or in' },
};

/** What stands after `to`, by the verb: `tighten nuts to 25 N·m`, `inflate tyre to 2.2 bar`. */
export const TO_KINDS: Readonly<Record<string, Wanted>> = {
  tighten: {
    kinds: ['torque', 'angle', 'number', 'length', 'pressure'],
    words: 'a torque, in N·m or lbf·ft',
  },
  inflate: PRESSURE,
  pressurise: PRESSURE,
  evacuate: PRESSURE,
  'let cool': TEMPERATURE,
  turn: { kinds: ['angle', 'length', 'number'], words: 'an angle, in ° or turns' },
};

/** `a torque`, `a percentage` */
export function aKind(kind: KindName, unit?: string): string {
  if (kind === 'number') return unit === '%' ? 'a percentage' : 'a number';
  return `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
}

/** What is usually meant where a unit of another kind was typed (common practice, no source). */
const SLIPS: Readonly<Record<string, readonly string[]>> = {
  N: ['N·m', 'N·mm'],
  kN: ['kN·m'],
  lb: ['lbf·ft', 'lbf·in'],
  lbf: ['lbf·ft', 'lbf·in', 'lb', 'psi'],
  oz: ['ozf·in'],
  kgf: ['kgf·m', 'kgf·cm', 'kg', 'kgf/cm²'],
  kg: ['kgf·m', 'kgf/cm²'],
  '°': ['°C', '°F'],
  m: ['min', 'mm'],
  micron: ['µm'],
  mm: ['N·mm'],
};

/** Units of one of the kinds that the typed one may have been meant as. */
export function likelyUnits(typed: string, kinds: readonly KindName[]): string[] {
  return (SLIPS[typed] ?? []).filter((symbol) => {
    const unit = unitNamed(symbol);
    return unit !== undefined && kinds.includes(unit.kind);
  });
}
