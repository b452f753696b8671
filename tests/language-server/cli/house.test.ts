/** What a house has agreed on, as a person meets it on the command line: the file is found, obeyed, and told of when wrong. */
import { expect, test } from 'vitest';
import { dowel, folderWith } from './dowel.ts';

const JOB = `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover
  remove cover-screws
}
`;
const RULES = 'rule signed "Who did the work signs for it." { always require sign }\n';

test('severities, from a folder above the files', () => {
  const files = { 'jobs/a.dowel': JOB, 'dowel.config.json': '{ "severities": { "still-held": "warning" } }' };
  const { code, out } = dowel(['check', 'jobs'], { cwd: folderWith(files) });
  expect(out).toContain('warning still-held');
  expect(code).toBe(0);
  const off = { ...files, 'dowel.config.json': '{ "severities": { "still-held": "off" } }' };
  expect(dowel(['check', 'jobs'], { cwd: folderWith(off) }).out).not.toContain('still-held');
});

test('the nearest configuration holds; --config is stronger', () => {
  const folder = folderWith({
    'jobs/a.dowel': JOB,
    'dowel.config.json': '{ "severities": { "still-held": "off" } }',
    'jobs/dowel.config.json': '{ "severities": { "still-held": "hint" } }',
  });
  expect(dowel(['check', 'jobs'], { cwd: folder }).out).toContain('hint still-held');
  expect(dowel(['check', '--config', 'dowel.config.json', 'jobs'], { cwd: folder }).out).not.toContain(
    'still-held',
  );
});

test('rule files hold for every procedure; one that is missing is told of', () => {
  const folder = folderWith({
    'a.dowel': JOB,
    'house.dowel': RULES,
    'dowel.config.json': '{\n  "rules": ["house.dowel", "gone.dowel"]\n}',
  });
  const { out, code } = dowel(['check', 'a.dowel'], { cwd: folder });
  expect(out).toContain('“Who did the work signs for it” is not kept: no step is `sign`.');
  expect(out).toContain('house.dowel:1:6  the rule stands here');
  expect(out).toContain('dowel.config.json:2:28');
  expect(out).toContain('The file of rules “gone.dowel” cannot be read.');
  expect(code).toBe(1);
});

test('a wrong configuration: its place, and the run fails', () => {
  const folder = folderWith({
    'a.dowel': 'fluid oil "oil"\n',
    'dowel.config.json': '{\n  "convension": "ansi"\n}',
  });
  const { out, code } = dowel(['check', 'a.dowel'], { cwd: folder });
  expect(out).toContain('error config-wrong');
  expect(out).toContain('dowel.config.json:2:3');
  expect(out).toContain('did you mean `convention`?');
  expect(code).toBe(1);
  expect(dowel(['check', '--config', 'none.json', 'a.dowel'], { cwd: folder }).code).toBe(2);
});

test('paths that are left out, unless they are named', () => {
  const folder = folderWith({
    'jobs/old/a.dowel': JOB,
    'jobs/b.dowel': 'fluid oil "oil"\n',
    'dowel.config.json': '{ "ignore": ["jobs/old", "**/draft-*.dowel"] }',
  });
  expect(dowel(['check', 'jobs'], { cwd: folder }).out).toMatch(/^No findings; 1 file checked\.\n/);
  expect(dowel(['check', 'jobs/old/a.dowel'], { cwd: folder }).out).toContain('still-held');
});

test('limits of what is listed', () => {
  const folder = folderWith({
    'a.dowel': JOB.replaceAll('remove', 'removee'),
    'dowel.config.json': '{ "limits": { "perFile": 1 } }',
  });
  const { out } = dowel(['check', 'a.dowel'], { cwd: folder });
  expect(out.match(/^error /gm)).toHaveLength(1);
  expect(out).toMatch(/more findings? (is|are) not shown/);
});

test('the convention, by configuration and by option', () => {
  const job = `machine oven "drying oven" {
  part body "body" fixed
  part heater "heater" on body opens mains
  isolator breaker "breaker" in mains normally on
  system mains "mains supply" live 24 V isolated at breaker hazard live can hurt
}
procedure renew-heater "Renew the heater" for oven supplies heater {
  caution live "Live parts give a shock. Switch off before you open the oven."
  isolate mains
  remove heater and discard
  fit new heater
  restore mains
}
`;
  const weak = (config: string, ...args: string[]) =>
    dowel(['check', ...args, 'a.dowel'], {
      cwd: folderWith({ 'a.dowel': job, 'dowel.config.json': config }),
    }).out.includes('signal-word-weak');
  // ANSI Z535.6: caution is minor or moderate injury. MIL-STD-38784: caution is damage, warning is injury.
  expect(weak('{}')).toBe(false);
  expect(weak('{ "convention": "military" }')).toBe(true);
  expect(weak('{}', '--convention', 'military')).toBe(true);
  expect(weak('{ "convention": "military" }', '--convention', 'ansi')).toBe(false);
});

test('waived findings are counted, printed when asked for, and stand in JSON with their reasons', () => {
  const folder = folderWith({
    'a.dowel': JOB.replace(
      '  remove cover\n',
      '  allow still-held because "The screws are sheared."\n  remove cover\n',
    ),
  });
  const text = dowel(['check', 'a.dowel'], { cwd: folder });
  expect(text.out).toMatch(/ 1 is waived \(--show-waived prints them\)\.\n/);
  expect(text.out).not.toContain('error still-held');
  const shown = dowel(['check', '--show-waived', 'a.dowel'], { cwd: folder }).out;
  expect(shown).toContain('Waived because: The screws are sheared.');
  const { waived } = JSON.parse(dowel(['check', '--format', 'json', 'a.dowel'], { cwd: folder }).out);
  expect(waived).toMatchObject([
    { finding: { check: 'still-held' }, reason: 'The screws are sheared.', start: { line: 7, column: 3 } },
  ]);
});
