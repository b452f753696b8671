/**
 * Sets of cases against plain sets: every operation of the decision diagram does to a list of all cases what
 * the set theory of textbooks says (union, intersection, complement, difference, projection). The outside
 * source is that definition, carried out here on lists of bits with no diagram in it; that equal sets are
 * equal nodes is the theorem on canonical form in Bryant, "Graph-based algorithms for Boolean function
 * manipulation" (1986), section 3.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CaseSet, Cases, EVERY, NONE } from '../../language-server/execution/cases.ts';

const SEED = 20_240_607;
const RUNS = 400;

/** A set written down as a formula, to be made both as a diagram and as a plain list of truth values. */
type Formula =
  | { is: 'one of'; axis: number; values: number[] }
  | { is: 'and' | 'or' | 'minus'; left: Formula; right: Formula }
  | { is: 'not'; of: Formula }
  | { is: 'forget'; axis: number; of: Formula }
  | { is: 'every' | 'none' };

interface Subject {
  /** How many values each axis has. */
  widths: number[];
  formula: Formula;
  other: Formula;
}

/** 2 to 5 axes with 2 to 4 values each: at most 1,024 cases. */
const subjects: fc.Arbitrary<Subject> = fc
  .array(fc.integer({ min: 2, max: 4 }), { minLength: 2, maxLength: 5 })
  .chain((widths) => fc.record({ widths: fc.constant(widths), formula: over(widths), other: over(widths) }));

function over(widths: readonly number[]): fc.Arbitrary<Formula> {
  const axes = fc.integer({ min: 0, max: widths.length - 1 });
  const oneOf: fc.Arbitrary<Formula> = axes.chain((axis) =>
    fc
      .uniqueArray(fc.integer({ min: 0, max: widths[axis]! - 1 }), { maxLength: widths[axis]! })
      .map((values) => ({ is: 'one of' as const, axis, values })),
  );
  const { tree } = fc.letrec<{ tree: Formula }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 5, depthSize: 'medium' },
      { weight: 3, arbitrary: oneOf },
      { weight: 1, arbitrary: fc.constantFrom<Formula>({ is: 'every' }, { is: 'none' }) },
      {
        weight: 6,
        arbitrary: fc.record({
          is: fc.constantFrom('and' as const, 'or' as const, 'minus' as const),
          left: tie('tree'),
          right: tie('tree'),
        }),
      },
      { weight: 2, arbitrary: fc.record({ is: fc.constant('not' as const), of: tie('tree') }) },
      {
        weight: 1,
        arbitrary: fc.record({ is: fc.constant('forget' as const), axis: axes, of: tie('tree') }),
      },
    ),
  }));
  return tree;
}

function diagramOf(cases: Cases, formula: Formula): CaseSet {
  switch (formula.is) {
    case 'every':
      return EVERY;
    case 'none':
      return NONE;
    case 'one of':
      return cases.oneOf(formula.axis, formula.values);
    case 'not':
      return cases.not(diagramOf(cases, formula.of));
    case 'forget':
      return cases.forget(diagramOf(cases, formula.of), formula.axis);
    default:
      return cases[formula.is](diagramOf(cases, formula.left), diagramOf(cases, formula.right));
  }
}

/** Every case there is, as a value for each axis. */
function allCases(widths: readonly number[]): number[][] {
  return widths.reduce<number[][]>(
    (all, width) => all.flatMap((one) => Array.from({ length: width }, (_, value) => [...one, value])),
    [[]],
  );
}

/** The truth table: for each case whether it is in the set. */
function tableOf(all: readonly number[][], formula: Formula): boolean[] {
  switch (formula.is) {
    case 'every':
      return all.map(() => true);
    case 'none':
      return all.map(() => false);
    case 'one of':
      return all.map((one) => formula.values.includes(one[formula.axis]!));
    case 'not':
      return tableOf(all, formula.of).map((member) => !member);
    case 'forget': {
      const members = tableOf(all, formula.of);
      const rest = (one: readonly number[]) => one.filter((_, axis) => axis !== formula.axis).join(' ');
      const kept = new Set(all.filter((_, index) => members[index]).map(rest));
      return all.map((one) => kept.has(rest(one)));
    }
    default: {
      const left = tableOf(all, formula.left);
      const right = tableOf(all, formula.right);
      if (formula.is === 'and') return left.map((member, index) => member && right[index]!);
      if (formula.is === 'or') return left.map((member, index) => member || right[index]!);
      return left.map((member, index) => member && !right[index]!);
    }
  }
}

function withAxes(widths: readonly number[]): Cases {
  const cases = new Cases();
  widths.forEach((width, axis) => {
    cases.axis(
      `axis ${axis}`,
      Array.from({ length: width }, (_, value) => `a${axis} is ${value}`),
    );
  });
  return cases;
}

/** Every choice of a value for some axes and none for the others, the shortest first. */
function partialCases(widths: readonly number[]): (number | undefined)[][] {
  const all = widths.reduce<(number | undefined)[][]>(
    (some, width) =>
      some.flatMap((one) =>
        [undefined, ...Array.from({ length: width }, (_, value) => value)].map((value) => [...one, value]),
      ),
    [[]],
  );
  const named = (one: readonly (number | undefined)[]) => one.filter((value) => value !== undefined).length;
  return all.sort((a, b) => named(a) - named(b));
}

