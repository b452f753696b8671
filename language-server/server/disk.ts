/** The files of the workspace on the disk. The only file of the server that reads it. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** As much as the command line reads of one file. */
const MOST_BYTES = 16 * 1024 * 1024;
/** A whole home folder opened by mistake must not keep the editor waiting. */
const MOST_FOLDERS = 5_000;
/** Folders that no author keeps procedures in. */
const LEFT_OUT: ReadonlySet<string> = new Set(['node_modules']);

export function fromDisk(uri: string): string | undefined {
  try {
    if (!uri.startsWith('file:')) return undefined;
    const path = fileURLToPath(uri);
    if (statSync(path).size > MOST_BYTES) return undefined;
    const text = readFileSync(path, 'utf8');
    return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  } catch {
    return undefined;
  }
}

/** Every `.dowel` file in a folder and the folders in it, in order; none where the folder cannot be read. */
export function filesIn(folder: string): string[] {
  if (!folder.startsWith('file:')) return [];
  const found: string[] = [];
  let left = MOST_FOLDERS;
  const walk = (path: string): void => {
    if (left-- <= 0) return;
    let entries: ReturnType<typeof list>;
    try {
      entries = list(path);
    } catch {
      return;
    }
    for (const entry of entries) {
      const inner = join(path, entry.name);
      if (entry.isDirectory() && !entry.name.startsWith('.') && !LEFT_OUT.has(entry.name)) walk(inner);
      else if (entry.isFile() && entry.name.endsWith('.dowel')) found.push(pathToFileURL(inner).href);
    }
  };
  walk(fileURLToPath(folder));
  return found.sort();
}

function list(path: string) {
  return readdirSync(path, { withFileTypes: true });
}
