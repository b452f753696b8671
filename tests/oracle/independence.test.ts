/** The oracle is worth something only as long as it shares nothing with the product: it imports none of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const FOLDER = new URL('.', import.meta.url);
const SOURCES = readdirSync(FOLDER).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'));

it.each(SOURCES)('%s imports nothing from outside its folder', (name) => {
  const imports = [...readFileSync(new URL(name, FOLDER), 'utf8').matchAll(/from '([^']+)'/g)];
  expect(imports.map(([, path]) => path!).filter((path) => !path.startsWith('./'))).toEqual([]);
});
