/** The demo procedures. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

export function findFiles(folder: string, ending: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .sort()
    .map((name) => join(folder, name));
}
