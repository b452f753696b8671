/**
 * Scales, repeats, findings and references as they are written: what is reported where, and what is left alone. Published
 * slips are named with their publication (US Government works); everyday writing is common practice, no source. Which
 * values a scale leaves out is also worked out a second way, by trying values one by one.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { mark, unmark } from '../../support/marked.ts';

const MACHINE = `machine rig "rig" {
  variant drive: belt, chain
  value least = 0.3 mm
  value most = 0.5 mm
  value reach = 2 bar
  part base "base" item 1 fixed
  part cover "cover" item 7 on base held by bolts
  part thin "thin shim" on base added
  part thick "thick shim" on base added
  fastener bolts "bolts" x2
  system air "air" pressure 10 bar
  table shims "Shims" { 0.1..0.2 mm: thin; over 0.2 mm: thick }
}
`;

const CHECKS: ReadonlySet<string> = new Set([
  'range-gap',
  'range-overlap',
  'range-impossible',
  'finding-without-action',
  'loop-cannot-end',
  'loop-without-limit',
  'loop-runs-out',
  'reference-wrong',
  'unit-wrong-kind',
  'unknown-name',
  'use-cycle',
  'tool-failure',
]);

function faults(text: string) {
  return checkTexts({ 'rig.dowel': text }, 'rig.dowel').findings.filter(({ check }) => CHECKS.has(check));
}

/** The names of the checks that report the statements of a procedure. */
function told(statements: string): string[] {
  return faults(`${MACHINE}procedure work "Work" for rig {\n${statements}\n}\n`).map(({ check }) => check);
}

/** What is said of the outcomes of one measurement. */
function said(outcomes: string): string[] {
  return faults(`${MACHINE}procedure work "Work" for rig {\nmeasure gap of cover { ${outcomes} }\n}\n`).map(
    ({ check, message }) => `${check}: ${message}`,
  );
}

function gap(holes: string): string[] {
  return [`range-gap: No outcome is for a reading ${holes}.`];
}

describe('scales that are right are left alone', () => {
  test.each([
    ['below 0.3 mm { } 0.3..0.5 mm { } over 0.5 mm { }'],
    ['up to 0.04 mm { } over 0.04 mm { }'],
    ['below 0.04 mm { } from 0.04 mm { }'],
    ['over 0.5 mm { } 0.3..0.5 mm { } below 0.3 mm { }'],
    // Neighbours that share an end.
    ['up to 0.1 mm { } 0.1..0.2 mm { } 0.2..0.3 mm { } from 0.3 mm { }'],
    // As fine as the numbers are written, nothing lies between.
    ['0.00..0.14 mm { } 0.15..0.19 mm { } over 0.19 mm { }'],
    ['0..3 { } from 4 { }'],
    ['0..3949 rpm { } 3950..4050 rpm { } over 4050 rpm { }'],
    // A scale that begins at zero.
    ['0..0.3 mm { } over 0.3 mm { }'],
    ['exactly 0 mm { } over 0 mm { }'],
    // A length below a surface, a temperature below zero.
    ['below -0.1 mm { } -0.1..0.1 mm { } over 0.1 mm { }'],
    ['below -5 °C { } from -5 °C { }'],
    // A charge is full at 100 %.
    ['below 80 % { } 80..100 % { }'],
    ['below 30 min { } from 1/2 h { }'],
    // The rounded conversion of an end is the same end: 0.05 in is 1.27 mm.
    ['up to 0.05 in { } over 1.27 mm { }'],
    ['up to 0.040 in { } over 1.02 mm { }'],
    // Words take the rest.
    ['over 0.5 mm { } otherwise { }'],
    ['0.3..0.5 mm { } unreadable { }'],
    ['tight { } loose { }'],
    // Declared values: 0.3 and 0.5 mm.
    ['below least { } 0.3..0.5 mm { } over most { }'],
    // 25 ± 3 N·m is 22 to 28 N·m.
    ['below 22 N·m { } 25 ± 3 N·m { } over 28 N·m { }'],
  ])('%s', (outcomes) => {
    expect(said(outcomes)).toEqual([]);
  });
});

