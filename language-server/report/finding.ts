/**
 * One shape of finding, for the terminal, JSON, editors and pages alike. Plain data: places are a file and
 * UTF-16 offsets; exactly one file (positions.ts) turns them into lines and columns.
 */
import type { Span } from '../../grammar/syntax/tree.ts';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

export interface Place extends Span {
  file: string;
}

export interface Related extends Place {
  message: string;
}

export interface Mend {
  title: string;
  /** Replacements in one or more files; ranges do not overlap. */
  edits: (Place & { text: string })[];
}

export interface Finding extends Place {
  /** Name of the check: `still-held`. */
  check: string;
  severity: Severity;
  /** One sentence that stands alone: what is wrong, with value and limit. */
  message: string;
  /** What to do, one sentence. */
  help?: string;
  /** The story, in the order in which a reader walks it. */
  related: Related[];
  /** The smallest case that shows it, in words: `supply is single-phase`. Absent where every case shows it. */
  case?: string;
  mends?: Mend[];
  about?: About;
}

/** What a finding about steps is about, in the words to type: for those who mend it. */
export interface About {
  /** The check that tells the fault itself, where the finding is about the loop or branch that it comes from. */
  check: string;
  /** The thing itself: `head-bolts #1, #3`. At most one. */
  things: string[];
  /** What stands in the way, is missing or is meant too. */
  others: string[];
  /** The condition of a `when` that holds in the case that shows it; absent where no variant or choice tells. */
  when?: string;
  /** Names, values and words of the fact, as its check tells them. */
  words?: Readonly<Record<string, string>>;
}

export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'information', 'hint'];

/** Findings in reading order: by file, place, check. */
export function inReadingOrder(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(inOrder);
}

export function inOrder(a: Finding, b: Finding): number {
  return (
    compare(a.file, b.file) ||
    a.start - b.start ||
    a.end - b.end ||
    compare(a.check, b.check) ||
    compare(a.message, b.message)
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
