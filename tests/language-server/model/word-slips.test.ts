/** Words of the language that are misspelt. The words themselves are listed in grammar/tokens/clauses.ts; common practice. */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

/** Findings about words, as `word: near`. */
function slips(declaration: string, header = '', steps = 'clean frame'): string[] {
  const text = `machine press "press" {
  part frame "frame" fixed
  part guard "guard" on frame held by screws
  tool meter "meter"
  consumable grip-paste "grip paste"
  ${declaration}
}
procedure look "Look at it" for press ${header} {
  ${steps}
}
`;
  return checkTexts({ 'a.dowel': text }, 'a.dowel')
    .findings.filter(({ check }) => check === 'unknown-name')
    .map(
      ({ start, end, message }) => `${text.slice(start, end)}: ${/mean `(.*)`/.exec(message)?.[1] ?? '-'}`,
    );
}

const SCREWS = 'fastener screws "screws" x4';

describe('what the machine file says', () => {
  test.each([
    [`${SCREWS} secured by lock-tba`, ['lock-tba: lock-tab']],
    [`${SCREWS} secured by good-luck`, ['good-luck: -']],
    [`${SCREWS} secured by grip-paste`, []],
    [`${SCREWS} secured by split-pin`, []],
    [`${SCREWS} secured by tab, wire`, []],
    [`${SCREWS}\n control tap "tap" on frame normally clsoed`, ['clsoed: closed']],
    [`${SCREWS}\n control tap "tap" on frame normally half-way`, ['half-way: -']],
    [`${SCREWS}\n control tap "tap" on frame normally closed`, []],
    [`${SCREWS}\n part box "box" on frame hazard electricity`, ['electricity: live']],
    [`${SCREWS}\n part box "box" on frame hazard presure`, ['presure: pressure']],
    [`${SCREWS}\n part box "box" on frame hazard radiation`, []],
  ])('%s', (declaration, expected) => {
    expect(slips(declaration)).toEqual(expected);
  });
});

describe('what the procedure says', () => {
  test.each([
    ['wear gloves, eye-protecton', ['eye-protecton: eye-protection']],
    ['wear gloves, eye-protection', []],
    // The author's own.
    ['wear chain-mail-apron', []],
  ])('%s', (header, expected) => {
    expect(slips(SCREWS, header)).toEqual(expected);
  });
  test('a hazard of a notice that says the same as a known one', () => {
    const steps = 'warning voltage "A live part kills. Keep out."\n  clean frame';
    expect(slips(SCREWS, '', steps)).toEqual(['voltage: live']);
  });
  test('an own hazard of the machine is known in notices', () => {
    const steps = 'warning radiation "It harms. Keep out."\n  clean frame';
    expect(slips(`${SCREWS}\n part box "box" on frame hazard radiation`, '', steps)).toEqual([]);
  });
});

describe('what is put on and filled in', () => {
  function kinds(steps: string): string[] {
    const text = `machine press "press" {
  part frame "frame" fixed
  face bed "bed" on frame
  fastener screws "screws" x4 clamps frame
  tool spatula "spatula"
  consumable paste "paste"
}
procedure look "Look at it" for press {
  ${steps}
}
`;
    return checkTexts({ 'a.dowel': text }, 'a.dowel')
      .findings.filter(({ check }) => check === 'wrong-kind')
      .map(({ start, end }) => text.slice(start, end));
  }
  test.each([
    ['coat bed with screws', ['screws']],
    ['coat bed with paste, spatula', []],
    ['coat bed with brush', []],
    ['lubricate bed with frame', ['frame']],
    ['clean bed with screws', []],
  ])('%s', (steps, expected) => {
    expect(kinds(steps)).toEqual(expected);
  });
});
