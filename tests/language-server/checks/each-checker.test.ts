/** Files that come in turns: what they share is read once, what they do not is let go, and nothing depends on the turns. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkEach, eachChecker } from '../../../language-server/checks/check-project.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const MACHINE = 'machine rig { part base fixed  part lid on base held by clip  fastener clip x2 }';
const job = (name: string) =>
  `use "machine.dowel"\nprocedure ${name} for rig { remove clip  remove lid  refit lid  refit clip }`;
const FILES: Record<string, string> = {
  'machine.dowel': MACHINE,
  'alone.dowel': `${MACHINE.replace('rig', 'other')}\nprocedure p for other { remove clip }`,
  'library.dowel': 'use "machine.dowel"\nprocedure lift for rig { remove clip  remove lid  stop "Done." }',
  'user.dowel': 'use "library.dowel"\nprocedure q for rig { do lift }',
};
for (let at = 0; at < 12; at++) FILES[`job-${at}.dowel`] = job(`job-${at}`);

function counting(files: Record<string, string>) {
  const reads = new Map<string, number>();
  const host = memoryHost(files);
  return {
    reads,
    host: {
      ...host,
      read: (path: string) => {
        reads.set(path, (reads.get(path) ?? 0) + 1);
        return host.read(path);
      },
    },
  };
}

describe('a checker of files in turns', () => {
  it('reads a machine that many jobs use once, and each job once', () => {
    const { host, reads } = counting(FILES);
    const check = eachChecker(host);
    const jobs = Object.keys(FILES).filter((path) => path.startsWith('job-'));
    for (const path of jobs) check([path]);
    expect(reads.get('machine.dowel')).toBe(1);
    for (const path of jobs) expect(reads.get(path)).toBe(1);
  });

  it('lets a file go that no other uses, and keeps one that is used', () => {
    const { host, reads } = counting(FILES);
    const check = eachChecker(host);
    const [first] = check(['alone.dowel']);
    expect(first!.findings.length).toBeGreaterThan(0);
    expect(check(['alone.dowel'])).toEqual([first]);
    expect(reads.get('alone.dowel')).toBe(2);
    check(['user.dowel']);
    check(['library.dowel']);
    check(['library.dowel']);
    expect(reads.get('library.dowel')).toBe(1);
  });

  it('finds the same in whatever turns the files come', () => {
    const root = resolve(import.meta.dirname, '../../../procedures');
    const texts: Record<string, string> = { ...FILES };
    for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' }))
      if (file.endsWith('.dowel')) texts[file] = readFileSync(join(root, file), 'utf8');
    const paths = Object.keys(texts).sort();
    const alone = paths.flatMap((path) => checkEach(memoryHost(texts), [path]));
    const check = eachChecker(memoryHost(texts));
    expect(paths.flatMap((path) => check([path]))).toEqual(alone);
    const back = eachChecker(memoryHost(texts));
    const found = [...paths].reverse().flatMap((path) => back([path]));
    expect(found.reverse()).toEqual(alone);
    expect(checkEach(memoryHost(texts), paths)).toEqual(alone);
  });
});
