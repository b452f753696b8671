/**
 * What expressions come to. The values are those of published procedures (US Government works), read in public copies
 * of them; the readings between are invented and worked out by hand. Everything is exact: no rounding is allowed for.
 */
import { describe, expect, test } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import {
  exact,
  printReader,
  type Quantity,
  readQuantity,
  unitNamed,
} from '../../../grammar/quantity/index.ts';
import type { Expression, Table } from '../../../grammar/syntax/tree.ts';
import { holds, rowFor, stretchOf } from '../../../language-server/model/flow-ranges.ts';
import { evaluate, type Names, NO_NAMES } from '../../../language-server/model/values.ts';

function itemOf(source: string) {
  const parsed = parse(`machine m "M" {\n${source}\n}`);
  expect(parsed.problems).toEqual([]);
  const machine = parsed.tree.items[0];
  if (machine?.kind !== 'machine') throw new Error('no machine');
  return machine.items[0]!;
}

function expressionOf(text: string): Expression {
  const item = itemOf(`value v = ${text}`);
  if (item.kind !== 'value' || !item.expression) throw new Error('no value');
  return item.expression;
}

function tableOf(rows: string): Table {
  const item = itemOf(`table t "T" {\n${rows}\n}`);
  if (item.kind !== 'table') throw new Error('no table');
  return item;
}

function quantity(text: string): Quantity {
  const outcome = readQuantity(text);
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
}

/** Names that stand for quantities or, where the text is no quantity, for expressions. */
function named(values: Readonly<Record<string, string>>): Names {
  return (name) => {
    const text = values[name];
    if (text === undefined) return undefined;
    const outcome = readQuantity(text);
    return outcome.ok ? outcome.value : expressionOf(text);
  };
}

function worth(text: string, names: Names = NO_NAMES): string {
  const outcome = evaluate(expressionOf(text), names);
  return outcome.ok ? printReader(outcome.value) : outcome.problem.code;
}

describe('published calculations', () => {
  // US Army TM 5-3805-261-34, paragraph 10-4, step 16: feeler readings at four bolts, their average, plus 0.008 in.
  // The readings are invented: (0.010 + 0.012 + 0.011 + 0.009) / 4 = 0.0105.
  const readings = named({ a: '0.010 in', b: '0.012 in', c: '0.011 in', d: '0.009 in' });

  test('case 12: the shims are the average of the readings and 0.008 in', () => {
    expect(worth('average of a, b, c, d + 0.008 in', readings)).toBe('0.0185 in');
    expect(worth('0.008 in + average of a, b, c, d', readings)).toBe('0.0185 in');
  });

  test('case 12: the same total in another unit of length is the same total', () => {
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959): 0.0185 in = 0.4699 mm.
    const metric = named({ a: '0.254 mm', b: '0.012 in', c: '0.2794 mm', d: '0.009 in' });
    expect(worth('average of a, b, c, d + 0.2032 mm', metric)).toBe('0.4699 mm');
  });

  test('case 12: the total is within 0.005 to 0.025 in, or the shims are shared out', () => {
    const table = tableOf('below 0.005 in: shared\n0.005..0.025 in: own\nover 0.025 in: shared');
    const row = (total: string) => {
      const found = rowFor(table, quantity(total))?.gives[0];
      return found?.kind === 'name' ? found.ref.name.text : undefined;
    };
    expect(['0.0185 in', '0.005 in', '0.025 in', '0.635 mm'].map(row)).toEqual(['own', 'own', 'own', 'own']);
    expect(['0.0049 in', '0.0251 in', '0.6351 mm'].map(row)).toEqual(['shared', 'shared', 'shared']);
  });

  test('case 12: no stack of the two shims is exactly 0.005, 0.008 or 0.015 in', () => {
    // The shims are 0.00473 and 0.00197 in on the page (0.120 and 0.050 mm).
    for (const wanted of ['0.005 in', '0.008 in', '0.015 in']) {
      for (let thick = 0; thick <= 4; thick++) {
        for (let thin = 0; thin <= 8; thin++) {
          expect(worth(`0.00473 in * ${thick} + 0.00197 in * ${thin}`)).not.toBe(wanted);
        }
      }
    }
    expect(worth('0.00473 in * 1 + 0.00197 in * 2')).toBe('0.00867 in');
  });

  // US Army TM 55-1905-223-24-1, pages 3-87 ff, step 12: stretch = tight - zero, 0.0135 to 0.0185 in (0.343 to 0.470 mm).
  test('case 02: the stretch of a rod bolt is its tight reading less its zero', () => {
    const bolt = (zero: string, tight: string) => {
      const outcome = evaluate(expressionOf('tight - zero'), named({ zero, tight }));
      if (!outcome.ok) throw new Error(outcome.problem.message);
      const limits = tableOf('0.0135..0.0185 in: good').rows[0]!.interval;
      return holds(stretchOf(limits, NO_NAMES)!, outcome.value);
    };
    expect(bolt('0.050 in', '0.0635 in')).toBe(true);
    expect(bolt('0.050 in', '0.0685 in')).toBe(true);
    expect(bolt('0.050 in', '0.0634 in')).toBe(false);
    expect(bolt('0.050 in', '0.0686 in')).toBe(false);
    // A dial gauge in millimetres beside limits in inches: 0.0135 in = 0.3429 mm.
    expect(bolt('1.270 mm', '1.6129 mm')).toBe(true);
    expect(bolt('1.270 mm', '1.6128 mm')).toBe(false);
  });

  test('case 02: the difference that binary fractions get wrong is exact', () => {
    // 0.0635 - 0.050 is 0.013499999999999998 in IEEE 754 double precision, which is below the limit.
    expect(0.0635 - 0.05).toBeLessThan(0.0135);
    expect(worth('0.0635 in - 0.050 in')).toBe('0.0135 in');
  });
});

