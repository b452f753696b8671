/** The tables of the reference say what the data says: `npm run -s reference` writes them anew. */
import { expect, test } from 'vitest';
import { REFERENCE, textOf } from './examples.ts';
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
