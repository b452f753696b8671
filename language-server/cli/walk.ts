/**
 * Which files the named paths mean. Folders are walked in sorted order; hidden folders, `node_modules` and
 * symbolic links met on the way are left alone, so that a walk ends, stays inside and always finds the same.
 */
import { readdirSync, statSync } from 'node:fs';
import type { Names } from './names.ts';
import { refusal } from './read.ts';

export const EXTENSION = '.dowel';

export interface Refused {
  path: string;
  reason: string;
  remedy: string;
}

export interface Walked {
  /** Names, each once, in the order of the arguments and sorted within a folder. */
  files: string[];
  refused: Refused[];
}

/** A file that is named is taken whatever its ending; in folders those that end in `.dowel`. */
export function filesOf(paths: readonly string[], names: Names): Walked {
  const files = new Set<string>();
  const refused: Refused[] = [];
  for (const path of paths) {
    try {
      if (statSync(path).isDirectory()) {
        const found: string[] = [];
        walk(path, found, refused);
        if (found.length === 0)
          refused.push({
            path: names.of(path),
            reason: `no file in this folder ends in ${EXTENSION}`,
            remedy: 'Name the folder that holds the procedures, or a file.',
          });
        for (const file of found) files.add(names.of(file));
      } else files.add(names.of(path));
    } catch (error) {
      refused.push({ path: names.of(path), ...refusal(error as NodeJS.ErrnoException) });
    }
  }
  return { files: [...files], refused };
}

function walk(folder: string, found: string[], refused: Refused[]): void {
  const pending = [folder];
  for (let here = pending.pop(); here !== undefined; here = pending.pop()) {
    try {
      const entries = readdirSync(here, { withFileTypes: true });
      entries.sort((a, b) => (a.name < b.name ? -1 : 1));
      const folders: string[] = [];
      for (const entry of entries) {
        const path = here === '.' ? entry.name : `${here}/${entry.name}`;
        if (entry.isDirectory()) {
          if (!entry.name.startsWith('.') && entry.name !== 'node_modules') folders.push(path);
        } else if (entry.isFile() && entry.name.endsWith(EXTENSION)) found.push(path);
      }
      pending.push(...folders.reverse());
    } catch (error) {
      refused.push({ path: here, ...refusal(error as NodeJS.ErrnoException) });
    }
  }
}
