/**
 * Lifts in procedures. Source: the HSE filter, largest box 25 kg, teams of two and three two thirds and half of the sum
 * (tests/outside/manual-handling-hse.csv, worked examples TH-1 and TH-2). What counts as a lift is common practice, no
 * source.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MACHINE = `machine rig "rig" {
  variant size: small, large
  part bed "bed" fixed
  part light "light part" on bed mass 25 kg
  part heavy "heavy part" on bed mass 26 kg
  part frame "frame" on bed mass 15 kg
  part drum "drum" on frame mass 12 kg
  part plate "plate" on frame mass 9 kg only size is large
  part pair "pair of weights" x2 on bed mass 20 kg
  part block "block" on bed mass 34 kg
  part anvil "anvil" on bed mass 60 lb
  part monster "monster" on bed mass 120 kg
  part unknown "unknown" on bed
  part inside "inside" on unknown mass 30 kg
  fastener long-bolt "long bolt" on bed mass 30 kg
  tool hoist "chain hoist"
  tool puller "puller"
  tool jack "trolley jack"
}
`;

function lifts(lines: string, headers = 'people 1'): string[] {
  const text = `${MACHINE}procedure p "Try it" for rig ${headers} {\n${lines}\n}\n`;
  return checkTexts({ 'a.dowel': text })
    .findings.filter(({ check }) => check === 'heavy-lift')
    .map(({ message, case: when }) => {
      const [, what, mass, limit] = /^(.*) weighs? ([\d.]+) kg, more than the ([\d.]+) kg/.exec(message)!;
      return `${what}: ${mass} > ${limit}${when ? ` (${when})` : ''}`;
    });
}

describe('one person', () => {
  test('25 kg is within the largest box, 26 kg is beyond it', () => {
    expect(lifts('remove light')).toEqual([]);
    expect(lifts('remove heavy')).toEqual(['The heavy part: 26 > 25']);
  });

  test('each of a group counts by itself', () => expect(lifts('remove pair')).toEqual([]));

  test('pounds are converted: 60 lb are 27.2 kg', () =>
    expect(lifts('remove anvil')).toEqual(['The anvil: 27.2 > 25']));

  test('what moves along counts, in the variants that have it', () => {
    expect(lifts('remove frame')).toEqual(['The frame with the drum and the plate: 36 > 25']);
    expect(lifts('remove drum\nremove frame')).toEqual([]);
    expect(lifts('remove drum\nremove frame', 'people 2')).toEqual([]);
  });

  test('putting back is a lift as well, and raising', () => {
    expect(lifts('remove heavy with hoist\nrefit heavy')).toEqual(['The heavy part: 26 > 25']);
    expect(lifts('raise heavy')).toEqual(['The heavy part: 26 > 25']);
    expect(lifts('remove heavy with hoist and discard\nfit new heavy')).toEqual(['The heavy part: 26 > 25']);
  });
});

describe('more people', () => {
  test('two thirds of the sum for two: 33.3 kg; half for three: 37.5 kg', () => {
    expect(lifts('remove heavy with 2 people')).toEqual([]);
    expect(lifts('remove heavy', 'people 2')).toEqual([]);
    expect(lifts('remove block with 2 people')).toEqual(['The block: 34 > 33.3']);
    expect(lifts('remove block with 3 people')).toEqual([]);
  });

  test('more than four hardly work together: 50 kg is the most', () => {
    expect(lifts('remove monster with 8 people')).toEqual(['The monster: 120 > 50']);
  });

  test('where nobody says how many there are, only what four cannot lift is told', () => {
    expect(lifts('remove block', '')).toEqual([]);
    expect(lifts('remove monster', '')).toEqual(['The monster: 120 > 50']);
  });
});

describe('not by hand', () => {
  test('a hoist or a jack carries it; a puller does not', () => {
    expect(lifts('remove heavy with hoist')).toEqual([]);
    expect(lifts('raise heavy with jack')).toEqual([]);
    expect(lifts('remove heavy with puller')).toEqual(['The heavy part: 26 > 25']);
  });

  test('held up by nothing but people', () => {
    expect(lifts('support heavy\nremove heavy')).toEqual(['The heavy part: 26 > 25']);
    expect(lifts('support heavy with puller')).toEqual([]);
    expect(lifts('support heavy', 'people 2')).toEqual([]);
  });

  test('supported before', () => {
    expect(lifts('support heavy with hoist\nremove heavy')).toEqual([]);
    expect(lifts('raise heavy with jack\nremove heavy')).toEqual([]);
    expect(lifts('if "it hangs" { support heavy with hoist }\nremove heavy')).toEqual([
      'The heavy part: 26 > 25 (not “it hangs”)',
    ]);
  });

  test('cleaning, marking and fasteners are no lifts', () => {
    expect(lifts('clean heavy\nmark heavy\nremove long-bolt')).toEqual([]);
  });
});

test('what has no mass is not guessed; what moves along with it counts', () => {
  expect(lifts('remove inside\nremove unknown', 'people 2')).toEqual([]);
  expect(lifts('remove unknown')).toEqual(['The unknown with the inside: 30 > 25']);
});
