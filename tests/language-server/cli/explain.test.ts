/** `dowel explain` against the one list of checks: whatever is in the list is listed and told. */
import { expect, test } from 'vitest';
import { ALL_CHECKS } from '../../../language-server/checks/all.ts';
import { EXPLAINED, listing, page } from '../../../language-server/cli/explain.ts';
import { dowel } from './dowel.ts';

test('lists every check once, below its group', () => {
  const { out, code } = dowel(['explain']);
  expect(code).toBe(0);
  // The list, and the findings that no example can show.
  expect(out.trimEnd()).toBe(listing(EXPLAINED).trimEnd());
  for (const { name, group } of ALL_CHECKS) {
    const rows = out.split('\n').filter((row) => row.trimStart().startsWith(`${name} `));
    expect(rows, name).toHaveLength(1);
    const above = out.slice(0, out.indexOf(rows[0]!)).split('\n');
    expect(above.filter((row) => row !== '' && !row.startsWith(' ')).at(-1), name).toBe(group);
  }
});

test('tells why, where from, and shows both examples', () => {
  for (const check of ALL_CHECKS) {
    const text = page(check);
    expect(text).toContain(check.title);
    expect(text).toContain(check.source);
    for (const line of [...check.bad.trim().split('\n'), ...check.good.trim().split('\n')])
      expect(text).toContain(line.trimEnd());
  }
});

test('an unknown name: exit code 2 and names that are near', () => {
  const { code, err } = dowel(['explain', 'still-hold']);
  expect(code).toBe(2);
  expect(err).toContain('still-held');
});

test('what no example can show is explained too', () => {
  for (const name of ['file-too-large', 'tool-failure']) {
    const { code, out } = dowel(['explain', name]);
    expect(code).toBe(0);
    expect(out).toContain('Source:');
    expect(out).not.toContain('Wrong:');
  }
});
