/**
 * Exact fractions. Every number an author types and every unit factor (but the radian) is one, so
 * conversions can be compared without rounding.
 *
 * A fraction is plain data and always in lowest terms with a positive denominator, so two equal
 * fractions have equal fields. Both fields are numbers while both are safe integers, and both are
 * bigints beyond that: nearly all real quantities stay on the fast side.
 *
 * Not here: units, rounding rules of the trade.
 */

export interface Rational {
  readonly n: number | bigint;
  readonly d: number | bigint;
}

export const ZERO: Rational = { n: 0, d: 1 };
export const ONE: Rational = { n: 1, d: 1 };

/** Longer digit strings are refused: nobody types them, and they would make arithmetic slow. */
const MOST_DIGITS = 60;

/** The fraction n/d in lowest terms. `d` must not be zero (a mistake in the program, so it throws). */
export function rational(n: number | bigint, d: number | bigint = 1): Rational {
  if (
    typeof n === 'number' &&
    typeof d === 'number' &&
    Number.isSafeInteger(n) &&
    Number.isSafeInteger(d) &&
    d !== 0
  ) {
    return small(n, d);
  }
  return big(BigInt(n), BigInt(d));
}

/**
 * Reads `12`, `0.00473`, `.5`, `1/6`, `1 1/2`, with an optional sign (`-`, `+`, `−`).
 * Returns undefined for anything else, a zero denominator or more than 60 digits.
 */
export function parseRational(text: string): Rational | undefined {
  let at = 0;
  let negative = false;
  const first = text.charCodeAt(0);
  if (first === 0x2d || first === 0x2212) {
    negative = true;
    at = 1;
  } else if (first === 0x2b) at = 1;
  const body = at === 0 ? text : text.slice(at);
  if (body.length === 0 || body.length > 2 * MOST_DIGITS) return undefined;
  const value = parseUnsigned(body);
  return value !== undefined && negative ? negate(value) : value;
}

export function add(a: Rational, b: Rational): Rational {
  if (isSmall(a) && isSmall(b)) {
    const left = a.n * b.d;
    const right = b.n * a.d;
    const d = a.d * b.d;
    const n = left + right;
    if (safe(left) && safe(right) && safe(n) && safe(d)) return small(n, d);
  }
  return big(BigInt(a.n) * BigInt(b.d) + BigInt(b.n) * BigInt(a.d), BigInt(a.d) * BigInt(b.d));
}

export function subtract(a: Rational, b: Rational): Rational {
  return add(a, negate(b));
}

export function multiply(a: Rational, b: Rational): Rational {
  if (isSmall(a) && isSmall(b)) {
    const n = a.n * b.n;
    const d = a.d * b.d;
    if (safe(n) && safe(d)) return small(n, d);
  }
  return big(BigInt(a.n) * BigInt(b.n), BigInt(a.d) * BigInt(b.d));
}

/** a / b, or undefined when b is zero. */
export function divide(a: Rational, b: Rational): Rational | undefined {
  return isZero(b) ? undefined : multiply(a, inverse(b));
}

/** 1 / a. `a` must not be zero (a mistake in the program, so it throws). */
export function inverse(a: Rational): Rational {
  return rational(a.d, a.n);
}

export function negate(a: Rational): Rational {
  // `0 - n` instead of `-n`: there must be one zero only, or equal fractions would differ in their fields.
  return isSmall(a) ? { n: 0 - a.n, d: a.d } : { n: -BigInt(a.n), d: a.d };
}

export function abs(a: Rational): Rational {
  return sign(a) < 0 ? negate(a) : a;
}

export function sign(a: Rational): -1 | 0 | 1 {
  return a.n < 0 ? -1 : a.n > 0 ? 1 : 0;
}

export function isZero(a: Rational): boolean {
  return sign(a) === 0;
}

export function isWhole(a: Rational): boolean {
  return a.d === 1 || a.d === 1n;
}

/** Less than zero, zero or more than zero as a is below, equal to or above b. */
export function compare(a: Rational, b: Rational): -1 | 0 | 1 {
  if (isSmall(a) && isSmall(b)) {
    if (a.d === b.d) return order(a.n, b.n);
    const left = a.n * b.d;
    const right = b.n * a.d;
    if (safe(left) && safe(right)) return order(left, right);
  }
  return order(BigInt(a.n) * BigInt(b.d), BigInt(b.n) * BigInt(a.d));
}

export function equal(a: Rational, b: Rational): boolean {
  return a.n === b.n && a.d === b.d;
}

export function least(a: Rational, b: Rational): Rational {
  return compare(a, b) <= 0 ? a : b;
}

export function greatest(a: Rational, b: Rational): Rational {
  return compare(a, b) >= 0 ? a : b;
}

/** The nearest double, good to one unit in its last place. */
export function toNumber(a: Rational): number {
  if (isSmall(a)) return a.n / a.d;
  return Number(toSignificant(a, 20));
}

/** 10^exponent as a fraction; the exponent may be negative. */
export function powerOfTen(exponent: number): Rational {
  const size = Math.abs(exponent);
  const power = size <= 15 ? 10 ** size : 10n ** BigInt(size);
  return exponent >= 0 ? rational(power) : rational(1, power);
}

export type Direction = 'nearest' | 'down' | 'up';

/** The multiple of `step` (more than zero) nearest to a (halves away from zero), at most a, or at least a. */
export function roundTo(a: Rational, step: Rational, direction: Direction = 'nearest'): Rational {
  const count = multiply(a, inverse(step));
  return multiply(rational(whole(count, direction)), step);
}