describe('holes', () => {
  test.each([
    // Valve plate of the demo: at 0.04 mm itself nothing is said.
    ['below 0.04 mm { } over 0.04 mm { }', 'of exactly 0.04 mm'],
    // TM 55-1905-223-24-1, rod bolts, second measurement: nothing above the limit.
    ['below 0.0135 in { } 0.0135..0.0185 in { }', 'over 0.0185 in'],
    // The same, and nothing below it: what 12-1 leaves with “and” (TM 5-3805-261-34, 10-4).
    ['0.005..0.025 in { }', 'below 0.005 in and over 0.025 in'],
    ['below 0.3 mm { } over 0.5 mm { }', 'between 0.3 mm and 0.5 mm'],
    ['up to 0.14 mm { } over 0.15 mm { }', 'between 0.14 mm and 0.15 mm'],
    ['up to 3 { } over 4 { }', 'between 3 and 4'],
    ['1..3 { } from 4 { }', 'below 1'],
    ['over 0 mm { }', 'up to 0 mm'],
    ['below 5 min { }', 'of at least 5 min'],
    ['0..20 °C { } over 20 °C { }', 'below 0 °C'],
    ['below 80 % { } 80..90 % { }', 'over 90 %'],
    ['below least { } over most { }', 'between 0.3 mm and 0.5 mm'],
    ['up to 0.30 mm { } from 0.02 in { }', 'between 0.30 mm and 0.02 in'],
  ])('%s', (outcomes, holes) => {
    expect(said(outcomes)).toEqual(gap(holes));
  });

  test('are told at the measurement, without its outcomes', () => {
    const { text, ranges } = unmark(`${MACHINE}procedure work "Work" for rig {
  measure gap of cover as gap {
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^
    up to 0.3 mm { }
    over 0.5 mm { }
  }
}
`);
    expect(mark(text, faults(text))).toBe(mark(text, ranges));
  });

  test('are not told where something else is wrong with the same outcomes', () => {
    // A range that runs downwards has its own finding (TM 5-3805-261-34, 10-4, as printed).
    expect(told('measure total of cover { 0.025..0.005 in { } }')).toEqual([]);
    expect(told('measure gap of cover { below 0.3 mm { } over 0.5 bar { } }')).toEqual(['unit-wrong-kind']);
    expect(told('measure wait of cover { below 0 min { } over 5 min { } }')).toEqual(['range-impossible']);
  });
});

describe('overlaps', () => {
  test.each([
    ['below 0.3 mm { } 0.25..0.5 mm { } over 0.5 mm { }', '0.25..0.5 mm'],
    ['below 0.3 mm { } 0.3..0.5 mm { } over 0.4 mm { }', 'over 0.4 mm'],
    ['below 0.3 mm { } over 0.2 mm { }', 'over 0.2 mm'],
    ['up to 1.00 mm { } over 0.03 in { }', 'over 0.03 in'],
    ['up to 0.3 mm { } exactly 0.2 mm { } over 0.3 mm { }', 'exactly 0.2 mm'],
    ['up to 0.2 mm { } exactly 0.2 mm { } exactly 0.2 mm { } over 0.2 mm { }', 'exactly 0.2 mm'],
    ['below most { } from least { }', 'from least'],
    ['below 1 mm { } below 2 mm { } from 2 mm { }', 'below 2 mm'],
  ])('%s', (outcomes, second) => {
    const found = said(outcomes);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(/^range-overlap: /);
    expect(found[0]).toContain(`“${second}”`);
  });

  test('are still told where a word takes the rest', () => {
    expect(said('below 0.3 mm { } below 0.2 mm { } otherwise { }')[0]).toMatch(/^range-overlap: /);
  });
});

