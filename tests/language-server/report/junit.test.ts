/**
 * The JUnit form. Judge of well-formedness: a general XML parser (xml2js). What its readers need (suites, cases,
 * failures, counts that add up) is common practice, no source: there is no standard of this form.
 */
import { expect, test } from 'vitest';
import { parseStringPromise } from 'xml2js';
import type { Finding } from '../../../language-server/report/finding.ts';
import { lineStore } from '../../../language-server/report/frame.ts';
import { junitReport } from '../../../language-server/report/junit.ts';

const nasty = 'a < b & "c" \u0001 \ud800 ]]> 🔧';
const finding: Finding = {
  check: 'still-held',
  severity: 'error',
  message: nasty,
  help: 'Remove bolts first.',
  file: 'a.dowel',
  start: 7,
  end: 12,
  related: [{ file: 'a.dowel', start: 0, end: 6, message: 'here' }],
};
const mild: Finding = { ...finding, severity: 'hint', check: 'vague-word', message: 'vague' };

interface Suite {
  $: { name: string; tests: string; failures: string; errors: string };
  testcase: { $: { name: string }; failure?: { _: string; $: { message: string } }[]; error?: unknown[] }[];
  'system-out'?: string[];
}

async function suites(findings: Finding[]): Promise<Suite[]> {
  const xml = junitReport({
    findings,
    files: ['a.dowel', 'b.dowel'],
    unread: [{ file: 'gone.dowel', reason: 'no such file or folder' }],
    severity: 'warning',
    lines: lineStore((file) => (file === 'a.dowel' ? 'remove cover\n' : undefined)),
  });
  const read = (await parseStringPromise(xml, { strict: true })) as { testsuites: { testsuite: Suite[] } };
  return read.testsuites.testsuite;
}

test('a suite a file, a failed case a finding, a passed one where there is none', async () => {
  const [a, b, gone] = await suites([finding, mild]);
  expect(a!.$).toMatchObject({ name: 'a.dowel', tests: '1', failures: '1', errors: '0' });
  expect(a!.testcase[0]!.$.name).toBe('still-held at a.dowel:1:8');
  expect(a!.testcase[0]!.failure![0]!._).toContain('a.dowel:1:1: here');
  expect(a!['system-out']![0]).toContain('vague');
  expect(b!.$).toMatchObject({ name: 'b.dowel', tests: '1', failures: '0' });
  expect(b!.testcase[0]!.failure).toBeUndefined();
  expect(gone!.$).toMatchObject({ tests: '1', errors: '1' });
});

test('text that XML cannot hold comes out as the replacement character', async () => {
  const [a] = await suites([finding]);
  expect(a!.testcase[0]!.failure![0]!.$.message).toBe('a < b & "c" \ufffd \ufffd ]]> 🔧');
});