/** The largest whole number not above a. */
export function floor(a: Rational): Rational {
  return rational(whole(a, 'down'));
}

/** The exponent of the first significant digit: 2 for 123, -3 for 0.0047; 0 for zero. */
export function magnitude(a: Rational): number {
  const n = BigInt(a.n < 0 ? -a.n : a.n);
  if (n === 0n) return 0;
  const d = BigInt(a.d);
  let guess = n.toString().length - d.toString().length;
  if (compare(abs(a), powerOfTen(guess)) < 0) guess -= 1;
  return guess;
}

/** The decimal text if it ends, else undefined. Source form: `-` for the sign, no grouping. */
export function toDecimal(a: Rational): string | undefined {
  let d = BigInt(a.d);
  let twos = 0;
  let fives = 0;
  for (; d % 2n === 0n; d /= 2n) twos += 1;
  for (; d % 5n === 0n; d /= 5n) fives += 1;
  return d === 1n ? toFixed(a, Math.max(twos, fives)) : undefined;
}

/** Rounded half away from zero to a number of decimals (0 or more), zeros kept: `6.50`. */
export function toFixed(a: Rational, decimals: number): string {
  const scaled = whole(multiply(a, powerOfTen(decimals)), 'nearest');
  const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(decimals + 1, '0');
  const text =
    decimals === 0
      ? digits
      : `${digits.slice(0, digits.length - decimals)}.${digits.slice(digits.length - decimals)}`;
  return scaled < 0n ? `-${text}` : text;
}

/** Rounded half away from zero to that many significant digits; zeros at the end of decimals dropped. */
export function toSignificant(a: Rational, digits: number): string {
  const rounded = roundSignificant(a, digits);
  return toDecimal(rounded) ?? toFixed(rounded, digits);
}

/** The nearest number with that many significant digits. */
export function roundSignificant(a: Rational, digits: number): Rational {
  return roundTo(a, powerOfTen(magnitude(a) - digits + 1));
}

/** `1/6`, `1 1/2`, `2`. */
export function toFraction(a: Rational): string {
  if (isWhole(a)) return a.n.toString();
  const size = abs(a);
  const wholePart = floor(size);
  const rest = subtract(size, wholePart);
  const text = `${isZero(wholePart) ? '' : `${wholePart.n} `}${rest.n}/${rest.d}`;
  return sign(a) < 0 ? `-${text}` : text;
}

interface Small {
  readonly n: number;
  readonly d: number;
}

function isSmall(a: Rational): a is Small {
  return typeof a.n === 'number';
}

function safe(a: number): boolean {
  return a <= Number.MAX_SAFE_INTEGER && a >= -Number.MAX_SAFE_INTEGER;
}

function small(n: number, d: number): Rational {
  if (d === 1) return { n: n + 0, d: 1 };
  if (n === 0) return ZERO;
  let a = n < 0 ? -n : n;
  let b = d < 0 ? -d : d;
  while (b !== 0) {
    const rest = a % b;
    a = b;
    b = rest;
  }
  if (d < 0) a = -a;
  return { n: n / a, d: d / a };
}

function big(n: bigint, d: bigint): Rational {
  if (d === 0n) throw new RangeError('a fraction cannot have zero below the line');
  let a = n < 0n ? -n : n;
  let b = d < 0n ? -d : d;
  while (b !== 0n) {
    const rest = a % b;
    a = b;
    b = rest;
  }
  if (d < 0n) a = -a;
  const top = n / a;
  const bottom = d / a;
  const limit = BigInt(Number.MAX_SAFE_INTEGER);
  if (bottom <= limit && top <= limit && top >= -limit) return { n: Number(top), d: Number(bottom) };
  return { n: top, d: bottom };
}

function order(a: number | bigint, b: number | bigint): -1 | 0 | 1 {
  return a < b ? -1 : a > b ? 1 : 0;
}

function whole(a: Rational, direction: Direction): bigint {
  const n = BigInt(a.n);
  const d = BigInt(a.d);
  if (direction === 'nearest') {
    const half = (2n * (n < 0n ? -n : n) + d) / (2n * d);
    return n < 0n ? -half : half;
  }
  const cut = n / d;
  const exact = cut * d === n;
  if (direction === 'down') return n < 0n && !exact ? cut - 1n : cut;
  return n > 0n && !exact ? cut + 1n : cut;
}

function parseUnsigned(text: string): Rational | undefined {
  const slash = text.indexOf('/');
  if (slash < 0) return parseDecimal(text);
  const bottom = parseDigits(text.slice(slash + 1));
  if (bottom === undefined || bottom.n === 0) return undefined;
  const space = text.lastIndexOf(' ', slash);
  const top = parseDigits(text.slice(space + 1, slash));
  if (top === undefined) return undefined;
  const fraction = multiply(top, inverse(bottom));
  if (space < 0) return fraction;
  const before = parseDigits(text.slice(0, space).trimEnd());
  return before === undefined ? undefined : add(before, fraction);
}

function parseDecimal(text: string): Rational | undefined {
  const point = text.indexOf('.');
  if (point < 0) return parseDigits(text);
  const decimals = text.length - point - 1;
  if (decimals === 0) return undefined;
  const digits = parseDigits(text.slice(0, point) + text.slice(point + 1));
  return digits === undefined ? undefined : multiply(digits, powerOfTen(-decimals));
}

function parseDigits(text: string): Rational | undefined {
  if (text.length === 0 || text.length > MOST_DIGITS) return undefined;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code < 0x30 || code > 0x39) return undefined;
  }
  return text.length <= 15 ? { n: Number(text), d: 1 } : rational(BigInt(text));
}
