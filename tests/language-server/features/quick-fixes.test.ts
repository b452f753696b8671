/** Quick fixes: each takes its finding away and adds none. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { conversionsAt } from '../../../language-server/features/convert-unit.ts';
import { extractions } from '../../../language-server/features/extract.ts';
import { fixAll, quickFixes, waiver } from '../../../language-server/features/quick-fixes.ts';
import { View } from '../../../language-server/features/view.ts';
import { spliced } from '../../../language-server/features/write-out-edits.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import type { Finding } from '../../../language-server/report/finding.ts';
import { job, PRESS, placed } from './cursor.ts';

function check(files: Record<string, string>, path = 'job.dowel'): Finding[] {
  return checkProject(memoryHost(files), [path]).findings;
}

function applied(text: string, edits: readonly { start: number; end: number; text: string }[]): string {
  return spliced(text, { start: 0, end: text.length }, edits);
}

const counted = (findings: readonly Finding[]) =>
  findings.filter(({ severity }) => severity === 'error' || severity === 'warning').length;

const HOT = PRESS.replace(
  'part lever "lever" on cover',
  'part lever "lever" on cover  hazard hot can hurt when removing',
);

describe('one fix for each', () => {
  test.each([
    ['torque-differs', job('  tighten cover-screws to 8 N·m'), 'Write 9 N·m, as declared', 'to 9 N·m'],
    [
      'tool-unlisted',
      job('  inspect lever with tester', '  tools wrench\n'),
      'List `tester` after `tools`',
      'tools wrench, tester',
    ],
    [
      'tool-unused',
      job('  loosen cover-screws with wrench\n  tighten cover-screws', '  tools wrench, tester\n'),
      'Take `tester` off the list',
      'tools wrench\n',
    ],
    [
      'people-short',
      job('  clean lever with 2 people', '  people 1\n'),
      'Write `people 2` at the top',
      'people 2\n',
    ],
    [
      'caution-missing',
      { ...job('  remove lever\n  refit lever'), 'press.dowel': HOT },
      'Write a caution about hot',
      'caution hot "The lever is hot and burns the skin.',
    ],
    ['unit-ambiguous', job('  fill oil with 2 qt press-oil'), 'Write US-qt', '2 US-qt'],
    [
      'machine-missing',
      { 'press.dowel': PRESS, 'job.dowel': 'use "press.dowel"\nprocedure job "J"\n{\n}\n' },
      'Write `for press`',
      'for press',
    ],
    [
      'file-missing',
      {
        'machines/press.dowel': PRESS,
        'job.dowel': 'use "press.dowel"\nprocedure job "J"\n  for press\n{\n}\n',
      },
      'Write "machines/press.dowel"',
      'use "machines/press.dowel"',
    ],
    [
      'torque-differs',
      job('  tighten cover-screws to 9 N·m (30 lbf·ft)'),
      'Leave the second unit out',
      'to 9 N·m\n',
    ],
    [
      'waiver-unused',
      job('  allow left-off because "x"\n  clean lever'),
      'Take the `allow` away',
      '{\n  clean lever',
    ],
  ])('%s', (name, files, title, wanted) => {
    const texts = files as Record<string, string>;
    const before = check(texts);
    const finding = before.find((one) => one.check === name);
    expect(finding, before.map((one) => one.check).join()).toBeDefined();
    const fixes = quickFixes(new View(memoryHost(texts)), 'job.dowel', finding!);
    const fix = fixes.find((one) => one.title.startsWith(title));
    expect(fix, fixes.map((one) => one.title).join()).toBeDefined();
    const text = applied(texts['job.dowel']!, fix!.edits);
    expect(text).toContain(wanted);
    const after = check({ ...texts, 'job.dowel': text });
    expect(after.map((one) => one.message)).not.toContain(finding!.message);
    expect(counted(after)).toBeLessThanOrEqual(counted(before));
  });
});

test('a finding is held back with a reason', () => {
  const files = job('  remove cover');
  const finding = check(files).find((one) => one.check === 'still-held')!;
  const fix = waiver(new View(memoryHost(files)), 'job.dowel', finding)!;
  const text = applied(files['job.dowel']!, fix.edits);
  expect(text).toContain('  allow still-held because "Say why it is right here."\n  remove cover');
  expect(check({ ...files, 'job.dowel': text }).map((one) => one.check)).not.toContain('still-held');
});

test('all of a kind at once', () => {
  const files = job('  clean levr\n  clean lver\n  removee lever');
  const findings = check(files);
  const view = new View(memoryHost(files));
  const names = fixAll(view, 'job.dowel', findings, 'unknown-name')!;
  expect(names.title).toBe('Mend all 2 of `unknown-name`');
  expect(applied(files['job.dowel']!, names.edits)).toContain('  clean lever\n  clean lever\n  removee');
  const every = fixAll(view, 'job.dowel', findings)!;
  expect(applied(files['job.dowel']!, every.edits)).toContain('  clean lever\n  clean lever\n  remove lever');
});

// 1 lbf·ft = 1.3558179483314004 N·m (NIST SP 811, B.8): 20 N·m is 14.751 lbf·ft.
test('a quantity in the other unit', () => {
  const { view, path, offset, text } = placed(job('  tighten lever to 20▮ N·m'));
  const [instead, beside] = conversionsAt(view, path, offset);
  expect(applied(text, [instead!.edit])).toMatch(/to 1[45](\.\d+)? lbf·ft\n/);
  expect(applied(text, [beside!.edit])).toMatch(/to 20 N·m \(1[45](\.\d+)? lbf·ft\)\n/);
});

describe('steps taken out', () => {
  const files = job(
    '  remove lever\n  remove cover-screws\n  clean guides\n  fit cover-screws\n  refit lever',
  );
  const text = files['job.dowel']!;
  const made = extractions(new View(memoryHost(files)), 'job.dowel', {
    start: text.indexOf('remove lever') + 2,
    end: text.indexOf('clean guides'),
  });

  test('as a task', () => {
    const task = made.find(({ title }) => title.includes('task'))!;
    const changed = applied(text, task.edits);
    expect(changed).toContain(
      '  task new-task "New task" {\n    remove lever\n    remove cover-screws\n  }\n',
    );
    expect(counted(check({ ...files, 'job.dowel': changed }))).toBe(counted(check(files)));
  });

  test('as a procedure of its own, with what it starts and ends with', () => {
    const procedure = made.find(({ title }) => title.includes('procedure'))!;
    const changed = applied(text, procedure.edits);
    expect(changed).toContain('ends with lever, cover-screws off');
    expect(changed).toContain('  do new-procedure\n  clean guides');
    expect(counted(check({ ...files, 'job.dowel': changed }))).toBe(counted(check(files)));
  });
});
