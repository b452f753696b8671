/**
 * The JSON form. Judge of its shape: a JSON Schema (draft 2020-12 vocabulary) run by ajv, which knows
 * nothing of this project. The schema here is the promise: it may grow, a key in it may not change.
 */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import type { Finding } from '../../../language-server/report/finding.ts';
import { lineStore } from '../../../language-server/report/frame.ts';
import { jsonReport } from '../../../language-server/report/json.ts';

const point = {
  type: 'object',
  required: ['offset'],
  properties: {
    offset: { type: 'integer', minimum: 0 },
    line: { type: 'integer', minimum: 1 },
    column: { type: 'integer', minimum: 1 },
  },
  additionalProperties: false,
};
const range = { file: { type: 'string' }, start: point, end: point };
const count = { type: 'integer', minimum: 0 };
const schema = {
  type: 'object',
  required: ['schema', 'filesChecked', 'counts', 'findings', 'unread'],
  additionalProperties: false,
  properties: {
    schema: { const: 1 },
    filesChecked: count,
    counts: {
      type: 'object',
      required: ['error', 'warning', 'information', 'hint'],
      additionalProperties: false,
      properties: { error: count, warning: count, information: count, hint: count },
    },
    findings: {
      type: 'array',
      items: {
        type: 'object',
        required: ['check', 'severity', 'message', 'file', 'start', 'end', 'related', 'mends'],
        additionalProperties: false,
        properties: {
          check: { type: 'string' },
          severity: { enum: ['error', 'warning', 'information', 'hint'] },
          message: { type: 'string' },
          help: { type: 'string' },
          case: { type: 'string' },
          ...range,
          related: {
            type: 'array',
            items: {
              type: 'object',
              required: ['message', 'file', 'start', 'end'],
              additionalProperties: false,
              properties: { message: { type: 'string' }, ...range },
            },
          },
          mends: {
            type: 'array',
            items: {
              type: 'object',
              required: ['title', 'edits'],
              additionalProperties: false,
              properties: {
                title: { type: 'string' },
                edits: {
                  type: 'array',
                  items: {
                    type: 'object',
                    required: ['file', 'start', 'end', 'text'],
                    additionalProperties: false,
                    properties: { text: { type: 'string' }, ...range },
                  },
                },
              },
            },
          },
        },
      },
    },
    unread: {
      type: 'array',
      items: {
        type: 'object',
        required: ['file', 'reason'],
        additionalProperties: false,
        properties: { file: { type: 'string' }, reason: { type: 'string' } },
      },
    },
  },
};
const valid = new Ajv2020({ strict: true }).compile(schema);

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
