/**
 * The JSON form. Judge of its shape: a JSON Schema (draft 2020-12 vocabulary) run by ajv, which knows
 * nothing of this project. The published schema is the promise: it may grow, a key in it may not change.
 */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import type { Finding } from '../../../language-server/report/finding.ts';
import { lineStore } from '../../../language-server/report/frame.ts';
import { jsonReport } from '../../../language-server/report/json.ts';

/** The published schema lets new keys come; here each key that is printed must stand in it. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== 'object' || schema === null) return schema;
  const inside = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  return 'properties' in schema ? { ...inside, additionalProperties: false } : inside;
}
const schema = JSON.parse(
  readFileSync(new URL('../../../language-server/report/report.schema.json', import.meta.url), 'utf8'),
) as object;
const valid = new Ajv2020({ strict: true }).compile(closed(schema) as object);

const text = 'loosen bolts\r\nremove 🔧 cover\n';
const full: Finding = {
  check: 'still-held',
  severity: 'error',
  message: 'cover is removed while bolts hold it.',
  help: 'Remove bolts first.',
  case: 'supply is single-phase',
  file: 'pump.dowel',
  start: 24,
  end: 29,
  related: [
    { file: 'pump.dowel', start: 7, end: 12, message: 'only loosened here' },
    { file: 'gone.dowel', start: 3, end: 4, message: 'declared here' },
  ],
  mends: [
    { title: 'Remove bolts', edits: [{ file: 'pump.dowel', start: 14, end: 14, text: 'remove bolts\n' }] },
  ],
};
const bare: Finding = { ...full, related: [], mends: undefined, help: undefined, case: undefined };
const lines = lineStore((file) => (file === 'pump.dowel' ? text : undefined));

test('follows the schema, with everything and with the least', () => {
  const report = jsonReport({
    findings: [full, bare],
    fingerprints: ['0123456789abcdef', 'fedcba9876543210'],
    files: 2,
    unread: [{ file: 'x.dowel', reason: 'no such file or folder' }],
    lines,
  });
  // What other programs read is the printed form, in which keys without a value are not there.
  valid(JSON.parse(JSON.stringify(report)));
  expect(valid.errors).toBeNull();
});

test('counts lines and columns from 1, columns and offsets in UTF-16 units', () => {
  const [finding] = jsonReport({ findings: [full], files: 1, unread: [], lines }).findings;
  // Line 2 begins at 14; `remove ` is 7 units, the emoji 2, a blank 1: column 11 of line 2.
  expect(finding!.start).toEqual({ offset: 24, line: 2, column: 11 });
  expect(finding!.end).toEqual({ offset: 29, line: 2, column: 16 });
  expect(finding!.related[1]!.start).toEqual({ offset: 3 });
});

test('the same findings give the same bytes', () => {
  const print = () => JSON.stringify(jsonReport({ findings: [full, bare], files: 1, unread: [], lines }));
  expect(print()).toBe(print());
});
