/**
 * What the fastening room answers when it cannot or should not answer.
 * Plain data; wording of findings for the reader is made elsewhere from these facts.
 * Nothing in this room throws on what an author typed.
 */

/** Something wrong or doubtful with an input: one sentence, and separately what to do about it. */
export interface FasteningProblem {
  /** Stable short name, such as `thread-not-standard`. */
  readonly code: string;
  /** One sentence that stands alone. */
  readonly message: string;
  /** What the author can do, when that is known. */
  readonly remedy?: string;
}

/** A value, or the reason why it is not known. Unknown is never replaced by a guess. */
export type Known<T> = { readonly known: true; readonly value: T } | Unknown;

export interface Unknown {
  readonly known: false;
  readonly problem: FasteningProblem;
}

export function known<T>(value: T): Known<T> {
  return { known: true, value };
}

export function unknown(code: string, message: string, remedy?: string): Unknown {
  return { known: false, problem: problem(code, message, remedy) };
}

export function problem(code: string, message: string, remedy?: string): FasteningProblem {
  return remedy === undefined ? { code, message } : { code, message, remedy };
}

/** A closed range of one quantity; both ends in the unit that the field's name or comment says. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** A band with its ends in order, whichever way they came. */
export function band(a: number, b: number): Band {
  return a <= b ? { low: a, high: b } : { low: b, high: a };
}
