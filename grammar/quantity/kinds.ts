/**
 * The kinds of quantity and their dimensions, as data.
 *
 * A kind is more than its dimension: torque and energy have the same exponents and are not the same
 * thing, so each is a kind of its own and neither converts to the other. A product of a force and a
 * length is taken as a torque, which is what the trade multiplies them for; an energy is only what
 * was typed in an energy unit.
 *
 * Angle is a dimension of its own (the SI counts it as the number one), so that 90° is never a plain
 * number and a speed of rotation is never a frequency. Its base is the full turn, not the radian:
 * then degrees and fractions of a turn are exact.
 *
 * A temperature that is read on a thermometer and a difference of two of them are two kinds.
 */

/** Exponents of length, mass, time, electric current, temperature, angle. */
export type Dimension = readonly [number, number, number, number, number, number];

export type KindName =
  | 'number'
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'force'
  | 'torque'
  | 'energy'
  | 'power'
  | 'pressure'
  | 'angle'
  | 'time'
  | 'frequency'
  | 'speed of rotation'
  | 'flow'
  | 'stiffness'
  | 'viscosity'
  | 'temperature'
  | 'temperature difference'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'charge'
  | 'capacitance'
  /** A product or quotient that has no name of its own here. */
  | 'derived';

export interface Kind {
  readonly name: KindName;
  readonly dimension: Dimension;
  /** Symbol of the coherent unit, in which factors are stated. */
  readonly base: string;
}

/**
 * Where two kinds have one dimension, the first one is what a product of that dimension becomes:
 * torque before energy, difference before reading.
 */
export const kinds: readonly Kind[] = [
  { name: 'number', dimension: [0, 0, 0, 0, 0, 0], base: '' },
  { name: 'length', dimension: [1, 0, 0, 0, 0, 0], base: 'm' },
  { name: 'area', dimension: [2, 0, 0, 0, 0, 0], base: 'm²' },
  { name: 'volume', dimension: [3, 0, 0, 0, 0, 0], base: 'm³' },
  { name: 'mass', dimension: [0, 1, 0, 0, 0, 0], base: 'kg' },
  { name: 'force', dimension: [1, 1, -2, 0, 0, 0], base: 'N' },
  { name: 'torque', dimension: [2, 1, -2, 0, 0, 0], base: 'N·m' },
  { name: 'energy', dimension: [2, 1, -2, 0, 0, 0], base: 'J' },
  { name: 'power', dimension: [2, 1, -3, 0, 0, 0], base: 'W' },
  { name: 'pressure', dimension: [-1, 1, -2, 0, 0, 0], base: 'Pa' },
  { name: 'angle', dimension: [0, 0, 0, 0, 0, 1], base: 'turn' },
  { name: 'time', dimension: [0, 0, 1, 0, 0, 0], base: 's' },
  { name: 'frequency', dimension: [0, 0, -1, 0, 0, 0], base: 'Hz' },
  { name: 'speed of rotation', dimension: [0, 0, -1, 0, 0, 1], base: 'turn/s' },
  { name: 'flow', dimension: [3, 0, -1, 0, 0, 0], base: 'm³/s' },
  { name: 'stiffness', dimension: [0, 1, -2, 0, 0, 0], base: 'N/m' },
  { name: 'viscosity', dimension: [2, 0, -1, 0, 0, 0], base: 'm²/s' },
  { name: 'temperature difference', dimension: [0, 0, 0, 0, 1, 0], base: 'ΔK' },
  { name: 'temperature', dimension: [0, 0, 0, 0, 1, 0], base: 'K' },
  { name: 'voltage', dimension: [2, 1, -3, -1, 0, 0], base: 'V' },
  { name: 'current', dimension: [0, 0, 0, 1, 0, 0], base: 'A' },
  { name: 'resistance', dimension: [2, 1, -3, -2, 0, 0], base: 'Ω' },
  { name: 'charge', dimension: [0, 0, 1, 1, 0, 0], base: 'A·s' },
  { name: 'capacitance', dimension: [-2, -1, 4, 2, 0, 0], base: 'F' },
];

const byName = new Map<KindName, Kind>(kinds.map((kind) => [kind.name, kind]));

/** Undefined only for `derived`, whose dimension each unit carries itself. */
export function kindNamed(name: KindName): Kind | undefined {
  return byName.get(name);
}

export function kindOfDimension(dimension: Dimension): Kind | undefined {
  return kinds.find((kind) => sameDimension(kind.dimension, dimension));
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => exponent === b[i]);
}

/** a · b^power, as exponents. */
export function combine(a: Dimension, b: Dimension, power: 1 | -1): Dimension {
  const sum = (i: 0 | 1 | 2 | 3 | 4 | 5): number => a[i] + power * b[i];
  return [sum(0), sum(1), sum(2), sum(3), sum(4), sum(5)];
}
