/** The state of one variable for several cases at once: entries, joined again where they are alike, saved and put back. */
import { describe, expect, test } from 'vitest';
import { Cases, EVERY, NONE } from '../../../language-server/execution/cases.ts';
import { alike, copied } from '../../../language-server/execution/memory.ts';
import { State, sameSaved } from '../../../language-server/execution/state.ts';

function two() {
  const cases = new Cases();
  const small = cases.oneOf(cases.axis('variant size', ['small', 'large']), [0]);
  const worn = cases.oneOf(cases.axis('seen worn', ['worn', 'not worn']), [0]);
  return { cases, small, worn, state: new State(4, cases, () => EVERY) };
}

describe('a variable', () => {
  test('is one value with its step, until it is another one in some cases', () => {
    const { state, small, cases } = two();
    expect(state.entries(1, EVERY)).toEqual([{ value: 0, cases: EVERY, since: -1, assumed: false }]);
    state.set(1, 3, EVERY, 7);
    expect(state.entries(1, EVERY)).toEqual([{ value: 3, cases: EVERY, since: 7, assumed: false }]);
    state.set(1, 4, small, 8, true);
    expect(state.entries(1, EVERY)).toEqual([
      { value: 3, cases: cases.not(small), since: 7, assumed: false },
      { value: 4, cases: small, since: 8, assumed: true },
    ]);
    expect(state.where(1, 1 << 4, EVERY)).toBe(small);
    expect(state.where(1, ~(1 << 4), EVERY)).toBe(cases.not(small));
    expect(state.entries(1, small)).toHaveLength(1);
    expect(state.isZero(1)).toBe(false);
    expect(state.isZero(0)).toBe(true);
  });

  test('joins what is alike: value, step, whether assumed', () => {
    const { state, small, worn, cases } = two();
    state.set(0, 2, small, 5);
    state.set(0, 2, worn, 5);
    expect(state.entries(0, EVERY)).toHaveLength(2);
    expect(state.where(0, 1 << 2, EVERY)).toBe(cases.or(small, worn));
    state.set(0, 2, cases.not(small), 6);
    // By another step it stays apart.
    expect(state.entries(0, EVERY).map(({ since }) => since)).toEqual([5, 6]);
    state.set(0, 2, small, 6);
    expect(state.entries(0, EVERY)).toEqual([{ value: 2, cases: EVERY, since: 6, assumed: false }]);
  });

  test('does nothing where its thing does not exist', () => {
    const { cases, small } = two();
    const state = new State(1, cases, () => small);
    state.set(0, 1, cases.not(small), 3);
    expect(state.isZero(0)).toBe(true);
    state.set(0, 1, EVERY, 3);
    expect(state.entries(0, EVERY)).toEqual([{ value: 1, cases: small, since: 3, assumed: false }]);
    expect(state.where(0, 1 << 1, EVERY)).toBe(small);
    expect(state.where(0, 1 << 0, EVERY)).toBe(NONE);
  });

  test('is put back as it was saved', () => {
    const { state, small } = two();
    state.set(0, 5, EVERY, 1_000_000, true);
    const whole = state.saved(0);
    state.set(0, 6, small, 9);
    const split = state.saved(0);
    state.set(0, 0, EVERY, 10);
    state.restore(0, split);
    expect(state.entries(0, small)).toEqual([{ value: 6, cases: small, since: 9, assumed: false }]);
    state.restore(0, whole);
    expect(state.entries(0, EVERY)).toEqual([{ value: 5, cases: EVERY, since: 1_000_000, assumed: true }]);
  });

  test('of which an axis is forgotten may be what it was on either side', () => {
    const { state, small } = two();
    state.set(0, 1, small, 2);
    state.set(1, 1, EVERY, 2);
    state.forget(0);
    expect(state.where(0, 1 << 1, EVERY)).toBe(EVERY);
    expect(state.where(0, 1 << 0, EVERY)).toBe(EVERY);
    expect(state.where(1, 1 << 0, EVERY)).toBe(NONE);
  });

  test('is settled: no step made it so', () => {
    const { state, small, cases } = two();
    state.set(0, 1, small, 2);
    state.set(0, 1, cases.not(small), 3);
    state.set(1, 1, small, 4, true);
    state.settle();
    expect(state.entries(0, EVERY)).toEqual([{ value: 1, cases: EVERY, since: -1, assumed: false }]);
    expect(state.entries(1, small)).toEqual([{ value: 1, cases: small, since: -1, assumed: true }]);
  });

  test('has no more entries than are told apart, and none is lost', () => {
    const cases = new Cases();
    const axis = cases.axis(
      'choice which',
      Array.from({ length: 60 }, (_, index) => `which is ${index}`),
    );
    const state = new State(1, cases, () => EVERY);
    for (let value = 0; value < 60; value++) state.set(0, 1, cases.oneOf(axis, [value]), value);
    const entries = state.entries(0, EVERY);
    expect(entries.length).toBeLessThan(40);
    expect(state.where(0, 1 << 1, EVERY)).toBe(EVERY);
    // What was so from the start is never taken together with what a step did.
    state.set(0, 0, cases.oneOf(axis, [0]), -1);
    expect(state.entries(0, EVERY).filter(({ since }) => since < 0)).toHaveLength(1);
  });
});

