/** The JSON form: every demo against the committed schema with ajv (2020-12), and the schema against the types. */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { jsonFiles } from '../../../../language-server/publish/json/json.ts';
import { DOCUMENTS } from '../documents.ts';
import { procedureSchema, SCHEMA_FILE } from './write-schema.ts';

const committed = JSON.parse(readFileSync(SCHEMA_FILE, 'utf8')) as object;
const validate = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(committed);

test('the committed schema is what the types say: npm run -s reference writes it anew', () => {
  expect(committed).toEqual(JSON.parse(JSON.stringify(procedureSchema())));
});

test('every demo is valid, and nothing is lost on the way', () => {
  const files = jsonFiles(DOCUMENTS);
  expect(files.size).toBe(DOCUMENTS.length);
  expect(files.size).toBeGreaterThan(5);
  [...files.values()].forEach((text, index) => {
    const read = JSON.parse(text) as { procedure: unknown };
    expect(validate(read) ? [] : validate.errors).toEqual([]);
    expect(read.procedure).toEqual(DOCUMENTS[index]);
  });
});

test.each<[string, (file: { dowel: string; procedure: Record<string, unknown> }) => void]>([
  ['another kind of file', (file) => (file.dowel = 'machine')],
  ['a key that is not there', (file) => delete file.procedure.title],
  ['a key too many', (file) => (file.procedure.colour = 'red')],
  ['a version to come', (file) => (file.procedure.version = 2)],
  ['a step without a heading', (file) => (file.procedure.flow = [{ kind: 'step', id: 'a' }])],
])('the schema refuses %s', (_, spoil) => {
  const file = JSON.parse([...jsonFiles(DOCUMENTS).values()][0]!) as Parameters<typeof spoil>[0];
  expect(validate(file)).toBe(true);
  spoil(file);
  expect(validate(file)).toBe(false);
});

test('procedures of one name keep apart', () => {
  const [one] = DOCUMENTS;
  expect([...jsonFiles([one!, one!]).keys()]).toEqual([`${one!.id}.json`, `${one!.id}-2.json`]);
});
