/**
 * What the configuration of a house says reaches the page: second units, units, words, convention. Torque: 25 N·m is
 * 18.4 lbf·ft (1 lbf·ft = 1.3558179483 N·m, NIST SP 811, appendix B.8). Words of the convention: MIL-STD-38784 knows
 * warning, caution and note only.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { publish } from '../../../language-server/cli/publish.ts';

const FOLDER = resolve(import.meta.dirname, '../../../.build/publish-house');

const JOB = `machine press "press" {
  part bed "bed" fixed
  part cover "cover" on bed held by screws
  fastener screws "cover screws" x4 torque 25 N·m
}
procedure take-off "Take the cover off and put it back" for press {
  caution sharp "The edge of the cover cuts the hand. Wear gloves."
  unbolt cover
  refit cover
  fit screws by hand
  tighten screws
}
`;

function pageWith(config: Record<string, unknown>, job = JOB): string {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(`${FOLDER}/in`, { recursive: true });
  writeFileSync(`${FOLDER}/in/job.dowel`, job);
  writeFileSync(`${FOLDER}/in/dowel.config.json`, JSON.stringify(config));
  publish(`${FOLDER}/in`, { out: `${FOLDER}/out`, allowFindings: true });
  return readFileSync(`${FOLDER}/out/procedures/job.take-off.html`, 'utf8').replace(/<[^>]+>/g, '');
}

test('second units: as written, always, never', () => {
  const both = JOB.replace('25 N·m', '25 N·m (18.4 lbf·ft)');
  expect(pageWith({ secondUnit: 'always' })).toContain('25 N·m (18.4 lbf·ft)');
  expect(pageWith({ secondUnit: 'as written' })).not.toContain('lbf·ft');
  expect(pageWith({ secondUnit: 'as written' }, both)).toContain('25 N·m (18.4 lbf·ft)');
  expect(pageWith({ secondUnit: 'never' }, both)).not.toContain('lbf·ft');
});

test('units: US customary first', () => {
  const page = pageWith({ units: 'us', secondUnit: 'always' });
  expect(page).toContain('18.4 lbf·ft (25 N·m)');
});

test('words: British and American', () => {
  expect(pageWith({ words: 'british' })).toContain('Refit the cover');
  const american = pageWith({ words: 'american' });
  expect(american).toContain('Reinstall the cover');
  expect(american).not.toContain('Refit the cover');
});

test('convention: the word and its panel', () => {
  pageWith({ convention: 'military' });
  const page = readFileSync(`${FOLDER}/out/procedures/job.take-off.html`, 'utf8');
  expect(page).toMatch(/class="panel military sig-caution"/);
  // Under the military books a caution is about equipment: it has no alert sign for injury.
  expect(page).toMatch(/class="panel military sig-caution" role="note"><p class="signal"><b>/);
  pageWith({ convention: 'ansi' });
  expect(readFileSync(`${FOLDER}/out/procedures/job.take-off.html`, 'utf8')).toMatch(
    /class="panel sig-caution"/,
  );
});
