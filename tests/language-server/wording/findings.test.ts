/**
 * Findings about sentences, at the words they are about. Rules: ASD-STE100 (see tests/outside/ste-rules.csv); the
 * sentences are everyday ones, common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { WORDING } from '../../../language-server/checks/wording-list.ts';

const NAMES = new Set(WORDING.map(({ name }) => name));

function found(steps: string): string[] {
  const text = `machine press "press" {
  part frame "frame" fixed
  part guard "guard" on frame held by screws
  part feed-pump "feed pump" on frame also called "booster"
  fastener screws "screws" x4 torque 8 N·m
}
procedure look "Look at it" for press {
  ${steps}
}
`;
  return checkTexts({ 'a.dowel': text }, 'a.dowel')
    .findings.filter(({ check }) => NAMES.has(check))
    .map(({ check, start, end }) => `${check}: ${text.slice(start, end)}`);
}

describe('is told at its words', () => {
  test.each([
    ['clean frame "Wipe it, e.g. with a rag."', ['latin-abbreviation: e.g.']],
    ['clean frame "Rags, brushes, etc."', ['latin-abbreviation: etc.']],
    ['clean frame "It is \\"hot\\" here; keep off."', ['semicolon: ;']],
    ['clean frame "It is wet."\n  "Wipe it as required."', ['vague-word: as required']],
    ['run for 2 min expect "It runs properly."', ['vague-word: properly']],
    ['clean frame "The frame must be wiped."', ['not-imperative: must be wiped']],
    ['clean frame "Loosen the lid, then lift the tray."', ['two-instructions: lift the tray']],
    ['adjust feed-pump "To about 3 mm."', ['limit-missing: about 3 mm']],
    ['clean frame "The feed pump is below."\n  clean guard "The booster is above."', ['two-names: booster']],
    ['clean frame "A circlip holds it."\n  clean guard "The snap ring is thin."', ['two-names: snap ring']],
  ])('%s', (steps, expected) => {
    expect(found(steps)).toEqual(expected);
  });
});

describe('is left alone', () => {
  test.each([
    'clean frame "Half a turn at a time."',
    'clean frame "Wipe it as required, at least every 10 min."',
    'adjust feed-pump to "the mark" "To about 3 mm."',
    'clean frame "It is ready in about 5 min."',
    'clean frame "The feed pump (booster) is below."',
    'clean frame "The booster is below."',
    'warning hot "It burns. Keep your hands off; stand back as necessary."'.replace(';', ','),
    'clean frame "Cat. no. 12, i. d. 3 mm."',
    'stop "Drain the oil and call the engineer."',
    'clean frame "{}"',
    'clean frame ""',
    'clean frame "«»…—"',
  ])('%s', (steps) => {
    expect(found(steps)).toEqual([]);
  });
});

test('an empty name is no name, and is not looked for without end', () => {
  const text = `machine m "pump" {
  part block "block" fixed
  seal ring "ring" on block  also called ""
}
procedure p "Look" for m {
  inspect block "The number shows to the side."
}
`;
  const { findings } = checkTexts({ 'a.dowel': text });
  expect(findings.filter(({ check }) => check === 'two-names')).toEqual([]);
});
