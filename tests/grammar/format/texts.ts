/** Every right and broken file of the project, for what must hold of any text. */
import { readdirSync, readFileSync } from 'node:fs';

const ROOT = new URL('../../../', import.meta.url);

export interface File {
  name: string;
  text: string;
}

function filesIn(folder: string): File[] {
  return readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.dowel'))
    .sort()
    .map((name) => ({
      name: `${folder}${name}`,
      text: readFileSync(new URL(`${folder}${name}`, ROOT), 'utf8'),
    }));
}

export const files: readonly File[] = [...filesIn('procedures/'), ...filesIn('tests/everyday/')];