describe('operations', () => {
  test.each([
    ['(0.2 mm + 0.4 mm) / 2', '0.3 mm'],
    ['2 * 0.05 mm + 0.1 mm', '0.2 mm'],
    ['12 in - 1 ft', '0 in'],
    ['1.5 kN * 0.2 m', '300 N·m'],
    ['larger of 0.4 mm, 0.01 in', '0.4 mm'],
    ['smaller of 0.4 mm, 0.01 in', '0.254 mm'],
    ['sum of 0.1 mm, 0.2 mm, 0.3 mm', '0.6 mm'],
    ['average of 20 °C, 68 °F', '20 °C'],
    ['average of 10 °C, 30 °C', '20 °C'],
    ['1 h 30 min - 90 min', '0 min'],
    ['average of 0.1..0.2 mm, 0.3..0.4 mm', '0.2 to 0.3 mm'],
    ['larger of 0.1..0.4 mm, 0.2..0.3 mm', '0.2 to 0.4 mm'],
  ])('%s is %s', (text, value) => {
    expect(worth(text)).toBe(value);
  });

  test('a third is a third: nothing is rounded on the way', () => {
    const outcome = evaluate(expressionOf('(1 mm / 3) * 3'));
    expect(outcome.ok && exact.equal(outcome.value.nominal!, exact.rational(1))).toBe(true);
    expect(outcome.ok && outcome.value.unit).toBe(unitNamed('mm'));
  });

  test('names stand for values that are computed from others', () => {
    const names = named({ gap: '0.3 mm', total: 'gap + 0.2 mm', half: 'total / 2' });
    expect(worth('half', names)).toBe('0.25 mm');
  });
});

describe('what cannot be worked out is a problem with its place', () => {
  test.each([
    ['gap + 1 mm', 'unknown-value'],
    ['a', 'circular-value'],
    ['1 mm + 1 bar', 'unit-wrong-kind'],
    ['1 mm / 0', 'division-by-zero'],
    ['20 °C + 20 °C', 'temperature-reading'],
    ['sum of 20 °C, 20 °C', 'temperature-reading'],
    ['average of 1 mm, 2 bar', 'unit-wrong-kind'],
    ['middle of 1 mm, 2 mm', 'unknown-function'],
    ['larger of 1 mm, open', 'open-ended'],
  ])('%s: %s', (text, code) => {
    expect(worth(text, named({ a: 'b + 1 mm', b: 'a - 1 mm', open: 'at least 2 mm' }))).toBe(code);
  });

  test('the name that leads round, and where it stands', () => {
    const expression = expressionOf('1 mm + a');
    const outcome = evaluate(expression, named({ a: 'b', b: 'a' }));
    expect(outcome.ok ? undefined : outcome.problem.name).toBe('a');
    const unknown = evaluate(expression);
    expect(unknown.ok || unknown.problem.at.start > expression.start).toBe(true);
  });

  test('a long chain of names ends', () => {
    const names: Names = (name) => expressionOf(`v${Number(name.slice(1)) + 1} + 1 mm`);
    expect(worth('v0', names)).toBe('unknown-value');
  });
});

describe('the row of a table', () => {
  const table = tableOf('0.10..0.20 mm: 1 mm\nover 0.20 mm: 2 mm\nexactly 0.05 mm: 3 mm');
  test.each([
    ['0.10 mm', 0],
    ['0.20 mm', 0],
    ['0.2001 mm', 1],
    ['0.05 mm', 2],
    ['0.06 mm', undefined],
    ['0.15 bar', undefined],
    ['0.0059055 in', 0],
  ])('%s: %s', (value, index) => {
    const row = rowFor(table, quantity(value));
    expect(row && table.rows.indexOf(row)).toBe(index);
  });

  test('a value with a tolerance belongs to a row only as a whole', () => {
    expect(rowFor(table, quantity('0.15 ± 0.02 mm'))).toBe(table.rows[0]);
    expect(rowFor(table, quantity('0.19 ± 0.02 mm'))).toBeUndefined();
  });
});
