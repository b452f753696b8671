/**
 * A disk that does not do as it should: one clear message each, the right exit code, and what was there before is still
 * there. `/dev/full` is the kernel's own disk without room.
 */
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { disk } from '../../../language-server/cli/disk.ts';
import { namesIn } from '../../../language-server/cli/names.ts';
import { writeText } from '../../../language-server/cli/replace.ts';
import { filesOf } from '../../../language-server/cli/walk.ts';
import { dowel, folderWith, RIGHT, WRONG } from './dowel.ts';

const UGLY = RIGHT.replaceAll('  remove', '      remove');
/** Whoever administers the machine may write everywhere: then somebody else asks. */
const OTHER = process.getuid?.() === 0 ? { uid: 65534 } : {};

const shut: string[] = [];
afterEach(() => {
  for (const folder of shut.splice(0)) chmodSync(folder, 0o755);
});
function readOnly(folder: string): string {
  chmodSync(folder, 0o555);
  shut.push(folder);
  return folder;
}

test.runIf(existsSync('/dev/full'))(
  'a full disk: the report is not written, the findings are still told',
  () => {
    const folder = folderWith({ 'a.dowel': WRONG });
    const run = dowel(['check', 'a.dowel', '--output', 'json=/dev/full'], { cwd: folder });
    expect(run.code).toBe(2);
    expect(run.out).toContain('error still-held');
    expect(run.err).toBe(
      'dowel: cannot write /dev/full: the disk is full. Make room, then run the command again.\n',
    );
    expect(writeText('/dev/full', 'x')).toMatchObject({ reason: 'the disk is full' });
  },
);

test('a folder that may only be read: checked, and nothing in it is changed', () => {
  const folder = readOnly(folderWith({ 'a.dowel': UGLY }));
  expect(dowel(['check', 'a.dowel'], { cwd: folder, ...OTHER }).code).toBe(0);
  const format = dowel(['format', 'a.dowel'], { cwd: folder, ...OTHER });
  expect(format.code).toBe(2);
  expect(format.err).toContain('a.dowel: you may not write there.');
  const report = dowel(['check', 'a.dowel', '--output', 'json=r.json'], { cwd: folder, ...OTHER });
  expect(report.code).toBe(2);
  expect(report.err).toContain('cannot write r.json: you may not write there.');
  const site = dowel(['publish', '.', '--out', 'site'], { cwd: folder, ...OTHER });
  expect(site.code).toBe(2);
  expect(site.err).toContain(
    'cannot publish to site: you may not write there; what was there before is unchanged.',
  );
  const kept = dowel(['check', 'a.dowel', '--cache', 'kept'], { cwd: folder, ...OTHER });
  expect(kept.code).toBe(0);
  expect(kept.err).toContain('cannot keep results in kept: you may not write there.');
  expect(readdirSync(folder)).toEqual(['a.dowel']);
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(UGLY);
});

test('a file that goes away between listing and reading is one message, the others are read', () => {
  const folder = folderWith({ 'a.dowel': RIGHT, 'b.dowel': RIGHT });
  const names = namesIn(process.cwd());
  const { files } = filesOf([folder], names);
  expect(files).toEqual([join(folder, 'a.dowel'), join(folder, 'b.dowel')]);
  rmSync(join(folder, 'a.dowel'));
  const texts = disk(names);
  expect(files.map((file) => texts.read(file))).toEqual([undefined, RIGHT]);
  texts.read(files[0]!);
  expect(texts.refused).toEqual([
    { path: files[0], reason: 'no such file or folder', remedy: 'Check how the path is written.' },
  ]);
});

test('a link that leads out of the folder is not followed, and a dangling one is no file', () => {
  const outside = folderWith({ 'secret.dowel': WRONG });
  const folder = folderWith({ 'a.dowel': RIGHT });
  mkdirSync(join(folder, 'inner'));
  symlinkSync(outside, join(folder, 'inner/out'));
  symlinkSync(join(outside, 'secret.dowel'), join(folder, 'secret.dowel'));
  symlinkSync('nowhere.dowel', join(folder, 'dangling.dowel'));
  const run = dowel(['check', '.'], { cwd: folder });
  expect(run.code).toBe(0);
  expect(run.out).toContain('1 file checked');
});

test('more findings than anyone reads: the gravest are listed, the others counted, the next file is checked', () => {
  const many = `procedure p "Look" for pump {\n${'  refit cover\n'.repeat(1200)}}\n`;
  const folder = folderWith({
    'a.dowel': `use "m.dowel"\n${many}`,
    'b.dowel': WRONG.replaceAll('pump', 'other-pump'),
    'm.dowel': RIGHT,
  });
  const run = dowel(['check', '.', '--format', 'json'], { cwd: folder });
  const { findings } = JSON.parse(run.out) as {
    findings: { file: string; check: string; severity: string; message: string }[];
  };
  const own = findings.filter(({ file }) => file === 'a.dowel');
  expect(own).toHaveLength(1001);
  expect(own.at(-1)).toMatchObject({ check: 'findings-cut', severity: 'warning' });
  expect(own.at(-1)!.message).toMatch(
    /^The file has 1\d\d\d findings; the gravest 1000 of them are listed\.$/,
  );
  expect(findings.some(({ file, check }) => file === 'b.dowel' && check === 'still-held')).toBe(true);
  expect(run.code).toBe(1);
});
