/** The tables of the reference say what the data says: `npm run -s reference` writes them anew. */
import { expect, test } from 'vitest';
import { REFERENCE, textOf } from './examples.ts';
import { READINGS, reading } from './readings.ts';
import { TABLES, withTables } from './tables.ts';

const reference = textOf(REFERENCE);

test.each(Object.keys(TABLES))('%s', (name) => {
  const written = new RegExp(`<!-- ${name} -->\n\n([\\s\\S]*?)\n\n<!-- /${name} -->`).exec(reference)?.[1];
  expect(written, `the reference has no table “${name}”`).toBeDefined();
  expect(written!.split('\n')).toEqual(TABLES[name]!().split('\n'));
});

test('every marker of the reference is of a table that is made', () => {
  const markers = [...reference.matchAll(/<!-- \/?([a-z-]+) -->/g)].map(([, name]) => name!);
  expect(markers.filter((name) => !(name in TABLES))).toEqual([]);
  expect(markers.length).toBe(2 * Object.keys(TABLES).length);
});

test('writing the tables twice changes nothing more', () => {
  expect(withTables(withTables(reference))).toBe(withTables(reference));
});

test('a table that differs is seen', () => {
  const wrong = '<!-- hazards -->\n\n`damp`.\n\n<!-- /hazards -->';
  expect(withTables(wrong)).toBe(`<!-- hazards -->\n\n${TABLES.hazards!()}\n\n<!-- /hazards -->`);
  expect(withTables('<!-- remark -->\nstays\n<!-- /remark -->')).toContain('stays');
});

test('the readings are the decisions that the tests of the parser hold', () => {
  const tests = textOf('tests/grammar/parser/decisions.test.ts');
  const decided = [...tests.matchAll(/^ *it\('((?:[^'\\]|\\.)*)'/gm)].map(([, title]) => title!);
  expect(decided.length).toBeGreaterThan(30);
  expect(Object.keys(READINGS).sort()).toEqual(decided.sort());
});

test('a line that is said to be read is read without a problem, but for the one that shows a slip', () => {
  const slips = Object.values(READINGS)
    .flat()
    .filter((one) => reading(one).includes('and what is wrong is reported'));
  expect(slips.map(({ written }) => written)).toEqual(['remove cover,\nlock flywheel']);
});
