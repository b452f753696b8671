/** The reader of expectations, against texts written for it. */
import { expect, test } from 'vitest';
import { expectations, lineOf } from './expected.ts';

test('several expectations on a line, of several sorts', () => {
  const read = expectations({
    a: 'remove fan\nfit fan  // finds: left-off (01-1), covered (01-12)  // later: torque-missing (01-6)\n',
  });
  expect(read.finds).toEqual([
    { file: 'a', line: 2, check: 'left-off', flaw: '01-1' },
    { file: 'a', line: 2, check: 'covered', flaw: '01-12' },
  ]);
  expect(read.later).toEqual([{ file: 'a', line: 2, check: 'torque-missing', flaw: '01-6' }]);
  expect(read.unreadable).toEqual([]);
});

test('what cannot be read as an expectation is told, and plain comments are none', () => {
  const read = expectations({
    a: '// finds its way\nfit fan  // finds: left-off 01-1\n// later: Covered (01-2)',
  });
  expect(read.finds).toEqual([]);
  expect(read.unreadable).toEqual(['a:2: left-off 01-1', 'a:3: Covered (01-2)']);
});

test('lines are counted from 1', () => {
  expect([0, 1, 2, 3].map((offset) => lineOf('a\nb\n', offset))).toEqual([1, 1, 2, 2]);
});