test('a scale is whole exactly where trying values one by one finds one outcome for each', () => {
  const end = fc.integer({ min: 0, max: 6 });
  const interval = fc.oneof(
    fc.tuple(fc.constantFrom('below', 'up to', 'from', 'over'), end).map(([bound, at]) => ({
      text: `${bound} ${at}.0 mm`,
      takes: (x: number) =>
        bound === 'below' ? x < at : bound === 'up to' ? x <= at : bound === 'from' ? x >= at : x > at,
      ends: [at],
      empty: bound === 'below' && at === 0,
    })),
    fc.tuple(end, end).map(([a, b]) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const takes = (x: number) => low <= x && x <= high;
      return { text: `${low}.0..${high}.0 mm`, takes, ends: [low, high], empty: false };
    }),
  );
  fc.assert(
    fc.property(fc.array(interval, { minLength: 1, maxLength: 4 }), (intervals) => {
      const outcomes = intervals.map(({ text }) => `${text} { }`).join(' ');
      const found = new Set(said(outcomes).map((message) => message.split(':')[0]));
      // Ends are whole: halves between them, and one beyond, stand for everything else.
      const readings = Array.from({ length: 15 }, (_, index) => index / 2);
      const takers = readings.map((x) => intervals.filter(({ takes }) => takes(x)).length);
      expect(found.has('range-gap')).toBe(takers.includes(0));
      const inside = [-0.5, ...readings].filter((x) => !Number.isInteger(x));
      const twice = inside.some((x) => intervals.filter(({ takes }) => takes(x)).length > 1);
      // A single value inside another stretch; at an end of it either will do.
      const points = intervals.filter(({ ends }) => ends.length === 2 && ends[0] === ends[1]);
      const pointInside = points.some((point) =>
        intervals.some(
          (other) =>
            other !== point &&
            (other.takes(point.ends[0]! - 0.5) || point.ends[0] === 0) &&
            other.takes(point.ends[0]!) &&
            other.takes(point.ends[0]! + 0.5),
        ),
      );
      if (twice) expect(found.has('range-overlap')).toBe(true);
      if (!twice && !pointInside && points.length < 2) expect(found.has('range-overlap')).toBe(false);
    }),
    { numRuns: 300 },
  );
});

describe('tables', () => {
  const table = (rows: string) =>
    faults(`${MACHINE.replace(/^ {2}table.*$/m, `  table shims "Shims" { ${rows} }`)}`).map(
      ({ check, message }) => `${check}: ${message}`,
    );

  test.each([
    // A table of shims ends where its shims do.
    ['0.10..0.14 mm: thin; 0.15..0.19 mm: thick'],
    ['from 0.1 mm: thin'],
    // Single sizes are a list, no scale.
    ['exactly 1 mm: thin; exactly 2 mm: thick'],
    ['up to 0.2 mm: 1.5 mm; over 0.2 mm: 1.4 mm'],
    ['below least: thin; from least: thick x2'],
  ])('%s', (rows) => {
    expect(table(rows)).toEqual([]);
  });

  test.each([
    [
      '0.1..0.2 mm: thin; 0.4..0.5 mm: thick',
      'range-gap: No row of the table is for a value between 0.2 mm and 0.4 mm.',
    ],
    [
      '0.1..0.3 mm: thin; 0.2..0.4 mm: thick',
      'range-overlap: The rows “0.1..0.3 mm” and “0.2..0.4 mm” of the table are for some of the same values.',
    ],
    ['up to 0.2 mm: thin; over 0.2 mm: thik', 'unknown-name: Nothing is called `thik`; did you mean `thin`?'],
    [
      'up to 0.2 mm: thin; over reach: thick',
      'unit-wrong-kind: The rows of a table are of one kind: reach is a pressure, and this place takes a length, as 0.2 mm is.',
    ],
  ])('%s', (rows, message) => {
    expect(table(rows)).toEqual([message]);
  });
});

