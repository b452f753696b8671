/**
 * The bench measures what it says only where every notation accepts the content and refuses a faulty one.
 * Judges: ajv for JSON, xmllint (where it is installed) for XML, the checker for Dowel.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../language-server/checks/check-project.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { folderWith } from '../language-server/cli/dowel.ts';
import { contentOf } from './content.ts';
import { inDowel } from './in-dowel.ts';
import { inJson, JSON_SCHEMA } from './in-json.ts';
import { inXml, SCHEMATRON, XML_SCHEMA } from './in-xml.ts';
import { lex } from './lex.ts';
import { growth, hasProgram, interleaved, quantile } from './measure.ts';

const content = contentOf({ steps: 500 });

test('has the steps that were asked for, and two parts for five of them', () => {
  const actions = content.tasks.flatMap((task) => task.groups.flatMap((group) => group.actions));
  expect(actions).toHaveLength(500);
  expect(content.parts).toHaveLength(200);
  expect(contentOf({ steps: 20_000 }).parts).toHaveLength(2000);
});

test('is silent in Dowel, and is not with one step left out', () => {
  const check = (text: string) => checkProject(memoryHost({ 'a.dowel': text }), ['a.dowel']).findings;
  const text = inDowel(content);
  expect(check(text)).toEqual([]);
  const faulty = check(text.replace('    refit cover-bolts-3\n', ''));
  expect(faulty.map((finding) => finding.check)).toEqual(['left-off']);
});

test('is right by its JSON Schema, and is not with a bad name', () => {
  const valid = new Ajv().compile(JSON_SCHEMA);
  expect(valid(JSON.parse(inJson(content)))).toBe(true);
  expect(valid(JSON.parse(inJson(content).replace('"ref": "cover-3"', '"ref": "Cover 3"')))).toBe(false);
});

describe.skipIf(!hasProgram('xmllint'))('in XML', () => {
  const lint = (xml: string, option: string, schema: string): number | null => {
    const folder = folderWith({ 'schema.xml': schema });
    writeFileSync(join(folder, 'a.xml'), xml);
    const args = ['--noout', option, join(folder, 'schema.xml'), join(folder, 'a.xml')];
    return spawnSync('xmllint', args).status;
  };
  const faulty = inXml(content).replace('<refit ref="cover-3"', '<refit ref="cover-x"');

  test('is right by its XML Schema, and is not with an unknown name', () => {
    expect(lint(inXml(content), '--schema', XML_SCHEMA)).toBe(0);
    expect(lint(faulty, '--schema', XML_SCHEMA)).toBe(3);
  });

  test('is right by its Schematron rules, and is not with a part left off', () => {
    expect(lint(inXml(content), '--schematron', SCHEMATRON)).toBe(0);
    expect(lint(faulty, '--schematron', SCHEMATRON)).toBe(3);
  });
});

test('the yardstick cuts the whole text', () => {
  expect(lex('remove cover-bolts "all four" // now\n')).toBe(8);
  const text = inDowel(content);
  expect(lex(text)).toBeGreaterThan(text.length / 10);
});

test('the arithmetic of the measuring', () => {
  // Quartiles by linear interpolation (type 7 of Hyndman and Fan 1996, from memory).
  expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
  expect(quantile([1, 2, 3, 4, 5], 0.25)).toBe(2);
  expect(growth({ size: 10, ms: 3 }, { size: 100, ms: 300 })).toBeCloseTo(2, 12);
  let calls = 0;
  const measured = interleaved([['a', () => calls++]], { rounds: 5, warmUp: 2 });
  expect(calls).toBe(7);
  expect(measured.a.ratio).toBe(1);
});
