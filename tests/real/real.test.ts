/**
 * Real published procedures (public-domain US Government works and one Apache-2.0 hardware repository), transcribed
 * as facts. Each folder has the text as printed and a corrected twin. The flaws were found by readers of the printed
 * pages, before any check existed: the checks must find them where the transcription says, and nothing else; on the
 * corrected twin they are silent. The publication is named at the top of every file.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { expectations, lineOf } from './expected.ts';

const HERE = new URL('.', import.meta.url);
const folders = readdirSync(HERE, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

function textsOf(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (const name of readdirSync(new URL(`${folder}/`, HERE))) {
    if (name.endsWith('.dowel')) files[name] = readFileSync(new URL(`${folder}/${name}`, HERE), 'utf8');
  }
  return files;
}

interface Reported {
  place: string;
  severity: string;
  message: string;
}

function reportedBy(files: Record<string, string>, path: string): Reported[] {
  const paths = 'machine.dowel' in files ? ['machine.dowel', path] : [path];
  return checkTexts(files, ...paths).findings.map((finding) => ({
    place: `${finding.file}:${lineOf(files[finding.file]!, finding.start)} ${finding.check}`,
    severity: finding.severity,
    message: finding.message,
  }));
}

const serious = ({ severity }: Reported) => severity === 'error' || severity === 'warning';
const asPlace = ({ file, line, check }: { file: string; line: number; check: string }) =>
  `${file}:${line} ${check}`;

test('there are folders to look at', () => {
  expect(folders.length).toBeGreaterThan(2);
});

describe.each(folders)('%s', (folder) => {
  const files = textsOf(folder);
  const { 'corrected.dowel': _corrected, ...printed } = files;
  const { finds, later, wrongly, unreadable } = expectations(printed);

  test('has a printed text that names its publication, a corrected twin, and readable expectations', () => {
    expect(files['printed.dowel']).toMatch(new RegExp(`^// Case ${folder.slice(0, 2)}\\. \\S`));
    expect(files['corrected.dowel']).toBeTypeOf('string');
    expect(unreadable).toEqual([]);
    for (const { flaw } of [...finds, ...later, ...wrongly])
      expect(flaw.slice(0, 2)).toBe(folder.slice(0, 2));
  });

  test('the flaws of the printed text are found where they are, and nothing else', () => {
    const reported = reportedBy(files, 'printed.dowel');
    const left = reported.map(({ place }) => place);
    const missing: string[] = [];
    for (const expected of finds) {
      const index = left.indexOf(asPlace(expected));
      if (index >= 0) left.splice(index, 1);
      else missing.push(`${asPlace(expected)} (${expected.flaw})`);
    }
    const allowed = [...later, ...wrongly].map(asPlace);
    const expectedPlaces = finds.map(asPlace);
    const unexpected = reported.filter(
      (one) =>
        left.includes(one.place) &&
        (serious(one) || expectedPlaces.includes(one.place)) &&
        !allowed.includes(one.place),
    );
    expect({ missing, unexpected }).toEqual({ missing: [], unexpected: [] });
  });

  test('known false reports are still made (when one is not, delete its comment)', () => {
    const places = reportedBy(files, 'printed.dowel').map(({ place }) => place);
    expect(wrongly.map(asPlace).filter((place) => !places.includes(place))).toEqual([]);
  });

  test('the corrected twin is silent', () => {
    expect(reportedBy(files, 'corrected.dowel').filter(serious)).toEqual([]);
  });
});
