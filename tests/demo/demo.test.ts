/**
 * The demonstration procedures and the everyday jobs: what is meant to be right is silent under every check,
 * hints included; each broken one has the findings that its comments name, on their lines, and no others.
 * The jobs are common practice, no source; machines and scenarios are invented.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { lineOf } from '../real/expected.ts';

const ROOT = new URL('../../', import.meta.url);
const files: Record<string, string> = {};
for (const folder of ['procedures', 'tests/everyday']) {
  for (const entry of readdirSync(new URL(`${folder}/`, ROOT), { recursive: true }) as string[]) {
    const path = `${folder}/${entry.replaceAll('\\', '/')}`;
    if (path.endsWith('.dowel')) files[path] = readFileSync(new URL(path, ROOT), 'utf8');
  }
}
const isBroken = (path: string) => path.includes('/broken/');

describe('right procedures', () => {
  const right = Object.keys(files).filter((path) => !isBroken(path));
  it.each(right)('%s is silent under every check', (path) => {
    const found = checkTexts(files, path).findings;
    expect(
      found.map(
        ({ file, start, check, message }) => `${file}:${lineOf(files[file]!, start)} ${check}: ${message}`,
      ),
    ).toEqual([]);
  });
  it('are there: three machines, and every everyday sentence', () => {
    expect(right.filter((path) => path.startsWith('procedures/')).length).toBeGreaterThanOrEqual(7);
    expect(right.filter((path) => path.startsWith('tests/everyday/')).length).toBeGreaterThanOrEqual(27);
  });
});

describe('broken procedures', () => {
  const broken = Object.keys(files).filter(isBroken);
  it.each(broken)('%s has the findings its comments name, and no others', (path) => {
    const expected = files[path]!.split('\n').flatMap((line, index) => {
      const comment = /\/\/ finds: ([a-z, -]+)$/.exec(line.trim());
      return comment ? comment[1]!.split(',').map((check) => `${index + 1} ${check.trim()}`) : [];
    });
    const found = checkTexts(files, path).findings.map(
      ({ start, check }) => `${lineOf(files[path]!, start)} ${check}`,
    );
    expect(found.sort()).toEqual(expected.sort());
  });
  it('show at least fifteen different faults in the valve-plate job', () => {
    const path = broken.find((one) => one.includes('valve-plate'))!;
    const kinds = new Set(checkTexts(files, path).findings.map(({ check }) => check));
    expect(kinds.size).toBeGreaterThanOrEqual(15);
  });
});
