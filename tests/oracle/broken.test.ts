/**
 * The oracle against the demonstration procedures with mistakes in them. Source of what must be found: the
 * authors' own `// finds:` remarks at the ends of the lines; neither execution writes them.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { execute, KINDS } from './executor.ts';

const FILES = read('procedures');

function read(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  const root = new URL('../..', import.meta.url).pathname;
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) Object.assign(found, read(path));
    else if (path.endsWith('.dowel')) found[path] = readFileSync(join(root, path), 'utf8');
  }
  return found;
}

/** Lines that no reader could read are blanked: what is wrong with them is not about states. */
const UNREADABLE = ['unknown-name', 'wrong-kind', 'unit-missing'];

function remarks(text: string): { names: string[]; line: number }[] {
  return text.split('\n').flatMap((line, index) => {
    const [, names] = /\/\/ finds: (.*)$/.exec(line) ?? [];
    return names ? [{ names: names.split(',').map((name) => name.trim()), line: index + 1 }] : [];
  });
}

describe('procedures with mistakes', () => {
  const broken = Object.keys(FILES).filter((path) => path.includes('broken'));

  it.each(broken)('%s: the oracle finds what its author says, and no more', (path) => {
    const text = FILES[path]!;
    const unreadable = remarks(text).filter(({ names }) => names.some((name) => UNREADABLE.includes(name)));
    const readable = text
      .split('\n')
      .map((line, index) => (unreadable.some((one) => one.line === index + 1) ? '' : line))
      .join('\n');
    const expected = remarks(text).flatMap(({ names, line }) =>
      names.filter((name) => KINDS.has(name)).map((name) => `${line} ${name}`),
    );
    const found = execute({ ...FILES, [path]: readable }, path).map(({ kind, line }) => `${line} ${kind}`);
    expect(found).toEqual(expected);
  });

  it('knows at least one of them', () => {
    expect(broken.length).toBeGreaterThan(0);
  });
});
