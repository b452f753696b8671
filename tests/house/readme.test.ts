/** What README.md shows is what the program prints: its finding, and the commands it names. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dowel, ROOT } from '../language-server/cli/dowel.ts';

const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');

test('the finding is printed so', () => {
  const shown = /```text\n([\s\S]*?)\n```/.exec(readme)?.[1];
  const folder = /`dowel check (\S+)`/.exec(readme)?.[1];
  expect(shown).toBeDefined();
  expect(dowel(['check', folder!]).out).toContain(`${shown}\n\n`);
});

test('every command it names is one', () => {
  const named = [...readme.matchAll(/^node \.build\/dowel\.cjs ([\w-]+)/gm)].map(([, command]) => command!);
  expect(named).toContain('check');
  const help = dowel(['--help']).out;
  for (const command of named) expect(help).toMatch(new RegExp(`^  ${command} `, 'm'));
  const scripts = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).scripts;
  for (const [, script] of readme.matchAll(/npm run (\w+)/g)) expect(scripts).toHaveProperty(script!);
});
