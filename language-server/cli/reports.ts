/**
 * The forms of a report and where they go: one to standard output, any number to files. Each form is loaded only when
 * it is asked for.
 */
import type { Waived } from '../checks/waivers.ts';
import { DEFERENCE } from '../report/deference.ts';
import type { Finding, Severity } from '../report/finding.ts';
import type { Lines } from '../report/positions.ts';
import { summaryText } from '../report/summary.ts';
import { findingText, type Painter } from '../report/text.ts';
import type { Refused } from './walk.ts';

/** Put in by the build, from package.json. */
declare const VERSION: string;

export const FORMS = ['text', 'json', 'sarif', 'junit'] as const;
export type Form = (typeof FORMS)[number];

export interface OutputFile {
  form: Form;
  path: string;
}

/** Everything that a report may tell. */
export interface Reported {
  findings: readonly Finding[];
  fingerprints: readonly string[];
  /** Names of the files that were checked. */
  files: readonly string[];
  refused: readonly Refused[];
  /** The mildest severity that fails the run. */
  severity: Severity;
  /** How many findings were known before and are left out. */
  known: number;
  /** Findings that waivers hold back. */
  waived: readonly Waived[];
  showWaived: boolean;
  /** How many findings the text lists at the most, by the configuration of a file. */
  limits(file: string): { findings: number; perFile: number };
  lines(file: string): Lines | undefined;
}

export async function reportIn(form: Form, report: Reported, how: TextHow = {}): Promise<string> {
  const unread = report.refused.map(({ path, reason }) => ({ file: path, reason }));
  switch (form) {
    case 'text':
      return textReport(report, how);
    case 'json': {
      const { jsonReport } = await import('../report/json.ts');
      const { findings, fingerprints, lines } = report;
      const { waived } = report;
      const input = { findings, fingerprints, waived, files: report.files.length, unread, lines };
      return `${JSON.stringify(jsonReport(input), null, 2)}\n`;
    }
    case 'sarif': {
      const [{ sarifReport }, { EXPLAINED }] = await Promise.all([
        import('../report/sarif.ts'),
        import('./explain.ts'),
      ]);
      const { findings, fingerprints, lines } = report;
      const sarif = sarifReport({
        version: VERSION,
        rules: EXPLAINED,
        findings,
        fingerprints,
        unread,
        lines,
      });
      return `${JSON.stringify(sarif, null, 2)}\n`;
    }
    case 'junit':
      return (await import('../report/junit.ts')).junitReport({ ...report, unread });
  }
}

export interface TextHow {
  paint?: Painter;
  /** At most so many findings are shown. */
  most?: number;
}

function textReport(
  { findings, files, lines, known, waived, showWaived, limits }: Reported,
  { paint, most }: TextHow,
): string {
  if (files.length === 0 && findings.length === 0) return '';
  const shown = listed(findings, most, limits).map(
    (finding) => `${findingText(finding, { lines, paint })}\n\n`,
  );
  const more = findings.length - shown.length;
  return [
    ...shown,
    ...(showWaived ? waived.map((one) => `${waivedText(one, { lines, paint })}\n\n`) : []),
    more > 0 ? `${more} more ${more === 1 ? 'finding is' : 'findings are'} not shown.\n` : '',
    `${summaryText(findings, files.length)}${waivedCount(waived.length, showWaived)}${known > 0 ? ` ${known} known before ${known === 1 ? 'is' : 'are'} left out.` : ''}\n`,
    `${paint?.('margin', DEFERENCE) ?? DEFERENCE}\n`,
  ].join('');
}

/** What the text shows of the findings: `most` of them, or as many as the configurations say. */
function listed(
  findings: readonly Finding[],
  most: number | undefined,
  limits: Reported['limits'],
): readonly Finding[] {
  if (most !== undefined) return findings.slice(0, most);
  const perFile = new Map<string, number>();
  const shown: Finding[] = [];
  for (const finding of findings) {
    const limit = limits(finding.file);
    const count = (perFile.get(finding.file) ?? 0) + 1;
    perFile.set(finding.file, count);
    if (count <= limit.perFile && shown.length < limit.findings) shown.push(finding);
  }
  return shown;
}

function waivedText(
  { finding, reason }: Waived,
  how: { lines: Reported['lines']; paint: Painter | undefined },
): string {
  return findingText(
    { ...finding, message: `Waived: ${finding.message}`, help: `Waived because: ${reason}` },
    how,
  );
}

function waivedCount(count: number, shown: boolean): string {
  if (count === 0) return '';
  return ` ${count} ${count === 1 ? 'is' : 'are'} waived${shown ? '' : ' (--show-waived prints them)'}.`;
}
