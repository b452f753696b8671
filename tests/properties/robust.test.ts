/**
 * What must hold for every text, whatever its faults: checking never fails and never takes long, says the same
 * twice, and does not depend on how the text is laid out. The texts are those of this project, changed at random
 * with fixed seeds. No outside source: fuzzing with changed samples as in Miller, Fredriksen, So, "An empirical
 * study of the reliability of UNIX utilities" (1990).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatText } from '../../grammar/format/format.ts';
import { parse } from '../../grammar/parser/parse.ts';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { mutated, mutations } from './mutate.ts';

const LONG = process.env.DOWEL_LONG === '1';
const SEED = 19_901_212;
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const files = Object.fromEntries(
  ['procedures', 'tests/everyday'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.dowel'))
      .sort()
      .map((name) => {
        const path = join(ROOT, folder, name);
        return [relative(ROOT, path).replaceAll('\\', '/'), readFileSync(path, 'utf8')] as const;
      }),
  ),
);
const paths = Object.keys(files);
const somePath = fc.constantFrom(...paths);

const check = (path: string, text: string) => checkTexts({ ...files, [path]: text }, path).findings;

/** Findings that are about the tool, or lie outside the text. */
function broken(path: string, text: string): string[] {
  return check(path, text)
    .filter(
      ({ check: name, file, start, end }) =>
        name === 'tool-failure' || (file === path && (start < 0 || end < start || end > text.length)),
    )
    .map(
      ({ check: name, message, help, start, end }) => `${name} ${start}..${end}: ${message} ${help ?? ''}`,
    );
}

describe('checking', () => {
  it('knows samples of both kinds', () => {
    expect(paths.filter((path) => path.startsWith('procedures/')).length).toBeGreaterThan(5);
    expect(paths.filter((path) => path.startsWith('tests/')).length).toBeGreaterThan(20);
  });

  it('never fails on a text that was changed at random', { timeout: 1_200_000 }, () => {
    fc.assert(
      fc.property(somePath, mutations, (path, changes) => {
        expect(broken(path, mutated(files[path]!, changes))).toEqual([]);
      }),
      { seed: SEED, numRuns: LONG ? 20_000 : 500 },
    );
  });

  it('never fails on a text that was cut off', { timeout: 1_200_000 }, () => {
    fc.assert(
      fc.property(somePath, fc.double({ min: 0, max: 1, noNaN: true }), (path, share) => {
        const text = files[path]!.slice(0, Math.floor(share * files[path]!.length));
        expect(broken(path, text)).toEqual([]);
      }),
      { seed: SEED, numRuns: LONG ? 10_000 : 300 },
    );
    const shortest = paths.reduce((best, path) => (files[path]!.length < files[best]!.length ? path : best));
    for (let end = 0; end <= files[shortest]!.length; end += LONG ? 1 : 3)
      expect(broken(shortest, files[shortest]!.slice(0, end))).toEqual([]);
  });

  it('says the same in the same order when asked twice', () => {
    fc.assert(
      fc.property(somePath, mutations, (path, changes) => {
        const text = mutated(files[path]!, changes);
        expect(check(path, text)).toEqual(check(path, text));
      }),
      { seed: SEED + 1, numRuns: LONG ? 2_000 : 60 },
    );
  });

  it('says the same of a text and of the same text laid out anew', () => {
    let compared = 0;
    let findings = 0;
    const said = (path: string, text: string) => {
      const found = check(path, text).filter(({ file }) => file === path);
      findings += found.length;
      return found.map((finding) => `${finding.check}: ${finding.message}`);
    };
    const laidOut = (text: string) => {
      // What cannot be read is left as it is.
      if (parse(text).problems.length > 0) return;
      const formatted = formatText(text);
      if (formatted !== text) compared++;
      return formatted;
    };
    for (const path of paths) {
      const formatted = laidOut(files[path]!.replace(/\n +/g, '\n').replace(/\{\n/g, '{ '));
      if (formatted) expect(said(path, formatted)).toEqual(said(path, files[path]!));
    }
    fc.assert(
      fc.property(somePath, mutations, (path, changes) => {
        const text = mutated(files[path]!, changes);
        const formatted = laidOut(text);
        if (formatted !== undefined) expect(said(path, formatted)).toEqual(said(path, text));
      }),
      { seed: SEED + 2, numRuns: LONG ? 10_000 : 400 },
    );
    expect(compared).toBeGreaterThan(30);
    expect(findings).toBeGreaterThan(30);
  });
});
