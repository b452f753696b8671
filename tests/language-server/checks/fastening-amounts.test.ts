/**
 * Amounts in steps and sentences against what a system holds. Common practice, no source; factors between units after
 * NIST SP 811. Also: the checks on fastening data read any text without failing.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ALL_CHECKS } from '../../../language-server/checks/all.ts';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { unmark } from '../../support/marked.ts';

function found(line: string, holds = 'holds 6.5 L'): string[] {
  const text = `machine engine "barge engine" {
  part block "engine block" fixed
  part cap "filler cap" on block
  part plug "drain plug" on block
  fluid oil "engine oil"
  system sump "lubricating oil" ${holds} drained at plug filled at cap
  system cooling "coolant" holds 12 L drained at plug filled at cap
}
procedure change-oil "Change the oil" for engine supplies 8 L oil {
  drain sump, cooling
  ${line.startsWith('fill sump') ? 'fill cooling' : 'fill sump, cooling'}
  ${line}
}
`;
  const { findings } = checkTexts({ 'a.dowel': text }, 'a.dowel');
  expect(findings.filter(({ check }) => /syntax|^unknown|^unit|failure/.test(check))).toEqual([]);
  return findings
    .filter(({ check }) => check === 'quantity-differs')
    .map(({ start, end }) => text.slice(start, end));
}

describe('more than the system holds', () => {
  test.each([
    ['fill sump with 8 L oil', '8 L'],
    ['fill sump "Pour in 8 L."', '8 L'],
    ['fill sump "Pour in 6 L (9 L after a rebuild)."', '9 L'],
    ['top up sump "Pour in 65 L."', '65 L'],
    ['fill sump with 3 US-gal oil', '3 US-gal'],
  ])('%s', (line, at) => {
    expect(found(line)).toEqual([at]);
  });
});

describe('not more', () => {
  test.each([
    'fill sump',
    'fill sump with 6.5 L oil',
    'fill sump with 4 L oil',
    'fill sump "Pour in 6 L from a 20 L drum."',
    'fill sump "Never more than 8 L."',
    'fill sump "Catch the old 8 L in a pan."',
    'fill sump "It takes 10 min at 20 °C."',
    'fill sump "About 7 L."',
    'inspect sump for "8 L on the dipstick"',
  ])('%s', (line) => {
    expect(found(line)).toEqual([]);
  });

  test('a service takes more or less than it holds', () => {
    expect(found('fill sump with 8 L oil', 'holds 6.5 L service fill 8 L')).toEqual([]);
    expect(found('fill sump with 6 L oil', 'holds 6.5 L service fill 5 L')).toEqual([]);
  });

  test('what is not declared is not compared', () => {
    expect(found('fill sump with 8 L oil', 'holds oil')).toEqual([]);
  });
});

test('no text makes the checks on fasteners fail', () => {
  const samples = ALL_CHECKS.filter(({ group }) => group === 'Fastening').map(({ bad }) => unmark(bad).text);
  const pieces = [
    '900°',
    'at least',
    '±',
    'x0',
    '#9',
    'plan {',
    '}',
    '(1 N)',
    '1/0',
    'layout circle',
    'in order',
    '"',
    '0',
  ];
  const spoiled = fc.tuple(fc.constantFrom(...samples), fc.nat(), fc.nat(40), fc.constantFrom('', ...pieces));
  fc.assert(
    fc.property(spoiled, ([text, at, length, piece]) => {
      const from = at % text.length;
      const spoilt = `${text.slice(0, from)}${piece}${text.slice(from + length)}`;
      const { findings } = checkTexts({ 'a.dowel': spoilt }, 'a.dowel');
      expect(findings.filter(({ check }) => check === 'tool-failure')).toEqual([]);
      for (const { start, end } of findings) expect(start <= end && end <= spoilt.length).toBe(true);
    }),
    { seed: 45, numRuns: 600 },
  );
});