describe('sets of cases', () => {
  it('hold exactly the cases that the truth table holds', () => {
    fc.assert(
      fc.property(subjects, ({ widths, formula }) => {
        const cases = withAxes(widths);
        const set = diagramOf(cases, formula);
        const all = allCases(widths);
        expect(all.map((one) => cases.holds(set, one))).toEqual(tableOf(all, formula));
        expect(cases.count(set)).toBe(tableOf(all, formula).filter(Boolean).length);
        expect(cases.overflowed).toBe(false);
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('are the same node where and only where their tables are the same', () => {
    let same = 0;
    fc.assert(
      fc.property(subjects, ({ widths, formula, other }) => {
        const cases = withAxes(widths);
        const all = allCases(widths);
        const [a, b] = [tableOf(all, formula), tableOf(all, other)];
        const equal = a.every((member, index) => member === b[index]);
        if (equal) same++;
        expect(diagramOf(cases, formula) === diagramOf(cases, other)).toBe(equal);
        expect(diagramOf(cases, formula) === NONE).toBe(!a.includes(true));
        expect(diagramOf(cases, formula) === EVERY).toBe(!a.includes(false));
      }),
      { seed: SEED, numRuns: RUNS },
    );
    // Both sides of "where and only where" were met.
    expect(same).toBeGreaterThan(10);
    expect(same).toBeLessThan(RUNS);
  });

  it('name as a case a member that no shorter one can stand for', () => {
    const lengths = new Set<number>();
    const small = subjects.filter(({ widths }) => widths.reduce((all, width) => all * (width + 1), 1) <= 700);
    fc.assert(
      fc.property(small, ({ widths, formula }) => {
        const cases = withAxes(widths);
        const set = diagramOf(cases, formula);
        const all = allCases(widths);
        const table = tableOf(all, formula);
        const named = cases.smallest(set);
        if (set === NONE) return;
        // Whatever the axes that are not named, it is a member.
        const agree = (one: readonly number[], partial: readonly (number | undefined)[]) =>
          partial.every((value, axis) => value === undefined || one[axis] === value);
        const inside = (partial: readonly (number | undefined)[]) =>
          all.every((one, index) => table[index] || !agree(one, partial));
        const mine = widths.map((_, axis) => named.find((pair) => pair.axis === axis)?.value);
        expect(inside(mine)).toBe(true);
        expect(named.map(({ axis }) => axis)).toEqual(
          [...new Set(named.map(({ axis }) => axis))].sort((a, b) => a - b),
        );
        lengths.add(named.length);
        const shortest = partialCases(widths).find(inside)!;
        expect(named.length).toBe(shortest.filter((value) => value !== undefined).length);
      }),
      { seed: SEED, numRuns: RUNS },
    );
    expect(lengths.size).toBeGreaterThan(2);
  });

  it('stay what they were when what came after a mark is forgotten', () => {
    fc.assert(
      fc.property(subjects, ({ widths, formula, other }) => {
        const cases = withAxes(widths);
        const all = allCases(widths);
        const before = diagramOf(cases, formula);
        const mark = cases.mark;
        diagramOf(cases, other);
        cases.rewind(mark);
        expect(cases.size).toBe(mark.nodes);
        expect(all.map((one) => cases.holds(before, one))).toEqual(tableOf(all, formula));
        // The same set made anew is the same node; another one is right, too.
        expect(diagramOf(cases, formula)).toBe(before);
        const again = diagramOf(cases, other);
        expect(all.map((one) => cases.holds(again, one))).toEqual(tableOf(all, other));
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('over the budget become larger, never smaller, and say so', () => {
    let overflows = 0;
    // Only what grows with its operands is asked: a complement of too much is too little.
    const growing = subjects.filter(({ formula }) => grows(formula));
    fc.assert(
      fc.property(growing, fc.integer({ min: 2, max: 12 }), ({ widths, formula }, budget) => {
        const cases = new Cases(budget);
        const exact = withAxes(widths);
        for (const { key, phrases } of exact.axes) cases.axis(key, phrases);
        const set = diagramOf(cases, formula);
        const all = allCases(widths);
        const table = tableOf(all, formula);
        if (cases.overflowed) overflows++;
        else expect(all.map((one) => cases.holds(set, one))).toEqual(table);
        all.forEach((one, index) => {
          if (table[index]) expect(cases.holds(set, one)).toBe(true);
        });
        expect(cases.size).toBeLessThanOrEqual(Math.max(budget, 2));
      }),
      { seed: SEED, numRuns: RUNS },
    );
    expect(overflows).toBeGreaterThan(10);
  });
});

function grows(formula: Formula): boolean {
  if (formula.is === 'not' || formula.is === 'minus') return false;
  if (formula.is === 'and' || formula.is === 'or') return grows(formula.left) && grows(formula.right);
  return formula.is === 'forget' ? grows(formula.of) : true;
}
