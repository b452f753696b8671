/** The right procedures of the project: the demos and the everyday jobs, with the files that each leads to. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = new URL('../..', import.meta.url).pathname;
export const FILES: Record<string, string> = { ...read('procedures'), ...read('tests/everyday') };

/** The right procedures, by path. */
export const RIGHT: readonly string[] = Object.keys(FILES).filter(
  (path) => !path.includes('broken') && /^procedure /m.test(FILES[path]!),
);

function read(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(join(ROOT, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) Object.assign(found, read(path));
    else if (path.endsWith('.dowel')) found[path] = readFileSync(join(ROOT, path), 'utf8');
  }
  return found;
}

/** The file at the path with the given text, and only the files that it leads to: no others bear on it. */
export function filesFor(path: string, text = FILES[path]!): Record<string, string> {
  const files: Record<string, string> = { [path]: text };
  const queue = [path];
  for (const at of queue) {
    for (const [, use] of files[at]!.matchAll(/^use "([^"]+)"/gm)) {
      const target = join(at, '..', use!);
      if (files[target] !== undefined || FILES[target] === undefined) continue;
      files[target] = FILES[target];
      queue.push(target);
    }
  }
  return files;
}
