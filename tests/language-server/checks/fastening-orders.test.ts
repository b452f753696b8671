/**
 * Orders of tightening in machine files and steps. Outside source: the printed cross patterns of ASME PCC-1
 * (tests/outside/bolt-patterns.csv); orders from the middle are common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { outside } from '../fastening/outside.ts';

const list = (numbers: readonly number[]) => numbers.map((each) => `#${each}`).join(', ');

function declared(clauses: string): string[] {
  return findings(`fastener bolts "cover bolts" ${clauses}`, '').map(({ check }) => check);
}

/** The steps after the cover was put on and its bolts were started by hand. */
function steps(clauses: string, ...lines: string[]): string[] {
  return findings(`fastener bolts "cover bolts" torque 20 N·m ${clauses}`, lines.join('\n  '))
    .filter(({ check }) => check.startsWith('order-'))
    .map(({ check }) => check);
}

function findings(fastener: string, lines: string) {
  const text = `machine rig "test rig" {
  part bed "bed" fixed
  part cover "cover" on bed held by bolts
  ${fastener}
}
${
  lines &&
  `procedure close "Close the rig" for rig starts with cover off {
  fit cover
  fit bolts by hand
  ${lines}
}`
}
`;
  const { findings: all } = checkTexts({ 'rig.dowel': text }, 'rig.dowel');
  // A slip in the example would keep everything else silent.
  expect(all.filter(({ check }) => /syntax|^unknown|^unit|malformed|failure/.test(check))).toEqual([]);
  return all;
}

describe('printed cross patterns are orders across', () => {
  const rows = outside('bolt-patterns.csv').filter((row) => row.seen_or_memory!.startsWith('SEEN'));
  test('there are six', () => expect(rows).toHaveLength(6));
  test.each(rows.map((row) => [row.bolts, row.sequence!.split(' ').map(Number)] as const))(
    '%s bolts',
    (count, order) => {
      const circle = `x${count} layout circle`;
      expect(declared(`${circle} order ${list(order)}`)).toEqual([]);
      expect(steps(`${circle} order across`, `tighten bolts in order ${list(order)}`)).toEqual([]);
      const inTurn = list(order.toSorted((a, b) => a - b));
      expect(declared(`${circle} order ${inTurn}`)).toEqual(['order-not-across']);
      expect(steps(circle, `tighten bolts in order ${inTurn}`)).toEqual(['order-not-across']);
      expect(steps(`${circle} order across`, `tighten bolts in order ${inTurn}`)).toEqual(['order-differs']);
      // Every slip of one position: one that comes twice, one that is missing.
      for (let at = 0; at < order.length; at++) {
        const twice = order.with(at, order[(at + 1) % order.length]!);
        expect(declared(`${circle} order ${list(twice)}`)).toEqual(['order-incomplete']);
        const missing = order.toSpliced(at, 1);
        expect(declared(`${circle} order ${list(missing)}`)).toEqual(['order-incomplete']);
        expect(steps(circle, `tighten bolts in order ${list(missing)}`)).toEqual(['order-incomplete']);
      }
    },
  );
});

describe('rows', () => {
  const six = 'x6 layout 2 rows of 3';
  test.each([
    ['middle pair first', '#2, #5, #1, #6, #3, #4'],
    ['spiral', '#5, #2, #3, #6, #4, #1'],
  ])('%s is from the middle', (_how, order) => {
    expect(declared(`${six} order ${order}`)).toEqual([]);
    expect(steps(`${six} order from the middle`, `tighten bolts in order ${order}`)).toEqual([]);
  });

  test('from one end is not', () => {
    expect(declared(`${six} order #1, #4, #2, #5, #3, #6`)).toEqual(['order-not-from-centre']);
    expect(steps(`${six} order from the middle`, 'tighten bolts in order #1, #4, #2, #5, #3, #6')).toEqual([
      'order-differs',
    ]);
  });

  test('numbers that may themselves be the order of tightening are not judged', () => {
    expect(declared(`${six} order #1..#6`)).toEqual([]);
    expect(declared(`x6 layout 2 rows of 3 #1 "in the middle of the upper row" order #1..#6`)).toEqual([]);
    expect(declared(`x6 layout 2 rows of 3 #1 "at the top left" order #1..#6`)).toEqual([
      'order-not-from-centre',
    ]);
  });

  test('places say where each one is', () => {
    const places = 'layout at 0 0, 100 0, 50 0, 0 40, 100 40, 50 40 mm';
    expect(declared(`x6 ${places} order #3, #6, #1, #5, #2, #4`)).toEqual([]);
    expect(declared(`x6 ${places} order #1..#6`)).toEqual(['order-not-from-centre']);
  });
});

describe('steps', () => {
  const four = 'x4 layout circle order #1, #3, #2, #4';
  test('loosening may go backwards, or otherwise', () => {
    const loosen = (order: string) =>
      steps(four, 'tighten bolts', `loosen bolts in order ${order}`, 'tighten bolts');
    expect(loosen('#4, #2, #3, #1')).toEqual([]);
    expect(loosen('#1, #2, #3, #4')).toEqual([]);
    expect(loosen('#1, #2, #3')).toEqual(['order-incomplete']);
    expect(steps(four, 'tighten bolts', 'loosen bolts in reverse order', 'tighten bolts')).toEqual([]);
  });

  test('a step repeats the declared order, or differs', () => {
    expect(steps(four, 'tighten bolts in order #1, #3, #2, #4')).toEqual([]);
    expect(steps(four, 'tighten bolts in order #1, #3, #4, #2')).toEqual(['order-differs']);
  });

  test('a last round in turn is usual after a round across', () => {
    const circle = 'x4 layout circle order across';
    const last = ['tighten bolts pass 50 %', 'tighten bolts pass 100 %', 'tighten bolts in turn'];
    expect(steps(circle, ...last)).toEqual([]);
    expect(steps(circle, 'tighten bolts in turn')).toEqual(['order-differs']);
  });

  test('some of a group are worked in an order of their own', () => {
    expect(steps(four, 'tighten bolts #1, #3 in order #3, #1', 'tighten bolts #2, #4')).toEqual([]);
    expect(steps(four, 'tighten bolts #1, #3 in order #3, #2', 'tighten bolts #2, #4')).toEqual([
      'order-incomplete',
    ]);
  });

  test('a loop over positions is not judged', () => {
    expect(steps(four, 'for each #n of bolts { tighten bolts #n }')).toEqual([]);
  });

  test('a group without a count can only name one twice', () => {
    expect(steps('layout circle', 'tighten bolts in order #1, #2, #3')).toEqual([]);
    expect(steps('layout circle', 'tighten bolts in order #1, #2, #1')).toEqual(['order-incomplete']);
  });
});

test('the sentences name the positions', () => {
  const said = (clauses: string) =>
    findings(`fastener bolts "cover bolts" ${clauses}`, '').map(({ message, help }) => `${message} ${help}`);
  expect(said('x4 layout circle order #1, #3, #3, #9')).toEqual([
    'The order of the cover bolts misses #2 and #4, names #3 twice and has #9, which the group does not have. Name every position once.',
  ]);
  expect(said('x4 layout circle order #1, #2, #3, #4')).toEqual([
    'The order of the cover bolts does not go across: #2 follows #1, and opposite #1 is #3. An order across is #1, #3, #2, #4; `order across` says the same.',
  ]);
});
