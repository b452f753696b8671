/** The limits that the reference names and no constant says: found by going up to them. The numbers are the reference's. */
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parser/parse.ts';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { REFERENCE, textOf } from './examples.ts';

const reference = textOf(REFERENCE);

function limit(words: RegExp): number {
  const found = words.exec(reference)?.[1];
  expect(found, `the reference does not say ${words}`).toBeDefined();
  return Number(found);
}

const problems = (text: string) => parse(text).problems.map(({ check }) => check);

test('brackets in one another', () => {
  const most = limit(/Brackets and `sum of` in one another: (\d+)/);
  const nested = (depth: number) => `value v = ${'('.repeat(depth)}1 mm${')'.repeat(depth)}`;
  expect(problems(nested(most))).toEqual([]);
  expect(problems(nested(most + 1))).toContain('nested-too-deep');
});

test('selectors in one another', () => {
  const most = limit(/`any … of any …` in one another: (\d+)/);
  const nested = (depth: number) => `rule r { always require ${'any part of '.repeat(depth)}lid fitted }`;
  expect(problems(nested(most))).toEqual([]);
  expect(problems(nested(most + 1))).not.toEqual([]);
});

test('positions that are told apart', () => {
  const most = limit(/told apart: (\d+)/);
  const found = (count: number) =>
    checkTexts({
      'a.dowel': `machine vessel "vessel" {
  part shell "shell" fixed
  part lid "lid" on shell  held by bolts
  fastener bolts "bolts" x${count}
}
procedure open-up "Open" for vessel ends with lid off {
  remove bolts #1..#${count - 1}
  remove lid
}`,
    }).findings.map(({ check }) => check);
  expect(found(most)).toEqual(['still-held']);
  expect(found(most + 1)).not.toContain('still-held');
});
