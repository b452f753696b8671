/**
 * Findings as JUnit XML, the form that nearly every CI service shows as test results: a suite for each file that was
 * checked, a failed case for each finding that counts, a passed one for a file with none. Findings too mild to fail the
 * run are told in `system-out`. There is no standard of this form; the elements and attributes are those that its
 * readers share.
 */
import { DEFERENCE } from './deference.ts';
import { type Finding, SEVERITIES, type Severity } from './finding.ts';
import type { Unread } from './json.ts';
import type { Lines } from './positions.ts';

export interface JUnitInput {
  findings: readonly Finding[];
  /** Names of the files that were checked, in the order of the report. */
  files: readonly string[];
  unread: readonly Unread[];
  /** The mildest severity that fails the run. */
  severity: Severity;
  lines(file: string): Lines | undefined;
}

export function junitReport(input: JUnitInput): string {
  const limit = SEVERITIES.indexOf(input.severity);
  const files = [...new Set([...input.files, ...input.findings.map(({ file }) => file)])];
  const suites = files.map((file) => {
    const of = input.findings.filter((finding) => finding.file === file);
    const failing = of.filter(({ severity }) => SEVERITIES.indexOf(severity) <= limit);
    const mild = of.filter((finding) => !failing.includes(finding));
    const cases =
      failing.length > 0
        ? failing.map((finding) => failed(finding, input))
        : [`    <testcase classname="${attribute(file)}" name="check"/>`];
    const out =
      mild.length > 0
        ? [
            `    <system-out>${content(mild.map((one) => `${where(one, input)}: ${told(one)}`).join('\n'))}</system-out>`,
          ]
        : [];
    return suite(file, { tests: cases.length, failures: failing.length, errors: 0 }, [...cases, ...out]);
  });
  const unread = input.unread.map(({ file, reason }) =>
    suite(file, { tests: 1, failures: 0, errors: 1 }, [
      `    <testcase classname="${attribute(file)}" name="check">`,
      `      <error message="${attribute(`Cannot check ${file}: ${reason}.`)}"/>`,
      '    </testcase>',
    ]),
  );
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<testsuites name="dowel check">',
    ...suites,
    ...unread,
    '</testsuites>',
    '',
  ].join('\n');
}

function suite(
  name: string,
  counts: { tests: number; failures: number; errors: number },
  inside: string[],
): string {
  const { tests, failures, errors } = counts;
  return [
    `  <testsuite name="${attribute(name)}" tests="${tests}" failures="${failures}" errors="${errors}" skipped="0" time="0">`,
    `    <properties><property name="caution" value="${attribute(DEFERENCE)}"/></properties>`,
    ...inside,
    '  </testsuite>',
  ].join('\n');
}

function failed(finding: Finding, input: JUnitInput): string {
  const story = finding.related.map((one) => `${where(one, input)}: ${one.message}`);
  const body = [`${where(finding, input)}: ${told(finding)}`, ...story].join('\n');
  return [
    `    <testcase classname="${attribute(finding.file)}" name="${attribute(`${finding.check} at ${where(finding, input)}`)}">`,
    `      <failure type="${attribute(finding.check)}" message="${attribute(finding.message)}">${content(body)}</failure>`,
    '    </testcase>',
  ].join('\n');
}

function told({ severity, check, message, case: named, help }: Finding): string {
  return [`${severity} ${check}: ${message}`, named === undefined ? '' : `Case: ${named}.`, help ?? '']
    .filter((one) => one !== '')
    .join(' ');
}

function where({ file, start }: { file: string; start: number }, input: JUnitInput): string {
  const lines = input.lines(file);
  if (lines === undefined) return file;
  const { line, column } = lines.at(start);
  return `${file}:${line + 1}:${column + 1}`;
}

/** XML 1.0 (W3C) has no way to write most control characters and lone surrogates: they become U+FFFD. */
function allowed(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
}

function attribute(text: string): string {
  return allowed(text)
    .replaceAll('"', '&quot;')
    .replace(/[\t\n\r]/g, (one) => `&#${one.charCodeAt(0)};`);
}

function content(text: string): string {
  return allowed(text).replaceAll('\r', '&#13;');
}
