/** What stands above and between the lines: lenses, inlay hints, the form of a verb. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { inlays } from '../../../language-server/features/inlay.ts';
import { lenses } from '../../../language-server/features/lenses.ts';
import { signatureAt } from '../../../language-server/features/signature.ts';
import { job, placed } from './cursor.ts';

const ALL = { secondUnit: true, count: true, thingsOff: true };
const STRIP = `  task strip "Strip" {
    remove cover-screws
    remove lever
  }
  task rebuild "Rebuild" {
    refit lever
    fit cover-screws
  }▮`;

function hints(steps: string, choice = ALL): string[] {
  const { view, path, text } = placed(job(steps));
  return inlays(view, path, 0, text.length, choice).map(
    ({ offset, text: hint }) => `${text.slice(text.lastIndexOf(' ', offset - 1) + 1, offset)} ${hint}`,
  );
}

describe('inlay hints', () => {
  test('how many there are of a group', () => {
    expect(hints('  loosen cover-screws▮\n  tighten cover-screws #1, #2')).toEqual(['cover-screws ×4']);
  });

  // 1 lbf·ft = 1.3558179483314004 N·m (NIST SP 811, B.8), so 20 N·m is 14.75 lbf·ft.
  test('the other unit, where the author gave none', () => {
    expect(hints('  tighten lever to 20 N·m▮')).toEqual([
      expect.stringMatching(/^N·m (14\.8|14\.75|15) lbf·ft$/),
    ]);
    expect(hints('  tighten lever to 20 N·m (15 lbf·ft)▮')).toEqual([]);
    expect(hints('  wait 5 min▮')).toEqual([]);
  });

  test('how many things are off when a task ends', () => {
    const { view, path, text } = placed(job(STRIP));
    const found = inlays(view, path, 0, text.length, { ...ALL, count: false });
    expect(found.map((one) => one.text)).toEqual(['2 off or open']);
  });

  test('each kind can be switched off', () => {
    expect(hints(STRIP, { secondUnit: false, count: false, thingsOff: false })).toEqual([]);
  });
});

describe('lenses', () => {
  test('findings, time, and what is off at the end', () => {
    const { view, path, host } = placed(job(STRIP.replace('    refit lever\n', ''), '  time 90 min\n'));
    const { findings } = checkProject(host, [path]);
    const [found, time, end, strip, rebuild] = lenses(view, path, findings).map(({ title }) => title);
    expect(found).toMatch(/^1 found/);
    expect(time).toBe('90 min');
    expect(end).toBe('1 thing off or open at the end');
    expect(strip).toBe('2 things off or open after this task');
    expect(rebuild).toBe('1 thing off or open after this task');
  });

  test('a right job', () => {
    const { view, path } = placed(job(STRIP));
    const titles = lenses(view, path, []).map(({ title }) => title);
    expect(titles[0]).toBe('nothing found');
    expect(titles[1]).toBe('nothing off at the end');
  });
});

describe('the form of a verb', () => {
  const form = (steps: string) => {
    const { view, path, offset } = placed(job(steps));
    return signatureAt(view, path, offset);
  };

  test('what it acts on, then its tails', () => {
    const found = form('  tighten ▮')!;
    expect(found.label).toMatch(/^tighten FASTENER \[stage N\]/);
    expect(found.active).toBe(0);
    expect(
      form('  tighten cover-screws to ▮')!.parameters[form('  tighten cover-screws to ▮')!.active!]!.label,
    ).toContain('to QUANTITY');
    expect(form('  prove mains▮')!.label).toBe('prove SYSTEM safe [with TOOLS]');
    expect(form('  wait ▮')!.label).toBe('wait');
  });

  test('nothing elsewhere', () => {
    expect(form('  remove lever\n  ▮')).toBeUndefined();
    expect(form('  note "x" ▮')).toBeUndefined();
  });

  test('every label of a parameter stands in the form', () => {
    const found = form('  measure ▮')!;
    for (const { label } of found.parameters) expect(found.label).toContain(label);
  });
});
