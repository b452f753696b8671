/** `dowel check` as a pipeline meets it: several reports at once, and the list of findings known before. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dowel, folderWith, RIGHT, WRONG } from './dowel.ts';

test('several reports at once tell the same findings', () => {
  const folder = folderWith({ 'a.dowel': WRONG, 'b.dowel': 'use "a.dowel"\n' });
  const run = dowel(
    ['check', '.', '--output', 'json=r.json', '--output', 'sarif=r.sarif', '--output', 'junit=r.xml'],
    { cwd: folder },
  );
  expect(run.code).toBe(1);
  expect(run.out).toContain('error still-held\n');
  const read = (name: string) => readFileSync(join(folder, name), 'utf8');
  const json = JSON.parse(read('r.json')) as { findings: { check: string; fingerprint: string }[] };
  const sarif = JSON.parse(read('r.sarif')) as {
    runs: { results: { ruleId: string; partialFingerprints: Record<string, string> }[] }[];
  };
  expect(json.findings.length).toBeGreaterThan(0);
  expect(sarif.runs[0]!.results.map((one) => [one.ruleId, one.partialFingerprints['dowel/v1']])).toEqual(
    json.findings.map((one) => [one.check, one.fingerprint]),
  );
  const errors = dowel(['check', '.', '--format', 'junit'], { cwd: folder });
  expect(errors.out).toBe(read('r.xml'));
  expect(readdirSync(folder).sort()).toEqual(['a.dowel', 'b.dowel', 'r.json', 'r.sarif', 'r.xml']);
});

test('a report that cannot be written: one message, exit code 2, the others are there', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const run = dowel(['check', 'a.dowel', '--output', 'json=no/r.json', '--output', 'junit=r.xml'], {
    cwd: folder,
  });
  expect(run.code).toBe(2);
  expect(run.err).toBe(
    'dowel: cannot write no/r.json: its folder is not there. Make the folder first, or name another.\n',
  );
  expect(existsSync(join(folder, 'r.xml'))).toBe(true);
});

test('a form that there is not is refused with those that there are', () => {
  const run = dowel(['check', 'a.dowel', '--output', 'sarf=r.sarif']);
  expect(run.code).toBe(2);
  expect(run.err).toContain('FORM is one of text, json, sarif, junit');
});

test('known findings are left out, new ones are not; the list shrinks, and grows only when told', () => {
  const folder = folderWith({ 'a.dowel': WRONG });
  const run = (...args: string[]) =>
    dowel(['check', 'a.dowel', '--baseline', 'known.json', ...args], { cwd: folder });
  const list = () =>
    (JSON.parse(readFileSync(join(folder, 'known.json'), 'utf8')) as { known: { check: string }[] }).known;

  const missing = run();
  expect(missing.code).toBe(2);
  expect(missing.err).toContain('cannot use the known findings in known.json: no such file or folder');

  expect(run('--baseline-update', 'grow').code).toBe(0);
  const before = list();
  expect(before.length).toBeGreaterThan(0);
  const silent = run();
  expect(silent.code).toBe(0);
  expect(silent.out).toMatch(/^No findings; 1 file checked\. \d+ known before (is|are) left out\.\n/);

  // Lines move; the findings stay known.
  writeFileSync(join(folder, 'a.dowel'), `// A word before.\n\n${WRONG}`);
  expect(run().code).toBe(0);

  // A new fault is told, and a list that only shrinks does not take it in.
  const worse = WRONG.replace('procedure look', 'fastenr\nprocedure look');
  writeFileSync(join(folder, 'a.dowel'), worse);
  const told = run('--baseline-update', 'shrink');
  expect(told.code).toBe(1);
  expect(list().length).toBeLessThanOrEqual(before.length);

  // What is mended leaves the list.
  writeFileSync(join(folder, 'a.dowel'), RIGHT);
  expect(run('--baseline-update', 'shrink').code).toBe(0);
  expect(list()).toEqual([]);
});

test('a list that was damaged is refused, not read as empty', () => {
  const folder = folderWith({ 'a.dowel': WRONG, 'known.json': '{"schema":1,"known":[{"fingerprint":"x"}]}' });
  const run = dowel(['check', 'a.dowel', '--baseline', 'known.json'], { cwd: folder });
  expect(run.code).toBe(2);
  expect(run.err).toContain('known.0.fingerprint');
  expect(run.out).toBe('');
});

test('--most shows the first ones and says how many more there are', () => {
  const folder = folderWith({ 'a.dowel': `${WRONG}\nfastenr\nmachne\n` });
  const all = dowel(['check', 'a.dowel'], { cwd: folder });
  const some = dowel(['check', 'a.dowel', '--most', '1'], { cwd: folder });
  const count = Number(/(\d+) findings/.exec(all.out)![1]);
  expect(some.out).toContain(`${count - 1} more finding`);
  expect(some.code).toBe(all.code);
  expect(all.out.startsWith(some.out.split('\n\n')[0]!)).toBe(true);
});
