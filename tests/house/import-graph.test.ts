/**
 * Who may import whom, as one table. TypeScript's project references catch an import from a lower folder to
 * a higher one; this catches the rest: edges between inner rooms, packages where they do not belong, and
 * disk, clock or process where only text goes in and data comes out.
 */
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import {
  destinationOf,
  type Import,
  importsIn,
  readSource,
  roomOf,
  sourceFiles,
  systemNamesIn,
} from './imports.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** Rooms from the bottom up. An entry is a room, one file of a room, a package, or `node:` for all of Node. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  'grammar/syntax': [],
  'grammar/quantity': [],
  'grammar/tokens': ['grammar/syntax', 'grammar/quantity', 'chevrotain'],
  'grammar/parser': ['grammar/syntax', 'grammar/quantity', 'grammar/tokens', 'chevrotain'],
  'grammar/format': ['grammar/syntax', 'grammar/quantity', 'grammar/tokens', 'grammar/parser'],

  'language-server/report': ['grammar/syntax', 'picocolors'],
  'language-server/hazards': [],
  'language-server/project': [
    'grammar/syntax',
    'grammar/parser',
    'language-server/report',
    'language-server/hazards',
  ],
  'language-server/fastening': ['grammar/quantity'],
  'language-server/wording': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'language-server/report',
  ],
  'language-server/model': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'grammar/parser',
    'language-server/report',
    'language-server/project',
    'language-server/fastening',
    'language-server/hazards',
    'language-server/wording',
    // Sets of cases stand by themselves: conditions are read into them, the execution works with them.
    'language-server/execution/cases.ts',
  ],
  'language-server/execution': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'language-server/report',
    'language-server/project',
    'language-server/fastening',
    'language-server/hazards',
    'language-server/model',
  ],
  'language-server/rules': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'language-server/report',
    'language-server/model',
    'language-server/execution',
  ],
  'language-server/checks': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'grammar/parser',
    'language-server/report',
    'language-server/project',
    'language-server/fastening',
    'language-server/hazards',
    'language-server/wording',
    'language-server/model',
    'language-server/execution',
    'language-server/rules',
  ],
  'language-server/config': [
    'grammar/syntax',
    'language-server/report',
    'language-server/project',
    'language-server/hazards',
    'language-server/model',
    'language-server/checks',
    'zod',
  ],
  'language-server/features': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'grammar/parser',
    'grammar/format',
    'language-server/report',
    'language-server/project',
    'language-server/fastening',
    'language-server/hazards',
    'language-server/wording',
    'language-server/model',
    'language-server/execution',
    'language-server/checks',
  ],
  // Findings of texts that are being edited: what was found before is taken over where it still holds.
  'language-server/engine': [
    'grammar/syntax',
    'grammar/tokens',
    'grammar/parser',
    'language-server/report',
    'language-server/project',
    'language-server/model',
    'language-server/execution',
    'language-server/checks',
  ],
  // What a job needs: tools, new parts, fluids, people, time. The command line and the publisher read it.
  'language-server/lists': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'language-server/report',
    'language-server/project',
    'language-server/fastening',
    'language-server/hazards',
    'language-server/wording',
    'language-server/model',
    'language-server/execution',
  ],
  'language-server/publish': [
    '@dagrejs/dagre',
    'grammar/syntax',
    'grammar/quantity',
    'grammar/tokens',
    'grammar/parser',
    'language-server/report',
    'language-server/project',
    'language-server/fastening',
    'language-server/hazards',
    'language-server/wording',
    'language-server/model',
    'language-server/execution',
    'language-server/checks',
    'language-server/lists',
    'language-server/config',
  ],
  'language-server/compare': [
    'grammar/syntax',
    'grammar/quantity',
    'grammar/parser',
    'language-server/report',
    'language-server/project',
    'language-server/model',
    'language-server/checks',
    'language-server/features',
  ],
  'language-server/server': [
    ...grammarRooms(),
    ...meaningRooms(),
    'zod',
    'vscode-languageserver',
    'vscode-languageserver-textdocument',
    'node:',
  ],
  'language-server/cli': [
    ...grammarRooms(),
    ...meaningRooms(),
    'language-server/server',
    'commander',
    'zod',
    'node:',
  ],
  extension: ['language-server/server', 'vscode', 'vscode-languageclient', 'node:'],
};

function grammarRooms(): string[] {
  return ['syntax', 'quantity', 'tokens', 'parser', 'format'].map((room) => `grammar/${room}`);
}

