/** `dowel publish` as a person runs it: exit codes, what it says, the words of the house, what it refuses. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dowel, folderWith } from './dowel.ts';

const RIGHT = `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by screws
  fastener screws "screws" x4
}
procedure clean-bed "Clean the bed" for press {
  unbolt cover
  clean bed
  bolt up cover
}
`;
const BROKEN = RIGHT.replace('clean-bed', 'broken').replace('  bolt up cover\n', '');

const site = (folder: string, address: string) => readFileSync(join(folder, 'site', address), 'utf8');

test('what is right is published, and a second run replaces it', () => {
  const folder = folderWith({ 'jobs/press.dowel': RIGHT });
  for (let round = 0; round < 2; round++) {
    const run = dowel(['publish', 'jobs', '--out', 'site'], { cwd: folder });
    expect(run).toMatchObject({ code: 0, err: '' });
    expect(run.out).toMatch(/^Published to site: 1 procedure, 1 machine; \d+ files\.\n$/);
  }
  expect(site(folder, 'procedures/press.clean-bed.html')).toMatch(/<h1>Clean the bed<\/h1>/);
  expect(site(folder, 'index.html')).toMatch(/procedures\/press\.clean-bed\.html/);
  expect(readdirSync(folder).sort()).toEqual(['jobs', 'site']);
});

test('what has findings is held back, and the old site stays when nothing is right', () => {
  const folder = folderWith({ 'jobs/a.dowel': RIGHT, 'jobs/b.dowel': BROKEN });
  const some = dowel(['publish', 'jobs', '--out', 'site'], { cwd: folder });
  expect(some.code).toBe(1);
  expect(some.err).toMatch(/held back: Clean the bed \(b\.dowel\), with 1 error\. /);
  expect(existsSync(join(folder, 'site/procedures/b.broken.html'))).toBe(false);

  const none = dowel(['publish', 'jobs/b.dowel', '--out', 'site'], { cwd: folder });
  expect(none.code).toBe(1);
  expect(existsSync(join(folder, 'site/procedures/a.clean-bed.html'))).toBe(true);

  const all = dowel(['publish', 'jobs', '--out', 'site', '--allow-findings'], { cwd: folder });
  expect(all).toMatchObject({ code: 0, err: '' });
  expect(site(folder, 'procedures/b.broken.html')).toMatch(/This procedure has findings/);
});

test('the words of the house', () => {
  const folder = folderWith({
    'jobs/press.dowel': RIGHT,
    'jobs/dowel.config.json': '{ "words": "american" }\n',
  });
  expect(dowel(['publish', 'jobs', '--out', 'site'], { cwd: folder }).code).toBe(0);
  const page = site(folder, 'procedures/press.clean-bed.html');
  expect(page).toMatch(/<html lang="en-US">/);
  expect(page).toMatch(/Reinstall /);
});

test.each([
  [['publish', 'gone', '--out', 'site'], /gone: no such file or folder/],
  [['publish', 'jobs', '--out', 'full'], /other things/],
  [['publish', 'jobs', '--out', '.'], /procedures lie in the folder/],
  [['publish', 'jobs'], /--out/],
])('%j is refused, and nothing is written', (args, says) => {
  const folder = folderWith({ 'jobs/press.dowel': RIGHT, 'full/letter.txt': 'dear' });
  const run = dowel(args, { cwd: folder });
  expect(run.code).toBe(2);
  expect(run.err).toMatch(says);
  expect(readdirSync(folder).sort()).toEqual(['full', 'jobs']);
  expect(readdirSync(join(folder, 'full'))).toEqual(['letter.txt']);
});