test('two states are equal where values are the same in the same cases, whoever made them so', () => {
  const { state, small, cases } = two();
  const other = state.copy();
  expect(state.equals(other)).toBe(true);
  other.set(0, 1, EVERY, 3);
  expect(state.equals(other)).toBe(false);
  state.set(0, 1, small, 4);
  expect(state.equals(other)).toBe(false);
  state.set(0, 1, cases.not(small), 5);
  expect(state.equals(other)).toBe(true);
  expect(other.equals(state)).toBe(true);
  state.set(2, 1, small, 5);
  other.set(2, 1, cases.not(small), 5);
  expect(state.equals(other)).toBe(false);
  // A copy goes its own way.
  const third = state.copy();
  third.set(3, 1, small, 6);
  expect(state.isZero(3)).toBe(true);
});

test('what was saved is the same or not', () => {
  const entry = { value: 1, cases: 3, since: 4, assumed: false };
  expect(sameSaved(12, 12)).toBe(true);
  expect(sameSaved(12, 13)).toBe(false);
  expect(sameSaved([entry], [{ ...entry }])).toBe(true);
  expect(sameSaved(12, [entry])).toBe(false);
  expect(sameSaved([entry], 12)).toBe(false);
  expect(sameSaved([entry], [entry, entry])).toBe(false);
  for (const other of [{ value: 2 }, { cases: 4 }, { since: 5 }, { assumed: true }])
    expect(sameSaved([entry], [{ ...entry, ...other }])).toBe(false);
});

describe('what is remembered', () => {
  const node = { kind: 'action', start: 4 };

  test.each([
    [1, 1, true],
    [1, 2, false],
    [null, {}, false],
    [undefined, null, false],
    [[1, 2], [1, 2], true],
    [[1, 2], [1], false],
    [[1], { 0: 1 }, false],
    [[1, 2], [2, 1], false],
    [{ a: 1, b: [2] }, { b: [2], a: 1 }, true],
    [{ a: 1 }, { a: 1, b: 2 }, false],
    [{ a: 1, b: 2 }, { a: 1 }, false],
    [{ a: undefined }, {}, false],
    [new Set([1, 2]), new Set([2, 1]), true],
    [new Set([1]), new Set([2]), false],
    [new Set([1]), new Set([1, 2]), false],
    [new Set([1]), [1], false],
    [node, node, true],
    // Nodes of the tree are the same only where they are one.
    [node, { ...node }, false],
    [{ ...node }, node, false],
    [{ of: { declaration: 1 } }, { of: { declaration: 1 } }, false],
    [{ hazard: 'hot', when: undefined }, { hazard: 'hot', when: undefined }, false],
    [{ kind: 'x' }, { kind: 'x' }, true],
    [{ start: 1 }, { start: 1 }, true],
  ])('%j and %j: %s', (a, b, same) => {
    expect(alike(a, b)).toBe(same);
  });

  test('is copied, but for what is itself', () => {
    const shared = { n: 1 };
    const from = { one: shared, two: [shared, node], three: null, four: 'x' };
    const copy = copied(from);
    expect(copy).toEqual(from);
    expect(copy.one).not.toBe(shared);
    // What was one object is one in the copy.
    expect(copy.two[0]).toBe(copy.one);
    expect(copy.two[1]).toBe(node);
  });
});

