/**
 * Findings as JSON for other programs. The form is stable: a key is never renamed or given another meaning
 * under the same `schema` number, and new keys may be added. Lines and columns count from 1, columns and
 * offsets in UTF-16 units, `end` is exclusive. Findings stand in reading order.
 */
import { DEFERENCE } from './deference.ts';
import type { Finding, Place } from './finding.ts';
import type { Lines } from './positions.ts';
import { countsOf } from './summary.ts';

export const JSON_SCHEMA_NUMBER = 1;

export interface JsonPoint {
  offset: number;
  line?: number;
  column?: number;
}

export interface JsonRange {
  file: string;
  start: JsonPoint;
  end: JsonPoint;
}

export interface JsonFinding extends JsonRange {
  check: string;
  severity: string;
  /** Marks the same finding in a later run (see fingerprint.ts). */
  fingerprint?: string;
  message: string;
  help?: string;
  case?: string;
  related: (JsonRange & { message: string })[];
  mends: { title: string; edits: (JsonRange & { text: string })[] }[];
}

/** A file that could not be checked, and why. */
export interface Unread {
  file: string;
  reason: string;
}

export interface JsonReport {
  schema: number;
  /** What a report of findings is not, to be shown with it. */
  caution: string;
  filesChecked: number;
  counts: Record<'error' | 'warning' | 'information' | 'hint', number>;
  findings: JsonFinding[];
  /** Findings that a waiver holds back, with its reason and where it stands. */
  waived: (JsonRange & { finding: JsonFinding; reason: string })[];
  unread: Unread[];
}

export interface JsonInput {
  findings: readonly Finding[];
  /** One for each finding, in the same order. */
  fingerprints?: readonly string[];
  waived?: readonly { finding: Finding; reason: string; at: Place }[];
  files: number;
  unread: readonly Unread[];
  /** The lines of a file, or undefined where it cannot be had: then only offsets are given. */
  lines(file: string): Lines | undefined;
}

export function jsonReport(input: JsonInput): JsonReport {
  const { lines } = input;
  return {
    schema: JSON_SCHEMA_NUMBER,
    caution: DEFERENCE,
    filesChecked: input.files,
    counts: countsOf(input.findings).of,
    findings: input.findings.map((finding, at) => jsonFinding(finding, lines, input.fingerprints?.[at])),
    waived: (input.waived ?? []).map(({ finding, reason, at }) => ({
      finding: jsonFinding(finding, lines),
      reason,
      ...range(at, lines),
    })),
    unread: input.unread.map(({ file, reason }) => ({ file, reason })),
  };
}

function jsonFinding(finding: Finding, lines: JsonInput['lines'], fingerprint?: string): JsonFinding {
  return {
    check: finding.check,
    severity: finding.severity,
    ...(fingerprint === undefined ? {} : { fingerprint }),
    message: finding.message,
    ...(finding.help === undefined ? {} : { help: finding.help }),
    ...(finding.case === undefined ? {} : { case: finding.case }),
    ...range(finding, lines),
    related: finding.related.map((related) => ({ message: related.message, ...range(related, lines) })),
    mends: (finding.mends ?? []).map(({ title, edits }) => ({
      title,
      edits: edits.map((edit) => ({ ...range(edit, lines), text: edit.text })),
    })),
  };
}

function range(place: Place, linesOf: JsonInput['lines']): JsonRange {
  const lines = linesOf(place.file);
  return { file: place.file, start: point(place.start, lines), end: point(place.end, lines) };
}

function point(offset: number, lines: Lines | undefined): JsonPoint {
  if (lines === undefined) return { offset };
  const { line, column } = lines.at(offset);
  return { offset, line: line + 1, column: column + 1 };
}
