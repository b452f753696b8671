/**
 * The SARIF form. Judge of its shape: the published JSON Schema of SARIF 2.1.0 (OASIS), as the npm package
 * @microsoft/jest-sarif carries it, run by ajv.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { EXPLAINED } from '../../../language-server/cli/explain.ts';
import { mendsFor } from '../../../language-server/features/mend.ts';
import { fingerprintsOf } from '../../../language-server/report/fingerprint.ts';
import { lineStore } from '../../../language-server/report/frame.ts';
import { sarifReport } from '../../../language-server/report/sarif.ts';

const require = createRequire(import.meta.url);
const published = JSON.parse(
  readFileSync(
    `${require.resolve('@microsoft/jest-sarif/package.json').replace(/package\.json$/, '')}lib/schemas/sarif-2.1.0-rtm.5.json`,
    'utf8',
  ),
) as object;
// Formats are annotations in JSON Schema; the package of their own is not needed for the shape.
const valid = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile({
  ...published,
  $schema: undefined,
  id: undefined,
});

const text = `machine pump "Pump" {
  part body "body" fixed
  part cover "cover" on body
  fastener cover-bolts "cover bolts" x4  clamps cover to body
}

procedure look "Look inside"
  for pump
{
  loosen cover-bolts
  remove cover // ü 🔧
  fit cover
}
`;
const host = { read: (path: string) => (path === 'a b/ü.dowel' ? text : undefined), resolve: () => '' };
const lines = lineStore(host.read);

function report() {
  const found = checkProject(host, ['a b/ü.dowel']).findings;
  const findings = found.map((finding) => ({ ...finding, mends: mendsFor(host, finding.file, finding) }));
  return sarifReport({
    version: '1.2.3',
    rules: EXPLAINED,
    findings,
    fingerprints: fingerprintsOf(findings, lines),
    waived: [{ finding: findings[0]!, fingerprint: '0000000000000000', reason: 'a training rig' }],
    unread: [{ file: '/else/where.dowel', reason: 'no such file or folder' }],
    lines,
    // What is printed has no keys without a value.
  });
}

interface Log {
  runs: {
    results: {
      ruleId: string;
      ruleIndex: number;
      message: { text: string };
      locations: { physicalLocation: { artifactLocation: { uri: string }; region: { startLine: number } } }[];
      relatedLocations?: { message: { text: string } }[];
      codeFlows?: { threadFlows: { locations: unknown[] }[] }[];
      fixes?: { artifactChanges: { replacements: unknown[] }[] }[];
      suppressions?: { justification: string }[];
    }[];
    tool: { driver: { rules: { id: string }[] } };
    invocations: { executionSuccessful: boolean }[];
  }[];
}

test('follows the published schema', () => {
  const log: unknown = JSON.parse(JSON.stringify(report()));
  valid(log);
  expect(valid.errors).toBeNull();
});

test('tells the rule, the story, the mend, the waiver and what could not be read', () => {
  const [run] = (JSON.parse(JSON.stringify(report())) as Log).runs;
  const held = run!.results.find(({ ruleId }) => ruleId === 'still-held')!;
  expect(run!.tool.driver.rules[held.ruleIndex]!.id).toBe('still-held');
  expect(held.locations[0]!.physicalLocation.artifactLocation.uri).toBe('a%20b/%C3%BC.dowel');
  expect(held.locations[0]!.physicalLocation.region.startLine).toBe(11);
  expect(held.relatedLocations!.length).toBeGreaterThan(0);
  // The flow ends where the finding is.
  expect(held.codeFlows![0]!.threadFlows[0]!.locations).toHaveLength(held.relatedLocations!.length + 1);
  expect(held.fixes![0]!.artifactChanges[0]!.replacements.length).toBeGreaterThan(0);
  expect(run!.results.at(-1)!.suppressions).toMatchObject([{ justification: 'a training rig' }]);
  expect(run!.invocations[0]!.executionSuccessful).toBe(false);
});

test('every check that can be explained is a rule, once', () => {
  const [run] = (JSON.parse(JSON.stringify(report())) as Log).runs;
  const ids = run!.tool.driver.rules.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids).toContain('file-too-large');
});
