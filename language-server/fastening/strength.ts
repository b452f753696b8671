/**
 * Proof, yield and tensile strength of a property class or grade on a thread, and the loads that follow.
 * Stresses in Pa, loads in N. A class outside its size range, or on a thread of the other unit system, is
 * unknown with a reason; nothing is extrapolated.
 */

import type { Known } from './problem.ts';
import { known, unknown } from './problem.ts';
import type { StrengthRow, StrengthStandard } from './strength-tables.ts';
import { STRENGTH_ROWS } from './strength-tables.ts';
import type { Thread } from './threads.ts';
import { INCH } from './threads.ts';

export interface Strength {
  readonly standard: StrengthStandard;
  /** `8.8`, `5`, `A325`, without the word class or grade. */
  readonly name: string;
  /** As a reader expects it: `ISO 898-1 class 8.8`, `SAE J429 grade 5`, `ASTM A325`. */
  readonly title: string;
  /** Sp, Pa. */
  readonly proof: number;
  /** ReL, Rp0.2 or yield point, minimum, Pa. */
  readonly yield: number;
  /** Rm, minimum, Pa. */
  readonly tensile: number;
}

/** One megapascal and one ksi (1000 lbf/in2) in Pa, exact. */
export const MEGAPASCAL = 1e6;
export const KSI = (1000 * 4.4482216152605) / INCH ** 2;

/**
 * The strength of `written` (`8.8`, `class 10.9`, `grade 5`, `SAE J429 8`, `A325`) on this thread.
 * Unknown for a name in none of the tables, a thread of the other system, or a size out of range.
 */
export function strengthOf(written: string, thread: Thread): Known<Strength> {
  const rows = rowsNamed(written);
  const first = rows[0];
  if (!first) {
    return unknown(
      'class-unknown',
      `"${written.trim().slice(0, 40)}" is not a property class of ISO 898-1, nor a grade of SAE J429 or ASTM known here.`,
      nearestClass(written),
    );
  }
  const metric = first.standard === 'ISO 898-1';
  if (metric !== (thread.system === 'metric')) {
    return unknown(
      'class-of-other-system',
      `${titleOf(first)} is for ${metric ? 'metric' : 'inch'} threads, and ${thread.designation} is not one.`,
      metric ? 'Give an SAE J429 or ASTM grade.' : 'Give an ISO 898-1 property class.',
    );
  }
  const row = rows.find((candidate) => coversSize(candidate, thread));
  if (!row) {
    return unknown(
      'class-size-out-of-range',
      `${titleOf(first)} has no values for ${thread.designation}: its table covers ${rows.map(rangeOf).join(' and ')}.`,
    );
  }
  const unit = metric ? MEGAPASCAL : KSI;
  return known({
    standard: row.standard,
    name: row.name,
    title: titleOf(row),
    proof: row.proof * unit,
    yield: row.yield * unit,
    tensile: row.tensile * unit,
  });
}

/** Proof load Fp = As,nom Sp in N (ISO 898-1, SAE J429). */
export function proofLoad(thread: Thread, strength: Strength): number {
  return tabulatedStressArea(thread) * strength.proof;
}

/** Least breaking load As,nom Rm in N. */
export function minimumTensileLoad(thread: Thread, strength: Strength): number {
  return tabulatedStressArea(thread) * strength.tensile;
}

/**
 * The stress area that proof loads are tabulated with, m2: ISO 898-1 rounds the formula to three digits; an
 * inch thread keeps the formula.
 */
export function tabulatedStressArea(thread: Thread): number {
  return thread.system === 'metric'
    ? Number((thread.stressArea * 1e6).toPrecision(3)) / 1e6
    : thread.stressArea;
}

/** Load at which the core begins to yield in pure tension, As Rp0.2, in N. */
export function yieldLoad(thread: Thread, strength: Strength): number {
  return thread.stressArea * strength.yield;
}

/** Proof load of a class written as text, or the reason why it is not known. N. */
export function proofLoadOf(written: string, thread: Thread): Known<number> {
  const strength = strengthOf(written, thread);
  return strength.known ? known(proofLoad(thread, strength.value)) : strength;
}

/** Names that a class clause may hold, for completion: `8.8`, `10.9`, `5`, `A325` ... */
export function strengthNames(system: 'metric' | 'inch'): string[] {
  const rows = STRENGTH_ROWS.filter((row) => (row.standard === 'ISO 898-1') === (system === 'metric'));
  return [...new Set(rows.map((row) => row.name))];
}

function rowsNamed(written: string): StrengthRow[] {
  const { name, standard } = plainName(written);
  return STRENGTH_ROWS.filter(
    (row) => row.name.toUpperCase() === name && (standard === undefined || row.standard === standard),
  );
}

function plainName(written: string): {
  name: string;
  standard?: StrengthStandard;
} {
  let name = written.trim().toUpperCase().replace(/\s+/g, ' ');
  let standard: StrengthStandard | undefined;
  const prefix = /^(ISO(?: 898(?:-1)?)?|SAE(?: J ?429)?|ASTM)\b ?/.exec(name);
  if (prefix) {
    standard = name.startsWith('ISO') ? 'ISO 898-1' : name.startsWith('SAE') ? 'SAE J429' : 'ASTM';
    name = name.slice(prefix[0].length);
  }
  name = name.replace(/^(?:PROPERTY )?CLASS |^GRADE |^GR\.? ?(?=\d)/, '');
  // A325 and A490 come in types with the same strength.
  name = name.replace(/^(A325|A490) TYPE [123]$/, '$1').replace(/^A354 GRADE BD$/, 'A354 BD');
  return standard === undefined ? { name } : { name, standard };
}

function coversSize(row: StrengthRow, thread: Thread): boolean {
  const size = thread.nominalDiameter / (row.standard === 'ISO 898-1' ? 0.001 : INCH);
  const slack = 1e-6;
  const above = row.fromExcluded ? size > row.from + slack : size >= row.from - slack;
  return above && size <= row.to + slack;
}

function titleOf(row: StrengthRow): string {
  if (row.standard === 'ISO 898-1') return `ISO 898-1 class ${row.name}`;
  return row.standard === 'SAE J429' ? `SAE J429 grade ${row.name}` : `ASTM ${row.name}`;
}

function rangeOf(row: StrengthRow): string {
  if (row.standard === 'ISO 898-1') return `${row.fromExcluded ? 'above ' : ''}M${row.from} to M${row.to}`;
  return `${row.from} in to ${row.to} in`;
}

/** `88` for `8.8` and `10,9` for `10.9` are the usual slips. */
function nearestClass(written: string): string {
  const digits = written.replace(/[^\d]/g, '');
  const meant = STRENGTH_ROWS.find((row) => digits.length > 1 && row.name.replace('.', '') === digits);
  if (meant) return `Did you mean ${meant.name}?`;
  return 'Write a class such as 8.8 or 10.9 for a metric thread, or a grade such as 5 or 8 for an inch thread.';
}
