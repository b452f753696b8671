/**
 * Every report about hazardous work carries the usual caution and defers to local codes and licensed practice. The job
 * here works under oil pressure; no page and no report about it may come without that line.
 */
import { expect, test } from 'vitest';
import { dowel, folderWith, RIGHT, WRONG } from './dowel.ts';

const LINE = /no proof of safe work\. Local codes and licensed practice come first\./;
const LAW = /Laws, local codes, permits and the rules of the site come before this text\./;

const JOB = `machine m "press" {
  system oil "pressing circuit"  pressure 160 bar  relieved by opening valve
  control valve "relief valve"
  part block "block" fixed
  part plug "plug" on block  opens oil
}

procedure p "Clean the plug"
  for m
{
  open valve
  remove plug
  clean plug
  refit plug
  close valve
}
`;

test.each<[string, string[]]>([
  ['text', ['check', 'a.dowel']],
  ['JSON', ['check', '--format', 'json', 'a.dowel']],
  ['SARIF', ['check', '--format', 'sarif', 'a.dowel']],
  ['JUnit', ['check', '--format', 'junit', 'a.dowel']],
  ['the machine at a line', ['state', 'a.dowel', '--at', '12']],
  ['a comparison', ['compare', 'a.dowel', 'b.dowel']],
  ['a comparison as JSON', ['compare', '--format', 'json', 'a.dowel', 'b.dowel']],
  ['a comparison as a page', ['compare', '--format', 'html', 'a.dowel', 'b.dowel']],
])('%s', (_, args) => {
  const cwd = folderWith({ 'a.dowel': JOB, 'b.dowel': JOB.replace('160 bar', '180 bar') });
  expect(dowel(args, { cwd }).out).toMatch(LINE);
});

test.each<[string, string[]]>([
  ['the lists of a job', ['lists', 'a.dowel']],
  ['the lists of a job as JSON', ['lists', '--format', 'json', 'a.dowel']],
])('%s', (_, args) => {
  expect(dowel(args, { cwd: folderWith({ 'a.dowel': JOB }) }).out).toMatch(LAW);
});

test('silent or not, a report ends with it', () => {
  const cwd = folderWith({ 'right.dowel': RIGHT, 'wrong.dowel': WRONG });
  for (const file of ['right.dowel', 'wrong.dowel'])
    expect(dowel(['check', file], { cwd }).out.trimEnd().split('\n').at(-1)).toMatch(LINE);
});
