/** The start: compiled code is used where it fits, refused where it does not, and never written again. */
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Parts } from '../../../language-server/cli/start.ts';
import { DOWEL, dowel, folderWith, ROOT } from './dowel.ts';

const PARTS = join(ROOT, '.build/parts');
const { partsIn } = createRequire(import.meta.url)(DOWEL) as { partsIn(folder: string): Parts };

function copyOfParts(): string {
  const folder = folderWith({});
  cpSync(PARTS, folder, { recursive: true });
  return folder;
}

test('every part comes with compiled code that V8 takes', () => {
  const names = readdirSync(PARTS)
    .filter((name) => name.endsWith('.cjs'))
    .map((name) => name.slice(0, -4));
  expect(names).toContain('main');
  expect(names).toContain('cli-check');
  const parts = partsIn(PARTS);
  for (const name of names) {
    parts.load(name);
    expect(parts.scripts.get(name)!.cachedDataRejected, name).toBe(false);
  }
});

test('code that is damaged is refused, the part runs all the same, and nothing is repaired', () => {
  const folder = copyOfParts();
  writeFileSync(join(folder, 'main.code'), Buffer.alloc(4096, 7));
  const parts = partsIn(folder);
  expect(parts.load('main')).toHaveProperty('main');
  expect(parts.scripts.get('main')!.cachedDataRejected).toBe(true);
  expect(readFileSync(join(folder, 'main.code'))).toEqual(Buffer.alloc(4096, 7));
});

test('a check loads neither the server nor the publisher nor what only they need', () => {
  const main = readFileSync(join(PARTS, 'main.cjs'), 'utf8');
  const check = readFileSync(join(PARTS, 'cli-check.cjs'), 'utf8');
  for (const text of [main, check]) expect(text).not.toMatch(/vscode-languageserver|ZodType|node:http/);
});

test('the server starts without the publisher and the reader of configurations, and can come to both', () => {
  const server = readFileSync(join(PARTS, 'server-main.cjs'), 'utf8');
  expect(server).not.toMatch(/ZodType|<!doctype html>/i);
  for (const part of ['server-handlers-published-views', 'config-config'])
    expect(server).toContain(`part:${part}`);
});

test('the parser of the built program records nothing: its decisions are put in', () => {
  for (const part of ['checks-check-project', 'server-main'])
    expect(readFileSync(join(PARTS, `${part}.cjs`), 'utf8')).toContain('"choices');
});

test('help and version start no command', () => {
  expect(dowel(['--help']).out).toContain('check');
  expect(dowel(['--help']).code).toBe(0);
  expect(dowel(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/);
});
