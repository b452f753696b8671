/**
 * Every check against its own examples: the bad one is found at the marked place and by nothing else, the
 * right twin is silent under all checks. The expected places are the carets in the examples themselves.
 */
import { describe, expect, test } from 'vitest';
import { ALL_CHECKS, checkNamed } from '../../../language-server/checks/all.ts';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import type { Finding } from '../../../language-server/report/finding.ts';
import { mark, unmark } from '../../support/marked.ts';

const PATH = 'example.dowel';

function findings(text: string): Finding[] {
  return checkTexts({ [PATH]: text }, PATH).findings;
}

/** What was found, with its place shown in the text: what a failed test prints. */
function shown(text: string, found: readonly Pick<Finding, 'check' | 'start' | 'end'>[]): string {
  return `${found.map(({ check }) => check).join(', ')}\n${mark(text, found)}`;
}

describe('the list of checks', () => {
  test('has each name once, in words joined by hyphens', () => {
    const names = ALL_CHECKS.map(({ name }) => name);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    expect(names.filter((name) => !/^[a-z]+(-[a-z]+)*$/.test(name))).toEqual([]);
  });

  test('gives a check by its name, and nothing for a name that no check has', () => {
    expect(ALL_CHECKS.filter((check) => checkNamed(check.name) !== check)).toEqual([]);
    expect(checkNamed('no-such-check')).toBeUndefined();
  });
});

describe.each(ALL_CHECKS.map((check) => [check.name, check] as const))('%s', (name, check) => {
  const bad = unmark(check.bad);

  test('explains itself in at least two sentences and names its source', () => {
    const sentences = check.explanation.match(/[.!?](?=\s|$)/g) ?? [];
    expect(sentences.length).toBeGreaterThanOrEqual(2);
    expect(check.title).toMatch(/^[A-Z].*\.$/);
    expect(check.source.trim()).not.toBe('');
  });

  test('finds its bad example where it is marked, and no other check finds anything', () => {
    expect(bad.ranges.length).toBeGreaterThan(0);
    const expected = bad.ranges.map((range) => ({ check: name, ...range }));
    expect(shown(bad.text, findings(bad.text))).toBe(shown(bad.text, expected));
  });

  test('says what is wrong in one sentence, and what to do', () => {
    for (const finding of findings(bad.text)) {
      expect(finding.message).toMatch(/^[A-Z`“][^\n]*[.?]$/);
      expect(finding.message).not.toMatch(/undefined|\bthis is\b| {2}|, ,/);
      expect(finding.severity).toBe(check.severity);
    }
  });

  test('is silent on its right twin, as every check is', () => {
    const good = unmark(check.good);
    expect(good.ranges).toEqual([]);
    expect(shown(good.text, findings(good.text))).toBe(shown(good.text, []));
  });
});
