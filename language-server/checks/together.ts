/** Results of single files put together. Light: a run that finds all results kept needs nothing of the checker. */
import { type Finding, inOrder, inReadingOrder } from '../report/finding.ts';
import type { RuleUse } from '../rules/idle.ts';
import type { Waived } from './waivers.ts';

/** What was found in one file. Plain data: it can be kept, or come from another thread. */
export interface FileChecked {
  path: string;
  findings: Finding[];
  waived: Waived[];
  statements: number;
  /** How the rules fared with the machines that the file speaks of. */
  rules: RuleUse[];
  /** Every file that was read for it, also those that could not be had. */
  uses: string[];
}

export interface CheckResult {
  findings: Finding[];
  /** Findings that a waiver holds back, in reading order. */
  waived: Waived[];
  /** Files checked, not counting those only used. */
  files: number;
  /** Actions executed: the measure of work. */
  statements: number;
}

/** `more`: findings that only all files together show. */
export function together(each: readonly FileChecked[], more: readonly Finding[] = []): CheckResult {
  return {
    findings: inReadingOrder([...each.flatMap(({ findings }) => findings), ...more]),
    waived: each.flatMap(({ waived }) => waived).sort((a, b) => inOrder(a.finding, b.finding)),
    files: each.length,
    statements: each.reduce((sum, { statements }) => sum + statements, 0),
  };
}
