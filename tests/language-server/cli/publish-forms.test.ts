/** The built program: other forms than pages, and single drawings on standard output. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { elementsOf, readSvg } from '../publish/drawings/demos.ts';
import { dowel, folderWith } from './dowel.ts';

const TEXT = `machine m "M" {
  part frame fixed
  part guard on frame held by screws
  part cover on frame under guard
  part disc on frame under cover
  fastener screws x2 clamps guard to frame
}

procedure renew "Renew the disc" for m {
  unbolt guard
  remove cover
  remove disc and discard
  fit new disc
  refit cover
  bolt up guard
}
`;

describe('publish', () => {
  test.each([
    ['json', ['.dowel-site', 'renew.json']],
    ['dita', ['.dowel-site', 'renew.dita', 'renew.ditamap']],
  ])('--format %s', (format, files) => {
    const folder = folderWith({ 'jobs/job.dowel': TEXT });
    const publish = () =>
      dowel(['publish', 'jobs', '--out', 'out', '--format', format, '--allow-findings'], { cwd: folder });
    const { code, err } = publish();
    expect([code, err]).toEqual([0, '']);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(files);
    expect(readFileSync(join(folder, 'out', files[1]!), 'utf8')).not.toContain(folder);
    // A second run takes the place of the first.
    expect(publish().code).toBe(0);
  });

  test('an unknown form is refused with those there are', () => {
    const { code, err } = dowel(['publish', '.', '--out', 'x', '--format', 'pdf']);
    expect(code).toBe(2);
    expect(err).toContain('html, dita, json');
  });
});

describe('drawings', () => {
  const folder = () => folderWith({ 'job.dowel': TEXT, 'empty.dowel': '' });

  test('chart prints one drawing', async () => {
    const { code, out, err } = dowel(['chart', 'job.dowel'], { cwd: folder() });
    expect([code, err]).toEqual([0, '']);
    const things = elementsOf(await readSvg(out)).flatMap((one) => one.$?.['data-thing']?.split(' ') ?? []);
    expect(things.sort()).toEqual(['cover', 'disc', 'guard', 'screws']);
  });

  test('map prints one drawing, whole or around one thing', async () => {
    const cwd = folder();
    const things = async (...args: string[]) =>
      elementsOf(await readSvg(dowel(['map', 'job.dowel', ...args], { cwd }).out))
        .flatMap((one) => one.$?.['data-thing'] ?? [])
        .sort();
    expect(await things()).toEqual(['cover', 'disc', 'frame', 'guard', 'screws']);
    expect(await things('disc')).toEqual(['cover', 'disc', 'frame']);
  });

  test.each([
    [['chart', 'empty.dowel'], 'has no procedure'],
    [['chart', 'job.dowel', 'other'], 'Its procedures: renew.'],
    [['map', 'empty.dowel'], 'has no machine'],
    [['map', 'job.dowel', 'wheel'], 'no thing named wheel'],
    [['map', 'gone.dowel'], 'cannot read gone.dowel'],
  ])('%j is told what is wrong', (args, message) => {
    const { code, out, err } = dowel(args, { cwd: folder() });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(message);
  });
});