describe('values of different kinds', () => {
  test.each([
    ['measure gap of cover as gap { up to 1 mm { } over 1 mm { } }\nrecord total = gap + 0.2 mm'],
    ['value wide = most * 2\nrecord total = wide - least'],
    ['record area = most * least\nrecord back = area / least + most'],
    ['measure gap of cover as gap { up to 1 mm { } over 1 mm { } }\nchoose thin from shims by gap'],
    // What is not known is not judged.
    ['measure gap of cover as gap\nrecord total = gap + 0.2 mm'],
    ['record total = average of most, least + 0.1 mm\nchoose thin from shims by total'],
  ])('alike: %s', (statements) => {
    expect(told(statements)).toEqual([]);
  });

  test.each([
    ['record total = most + reach', 'reach'],
    ['record total = most + 1 bar', '1 bar'],
    ['record total = larger of most, reach', 'reach'],
    ['value wide = most * 2\nrecord total = wide + reach', 'reach'],
    ['record area = most * least\nrecord back = area + most', 'most'],
    ['measure p of air as p { up to reach { } over reach { } }\nchoose thin from shims by p', 'p'],
    ['record p = reach * 2\nchoose thin from shims by p', 'p'],
    ['measure gap of cover { up to most { } over reach { } }', 'reach'],
  ])('not alike: %s', (statements, place) => {
    const text = `${MACHINE}procedure work "Work" for rig {\n${statements}\n}\n`;
    const found = faults(text);
    expect(found.map(({ check, start, end }) => [check, text.slice(start, end)])).toEqual([
      ['unit-wrong-kind', place],
    ]);
  });

  test('values of the machine file that lead round, and names that nothing declares', () => {
    const found = faults(`machine rig "rig" {
  value a = b + 1 mm
  value b = a - 1 mm
  value c = a * 2
  value d = missing + 1 mm
}
`);
    expect(found.map(({ check, message }) => `${check}: ${message}`)).toEqual([
      'use-cycle: The value `a` is computed from itself.',
      'use-cycle: The value `b` is computed from itself.',
      expect.stringMatching(/^unknown-name: No value is called `missing`/),
    ]);
  });
});

describe('conditions that can never hold', () => {
  test.each([
    // TM 5-3805-261-34, paragraph 10-4, step 16 (from the page: “less than 0.005 and more than 0.025”).
    ['if "the total is less than 0.005 in and more than 0.025 in" { clean cover }'],
    ['if "the gap is over 0.5 mm and below 0.3 mm" { clean cover }'],
    ['if "the gap is below 0.01 in and above 0.3 mm" { clean cover }'],
    ['clean cover "If the gap is less than 0.3 mm and greater than 0.5 mm."'],
    [
      'repeat until "the gap is less than 0.3 mm and more than 0.3 mm" at most 2 times { clean cover } otherwise { stop "No." }',
    ],
    ['if cover off and cover fitted { clean cover }'],
    ['if cover off and cover not off { clean cover }'],
    ['if drive is belt and drive is chain { clean cover }'],
    ['choice place: bench, machine\nif place is bench and place is not bench { clean cover }'],
  ])('%s', (statements) => {
    expect(told(statements)).toEqual(['range-impossible']);
  });

  test.each([
    ['if "the total is less than 0.005 in or more than 0.025 in" { clean cover }'],
    ['if "the gap is less than 0.5 mm and more than 0.3 mm" { clean cover }'],
    ['if "the gap is less than 0.3 mm and the play is more than 0.5 mm" { clean cover }'],
    ['if "the left one is less than 0.3 mm and the right one more than 0.5 mm" { clean cover }'],
    ['if "it weighs less than 3 kg and more than 0.5 mm stands out" { clean cover }'],
    ['if cover off and bolts off { clean cover }'],
    ['if cover not off and cover fitted { clean cover }'],
    ['if drive is belt or chain and drive is belt { clean cover }'],
    ['if bolts #1 off and bolts #2 fitted { clean cover }'],
  ])('left alone: %s', (statements) => {
    expect(told(statements)).toEqual([]);
  });
});

