/**
 * What can be wrong with a quantity, as plain data. Nothing in this folder throws on what an
 * author typed: it returns an `Outcome`.
 *
 * Not here: severities and finding names. The checks turn a problem into a finding.
 */

export type QuantityProblemCode =
  /** The text is no number where one must stand. */
  | 'number-malformed'
  /** `6,5`: a comma inside a number. */
  | 'decimal-comma'
  /** A number stands where a quantity must, and it has no unit. */
  | 'unit-missing'
  /** The text after the number is no known unit. */
  | 'unit-unknown'
  /** `gal`, `pint`: known, but it has two readings. */
  | 'unit-ambiguous'
  /** Two quantities of different kinds (length and mass) meet. */
  | 'unit-wrong-kind'
  /** `30 ft-lb ± 3 lb`: the tolerance has a unit of another kind than the value. */
  | 'tolerance-unit'
  /** A gauge pressure meets an absolute one. */
  | 'pressure-reference'
  /** `60..5 N·m`. */
  | 'range-reversed'
  /** `25 ± -3 N·m`. */
  | 'tolerance-negative'
  /** A sum of two temperature readings, or a product with one. */
  | 'temperature-reading'
  /** `5 ft 2 kg`, `30 min 1 h`: parts that do not make one mixed quantity. */
  | 'mixed-units'
  | 'division-by-zero'
  /** Arithmetic on a quantity that has only one end (`at least 20 N·m`). */
  | 'open-ended'
  /** `at least 5..10 N·m`: a range where one number must stand. */
  | 'one-number-expected'
  /** Text after the end of the quantity. */
  | 'text-left-over';

export interface QuantityProblem {
  readonly code: QuantityProblemCode;
  /** One sentence that stands alone. */
  readonly message: string;
  /** What to write instead, best first; empty when nothing can be proposed. */
  readonly proposals: readonly string[];
  /** Offsets in the text that was read; absent for problems of arithmetic. */
  readonly from?: number;
  readonly to?: number;
}

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: QuantityProblem };

export function good<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

export function bad<T>(
  code: QuantityProblemCode,
  message: string,
  proposals: readonly string[] = [],
  from?: number,
  to?: number,
): Outcome<T> {
  const problem: QuantityProblem =
    from === undefined || to === undefined
      ? { code, message, proposals }
      : { code, message, proposals, from, to };
  return { ok: false, problem };
}