/** What the text means and the answers, without the ways in and out. */
function meaningRooms(): string[] {
  return [
    'report',
    'project',
    'fastening',
    'hazards',
    'wording',
    'model',
    'execution',
    'rules',
    'checks',
    'config',
    'engine',
    'features',
    'compare',
    'lists',
    'publish',
  ].map((room) => `language-server/${room}`);
}

/** Rooms that may touch the disk, a clock, chance or the process. */
const MAY_TOUCH_THE_SYSTEM: readonly string[] = [
  'language-server/server',
  'language-server/cli',
  'extension',
];

/** What is wrong with one import, or undefined. */
function wrongWith(one: Import): string | undefined {
  const room = roomOf(one.file);
  const destination = destinationOf(one);
  const allowed = ALLOWED[room];
  if (allowed === undefined) return `${one.file}: the room ${room} is not in the table`;
  if (destination === room || allowed.includes(destination)) return undefined;
  if (allowed.some((entry) => entry.endsWith(':') && destination.startsWith(entry))) return undefined;
  if (allowed.some((entry) => entry.endsWith('.ts') && entry === fileOf(one))) return undefined;
  return `${one.file}: ${room} may not import ${destination} (${one.target})`;
}

function fileOf({ file, target }: Import): string {
  return new URL(target, `file:///${file}`).pathname.slice(1);
}

const files = sourceFiles(ROOT, ['grammar', 'language-server', 'extension']);

test('every import between rooms is in the table', () => {
  const wrong = files
    .flatMap((file) => importsIn(file, readSource(ROOT, file)))
    .map(wrongWith)
    .filter((message) => message !== undefined);
  expect(wrong).toEqual([]);
});

test('only the server, the command line and the extension touch the system', () => {
  const wrong = files
    .filter((file) => !MAY_TOUCH_THE_SYSTEM.includes(roomOf(file)))
    .flatMap((file) => systemNamesIn(file, readSource(ROOT, file)).map((name) => `${file}: ${name}`));
  expect(wrong).toEqual([]);
});

test('the table lets nothing go round: a room below never reaches one above', () => {
  const rooms = Object.keys(ALLOWED);
  const upwards = rooms.flatMap((room, place) =>
    ALLOWED[room]!.filter((entry) => rooms.indexOf(entry) >= place).map((entry) => `${room} to ${entry}`),
  );
  expect(upwards).toEqual([]);
});

test('the scanner sees the files there are', () => {
  expect(files).toContain('grammar/syntax/tree.ts');
  expect(files).toContain('language-server/report/finding.ts');
  expect(files.length).toBeGreaterThan(50);
});

describe('bad examples are caught', () => {
  const wrong = (file: string, text: string) => importsIn(file, text).map(wrongWith);

  test.each([
    ['grammar/parser/a.ts', "import { x } from '../../language-server/model/x.ts';"],
    ['grammar/syntax/a.ts', "import type { x } from '../parser/x.ts';"],
    ['grammar/quantity/a.ts', "export * from '../tokens/words.ts';"],
    ['language-server/model/a.ts', "const x = await import('../checks/all.ts');"],
    ['language-server/model/a.ts', "import { x } from '../execution/run.ts';"],
    ['language-server/checks/a.ts', "import { readFileSync } from 'node:fs';"],
    ['language-server/report/a.ts', "import { z } from 'zod';"],
    ['language-server/report/a.ts', "import fs from 'fs';"],
    ['language-server/cli/a.ts', "import { x } from '../../extension/main.ts';"],
    ['language-server/server/a.ts', "import { x } from '../cli/main.ts';"],
    ['language-server/new-room/a.ts', "import { x } from '../report/finding.ts';"],
  ])('%s: %s', (file, text) => {
    expect(wrong(file, text)).toEqual([expect.stringContaining(file)]);
  });

  test.each([
    ['language-server/model/a.ts', "import { x } from '../execution/cases.ts';"],
    ['language-server/cli/a.ts', "import { readFileSync } from 'node:fs';"],
    ['language-server/checks/a.ts', "import { x } from './b.ts';"],
  ])('and right ones are not: %s: %s', (file, text) => {
    expect(wrong(file, text)).toEqual([undefined]);
  });

  test('names of the system', () => {
    const text = `
      const now = Date.now(); console.log(process.env); const a = { process: 1 }; a.process;
      const chance = Math.random(); type D = Date;`;
    expect(systemNamesIn('a.ts', text)).toEqual(['Date', 'Math.random', 'console', 'process']);
    expect(systemNamesIn('a.ts', 'const a = { process: 1 }; a.process; // Date')).toEqual([]);
  });
});
