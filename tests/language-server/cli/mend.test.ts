/** `dowel check --mend`: shows a patch that other tools can apply, and writes only when told to, in one go. */

import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { patchOf } from '../../../language-server/cli/mend.ts';
import { DEFERENCE } from '../../../language-server/report/deference.ts';
import { dowel, folderWith } from './dowel.ts';

const HALF = `machine genset "standby generator" {
  part block "engine block" fixed
  part cover "side cover" on block held by cover-screws
  part filter "oil filter" on block under cover
  fastener cover-screws "cover screws" x4 torque 9 N·m
}

procedure renew-filter "Renew the filter" for genset supplies filter {
  unbolt cover  // Mind the edge.
  remove filter and discard
  fit new filter
}
`;
const WHOLE = HALF.replace('fit new filter\n', 'fit new filter\n  bolt up cover\n');

test('shows a patch with what each mend does, and writes nothing', () => {
  const folder = folderWith({ 'a.dowel': HALF });
  const { code, out, err } = dowel(['check', '--mend', 'a.dowel'], { cwd: folder });
  expect(err).toBe('');
  expect(code).toBe(1);
  expect(out).toBe(
    [
      'a.dowel: left-off: Write `bolt up cover` after `fit new filter`.',
      '--- a.dowel',
      '+++ a.dowel',
      '@@ -9,4 +9,5 @@',
      '   unbolt cover  // Mind the edge.',
      '   remove filter and discard',
      '   fit new filter',
      '+  bolt up cover',
      ' }',
      DEFERENCE,
      '',
    ].join('\n'),
  );
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(HALF);
});

test('the patch is one that git applies', () => {
  const folder = folderWith({ 'a.dowel': HALF });
  const { out } = dowel(['check', '--mend', 'a.dowel'], { cwd: folder });
  expect(apply(folder, out)).toBe('');
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(WHOLE);
});

test('--mend=write writes what is clean and leaves nothing else behind', () => {
  const folder = folderWith({ 'a.dowel': HALF });
  chmodSync(join(folder, 'a.dowel'), 0o640);
  const { code, out } = dowel(['check', '--mend=write', 'a.dowel'], { cwd: folder });
  expect({ code, out }).toEqual({
    code: 0,
    out: `a.dowel: left-off: Write \`bolt up cover\` after \`fit new filter\`.\n${DEFERENCE}\n`,
  });
  expect(readFileSync(join(folder, 'a.dowel'), 'utf8')).toBe(WHOLE);
  expect(readdirSync(folder)).toEqual(['a.dowel']);
  expect(statSync(join(folder, 'a.dowel')).mode & 0o777).toBe(0o640);
  expect(dowel(['check', 'a.dowel'], { cwd: folder }).code).toBe(0);
});

test('a link stays a link', () => {
  const folder = folderWith({ 'real.dowel': HALF });
  symlinkSync('real.dowel', join(folder, 'link.dowel'));
  dowel(['check', '--mend=write', 'link.dowel'], { cwd: folder });
  expect(lstatSync(join(folder, 'link.dowel')).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, 'real.dowel'), 'utf8')).toBe(WHOLE);
});

test('says what is left, with its line', () => {
  const text = HALF.replace('  fit new filter\n', '  fit new filtr\n  clean blok and more\n');
  const folder = folderWith({ 'a.dowel': text });
  const { code, out } = dowel(['check', '--mend=write', 'a.dowel'], { cwd: folder });
  expect(code).toBe(1);
  expect(out).toMatch(/^a\.dowel:\d+: [a-z-]+ is left: /m);
});

test('a right job: silent, exit code 0, also when told to write', () => {
  const folder = folderWith({ 'a.dowel': WHOLE });
  for (const how of ['--mend', '--mend=write'])
    expect(dowel(['check', how, 'a.dowel'], { cwd: folder })).toEqual({ code: 0, out: '', err: '' });
});

test('in JSON the mends stand with their findings', () => {
  const folder = folderWith({ 'a.dowel': HALF });
  const { out } = dowel(['check', '--mend', '--format', 'json', 'a.dowel'], { cwd: folder });
  const [finding] = JSON.parse(out).findings;
  expect(finding.mends[0].title).toBe('Write `bolt up cover` after `fit new filter`');
  expect(finding.mends[0].edits).toHaveLength(1);
  const refused = dowel(['check', '--mend=write', '--format', 'json', 'a.dowel'], { cwd: folder });
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('JSON');
});

test('another word for how is refused', () => {
  expect(dowel(['check', '--mend=all', 'a.dowel']).code).toBe(2);
});

describe('patches', () => {
  const text = fc
    .tuple(fc.array(fc.constantFrom('a', 'b', 'c', 'd', ''), { minLength: 1, maxLength: 30 }), fc.boolean())
    .map(([lines, ended]) => lines.join('\n') + (ended ? '\n' : 'x'));

  test('are read by git as they are meant', () => {
    const folder = folderWith({});
    fc.assert(
      fc.property(text, text, (before, after) => {
        fc.pre(before !== after);
        writeFileSync(join(folder, 'a'), before);
        expect(apply(folder, `${patchOf('a', before, after)}\n`)).toBe('');
        expect(readFileSync(join(folder, 'a'), 'utf8')).toBe(after);
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});

/** What git complains about when it applies the patch in the folder. */
function apply(folder: string, patch: string): string {
  const { stderr } = spawnSync('git', ['apply', '-p0', '--whitespace=nowarn'], {
    cwd: folder,
    input: patch,
    encoding: 'utf8',
    env: { PATH: process.env.PATH, GIT_CEILING_DIRECTORIES: folder },
  });
  return stderr;
}
