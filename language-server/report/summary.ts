/** The numbers of a report and the line that sums them up. */
import { type Finding, SEVERITIES, type Severity } from './finding.ts';

export interface Counts {
  findings: number;
  /** Files that have at least one finding. */
  filesWithFindings: number;
  of: Record<Severity, number>;
}

export function countsOf(findings: readonly Finding[]): Counts {
  const of: Record<Severity, number> = { error: 0, warning: 0, information: 0, hint: 0 };
  const files = new Set<string>();
  for (const finding of findings) {
    of[finding.severity]++;
    files.add(finding.file);
  }
  return { findings: findings.length, filesWithFindings: files.size, of };
}

/** `3 findings in 2 files: 2 errors, 1 warning; 12 files checked.` */
export function summaryText(findings: readonly Finding[], filesChecked: number): string {
  const checked = `${plural(filesChecked, 'file')} checked`;
  const counts = countsOf(findings);
  if (counts.findings === 0) return `No findings; ${checked}.`;
  const kinds = SEVERITIES.filter((severity) => counts.of[severity] > 0).map((severity) =>
    severity === 'information'
      ? `${counts.of.information} for information`
      : plural(counts.of[severity], severity),
  );
  return `${plural(counts.findings, 'finding')} in ${plural(counts.filesWithFindings, 'file')}: ${kinds.join(', ')}; ${checked}.`;
}

function plural(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
