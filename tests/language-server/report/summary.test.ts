/** The line that sums a report up: its numbers must add up (plain counting, no source). */
import { expect, test } from 'vitest';
import type { Finding, Severity } from '../../../language-server/report/finding.ts';
import { countsOf, summaryText } from '../../../language-server/report/summary.ts';

const finding = (file: string, severity: Severity): Finding => ({
  check: 'covered',
  severity,
  message: '',
  file,
  start: 0,
  end: 0,
  related: [],
});

test('counts findings, files and severities', () => {
  const findings = [finding('a', 'error'), finding('b', 'error'), finding('a', 'warning')];
  expect(summaryText(findings, 12)).toBe('3 findings in 2 files: 2 errors, 1 warning; 12 files checked.');
  expect(countsOf(findings)).toEqual({
    findings: 3,
    filesWithFindings: 2,
    of: { error: 2, warning: 1, information: 0, hint: 0 },
  });
});

test('one of each, and none', () => {
  const each = [finding('a', 'hint'), finding('a', 'information')];
  expect(summaryText(each, 1)).toBe('2 findings in 1 file: 1 for information, 1 hint; 1 file checked.');
  expect(summaryText([], 1)).toBe('No findings; 1 file checked.');
});