describe('findings nobody acts on', () => {
  test.each([
    // TM 5-3835-220-13&P, 6-4.9: the coupling is inspected for damage, and that is all.
    ['inspect cover for "damage"'],
    ['measure gap of cover'],
    ['check bolts at 20 N·m'],
    ['inspect cover for "damage"\nclean cover'],
    ['step "Look" { inspect cover for "damage" }\nclean cover'],
    // A branch about a variant is no answer.
    ['inspect cover for "damage"\nwhen drive is belt { clean cover }'],
  ])('told: %s', (statements) => {
    expect(told(statements)).toEqual(['finding-without-action']);
  });

  test.each([
    ['inspect cover for "damage" { sound { } damaged { stop "Renew it." } }'],
    ['inspect cover for "damage" expect "No cracks."'],
    ['inspect cover for "damage. Renew a cracked one."'],
    ['inspect cover for "damage"\nif "the cover is cracked" { stop "Renew it." }'],
    ['inspect cover for "damage"\nnote "Look closely."\nif "the cover is cracked" { stop "Renew it." }'],
    ['inspect cover for "damage"\ninspect base for "damage"\nif "one is cracked" { stop "Renew it." }'],
    ['step "Look" { inspect cover for "damage" }\nif "the cover is cracked" { stop "Renew it." }'],
    ['measure gap of cover as gap\nchoose thin from shims by gap'],
    ['measure gap of cover\nchoose thin "As thick as the gap."'],
    ['measure gap of cover\nadjust cover'],
    ['inspect cover for "damage"\nsign'],
    ['record gap of cover'],
    [
      'repeat until "no leak is seen" at most 3 times { inspect cover for "leaks" } otherwise { stop "Renew it." }',
    ],
  ])('left alone: %s', (statements) => {
    expect(told(statements)).toEqual([]);
  });
});

describe('repeats', () => {
  test.each([
    ['repeat until "it is dry" { clean cover }', 'loop-without-limit'],
    ['repeat until cover off { clean cover }', 'loop-without-limit'],
    ['repeat until "it is dry" at most 3 times { clean cover }', 'loop-runs-out'],
    ['repeat until drive is belt { clean cover }', 'loop-cannot-end'],
    [
      'choice place: bench, machine\nrepeat until place is bench at most 3 times { clean cover } otherwise { stop "No." }',
      'loop-cannot-end',
    ],
  ])('told: %s', (statements, check) => {
    expect(told(statements)).toEqual([check]);
  });

  test.each([
    ['repeat until "it is dry" at most 3 times { clean cover } otherwise { stop "Renew it." }'],
    ['repeat until "it is dry" { clean cover  if "it leaks" { stop "Renew it." } }'],
    [
      'repeat until look is dry at most 3 times { inspect cover as look { dry { } wet { } } } otherwise { stop "No." }',
    ],
    ['repeat until place is bench at most 2 times { choice place: bench, machine } otherwise { stop "No." }'],
  ])('left alone: %s', (statements) => {
    expect(told(statements)).toEqual([]);
  });

  test('half a repeat is only unfinished', () => {
    expect(told('repeat')).toEqual([]);
    expect(told('repeat until')).toEqual([]);
    expect(told('repeat { clean cover }')).toEqual([]);
  });
});

describe('references', () => {
  test.each([
    // TM 5-6115-545-12, 3-205 and 3-206: figure 3-39 when the guards come off, figure 3-29 when they go back.
    ['clean cover "Item 7, figure 3-39."\nmark cover "Item 7, figure 3-29."'],
    ['clean cover "(Item 9)"'],
    ['clean cover "Items 9 and 10, figure 2."'],
  ])('told: %s', (statements) => {
    expect(told(statements)).toEqual(['reference-wrong']);
  });

  test.each([
    ['clean cover "Item 7."'],
    ['clean cover "Items 7 and 8, figure 3-39."'],
    ['clean cover "Item 7, figure 3-39."\nmark base "Item 1, figure 3-29."'],
    ['clean cover "Leave the washer, item 9, on."'],
    ['clean cover "Item 9 stays on."'],
    ['clean thin "Item 9."'],
    ['clean cover, base "Item 9."'],
  ])('left alone: %s', (statements) => {
    expect(told(statements)).toEqual([]);
  });
});

test('names of what was written down may be used, and need not be', () => {
  const statements =
    'record total = most + 0.2 mm\nchoose thin from shims by total\nrecord rest = total - least';
  const text = `${MACHINE}procedure work "Work" for rig {\n${statements}\n}\n`;
  const { findings } = checkTexts({ 'rig.dowel': text }, 'rig.dowel');
  expect(findings.filter(({ check }) => /name/.test(check))).toEqual([]);
});