describe('axes', () => {
  test('are found again by their key, and it is noticed where they are asked for in other words', () => {
    const cases = new Cases();
    expect(cases.axis('seen a', ['a', 'not a'])).toBe(0);
    expect(cases.axis('seen b', ['b', 'not b'])).toBe(1);
    expect(cases.axis('seen a', ['a', 'not a'])).toBe(0);
    expect(cases.restated).toBe(false);
    expect(cases.axis('seen a', ['x', 'not a'])).toBe(0);
    expect(cases.restated).toBe(true);
    const longer = new Cases();
    longer.axis('seen a', ['a', 'not a']);
    longer.axis('seen a', ['a', 'not a', 'nobody looked']);
    expect(longer.restated).toBe(true);
  });

  test('are forgotten behind a mark', () => {
    const cases = new Cases();
    const a = cases.oneOf(cases.axis('a', ['yes', 'no']), [0]);
    const mark = cases.mark;
    const b = cases.oneOf(cases.axis('b', ['yes', 'no']), [0]);
    cases.and(a, b);
    cases.rewind(mark);
    expect(cases.axes.map(({ key }) => key)).toEqual(['a']);
    expect(cases.mark).toEqual(mark);
    const c = cases.oneOf(cases.axis('c', ['yes', 'no', 'perhaps']), [2]);
    expect(cases.count(cases.and(a, c))).toBe(1);
    expect(cases.count(cases.or(a, c))).toBe(4);
  });

  test('go on by themselves in a copy', () => {
    const cases = new Cases();
    const a = cases.oneOf(cases.axis('a', ['yes', 'no']), [0]);
    const copy = cases.copy();
    copy.axis('b', ['yes', 'no']);
    expect(cases.axes).toHaveLength(1);
    expect(copy.holds(a, [0])).toBe(true);
    expect(copy.holds(a, [1])).toBe(false);
    expect(copy.and(a, copy.not(a))).toBe(NONE);
  });

  test('too many nodes: the larger set is taken, and that is said', () => {
    const cases = new Cases(4);
    const sets = ['a', 'b', 'c', 'd'].map((key) => cases.oneOf(cases.axis(key, ['yes', 'no']), [0]));
    const all = sets.reduce((set, one) => cases.and(set, one), EVERY);
    expect(cases.overflowed).toBe(true);
    expect(all).not.toBe(NONE);
  });
});

describe('the shortest words for a set', () => {
  const cases = new Cases();
  const size = cases.axis('size', ['small', 'large']);
  const drive = cases.axis('drive', ['belt', 'chain', 'gear']);
  const worn = cases.axis('worn', ['worn', 'not worn']);
  const is = (axis: number, ...values: number[]) => cases.oneOf(axis, values);
  // No small one has a gear.
  const built = cases.minus(EVERY, cases.and(is(size, 0), is(drive, 2)));

  test.each([
    ['nothing for every case', EVERY, EVERY, []],
    ['nothing for all that is built', built, built, []],
    ['one word', is(drive, 1), EVERY, [{ axis: drive, value: 1 }]],
    [
      'two words',
      cases.and(is(size, 0), is(worn, 1)),
      EVERY,
      [
        { axis: size, value: 0 },
        { axis: worn, value: 1 },
      ],
    ],
    [
      'none for what is always so where it is built',
      cases.and(built, is(worn, 0)),
      built,
      [{ axis: worn, value: 0 }],
    ],
    [
      'never a case that is not built',
      cases.and(is(size, 0), is(drive, 1)),
      built,
      [
        { axis: size, value: 0 },
        { axis: drive, value: 1 },
      ],
    ],
    [
      'the shorter of two',
      cases.or(is(worn, 0), cases.and(is(size, 1), is(drive, 0))),
      EVERY,
      [{ axis: worn, value: 0 }],
    ],
  ] as const)('%s', (_, set, all, way) => {
    expect(cases.smallestWithin(set, all)).toEqual(way);
  });
});
