/** What a waiver holds back and what it does not. The source of what is right is grammar/LANGUAGE.md. */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MACHINE = `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  part guard "guard" on bed held by guard-screws
  fastener cover-screws "cover screws" x4
  fastener guard-screws "guard screws" x4
}
`;

function check(steps: string) {
  const { findings, waived } = checkTexts({
    'a.dowel': `${MACHINE}procedure p "P" for press ends with cover, guard, cover-screws, guard-screws off {\n${steps}\n}\n`,
  });
  return {
    found: findings.map(({ check: name }) => name),
    messages: findings.map(({ message, help }) => `${message} ${help}`),
    waived: waived.map(({ finding, reason }) => `${finding.check}: ${reason}`),
  };
}

describe('a waiver', () => {
  test('holds back the finding of the next step and no other', () => {
    const { found, waived } = check(`  allow still-held because "Sheared."
  remove cover
  remove guard
  remove cover-screws, guard-screws`);
    expect(found).toEqual(['still-held']);
    expect(waived).toEqual(['still-held: Sheared.']);
  });

  test('two before one step, and a notice between', () => {
    const { found, waived } = check(`  allow still-held because "Sheared."
  allow not-supported because "It is light."
  note "Mind the edge."
  remove cover
  remove cover-screws
  unbolt guard`);
    expect(found).toEqual(['waiver-unused']);
    expect(waived).toEqual(['still-held: Sheared.']);
  });

  test('before a block is about the block, not about its steps', () => {
    const { found, waived } = check(`  allow still-held because "Sheared."
  task t "T" {
    remove cover
  }
  remove cover-screws
  unbolt guard`);
    expect(found.sort()).toEqual(['still-held', 'waiver-unused']);
    expect(waived).toEqual([]);
  });

  test('a check that nobody knows: did you mean', () => {
    const { found, messages } = check('  allow stil-held because "Sheared."\n  unbolt cover, guard');
    expect(found).toEqual(['unknown-name']);
    expect(messages[0]).toBe(
      'No check is called `stil-held`; did you mean `still-held`? Write `still-held`.',
    );
  });

  test('without a reason holds nothing back', () => {
    const { found } = check(
      '  allow still-held because "…"\n  remove cover\n  remove cover-screws\n  unbolt guard',
    );
    expect(found).toEqual(['waiver-without-reason', 'still-held']);
  });

  test('cannot name what says that something was not read', () => {
    const { messages } = check('  allow syntax because "Never mind."\n  unbolt cover, guard');
    expect(messages[0]).toContain(
      '`syntax` cannot be waived: it says that the text could not be read as it stands.',
    );
  });
});
